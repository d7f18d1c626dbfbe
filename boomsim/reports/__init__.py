"""What a study says: one report each, as text, as data for JSON, and as a picture."""
