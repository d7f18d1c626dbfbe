"""One lift past its rated load: what happens first."""
