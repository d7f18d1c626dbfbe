"""The vote: who may say what and when, and the one process that serves it."""
