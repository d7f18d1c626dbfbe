"""Files in and out: read with bounds, written whole or not at all, by one run at a time."""
