"""The numbers of a paper: drawn by our own dice, printed with their units, read from answers."""
