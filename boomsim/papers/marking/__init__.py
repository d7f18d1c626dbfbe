"""From a key and a file of answers to marks, reports and the figures of a class."""
