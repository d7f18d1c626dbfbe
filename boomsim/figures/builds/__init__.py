"""One boom built light and stout: lines over radius, and what sets the figures of each build."""
