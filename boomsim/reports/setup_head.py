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


def setup_text(setup: "Setup") -> str:
    """How the crane is set up, in a few sentences."""
    from boomsim.figures.setup_words import allowance_words

    return (
        f"{setup.machine.name} (invented), {setup.sector}, counterweight "
        f"{setup.counterweight.name}, support {setup.support.name}, {setup.parts} parts of line, "
        f"rule {setup.rule.name}. {allowance_words(setup.rule)}"
    ).rstrip()
