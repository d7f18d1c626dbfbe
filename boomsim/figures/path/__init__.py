"""The way of a load while the boom is lowered or run out, and the moves from pin to pin."""
