"""A game for a class: a pick is stated, the class chooses the way out, the model answers."""
