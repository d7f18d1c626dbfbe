"""What is moved and read in a notebook: controls, panel, list of scenes."""
