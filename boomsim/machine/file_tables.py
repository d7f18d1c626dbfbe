"""Tables of a file: their keys, each with its reader and its meaning."""

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, Generic, TypeVar

from boomsim.machine.file_faults import Fault
from boomsim.machine.value_readers import Reader, Reading, Text
from boomsim.units import (
    did_you_mean,
    quoted,
)

T = TypeVar("T")

MISSING = object()
"""Default of a key that must be there."""


@dataclass(frozen=True)
class Key:
    """A key of a table: how its value is read, and what it means.

    Attributes
    ----------
    about : str
        For the message when it is missing and the comment when it is written
    default : object
        Value when it is missing; `MISSING` when it must be there
    """

    reader: Reader
    about: str
    default: object = MISSING


@dataclass(frozen=True, eq=False)
class Table(Reader, Generic[T]):
    """A table with known keys, made into one value of the model.

    Attributes
    ----------
    make : callable
        Takes the keys' values by name; a ValueError it raises becomes a fault
    keys : mapping of str to Key
        Read in this order
    check : callable
        Faults of the finished value, with paths relative to the table
    not_here : mapping of str to str
        Keys that other tables have and this one has not, with the reason
    """

    make: Callable[..., T]
    keys: Mapping[str, Key]
    check: Callable[[T], Iterable[Fault]] = lambda _: ()
    not_here: Mapping[str, str] = field(default_factory=dict)

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Read every key, note every fault, make the value if there are none."""
        if not isinstance(value, dict):
            return reading.fault(path, "This must be a table with keys of its own.")
        before = len(reading.faults)
        found = {k: self._read_key(k, value, path, reading) for k in self.keys}
        for key in [key for key in value if key not in self.keys]:
            reading.fault(_join(path, bare(key)), self._unknown(key))
        needed = [found[k] for k, key in self.keys.items() if key.default is MISSING]
        if len(reading.faults) > before or None in needed:
            return None
        try:
            made = self.make(**found)
        except ValueError as error:
            return reading.fault(path, str(error))
        reading.faults += [Fault(path=_join(path, f.path), says=f.says) for f in self.check(made)]
        return made

    def _read_key(self, name: str, table: dict[str, Any], path: str, reading: Reading) -> Any:
        """Read one key, or take its default."""
        key = self.keys[name]
        if name in table:
            return key.reader.read(table[name], _join(path, name), reading)
        if key.default is MISSING:
            return reading.fault(_join(path, name), f"This is missing: {key.about}.")
        return key.default

    def _unknown(self, key: str) -> str:
        """Say why a key cannot stand here."""
        if key in self.not_here:
            return self.not_here[key]
        hint = did_you_mean(key, self.keys)
        return f"There is no key {quoted(key)} here.{hint or ' Take it out.'}"


def bare(key: str) -> str:
    """Write a key as TOML wants it: in quotation marks unless it is a plain word."""
    if re.fullmatch(r"[A-Za-z0-9_-]{1,60}", key):
        return key
    return json.dumps(key[:40])


def _join(path: str, step: str) -> str:
    """Append a step to a path; a step with its own bracket needs no dot."""
    return f"{path}.{step}" if path and step else path or step


@dataclass(frozen=True)
class Named(Reader):
    """Tables under names of the author's own, kept for other keys to refer to."""

    item: "Table[Any]"
    kind: str
    most: int

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Read each table; a faulty one keeps its name, so that its users are not blamed too."""
        found: dict[str, Any] = {}
        reading.named[self.kind] = found
        if not isinstance(value, dict) or not 1 <= len(value) <= self.most:
            reading.fault(path, f"This must hold 1 to {self.most} tables [{path}.NAME].")
            return found
        for name, entry in value.items():
            place = _join(path, bare(name))
            if Text(longest=40, plain=True).read(name, place, reading):
                found[name] = self.item.read(entry, place, reading)
        return found


@dataclass(frozen=True)
class NameOf(Reader):
    """The name of something read before."""

    kind: str

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Look it up."""
        known = reading.named.get(self.kind, {})
        if isinstance(value, str) and value in known:
            return known[value]
        hint = did_you_mean(value, known) if isinstance(value, str) else ""
        names = ", ".join(f'"{name}"' for name in known)
        given = quoted(value) if isinstance(value, str) else "This"
        return reading.fault(path, f"{given} is not among [{self.kind}]: {names or 'none'}.{hint}")
