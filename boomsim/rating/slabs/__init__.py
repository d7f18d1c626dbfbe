"""Setting up: the crane lifts the slabs of its own counterweight, which it does not have on yet."""
