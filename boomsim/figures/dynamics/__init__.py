"""The picture of loads that move: as how much each counts."""
