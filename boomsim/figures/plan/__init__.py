"""A crane from above: its supports, its tipping lines, and what bears where."""
