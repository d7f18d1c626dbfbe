"""The explorer's views: one file each, an answer and a place in, SVG out."""
