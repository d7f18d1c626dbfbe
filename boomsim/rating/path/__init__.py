"""A load kept while the boom moves: what is met on the way, down, out, and from pin to pin."""
