"""How a boom is reeved: parts of line, where the rope is, what pulls in it and weighs."""
