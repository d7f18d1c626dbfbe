"""QTI 2.2 and QTI 3 packages for learning platforms: written, and checked before they are used."""
