"""The bent boom: stations, load cases, second-order equilibrium, internal forces, critical load."""
