"""Past the rated load: raised until something happens, and what would happen first."""
