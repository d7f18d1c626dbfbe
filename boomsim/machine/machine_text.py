"""A machine back to a TOML file that loads to an equal machine, with a comment at every key."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from boomsim.machine import file_schema as schema
from boomsim.machine.file_tables import Key, Named, NameOf, Table, bare
from boomsim.machine.model import Machine, Material, Section
from boomsim.machine.shapes.shape_table import SHAPES, as_given
from boomsim.machine.value_readers import Reader, Several

HEADING = """\
# An INVENTED machine. No such machine exists; it teaches, it plans no lift.
#
# Every length, mass, force and angle is text with its unit: "8.20 m", "41.8 ft", "5 t", "11000 lb".
# Write a decimal point, no comma. Shares may be "45 %" or 0.45.
"""

INLINE = (*(shape.table for shape in SHAPES.values()), schema.PAD, schema.LOCK)
"""Tables written in braces on one line."""


def machine_to_toml(machine: Machine) -> str:
    """Write a machine as a file for :func:`boomsim.machine.machine_files.load_machine`.

    Returns
    -------
    str
        TOML; every figure reads back as exactly the same number
    """
    writer = _Writer(materials=_material_names(machine))
    return HEADING + "\n" + "\n".join(writer.table(schema.MACHINE, machine, header="")) + "\n"


@dataclass(frozen=True, slots=True)
class _Writer:
    """Names of the materials, and the comments that have been written already."""

    materials: Mapping[Material, str]
    told: set[tuple[int, str]] = field(default_factory=set)

    def table(self, table: Table[Any], value: object, *, header: str) -> Iterator[str]:
        """Write a table: first its own lines, then the tables in it."""
        rest = []
        values = self.values(table, value)
        for name, key in table.keys.items():
            if name in values and _is_block(key.reader):
                rest.append((name, key.reader, values[name]))
            elif name in values:
                yield self.line(table, name, key, values[name])
        for name, reader, inner in rest:
            yield from self.block(reader, inner, header=f"{header}.{name}" if header else name)

    def block(self, reader: Reader, value: Any, *, header: str) -> Iterator[str]:
        """Write the table or tables under one key, each below its header."""
        if isinstance(reader, Named):
            for name, inner in value.items():
                yield from self.block(reader.item, inner, header=f"{header}.{bare(name)}")
        elif isinstance(reader, Table):
            yield from ("", f"[{header}]")
            yield from self.table(reader, value, header=header)
        elif isinstance(reader, Several):
            for number, inner in enumerate(value):
                item = reader.reader_at(number)
                if isinstance(item, Table):
                    yield from ("", f"[[{header}]]")
                    yield from self.table(item, inner, header=header)

    def line(self, table: Table[Any], name: str, key: Key, value: Any) -> str:
        """Write one key, with its meaning the first time it comes."""
        text = f"{name} = {self.text(key.reader, value)}"
        told = self.tell(table, name)
        if isinstance(key.reader, Table):
            inner = {k: self.tell(key.reader, k) for k in self.values(key.reader, value)}
            told += [f"  {k}: {about}" for k, found in inner.items() for about in found]
        if len(told) == 1 and "\n" not in text and len(text) <= 40:
            return f"{text:<26}  # {told[0]}"
        return "\n".join([f"# {about}" for about in told] + [text])

    def tell(self, table: Table[Any], name: str) -> list[str]:
        """Give a key's meaning the first time it is asked for, then nothing."""
        if (id(table), name) in self.told:
            return []
        self.told.add((id(table), name))
        return [table.keys[name].about]

    def text(self, reader: Reader, value: Any) -> str:
        """Write one value."""
        if isinstance(reader, Table):
            values, keys = self.values(reader, value), reader.keys
            pairs = (f"{k} = {self.text(keys[k].reader, v)}" for k, v in values.items())
            return f"{{ {', '.join(pairs)} }}"
        return f'"{value}"' if isinstance(reader, NameOf) else reader.write(value)

    def values(self, table: Table[Any], value: Any) -> dict[str, Any]:
        """Values of a table's keys, from the part of the model that it makes."""
        if isinstance(value, Mapping):
            return dict(value)
        found = {name: getattr(value, name) for name in table.keys if hasattr(value, name)}
        if isinstance(value, Section):
            found |= {"material": self.materials[value.material], **as_given(value.profile)}
        if isinstance(value, Machine):
            found["materials"] = {name: material for material, name in self.materials.items()}
        return {name: inner for name, inner in found.items() if inner is not None}


def _is_block(reader: Reader) -> bool:
    """Whether a key is written under a header of its own."""
    if isinstance(reader, Table):
        return reader not in INLINE
    return isinstance(reader, Named) or (
        isinstance(reader, Several) and isinstance(reader.item, Table)
    )


def _material_names(machine: Machine) -> dict[Material, str]:
    """Name the materials by their yield stress, with a letter where two would be the same."""
    names: dict[Material, str] = {}
    for section in machine.boom.sections:
        name = f"yields_at_{section.material.yield_stress / 1e6:.0f}"
        if section.material not in names:
            names[section.material] = name + "abcdefghij"[len(names)] * (name in names.values())
    return names
