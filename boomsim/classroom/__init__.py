"""A class of any size: lessons as a folder of pages, and a vote on their questions."""
