"""The problem families, one file each; every module here has one `FAMILY`.

To add one, copy :mod:`~boomsim.papers.families.statics_pad_force` and change, from the top:

1. the letters, with ``symbols``, without assumptions;
2. ``check``: the answer by the call path, from the givens in SI; for a boom of a few numbers
   :mod:`boomsim.papers.check_models.textbook_boom` makes the machine and lifts with it;
3. the givens, metric and US, in the short notation of
   :func:`boomsim.papers.numbers.value_ranges.spread`, each introduced in the text by ``{a=}``;
4. the steps, the last one being the answer: letter, formula, what is found, what is done;
5. the slips: in which step, what is computed instead, and, after "perhaps you …", in words;
6. ``where``: what must hold between letters for a sensible problem;
7. ``picture`` with its words in ``seen``, where people would rather look.

A new file is found by itself. :func:`boomsim.papers.problems.family_review.complaints` says what it
lacks, and ``pytest tests/papers/test_families.py`` draws some hundred problems from it. Numbers
that come from a built-in machine are supplied by ``draw``: see
:mod:`~boomsim.papers.families.charts_gross_to_net`.
A question answered in words is a ``ChoiceFamily``: see
:mod:`~boomsim.papers.families.strategy_own_weight`.
"""
