"""A formula's function for decisions: which of several checks fails first."""

from sympy.utilities.lambdify import implemented_function


def _first_over(*utilisations: float) -> int:
    """Number of the first utilisation above one, from 1; one more than there are if none is."""
    return next(
        (n for n, utilisation in enumerate(utilisations, start=1) if utilisation > 1.0),
        len(utilisations) + 1,
    )


first_over = implemented_function("first_over", _first_over)
"""``first_over(u, w, g)``: 1 if u is over 100 %, else 2 if w is, else 3 if g is, else 4."""
