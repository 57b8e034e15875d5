"""What a line tells, before it becomes a Reading; and the checks that every number passes."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from decimal import Decimal

from drivers.dialects.line_words import Obstacle, unusable
from drivers.line_text import Number, is_grouped, lone_signs
from drivers.reading import Basis, Fault, Range, Reading
from drivers.units import to_grams


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """The parts of a line as far as they can be read; ``obstacle`` if they give no mass."""

    value: Decimal | None = None
    unit: str | None = None
    stable: bool | None = None
    basis: Basis | None = None
    obstacle: Obstacle | None = None

    def reading(self, *, raw: bytes, at: float, balance: str) -> Reading:
        """The reading that this line stands for."""
        grams = None
        if self.obstacle is None and self.value is not None and self.unit is not None:
            grams = to_grams(self.value, self.unit)
        return Reading(
            value=self.value,
            unit=self.unit,
            grams=grams,
            stable=self.stable,
            basis=self.basis,
            range=self._range(),
            reason=None if self.obstacle is None else self.obstacle.reason,
            fault=None if self.obstacle is None else self.obstacle.fault,
            raw=raw,
            at=at,
            balance=balance,
        )

    def _range(self) -> Range:
        if self.obstacle is not None:
            return self.obstacle.range
        return Range.UNDER if self.value is not None and self.value < 0 else Range.IN_RANGE


NO_UNIT = unusable("the number has no unit", Fault.UNIT)
UNREADABLE_NUMBER = unusable("the number cannot be read")
UNCLEAR_SIGN = unusable("it cannot be told whether the number has a minus sign")
SEVERAL_NUMBERS = unusable("there are several numbers in the line")


def unknown_unit(word: str) -> Obstacle:
    """A word stands where the unit should, and is none."""
    return unusable(f"unknown unit {word!r}", Fault.UNIT)


def bad_number(
    text: str,
    number: Number,
    numbers: Sequence[Number],
    *,
    harmless: Collection[str] = (),
    in_a_row: bool = False,
) -> Obstacle | None:
    """What is wrong with a number and the sign before it.

    ``harmless`` are words of the line that a dash may be one of, ``in_a_row`` says that numbers
    may follow each other.
    """
    if number.value is None or (not in_a_row and is_grouped(text, number)):
        return UNREADABLE_NUMBER
    if "-" not in harmless and any(text[at] == "-" for at in lone_signs(text, numbers)):
        return UNCLEAR_SIGN
    return None
