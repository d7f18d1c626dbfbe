"""Readers of values in a file: each checks one kind of value, and can write it back.

A hand-written set instead of a validation library: the library cost a third of a second of
imports in every command, and its messages had to be translated one by one all the same.
Faults are collected, not raised, so that a file's author sees all of them at once.
"""

import re
from abc import ABC, abstractmethod
from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property
from typing import Any

from boomsim.machine.file_faults import Fault
from boomsim.units import (
    UnitError,
    did_you_mean,
    display,
    parse,
    quantity_named,
    quoted,
    show,
)


@dataclass(slots=True)
class Reading:
    """What one pass over a file has found so far.

    Attributes
    ----------
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
            return reading.fault(path, "This must be text. Write it in quotation marks.")
        if len(value) > self.longest:
            says = f"This text has {len(value)} characters. Write {self.longest} at most."
            return reading.fault(path, says)
        if not (value.strip() or self.lines):
            return reading.fault(path, "This text is empty. Write at least a word.")
        bad = re.search(self._forbidden, value)
        if bad:
            return reading.fault(
                path, f"The character {bad.group()!r} cannot stand here. Take it out."
            )
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
        given = f"{quoted(value)} is none. " if isinstance(value, int | float | str) else ""
        return reading.fault(
            path, f"{given}This must be a whole number from {self.least} to {self.most}."
        )


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


def _plain_unit(unit: str) -> str:
    """Write a unit as people type it: "kg/m3" for "kg/m^3", "N m" for "N*m"."""
    return unit.replace("*", " ").replace("^", "")
