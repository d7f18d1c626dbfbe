"""May I make this pick? Each check in the order in which an operator makes them."""
