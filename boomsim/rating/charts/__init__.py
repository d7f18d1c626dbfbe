"""Load charts: made from rated cells, parted by the bold line, read as the trade reads them."""
