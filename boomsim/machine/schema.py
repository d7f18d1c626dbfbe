"""The structure of a machine file, table by table, with the meaning of every key.

The descriptions serve three: the reader here, the comments of
:func:`boomsim.machine.write.machine_to_toml`, and the message when a key is missing.
"""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, StrictInt

from boomsim.machine import figure_types as f

MOST_SECTIONS = 10


class Table(BaseModel):
    """A table of the file: no unknown keys, no other types than written."""

    model_config = ConfigDict(extra="forbid", frozen=True, hide_input_in_errors=True)


class MaterialTable(Table):
    """`[materials.NAME]`."""

    yield_stress: f.YieldStress = Field(description="stress at which it yields")
    modulus: f.Modulus = Field(description="Young's modulus: stress over strain")
    density: f.Density = Field(description="to compare a section's mass with its plates")


class BoxTable(Table):
    """`box`: four plates, outside sizes."""

    height: f.Size = Field(description="over the outside")
    width: f.Size = Field(description="over the outside")
    top: f.Thickness = Field(description="thickness of the top plate")
    bottom: f.Thickness = Field(description="thickness of the bottom plate")
    web: f.Thickness = Field(description="thickness of each side plate")


class TubeTable(Table):
    """`tube`: a round tube."""

    diameter: f.Size = Field(description="over the outside")
    wall: f.Thickness = Field(description="thickness of the wall")


class PolygonTable(Table):
    """`polygon`: any convex shape that is the same left and right."""

    corners: tuple[tuple[f.Across, f.Across], ...] = Field(
        description="[across, up] of each corner, mid-plate", min_length=3, max_length=60
    )
    thickness: tuple[f.Thickness, ...] = Field(
        description="of the plate from each corner to the next", min_length=3, max_length=60
    )


class PadTable(Table):
    """`front_pad` and `rear_pad`: one of a pair."""

    length: f.Size = Field(description="along the boom")
    width: f.Size = Field(description="across the boom")
    pressure: f.Pressure = Field(description="allowable pressure")


class LockTable(Table):
    """`lock`."""

    kind: Literal["pins", "drive"] = Field(description='"pins" or "drive"')
    strength: f.Force = Field(description="largest force along the boom that it holds")


class SectionTable(Table):
    """`[[boom.sections]]`: the base section first."""

    material: f.Name = Field(description="one of [materials]")
    length: f.Length = Field(description="from its tail to its front")
    mass: f.Mass = Field(description="plates, stiffeners, pads, pins and ropes")
    box: BoxTable | None = Field(None, description="four plates, sizes over the outside")
    tube: TubeTable | None = Field(None, description="a round tube")
    polygon: PolygonTable | None = Field(None, description="any convex shape of plates")
    stroke: f.Travel | None = Field(None, description="how far it can move out")
    nose: f.Step | None = Field(None, description="stands ahead of the outer front, moved in")
    least_overlap: f.Overlap | None = Field(None, description="overlap that must remain")
    clearance: f.Play | None = Field(None, description="play of the pads, up and down")
    front_pad: PadTable | None = Field(None, description="one pad at the outer section's mouth")
    rear_pad: PadTable | None = Field(None, description="one pad at this section's tail")
    lock: LockTable | None = Field(None, description="what keeps it from sliding")


class HeadTable(Table):
    """`[boom.head]`."""

    ahead: f.Step = Field(description="sheave centre ahead of the last section's front")
    below: f.Place = Field(description="sheave centre below the boom's axis")
    rope_above: f.Place = Field(description="line to the winch above the boom's axis")
    mass: f.Mass = Field(description="head with its sheaves")


System = Literal["pinned", "sequenced", "synchronised", "free"]


class BoomTable(Table):
    """`[boom]`."""

    systems: tuple[System, ...] = Field(
        description="pinned, sequenced, synchronised, free; the first is the usual one",
        min_length=1,
        max_length=4,
    )
    lock_positions: tuple[f.Share, ...] = Field(
        (0.0, 1.0),
        description="shares of the stroke at which a pinned boom locks",
        min_length=1,
        max_length=12,
    )
    least_angle: f.Angle = Field(description="lowest boom angle above horizontal")
    greatest_angle: f.Angle = Field(description="steepest boom angle")
    wind_shape: f.Coefficient = Field(description="force coefficient of the boom in wind")
    head: HeadTable = Field(description="the boom head")
    sections: tuple[SectionTable, ...] = Field(
        description="base section first", min_length=2, max_length=MOST_SECTIONS
    )


class CylinderTable(Table):
    """`[cylinder]`: raises the boom."""

    base_out: f.Place = Field(description="lower pin ahead of the axis of rotation")
    base_up: f.Height = Field(description="lower pin above the ground")
    attach_along: f.Length = Field(description="upper pin, along the boom from the heel pin")
    attach_below: f.Place = Field(description="upper pin, below the boom's axis")
    strength: f.Force = Field(description="largest push")
    mass: f.Mass = Field(description="half of it goes with each pin")


class HoistTable(Table):
    """`[hoist]`."""

    winch_out: f.Place = Field(description="winch ahead of the axis of rotation")
    winch_up: f.Height = Field(description="winch above the ground")
    line_pull: f.Force = Field(description="permissible pull in one part of the rope")
    sheave_efficiency: f.Efficiency = Field(description="pull off over pull on, one sheave")
    parts: tuple[Annotated[StrictInt, Field(ge=1, le=24)], ...] = Field(
        description="parts of line that can be reeved; the last is the usual",
        min_length=1,
        max_length=24,
    )


class RingTable(Table):
    """`[ring]`: carries the superstructure."""

    moment: f.Moment = Field(description="overturning moment it can take")
    up: f.Height = Field(description="above the ground")


class CarrierTable(Table):
    """`[[carrier]]`: a mass that stays with the carrier."""

    name: f.Name = Field(description="what it is")
    mass: f.Mass = Field(description="its mass")
    x: f.Place = Field(description="to the rear of the axis of rotation")
    y: f.Place = Field(description="to the right")
    z: f.Height = Field(description="above the ground")


class TurningTable(Table):
    """`[[superstructure]]`: a mass that turns with the boom."""

    name: f.Name = Field(description="what it is")
    mass: f.Mass = Field(description="its mass")
    out: f.Place = Field(description="ahead of the axis of rotation, towards the boom head")
    up: f.Height = Field(description="above the ground")


class CounterweightTable(TurningTable):
    """`[[counterweights]]`: one choice; "none" may have no mass."""

    mass: f.MassOrNone = Field(description="its mass; 0 kg for none")


class SupportTable(Table):
    """`[[supports]]`: one way to stand."""

    name: f.Name = Field(description="how the crane stands")
    kind: Literal["outriggers", "tyres"] = Field(description='"outriggers" or "tyres"')
    points: tuple[tuple[f.Place, f.Place], ...] = Field(
        description="[to the rear, to the right] of each jack or tyre", min_length=3, max_length=40
    )
    stiffness: f.Stiffness = Field(description="of one jack or tyre with the ground under it")
    area: f.GroundArea = Field(description="of one float or tyre on the ground")


class MachineTable(Table):
    """The whole file."""

    name: f.Name = Field(description="short name")
    title: f.Line = Field(description="one line")
    note: f.Prose = Field("", description="what it is for; that it is invented")
    heel_out: f.Place = Field(description="heel pin ahead of the axis of rotation")
    heel_up: f.Height = Field(description="heel pin above the ground")
    hook_block: f.MassOrNone = Field(description="mass of the hook block")
    slings: f.MassOrNone = Field(description="mass of the slings and shackles usually hung on")
    materials: dict[f.Name, MaterialTable] = Field(
        description="by name", min_length=1, max_length=20
    )
    boom: BoomTable = Field(description="the telescoping boom")
    cylinder: CylinderTable = Field(description="the luffing cylinder")
    hoist: HoistTable = Field(description="winch, rope and reeving")
    ring: RingTable = Field(description="the slewing ring")
    carrier: tuple[CarrierTable, ...] = Field(
        description="masses that stay", min_length=1, max_length=40
    )
    superstructure: tuple[TurningTable, ...] = Field(
        description="masses that turn", min_length=1, max_length=40
    )
    counterweights: tuple[CounterweightTable, ...] = Field(
        description="the choices; the first is the usual one", min_length=1, max_length=20
    )
    supports: tuple[SupportTable, ...] = Field(
        description="the choices; the first is the usual one", min_length=1, max_length=20
    )
