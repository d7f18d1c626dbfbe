"""Chart books: their first pages, their sheets, their HTML."""
