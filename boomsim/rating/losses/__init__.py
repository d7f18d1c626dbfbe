"""What eats capacity, and what a kilogram costs."""
