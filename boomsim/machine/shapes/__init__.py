"""Shapes of a section, one file each: made from its sizes, read from a file, written back."""
