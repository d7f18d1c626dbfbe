"""Types of the figures in a machine file: each reads its unit and knows its plausible range."""

from collections.abc import Callable
from typing import Annotated

from pydantic import BeforeValidator, StringConstraints

from boomsim.units import UnitError, parse, show


def figure(quantity: str, least: str, most: str, *, zero: bool = False) -> BeforeValidator:
    """Make a validator for one kind of figure.

    Parameters
    ----------
    quantity : str
        A key of :data:`boomsim.units.QUANTITIES`
    least, most : str
        Plausible range, with units
    zero : bool
        Whether zero is allowed although below `least`

    Returns
    -------
    BeforeValidator
        Turns "8.20 m" into 8.2, or raises `UnitError`
    """
    return BeforeValidator(_reader(quantity, least, most, zero=zero))


def _reader(quantity: str, least: str, most: str, *, zero: bool) -> Callable[[object], float]:
    """Bind the range once, so that reading is quick."""
    low, high = parse(least, quantity), parse(most, quantity)

    def read(value: object) -> float:
        number = parse(value, quantity)
        if (zero and number == 0) or low <= number <= high:
            return number
        raise UnitError(_out_of_range(value, number, quantity=quantity, low=low, ends=(least, most)))

    return read


def _out_of_range(
    value: object, number: float, *, quantity: str, low: float, ends: tuple[str, str]
) -> str:
    """Say what was given and what is plausible."""
    given = f'"{value}"' if isinstance(value, str) else str(value)
    if number <= 0 < low:
        return f"{given} must be more than zero; {ends[0]} to {ends[1]} is plausible here."
    read = show(number, quantity)
    same = "" if given.strip('"') == read else f" is {read}, which"
    return f"{given}{same} is not plausible here: give {ends[0]} to {ends[1]}."


Length = Annotated[float, figure("length", "2 cm", "100 m")]
Travel = Annotated[float, figure("length", "1 cm", "60 m")]
Step = Annotated[float, figure("length", "0 m", "5 m")]
Overlap = Annotated[float, figure("length", "5 mm", "30 m")]
Place = Annotated[float, figure("length", "-30 m", "30 m")]
Height = Annotated[float, figure("length", "0 m", "20 m")]
Size = Annotated[float, figure("small_length", "4 mm", "3000 mm")]
Across = Annotated[float, figure("small_length", "-3000 mm", "3000 mm")]
Thickness = Annotated[float, figure("small_length", "0.2 mm", "100 mm")]
Play = Annotated[float, figure("small_length", "0 mm", "50 mm")]
Mass = Annotated[float, figure("mass", "1 g", "200 t")]
MassOrNone = Annotated[float, figure("mass", "1 g", "200 t", zero=True)]
Force = Annotated[float, figure("force", "0.1 N", "20 MN")]
Moment = Annotated[float, figure("moment", "0.1 N m", "100 MN m")]
YieldStress = Annotated[float, figure("stress", "5 MPa", "2000 MPa")]
Modulus = Annotated[float, figure("stress", "1 GPa", "1000 GPa")]
Pressure = Annotated[float, figure("stress", "0.05 MPa", "500 MPa")]
Density = Annotated[float, figure("density", "100 kg/m3", "25000 kg/m3")]
Angle = Annotated[float, figure("angle", "-30 deg", "89 deg")]
Stiffness = Annotated[float, figure("stiffness", "0.5 kN/m", "10000 MN/m")]
GroundArea = Annotated[float, figure("area", "0.2 cm2", "10 m2")]
Share = Annotated[float, figure("share", "0 %", "100 %")]
Efficiency = Annotated[float, figure("share", "50 %", "100 %")]
Coefficient = Annotated[float, figure("number", "0.1", "4")]

Name = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9][A-Za-z0-9 _.,'()+%/-]{0,39}$")]
Line = Annotated[str, StringConstraints(pattern=r"^[^\x00-\x1f\x7f]{1,200}$")]
Prose = Annotated[str, StringConstraints(pattern=r"^[^\x00-\x09\x0b-\x1f\x7f]{0,4000}$")]
