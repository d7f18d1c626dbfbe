"""From the givens of a question to the call path, which has the last word on every answer."""
