"""What is chosen: a machine, as frozen values in SI units.

Axes of the carrier: x to the rear, y to the right, z up, origin on the axis of rotation at
ground level. Axes of the superstructure (they turn with the boom): ``out`` from the axis of
rotation towards the boom head, ``up`` from the ground. A section is described in its own axes:
``s`` along it from its tail, ``y`` up in the luffing plane, ``z`` across.
"""

from dataclasses import dataclass

"""How the moving sections may be out: see :mod:`boomsim.rating.strategies`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """Linear elastic, then yielding.

    Attributes
    ----------
    yield_stress : float
        f_y [Pa]
    modulus : float
        Young's modulus E [Pa]
    density : float
        Used only to judge a section's mass against its plates [kg/m3]
    shear_modulus : float or None
        G; None: that of a Poisson's ratio of 0.3, E/2.6 [Pa]
    axial_modulus : float or None
        Stress over strain along the section; None: E. Infinite for a textbook's bar, which bends
        and does not stretch; no file gives it [Pa]
    """

    yield_stress: float
    modulus: float = 210e9
    density: float = 7850.0
    shear_modulus: float | None = None
    axial_modulus: float | None = None

    @property
    def in_shear(self) -> float:
        """Shear modulus G, given or not [Pa]."""
        return self.modulus / 2.6 if self.shear_modulus is None else self.shear_modulus

    @property
    def in_tension(self) -> float:
        """Modulus along the section, given or not [Pa]."""
        return self.modulus if self.axial_modulus is None else self.axial_modulus


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """A closed thin-walled cross-section: one cell, flat plates, given by its midline.

    Attributes
    ----------
    corners : tuple of (float, float)
        (z, y) of each midline corner, in order round the cell, closed by the last plate [m]
    thickness : tuple of float
        Of plate k, from corner k to corner k + 1 [m]
    kind : str
        "box", "polygon" or "tube": how the file gave it, for display only
    """

    corners: tuple[tuple[float, float], ...]
    thickness: tuple[float, ...]
    kind: str = "polygon"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pad:
    """One wear pad of a pair (left and right); the pair shares the joint's force.

    Attributes
    ----------
    length : float
        Along the boom [m]
    width : float
        Across the boom [m]
    pressure : float
        Allowable pressure [Pa]
    """

    length: float
    width: float
    pressure: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Lock:
    """What holds a moving section against sliding: pins in double shear, or a telescope drive.

    Attributes
    ----------
    strength : float
        Largest axial force before yield (pins) or before it slips (drive) [N]
    kind : str
        "pins" or "drive"
    """

    strength: float
    kind: str = "pins"


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One section of the boom; number 0 is the base section.

    Attributes
    ----------
    length : float
        Tail to front [m]; the base section's tail is the heel pin
    mass : float
        Spread evenly along the length [kg]
    stroke : float
        How far it can move out; 0 for the base section [m]
    nose : float
        How far its front stands ahead of the outer section's front when retracted [m]
    least_overlap : float
        Overlap with the outer section that must remain [m]
    clearance : float
        Play between the pads and the outer section in the luffing plane [m]
    front_pad, rear_pad : Pad or None
        The outer section's mouth on this one; this one's tail on the outer. None for the base
    lock : Lock or None
        None for the base section
    """

    profile: Profile
    material: Material
    length: float
    mass: float
    stroke: float = 0.0
    nose: float = 0.0
    least_overlap: float = 0.0
    clearance: float = 0.0
    front_pad: Pad | None = None
    rear_pad: Pad | None = None
    lock: Lock | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """The boom head, rigid at the front of the last section.

    Attributes
    ----------
    ahead : float
        Head sheave centre ahead of the last front, along the section [m]
    below : float
        Head sheave centre below the section's axis [m]
    rope_above : float
        Lead line to the winch above the section's axis, at the head sheave [m]
    mass : float
        At the head sheave centre [kg]
    """

    ahead: float
    below: float
    rope_above: float
    mass: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TelescopeCylinder:
    """Pushes the sections out, from inside the boom.

    One part stays with the base section, the other goes out with section 1. Each lies along its
    section, so its mass is spread as evenly as the section's own.

    Attributes
    ----------
    mass : float
        Of the whole cylinder with its oil [kg]
    moving_share : float
        Share of it that goes out with section 1 [1]
    push : float or None
        Largest push with which it moves a section; None where it is not known [N]
    """

    mass: float
    moving_share: float = 0.5
    push: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Boom:
    """The telescoping boom.

    Attributes
    ----------
    sections : tuple of Section
        Base section first
    systems : tuple of str
        Which of :data:`boomsim.machine.boom_systems.BOOM_SYSTEMS` it has; the first is the usual
        one
    lock_positions : tuple of float
        Fractions of the stroke at which a pinned boom locks [1]
    least_angle, greatest_angle : float
        Range of the boom angle [rad]
    wind_shape : float
        Force coefficient of the boom in wind [1]
    telescope_cylinder : TelescopeCylinder or None
        None where its mass is counted in the sections'
    """

    sections: tuple[Section, ...]
    head: Head
    systems: tuple[str, ...]
    lock_positions: tuple[float, ...] = (0.0, 1.0)
    least_angle: float
    greatest_angle: float
    wind_shape: float = 1.6
    telescope_cylinder: TelescopeCylinder | None = None

    @property
    def section_masses(self) -> tuple[float, ...]:
        """Masses of the sections with what lies in them of the telescope cylinder [kg]."""
        own = [section.mass for section in self.sections]
        if self.telescope_cylinder is not None:
            moving = self.telescope_cylinder.mass * self.telescope_cylinder.moving_share
            own[0] += self.telescope_cylinder.mass - moving
            own[1] += moving
        return tuple(own)


@dataclass(frozen=True, slots=True, kw_only=True)
class LuffingCylinder:
    """Raises the boom; pushes between superstructure and base section.

    Attributes
    ----------
    base_out, base_up : float
        Lower pin, superstructure axes [m]
    attach_along, attach_below : float
        Upper pin: along the base section from the heel pin, and below its axis [m]
    strength : float
        Largest push [N]
    mass : float
        Half goes with each pin [kg]
    bore : float or None
        Inside diameter; None: its oil is taken as rigid [m]
    oil_modulus : float
        Bulk modulus of the oil with the air it carries [Pa]
    """

    base_out: float
    base_up: float
    attach_along: float
    attach_below: float
    strength: float
    mass: float
    bore: float | None = None
    oil_modulus: float = 1.5e9


@dataclass(frozen=True, slots=True, kw_only=True)
class Hoist:
    """Winch, rope and reeving.

    Attributes
    ----------
    winch_out, winch_up : float
        Where the lead line leaves for the head, superstructure axes [m]
    line_pull : float
        Permissible pull in one part [N]
    sheave_efficiency : float
        Of one sheave [1]
    parts : tuple of int
        Parts of line that can be reeved; the last is the usual one
    rope_mass : float
        Of the rope by its length; 0 leaves its weight out [kg/m]
    rope_length : float or None
        On the drum with the whole rope wound up; None lets it reach for any number of parts [m]
    drum_diameter : float or None
        From centre to centre of the rope on its first layer; None where the rope's length is not
        known either [m]
    """

    winch_out: float
    winch_up: float
    line_pull: float
    sheave_efficiency: float
    parts: tuple[int, ...]
    rope_mass: float = 0.0
    rope_length: float | None = None
    drum_diameter: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CarrierMass:
    """A mass that stays with the carrier: position in carrier axes [m], mass [kg]."""

    name: str
    mass: float
    x: float
    y: float
    z: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TurningMass:
    """A mass that turns with the superstructure: `out` and `up` [m], mass [kg]."""

    name: str
    mass: float
    out: float
    up: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Support:
    """One way for the crane to stand.

    Attributes
    ----------
    kind : str
        "outriggers" or "tyres": which stability share applies
    points : tuple of (float, float)
        (x, y) of each jack or tyre in carrier axes, in any order [m]
    stiffness : float
        Of one support, float and ground together [N/m]
    area : float
        Of one float or tyre on the ground [m2]
    strength : float or None
        Permissible load of one tyre position; None on outriggers, and where none is given [N]
    longest_boom : float or None
        Longest boom with which anything is rated on tyres; None for any [m]
    """

    name: str
    kind: str
    points: tuple[tuple[float, float], ...]
    stiffness: float
    area: float
    strength: float | None = None
    longest_boom: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SlewingRing:
    """Carries the superstructure: overturning moment it can take [N m], its height [m]."""

    moment: float
    up: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """Where counterweight slabs lie on the carrier until the superstructure takes them up.

    Attributes
    ----------
    x, y, z : float
        Their centre, carrier axes [m]
    """

    x: float
    y: float
    z: float


@dataclass(frozen=True, slots=True, kw_only=True, repr=False)
class Machine:
    """A whole crane. Everything in it is invented; it teaches, it plans no lift.

    Attributes
    ----------
    heel_out, heel_up : float
        Heel pin in superstructure axes; `heel_out` is negative behind the axis of rotation [m]
    superstructure : tuple of TurningMass
        Without boom, cylinder and counterweight
    counterweights, supports : tuples
        The choices; the first is the usual one
    hook_block, slings : float
        The usual deductions from gross to net [kg]
    deck : Deck or None
        None where slabs are hung on the superstructure one by one
    """

    name: str
    title: str
    note: str
    boom: Boom
    heel_out: float
    heel_up: float
    cylinder: LuffingCylinder
    hoist: Hoist
    ring: SlewingRing
    carrier: tuple[CarrierMass, ...]
    superstructure: tuple[TurningMass, ...]
    counterweights: tuple[TurningMass, ...]
    supports: tuple[Support, ...]
    hook_block: float
    slings: float
    deck: Deck | None = None

    def __hash__(self) -> int:
        # Machines are looked up often, and a hash of every number in them takes its time.
        return hash((self.name, self.title, self.heel_out, self.heel_up))

    def __repr__(self) -> str:
        return (
            f"<boomsim machine: {self.name} (invented), {len(self.boom.sections)} boom sections, "
            f"{len(self.counterweights)} counterweights, {len(self.supports)} supports>"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Rigging:
    """How the machine is set up for the lift; None means the machine's usual choice.

    Attributes
    ----------
    counterweight, support : str or None
        Names among the machine's choices
    parts : int or None
        Parts of line
    """

    counterweight: str | None = None
    support: str | None = None
    parts: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Disturbances:
    """What a chart leaves out. All off by default; each acts at the boom angle set without it.

    Attributes
    ----------
    wind_speed : float
        Gust speed [m/s]
    wind_across : bool
        False: from behind, pushing the boom outwards; True: across the boom, to its left
    load_area : float
        Wind area of the load with its shape coefficient, for each kilogram of it [m2/kg]
    side_pull : float
        Horizontal pull across the boom as a share of the load's weight, to its left [1]
    hoist_speed : float
        Steady hoisting speed [m/s]
    hoist_class : int
        1 to 4: stiffness of the hoist, see :mod:`boomsim.mechanics.hoisting_factor`
    lean : float
        Ground out of level, downhill in the direction the boom points [rad]
    lean_across : float
        Ground out of level, downhill to the left of the boom [rad]
    wind_beside : float
        Gust speed across the boom while `wind_speed` blows from behind: a rule's allowance stays
        where a wind across is given [m/s]
    """

    wind_speed: float = 0.0
    wind_across: bool = False
    load_area: float = 0.0
    side_pull: float = 0.0
    hoist_speed: float = 0.0
    hoist_class: int = 2
    lean: float = 0.0
    lean_across: float = 0.0
    wind_beside: float = 0.0


CALM = Disturbances()
"""Level ground, still air, a straight pull, no dynamics."""
