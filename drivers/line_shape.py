"""LineShape: where things stand in the lines of one balance, as data that is kept as JSON.

A shape is found by watching a balance (drivers.learning) or written by hand. Masses and units are
those of the line; a shape never says what a load weighs.
"""

from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import (
    BaseModel,
    ConfigDict,
    Field,
    StringConstraints,
    ValidationError,
    field_validator,
    model_validator,
)

from drivers.errors import BadAddress, BadShape
from drivers.transports.port_settings import parse_port_settings
from drivers.units import GRAMS_PER

MOST_DECIMALS = 8
BRACKET = "["
Printed = Annotated[str, StringConstraints(pattern=r"^[!-~]{1,24}$")]


class Terminator(StrEnum):
    """What ends a line."""

    CRLF = "CR LF"
    CR = "CR"
    LF = "LF"
    STX_ETX = "STX ETX"  # the line stands between the two


class Place(StrEnum):
    """Where something stands, seen from the number."""

    BEFORE = "before"
    AFTER = "after"
    NOWHERE = "nowhere"  # a unit that is never sent
    APART = "apart"  # a sign that does not touch its number


MarkPlace = Literal[Place.BEFORE, Place.AFTER]
SignPlace = Literal[Place.BEFORE, Place.AFTER, Place.APART]
UnitPlace = Literal[Place.BEFORE, Place.AFTER, Place.NOWHERE]


class Mark(BaseModel):
    """A word that says whether the balance is at rest; ``[`` stands for brackets in the number.

    ``column`` is counted from the start of the line for a word before the number, from its end
    (below zero) for one behind it; None if the word counts wherever it stands on that side.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    text: Printed
    place: MarkPlace
    column: int | None = Field(default=None, ge=-200, le=200)


class LineShape(BaseModel):
    """The lines of one balance.

    ``lengths`` are the lengths that whole lines have, in characters; empty if they vary freely.
    ``number`` says which of the numbers in a line is the mass: 0 the first, -1 the last.
    ``follows_digits`` if nothing but a comma or the like parts it from a number before it.
    ``point`` is the decimal sign, empty if none is sent; then the last ``decimals`` digits are
    decimals. Otherwise ``decimals`` says how many there must be, None if any.

    ``unit`` is the unit's normal short name: the one that was seen, or with ``unit_place``
    "nowhere" the one that counts. ``unit_lacks_while_moving``: a line without a unit is a moving
    one, and counts in the unit that was last sent. ``words`` are other words that lines hold.

    ``readability`` is the display's step in ``unit``. ``port_settings`` as in 9600-8N1.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    version: Literal[1] = 1
    name: Annotated[str, StringConstraints(min_length=1, max_length=40)]
    terminator: Terminator = Terminator.CRLF
    lengths: Annotated[tuple[Annotated[int, Field(ge=1, le=200)], ...], Field(max_length=6)] = ()
    number: int = Field(default=0, ge=-20, le=20)
    follows_digits: bool = False
    point: Literal[".", ",", ""] = "."
    decimals: int | None = Field(default=None, ge=0, le=MOST_DECIMALS)
    sign: SignPlace = Place.BEFORE
    unit: str = "g"
    unit_place: UnitPlace = Place.AFTER
    unit_lacks_while_moving: bool = False
    stable: Mark | None = None
    moving: Mark | None = None
    words: Annotated[tuple[Printed, ...], Field(max_length=60)] = ()
    over_words: tuple[Printed, ...] = ()
    under_words: tuple[Printed, ...] = ()
    error_words: tuple[Printed, ...] = ()
    readability: Decimal | None = Field(default=None, gt=0, le=1000, decimal_places=MOST_DECIMALS)
    port_settings: str | None = None

    @field_validator("unit")
    @classmethod
    def _known_unit(cls, unit: str) -> str:
        if unit not in GRAMS_PER:
            raise ValueError(f"{unit!r} is no unit of mass; known are {', '.join(GRAMS_PER)}")
        return unit

    @field_validator("port_settings")
    @classmethod
    def _known_settings(cls, text: str | None) -> str | None:
        try:
            parse_port_settings(text)
        except BadAddress as error:
            raise ValueError(str(error)) from error
        return text

    @model_validator(mode="after")
    def _fits_together(self) -> Self:
        if self.stable is not None and self.stable == self.moving:
            raise ValueError("the same mark cannot mean both stable and moving")
        if self.unit_lacks_while_moving and self.unit_place is Place.NOWHERE:
            raise ValueError("a unit that is never sent cannot lack while moving")
        return self


def shape_from_json(text: str | bytes) -> LineShape:
    """The shape that was kept as JSON; BadShape, with one sentence, for anything else."""
    try:
        return LineShape.model_validate_json(text)
    except ValidationError as error:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        why = first["msg"].removeprefix("Value error, ")
        raise BadShape(f"{where}: {why}" if where else why) from error


def shape_to_json(shape: LineShape) -> str:
    """The shape as JSON, one thing a line, for ``shape_from_json``."""
    return shape.model_dump_json(indent=2) + "\n"
