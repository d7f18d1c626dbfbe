"""The picture of setting up: radii at which a crane lifts its own slabs, as bands."""
