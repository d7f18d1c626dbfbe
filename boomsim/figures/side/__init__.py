"""A crane from its left side, to scale: its boom, its carrier, its dimensions."""
