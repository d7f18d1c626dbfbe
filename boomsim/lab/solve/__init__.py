"""A scene solved: one call of the rating's own path, with what is kept between two steps."""
