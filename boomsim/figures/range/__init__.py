"""Where the head of the boom goes, and what it may carry there."""
