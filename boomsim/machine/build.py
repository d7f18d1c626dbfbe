"""From the tables of a file to a frozen `Machine`."""

from typing import Any

from boomsim.machine import model
from boomsim.machine.profiles import box, polygon, tube
from boomsim.machine.schema import BoomTable, MachineTable, SectionTable, SupportTable, Table


def build_machine(table: MachineTable) -> model.Machine:
    """Make a machine from a table whose structure is valid.

    Parameters
    ----------
    table : MachineTable

    Returns
    -------
    Machine
    """
    materials = {name: model.Material(**_plain(m)) for name, m in table.materials.items()}
    return model.Machine(
        name=table.name,
        title=table.title,
        note=table.note,
        boom=_boom(table.boom, materials),
        heel_out=table.heel_out,
        heel_up=table.heel_up,
        cylinder=model.LuffingCylinder(**_plain(table.cylinder)),
        hoist=model.Hoist(**_plain(table.hoist)),
        ring=model.SlewingRing(**_plain(table.ring)),
        carrier=tuple(model.CarrierMass(**_plain(m)) for m in table.carrier),
        superstructure=tuple(model.TurningMass(**_plain(m)) for m in table.superstructure),
        counterweights=tuple(model.TurningMass(**_plain(m)) for m in table.counterweights),
        supports=tuple(_support(s) for s in table.supports),
        hook_block=table.hook_block,
        slings=table.slings,
    )


def build_profile(section: SectionTable) -> model.Profile:
    """Make a section's profile; exactly one of its shapes is given.

    Parameters
    ----------
    section : SectionTable

    Returns
    -------
    Profile
    """
    if section.box:
        return box(**_plain(section.box))
    if section.tube:
        return tube(**_plain(section.tube))
    if section.polygon:
        return polygon(section.polygon.corners, thickness=section.polygon.thickness)
    raise ValueError("A section has no shape. Give it a box, a tube or a polygon.")


def _boom(table: BoomTable, materials: dict[str, model.Material]) -> model.Boom:
    """Make the boom."""
    return model.Boom(
        sections=tuple(_section(s, materials[s.material]) for s in table.sections),
        head=model.Head(**_plain(table.head)),
        systems=table.systems,
        lock_positions=table.lock_positions,
        least_angle=table.least_angle,
        greatest_angle=table.greatest_angle,
        wind_shape=table.wind_shape,
    )


def _section(table: SectionTable, material: model.Material) -> model.Section:
    """Make a section; what the base section lacks stays at the model's default."""
    return model.Section(
        profile=build_profile(table),
        material=material,
        length=table.length,
        mass=table.mass,
        stroke=table.stroke or 0.0,
        nose=table.nose or 0.0,
        least_overlap=table.least_overlap or 0.0,
        clearance=table.clearance or 0.0,
        front_pad=model.Pad(**_plain(table.front_pad)) if table.front_pad else None,
        rear_pad=model.Pad(**_plain(table.rear_pad)) if table.rear_pad else None,
        lock=model.Lock(**_plain(table.lock)) if table.lock else None,
    )


def _support(table: SupportTable) -> model.Support:
    """Make one way to stand."""
    return model.Support(**_plain(table))


def _plain(table: Table) -> dict[str, Any]:
    """A table's own values by name."""
    return dict(table)
