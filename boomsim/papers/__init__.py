"""Examination papers: problem families, blueprints, rendering, exchange formats, marking.

Families are written once, in letters (:mod:`boomsim.papers.families`); a blueprint chooses among
them (:func:`boomsim.papers.paper_writing.write_papers`); answers are data and are marked with
errors carried forward (:func:`boomsim.papers.marking.mark_class.mark`).

On this floor lies what turns a blueprint into a paper; a room each for what it is made of
(``numbers``, ``language``, ``sketches``, ``problems``, ``families``, ``check_models``), for its
forms (``render``, ``qti``, ``moodle``) and for what comes after (``marking``, ``board``).
"""
