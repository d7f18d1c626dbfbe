"""What a load-moment indicator knows, and what it cannot."""
