"""Words and formulas: cut apart, and written for every dialect that can print them."""
