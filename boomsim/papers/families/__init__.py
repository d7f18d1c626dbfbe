"""The problem families, one file each; every module here has one `FAMILY`.

A new file is found by itself. :func:`boomsim.papers.review.complaints` says what it lacks.
"""
