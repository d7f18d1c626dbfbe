"""The face: one function for each study, text or numbers in, a result that shows itself out.

``import boomsim as bs`` offers all of it; nothing that computes is imported before it is called.
"""
