"""How the crane is set up: the head that all reports share."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boomsim.rating.setup import Setup


def setup_json(setup: "Setup") -> dict[str, object]:
    """How the crane is set up, with the keys that all answers share."""
    return {
        "machine": setup.machine.name,
        "rule": setup.rule,
        "sector": setup.sector,
        "counterweight": setup.counterweight.name,
        "support": setup.support.name,
        "parts": setup.parts,
        "disturbances": setup.disturbances,
    }


def counterweight_words(setup: "Setup", *, units: str) -> str:
    """Name the counterweight, with pounds behind a name that has its mass in tonnes.

    Parameters
    ----------
    setup : Setup
    units : str
        "metric" or "us"

    Returns
    -------
    str
    """
    from boomsim.units import show

    weight = setup.counterweight
    pounds = f" ({show(weight.mass, 'mass', units)})" if units == "us" and weight.mass > 0.0 else ""
    return f"counterweight {weight.name}{pounds}"


def setup_text(setup: "Setup", *, units: str) -> str:
    """How the crane is set up, in a few sentences."""
    from boomsim.figures.setup_words import allowance_words

    return (
        f"{setup.machine.name} (invented), {setup.sector}, "
        f"{counterweight_words(setup, units=units)}, support {setup.support.name}, "
        f"{setup.parts} parts of line, rule {setup.rule.name}. "
        f"{allowance_words(setup.rule, units=units)}"
    ).rstrip()
