"""Load charts and chart books as pages: laid out once as marks, written as PDF, SVG, PNG, HTML."""
