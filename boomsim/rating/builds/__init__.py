"""One boom built light and built stout: the same question asked of other plates."""
