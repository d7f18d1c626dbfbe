"""QTI 2.2 packages for learning platforms: written, and checked before anyone sits them."""
