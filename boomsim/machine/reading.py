"""Readers of values in a file: each checks one kind of value, and can write it back.

A hand-written set instead of a validation library: the library cost a third of a second of
imports in every command, and its messages had to be translated one by one all the same.
Faults are collected, not raised, so that a file's author sees all of them at once.
"""

import json
import re
from abc import ABC, abstractmethod
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property
from typing import Any, Generic, TypeVar

from boomsim.machine.faults import Fault
from boomsim.units import (
    UnitError,
    did_you_mean,
    display,
    parse,
    quantity_named,
    quoted,
    show,
)

T = TypeVar("T")

MISSING = object()
"""Default of a key that must be there."""


@dataclass(slots=True)
class Reading:
    """What one pass over a file has found so far.

    Attributes
    ----------
    faults : list of Fault
    named : dict
        Values by name that later keys may refer to, such as materials
    """

    faults: list[Fault] = field(default_factory=list)
    named: dict[str, Any] = field(default_factory=dict)

    def fault(self, path: str, says: str) -> Any:
        """Note a fault and read on; returns None, the value of whatever has a fault."""
        self.faults.append(Fault(path=path, says=says))
        return None


class Reader(ABC):
    """Reads one kind of value; None stands for a value with a fault."""

    @abstractmethod
    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Check a value as TOML gave it and turn it into what the model holds."""

    def write(self, value: Any) -> str:
        """Write a value of the model as TOML."""
        return str(value)


@dataclass(frozen=True)
class Figure(Reader):
    """A number with its unit, within a plausible range.

    Attributes
    ----------
    quantity : str
        A key of :data:`boomsim.units.QUANTITIES`
    least, most : str
        Plausible range, with units
    zero : bool
        Whether zero is allowed although below `least`
    """

    quantity: str
    least: str
    most: str
    zero: bool = False

    @cached_property
    def ends(self) -> tuple[float, float]:
        """The plausible range [SI unit of the quantity]."""
        return parse(self.least, self.quantity), parse(self.most, self.quantity)

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Turn "8.20 m" into 8.2."""
        try:
            number = parse(value, self.quantity)
        except UnitError as error:
            return reading.fault(path, str(error))
        low, high = self.ends
        if (self.zero and number == 0) or low <= number <= high:
            return number
        return reading.fault(path, self._out_of_range(value, number))

    def write(self, value: float) -> str:
        """Write the shortest figure that reads back as exactly this number."""
        shown = display(self.quantity, like=value)
        for digits in range(1, 18):
            number = format(Decimal(f"{value / shown.factor:.{digits}g}"), "f")
            text = f"{number} {_plain_unit(shown.unit)}".strip()
            if parse(text, self.quantity) == value:
                return text if not shown.unit else f'"{text}"'
        unit = _plain_unit(quantity_named(self.quantity).unit)
        return f'"{value!r} {unit}"' if unit else repr(value)

    def _out_of_range(self, value: object, number: float) -> str:
        """Say what was given and what is plausible."""
        given = quoted(value) if isinstance(value, str) else str(value)
        if number <= 0 < self.ends[0]:
            return f"{given} must be more than zero: give {self.least} to {self.most}."
        read = show(number, self.quantity)
        same = "" if given.strip('"') == read else f" is {read}, which"
        return f"{given}{same} is not plausible here: give {self.least} to {self.most}."


@dataclass(frozen=True)
class Text(Reader):
    """Text of bounded length without control characters."""

    longest: int
    lines: bool = False
    plain: bool = False

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Check the characters."""
        if not isinstance(value, str):
            return reading.fault(path, "This must be text in quotation marks.")
        if len(value) > self.longest:
            return reading.fault(path, f"This text is longer than {self.longest} characters.")
        if not (value.strip() or self.lines):
            return reading.fault(path, "This text is empty. Write at least a word.")
        bad = re.search(self._forbidden, value)
        if bad:
            return reading.fault(path, f"The character {bad.group()!r} cannot stand here.")
        return value

    @property
    def _forbidden(self) -> str:
        """Pattern of what cannot stand in this text."""
        if self.plain:
            return r"[^A-Za-z0-9 _.,'()+%/-]"
        return r"[\x00-\x09\x0b-\x1f\x7f-\x9f]" if self.lines else r"[\x00-\x1f\x7f-\x9f]"

    def write(self, value: str) -> str:
        """Write with the two marks escaped that TOML needs."""
        text = value.replace("\\", "\\\\").replace('"', '\\"')
        return f'"""\n{text}"""' if "\n" in value else f'"{text}"'


@dataclass(frozen=True)
class Choice(Reader):
    """One of a few words."""

    words: Collection[str]

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Check that the word is known."""
        if isinstance(value, str) and value in self.words:
            return value
        given = quoted(value) if isinstance(value, str) else "This"
        hint = did_you_mean(value, self.words) if isinstance(value, str) else ""
        known = ", ".join(f'"{word}"' for word in self.words)
        return reading.fault(path, f"{given} is not one of {known}.{hint}")

    def write(self, value: str) -> str:
        """Write in quotation marks."""
        return f'"{value}"'


@dataclass(frozen=True)
class Whole(Reader):
    """A whole number within bounds."""

    least: int
    most: int

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Check type and bounds."""
        if type(value) is int and self.least <= value <= self.most:  # a bool is no number here
            return value
        return reading.fault(path, f"This must be a whole number from {self.least} to {self.most}.")


@dataclass(frozen=True)
class Several(Reader):
    """A list of values of one kind."""

    item: Reader
    least: int
    most: int

    def read(self, value: object, path: str, reading: Reading) -> Any:
        """Check the number of entries, then each."""
        if not isinstance(value, list):
            return reading.fault(path, "This must be a list, or a table in double brackets.")
        if not self.least <= len(value) <= self.most:
            counts = f"{self.least}" if self.least == self.most else f"{self.least} to {self.most}"
            return reading.fault(path, f"This has {len(value)} entries and needs {counts}.")
        before = len(reading.faults)
        found = tuple(
            self.reader_at(i).read(entry, f"{path}[{i}]", reading) for i, entry in enumerate(value)
        )
        return found if len(reading.faults) == before and None not in found else None

    def reader_at(self, number: int) -> Reader:
        """Reader of one entry; a list may treat its first differently."""
        return self.item

    def write(self, value: Iterable[Any]) -> str:
        """Write on one line, or on a line for each entry."""
        items = [self.item.write(v) for v in value]
        line = f"[{', '.join(items)}]"
        return line if len(line) <= 72 else "[\n" + "".join(f"  {i},\n" for i in items) + "]"


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


@dataclass(frozen=True)
class Key:
    """A key of a table: how its value is read, and what it means.

    Attributes
    ----------
    reader : Reader
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


def _plain_unit(unit: str) -> str:
    """Write a unit as people type it: "kg/m3" for "kg/m^3", "N m" for "N*m"."""
    return unit.replace("*", " ").replace("^", "")


def bare(key: str) -> str:
    """Write a key as TOML wants it: in quotation marks unless it is a plain word."""
    if re.fullmatch(r"[A-Za-z0-9_-]{1,60}", key):
        return key
    return json.dumps(key[:40])


def _join(path: str, step: str) -> str:
    """Append a step to a path; a step with its own bracket needs no dot."""
    return f"{path}.{step}" if path and step else path or step
