"""What can give way, one file for each: its words, its physics, and what passing it means.

``limit_table.py`` lists them, in the order in which every result has them; ``limit_kind.py`` says
what a row of that table must bring; ``limit_sentences.py`` says what is said of any of them.
"""
