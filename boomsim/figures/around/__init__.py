"""Capacity, tipping and float loads through a whole turn."""
