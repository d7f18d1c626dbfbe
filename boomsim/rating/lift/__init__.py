"""One lift, laid out for a reader."""
