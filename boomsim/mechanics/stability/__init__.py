"""Does the crane stand: masses, tipping lines, overturning, support reactions."""
