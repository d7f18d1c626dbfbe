"""Every use of every limit of one cell, by the formulas of the `rerate_...` files."""

from math import inf

import rerate_sections as by_section
import rerate_whole as whole
from rerate_cells import Bent
from rerate_column import boom_buckling
from rerate_masses import place
from rerate_tyres import tyres


def utilisations(bent: Bent, row: int) -> dict[str, float]:
    """Use of every limit, by the limit's key: its kind, and the section's number.

    Without an equilibrium there is none: the boom has buckled, and more than that is not known.
    """
    if not all(s.converged[row, 0] for s in (bent.given, bent.borne, bent.factored)):
        return {"boom buckling": inf}
    machine = bent.cells.machine
    placed, strained = place(bent, bent.given, row), place(bent, bent.borne, row)
    found = {
        "tipping": whole.tipping(bent, placed, row),
        "backward": whole.backward(bent, placed, row),
        "slewing ring": whole.ring(bent, strained, row),
        "luffing cylinder": whole.cylinder(bent, strained, row),
        "line pull": whole.line_pull(bent, row),
        "boom buckling": boom_buckling(bent, row),
    }
    if bent.cells.support.strength is not None:
        found["tyres"] = tyres(bent, placed, row)
    for number, section in enumerate(machine.boom.sections):
        at = by_section.At(bent, number, row)
        plates = by_section.plates(bent, section, at)
        found[f"stress {number}"] = by_section.yielding(bent, section, at)
        found[f"plate buckling {number}"] = float(plates.max())
        found[f"shear buckling {number}"] = by_section.shearing(bent, section, at)
        if number == 0:
            continue
        front = float(bent.forces.front_pad[row, number, 0])
        rear = float(bent.forces.rear_pad[row, number, 0])
        found[f"front pad {number}"] = by_section.pressed(front, section.front_pad)
        found[f"rear pad {number}"] = by_section.pressed(rear, section.rear_pad)
        mouth, tail = by_section.crushed(bent, number, row)
        found[f"web crushing {number}"] = max(mouth, tail)
        bending = float(plates[by_section.at_mouth(bent, number, row)])
        found[f"crushing with bending {number}"] = (mouth + 0.8 * bending) / 1.4
        found[f"lock {number}"] = by_section.lock(bent, number, row)
    return found
