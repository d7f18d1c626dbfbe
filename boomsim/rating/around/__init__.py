"""Through a whole turn: capacity, sectors, centres of gravity, what the floats carry."""
