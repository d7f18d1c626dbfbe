"""The picture of an indicator: what it shows beside what is."""
