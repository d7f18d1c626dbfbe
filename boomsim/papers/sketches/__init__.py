"""The drawings beside questions, as SVG text."""
