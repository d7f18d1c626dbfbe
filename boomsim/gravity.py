"""Standard acceleration of free fall, 9.80665 m/s2 by definition (CGPM, 1901), for every room."""

from fractions import Fraction

STANDARD_GRAVITY = Fraction("9.80665")
"""Exactly, for factors of units [m/s2]."""

GRAVITY = float(STANDARD_GRAVITY)
"""As a number to compute with [m/s2]."""
