"""Check the structure of a machine file and say what is wrong in words of the trade."""

from typing import Any, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from boomsim.machine.build import build_machine
from boomsim.machine.faults import Fault, MachineFileError, path_of
from boomsim.machine.model import Machine
from boomsim.machine.schema import MachineTable, SectionTable, Table
from boomsim.units import did_you_mean

SHAPES = ("box", "tube", "polygon")
MOVING = ("stroke", "nose", "least_overlap", "clearance", "front_pad", "rear_pad", "lock")
"""Keys that a moving section needs and the base section has not."""


def read_structure(data: dict[str, Any], where: str) -> Machine:
    """Check structure, then shapes and physics, and build the machine.

    Parameters
    ----------
    data : dict
        As TOML gave it
    where : str
        Name of the file, for messages

    Returns
    -------
    Machine
    """
    try:
        table = MachineTable.model_validate(data)
    except ValidationError as error:
        faults = [Fault(path=path_of(e["loc"]), says=_says(e)) for e in error.errors()]
        raise MachineFileError(where, faults) from None
    faults = _section_faults(table)
    if not faults:
        try:
            return build_machine(table)
        except ValueError as error:
            faults = [Fault(path="boom.sections", says=str(error))]
    raise MachineFileError(where, faults)


def _section_faults(table: MachineTable) -> list[Fault]:
    """Faults between the keys of one section."""
    faults = []
    for i, section in enumerate(table.boom.sections):
        place = f"boom.sections[{i}]"
        faults += [Fault(path=place, says=says) for says in _shape_faults(section)]
        faults += _moving_faults(section, number=i, place=place)
        if section.material not in table.materials:
            hint = did_you_mean(section.material, table.materials)
            says = f'There is no [materials.{section.material}].{hint}'
            faults.append(Fault(path=f"{place}.material", says=says))
    return faults


def _shape_faults(section: SectionTable) -> list[str]:
    """One shape, not none and not two."""
    given = [shape for shape in SHAPES if getattr(section, shape) is not None]
    if len(given) == 1:
        return []
    return [f"A section has {' and '.join(given) or 'no shape'}: give one of {', '.join(SHAPES)}."]


def _moving_faults(section: SectionTable, *, number: int, place: str) -> list[Fault]:
    """The base section moves not; the others need all that moving takes."""
    given = [key for key in MOVING if getattr(section, key) is not None]
    if number == 0:
        says = "The base section does not move. Take this key out."
        return [Fault(path=f"{place}.{key}", says=says) for key in given]
    missing = [key for key in MOVING if key not in given]
    return [Fault(path=f"{place}.{key}", says=_missing(SectionTable, key)) for key in missing]


def _says(error: ErrorDetails) -> str:
    """Put one structural fault into words."""
    kind, place, limit = error["type"], error["loc"], error.get("ctx", {})
    table, key = _table_at(place[:-1]), str(place[-1]) if place else ""
    if kind == "missing":
        return _missing(table, key)
    if kind == "extra_forbidden":
        hint = did_you_mean(key, table.model_fields if table else ())
        return f'There is no key "{key[:40]}" here.{hint or " Take it out."}'
    if kind == "value_error":
        return str(limit["error"])
    if kind in _WORDS:
        return _WORDS[kind].format(**limit)
    return f"{error['msg']}."


_WORDS = {
    "model_type": "This must be a table with keys of its own.",
    "model_attributes_type": "This must be a table with keys of its own.",
    "dict_type": "This must be a table with keys of its own.",
    "tuple_type": "This must be a list in square brackets.",
    "string_type": "This must be text in quotation marks.",
    "int_type": "This must be a whole number.",
    "greater_than_equal": "This must be {ge} or more.",
    "less_than_equal": "This must be {le} or less.",
    "literal_error": "This must be {expected}.",
    "string_pattern_mismatch": (
        "This text is empty, too long, or has characters that cannot stand here: use letters, "
        "digits, spaces and plain marks."
    ),
    "too_short": "This has {actual_length} entries and needs at least {min_length}.",
    "too_long": "This has too many entries: {max_length} at most.",
}


def _missing(table: type[Table] | None, key: str) -> str:
    """Say that a key is missing, and what it is."""
    about = table.model_fields[key].description if table and key in table.model_fields else None
    return f"This is missing ({about})." if about else "This is missing."


def _table_at(place: tuple[str | int, ...]) -> type[Table] | None:
    """Find the table class at a place, to know its keys."""
    found: object = MachineTable
    for step in place:
        if isinstance(found, type) and issubclass(found, Table) and step in found.model_fields:
            found = _table_in(found.model_fields[str(step)].annotation)
    return found if isinstance(found, type) and issubclass(found, Table) else None


def _table_in(annotation: object) -> type[Table] | None:
    """Find the table class inside an annotation such as tuple[SectionTable, ...]."""
    if isinstance(annotation, type) and issubclass(annotation, Table):
        return annotation
    inner = [_table_in(part) for part in get_args(annotation)]
    return next((table for table in inner if table), None)
