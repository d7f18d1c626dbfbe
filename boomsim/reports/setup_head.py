"""How the crane is set up: the head that all reports share."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.setup import Setup


def setup_json(setup: "Setup", *, extension: "Array | None" = None) -> dict[str, object]:
    """How the crane is set up, with the keys that all answers share.

    Of one boom `parts` is what it is reeved in; without an extension it is the most.
    """
    from boomsim.mechanics.geometry import layout
    from boomsim.rating.parts_reeved import reeved

    parts = setup.parts
    if extension is not None:
        length = layout(setup.machine.boom, extension=extension).boom_length
        parts = int(reeved(setup, length=length)[0])
    return {
        "machine": setup.machine.name,
        "rule": setup.rule,
        "sector": setup.sector,
        "counterweight": setup.counterweight.name,
        "support": setup.support.name,
        "parts": parts,
        "disturbances": setup.disturbances,
    }


def counterweight_words(setup: "Setup", *, units: str) -> str:
    """Name the counterweight, with pounds behind a name that has its mass in tonnes."""
    from boomsim.units import show

    weight = setup.counterweight
    pounds = f" ({show(weight.mass, 'mass', units)})" if units == "us" and weight.mass > 0.0 else ""
    return f"counterweight {weight.name}{pounds}"


def setup_text(setup: "Setup", *, units: str, extension: "Array | None" = None) -> str:
    """How the crane is set up, in a few sentences; with an extension, for that boom."""
    from boomsim.figures.setup_words import allowance_words
    from boomsim.rating.parts_reeved import parts_words

    return (
        f"{setup.machine.name} (invented), {setup.sector}, "
        f"{counterweight_words(setup, units=units)}, support {setup.support.name}, "
        f"{parts_words(setup, extension=extension)}, rule {setup.rule.name}. "
        f"{allowance_words(setup.rule, units=units)}"
    ).rstrip()
