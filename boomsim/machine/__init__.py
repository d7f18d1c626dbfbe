"""What is chosen: machines as frozen values, read from TOML files and written back."""
