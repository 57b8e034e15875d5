"""What stands in a line of text: numbers, words and signs, found by strict patterns.

Square brackets (around a digit that is not verified yet) are taken out before anything is looked
for; ``bare`` says whether there were any.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from types import MappingProxyType

from drivers.units import GRAMS_PER

MOST_DIGITS = 15  # no balance has more; more would not convert to grams without rounding
_SIGN = r"(?:(?<![0-9+\-])(?P<sign>[+\-]) *)?"
# Checked before Decimal sees it: Decimal would also take 1_0, 1e3 and the digits of other scripts.
_NUMBERS = MappingProxyType(
    {
        ".": re.compile(_SIGN + r"(?P<digits>[0-9]+(?:\.[0-9]*)?|(?<![0-9])\.[0-9]+)"),
        ",": re.compile(_SIGN + r"(?P<digits>[0-9]+(?:,[0-9]+)?)"),
        "": re.compile(_SIGN + r"(?P<digits>[0-9]+)"),
    }
)
_WORD = re.compile(r"[A-Za-z0-9]+|[^A-Za-z0-9 ]")
_GROUPED = re.compile(r"[0-9][ .,'_:/]$")
_SHORT_FOR = MappingProxyType(
    {name.upper(): name for name in GRAMS_PER if name != "t"} | {"LBS": "lb", "GRAM": "g"}
)
_UNIT_AND_MORE = re.compile(r"(mg|kg|g|ct|oz|lb)([A-Z]{1,2})")


@dataclass(frozen=True, slots=True)
class Number:
    """A number in a line, from ``start`` (its sign, if it has one) up to ``end``."""

    start: int
    end: int
    sign: str
    digits: str

    @property
    def decimals(self) -> int:
        """How many digits stand behind the point."""
        return len(self.digits.replace(",", ".").partition(".")[2])

    @property
    def value(self) -> Decimal | None:
        """The number with every digit; None if it has more digits than a balance can show."""
        if len(self.digits) > MOST_DIGITS:
            return None
        return Decimal(self.sign + self.digits.replace(",", "."))


@dataclass(frozen=True, slots=True)
class Word:
    """Letters and digits without a gap, or one other character; ``column`` in its text."""

    text: str
    column: int


def bare(text: str) -> tuple[str, bool]:
    """The text without square brackets, and whether it had any."""
    without = text.replace("[", "").replace("]", "")
    return without, without != text


def numbers_in(text: str, point: str) -> list[Number]:
    """The numbers in a line, from the left; ``point`` is the sign in front of the decimals.

    An empty ``point`` says that none is sent.
    """
    return [
        Number(found.start(), found.end(), found["sign"] or "", found["digits"])
        for found in _NUMBERS[point].finditer(text)
    ]


def point_of(text: str) -> str:
    """The decimal sign by the rules for a line that nobody knows.

    A comma is one only if there is no point and a single comma stands between digits.
    """
    between_digits = re.findall(r"(?<=[0-9]),(?=[0-9])", text)
    return "," if "." not in text and len(between_digits) == 1 else "."


def words_in(text: str) -> list[Word]:
    """Words and single other characters, in order."""
    return [Word(found[0], found.start()) for found in _WORD.finditer(text)]


def after_number(text: str) -> list[Word]:
    """Words that follow a number; a mark that is glued to the unit becomes a word of its own."""
    words = words_in(text)
    if not words or words[0].column or unit_named(words[0].text):
        return words
    parts = _UNIT_AND_MORE.fullmatch(words[0].text)
    if parts is None:
        return words
    return [Word(parts[1], 0), Word(parts[2], len(parts[1])), *words[1:]]


def unit_named(word: str) -> str | None:
    """The normal short name of a unit; capitals do not matter, save that T alone is no tonne.

    Balances put a T beside a tare.
    """
    return word if word == "t" else _SHORT_FOR.get(word.upper())


def lone_signs(text: str, numbers: Sequence[Number]) -> Iterator[int]:
    """Where a plus or a minus stands that belongs to no number and joins no two words."""
    taken = {number.start for number in numbers if number.sign}
    for at, char in enumerate(text):
        if char in "+-" and at not in taken and not _joins(text, at):
            yield at


def is_grouped(text: str, number: Number) -> bool:
    """True if the digits may be the end of a longer number, as in 1,234.5 or 1 234.5."""
    return not number.sign and bool(_GROUPED.search(text[: number.start]))


def _joins(text: str, at: int) -> bool:
    return text[at - 1 : at].isalnum() and text[at + 1 : at + 2].isalnum()
