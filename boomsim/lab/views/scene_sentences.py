"""The explorer's sentences; numbers from the answer, units at the last moment."""

from math import isfinite

import numpy as np

from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.kept_figures import say
from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook
from boomsim.rating.lift_response import VALID_DEFLECTION
from boomsim.rating.limits.limit_sentences import WHAT_SETS, what_happens
from boomsim.rating.longest_boom import tell_longest, too_long
from boomsim.rating.strategies import label


def headline(answer: Answer, *, units: str) -> str:
    """Say the whole picture in one sentence or two."""
    if answer.lies:
        return tell_empty_hook(answer.empty_hook, units=units)
    if answer.trouble:
        return answer.trouble
    if answer.first is None:
        return _none(answer, units)
    way = what_happens(answer.first)
    if not answer.capacity > 0.0:
        return f"Carries nothing here, {answer.setup.sector}: {way} even without a load."
    words = WHAT_SETS[answer.first.set_by]
    return f"{words[0].upper()}{words[1:]}, {answer.setup.sector}: {way}."


def _none(answer: Answer, units: str) -> str:
    if too_long(answer.setup, length=answer.boom.layout.boom_length)[0]:
        return f"No rated capacity: {tell_longest(answer.setup)}."
    boom = answer.setup.machine.boom
    least = say(boom.least_angle, "angle", units)
    greatest = say(boom.greatest_angle, "angle", units)
    if answer.at is not None and not bool(answer.at.in_range[0, 0]):
        return f"No rated capacity: the boom angle is outside {least} to {greatest}."
    return "No rated capacity here."


def remark(answer: Answer, *, units: str) -> str:
    """Say what else a reader must know; empty if nothing."""
    at = answer.at
    if at is None or not answer.solved:
        return ""
    if answer.scene.load > answer.capacity:
        worst = int(np.nanargmax(at.utilisation[:, 0, 0]))
        utilisation = float(at.utilisation[worst, 0, 0])
        much = f"{100 * utilisation:.0f} %" if np.isfinite(utilisation) else "past all bounds"
        return f"Beyond the rated load: {what_happens(at.limits[worst])} – utilisation {much}."
    if not bool(at.is_valid[0, 0]):
        return (
            f"The tip deflects by more than {100 * VALID_DEFLECTION:.0f} % of the boom length: "
            "the model is meant for less. Take the numbers as a sketch."
        )
    return ""


def configuration(answer: Answer) -> str:
    """Write the configuration as the trade does.

    Returns
    -------
    str
        Such as "(0, 0, 45, 45)"
    """
    return f"({label(np.array(answer.scene.extension))})"


def percent(utilisation: float) -> str:
    """Write a utilisation in percent, short enough for a small bar.

    Parameters
    ----------
    utilisation : float
        [1]
    """
    if not isfinite(utilisation):
        return "∞" if utilisation > 0 else "–"
    return f"{100 * max(utilisation, 0.0):.0f} %" if utilisation < 9.995 else ">999 %"
