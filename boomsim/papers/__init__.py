"""Examination papers: problem families, blueprints, rendering, exchange formats, marking.

Families are written once, in letters (:mod:`boomsim.papers.families`); a blueprint chooses among
them (:func:`boomsim.papers.write.write_papers`); answers are data and are marked with errors
carried forward (:func:`boomsim.papers.mark.mark`).
"""
