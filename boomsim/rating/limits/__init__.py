"""What can give way, one file for each: its words, its physics, and what passing it means.

``table.py`` lists them, in the order in which every result has them; ``kind.py`` says what a row of
that table must bring.
"""
