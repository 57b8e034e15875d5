"""The typed numbers of one count key, from options or from a row of a table."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from kiosk.estimating.count_key import CountInput
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.texts.typed import NotANumberError, as_typed, typed_number, typed_whole_number


@dataclass(frozen=True, slots=True, kw_only=True)
class Cells:
    """What was typed, as text; None for what was left out."""

    pieces: str
    samples: tuple[str, ...]
    filled: str
    empty: str | None
    readability: str | None


def count_input(cells: Cells, piece_cv: Decimal | None, *, in_fill: bool) -> CountInput:
    """The numbers; ValueError with one sentence for the first that is none."""
    return CountInput(
        pieces=typed_whole_number(cells.pieces, say("command.name.pieces")),
        samples=tuple(
            typed_number(text, say("command.name.sample", place=place))
            for place, text in enumerate(cells.samples, start=1)
        ),
        filled=typed_number(cells.filled, say("command.name.filled")),
        empty=Decimal(0) if cells.empty is None else _mass(cells.empty, "empty"),
        readability=None
        if cells.readability is None
        else positive(cells.readability, "readability"),
        piece_cv_percent=piece_cv,
        from_container=in_fill,
    )


def positive(text: str, name: str) -> Decimal:
    """A number above zero; NotANumberError otherwise."""
    value = _mass(text, name)
    if value <= 0:
        raise NotANumberError(
            say("typed.not_positive", name=say(f"command.name.{name}"), text=as_typed(text))
        )
    return value


def at_most(limit: int, value: Decimal, text: str, name: str) -> Decimal:
    """``value``, which was typed as ``text``; NotANumberError if it is over ``limit``."""
    if value > limit:
        raise NotANumberError(
            say(
                "typed.too_large",
                name=say(f"command.name.{name}"),
                limit=number(limit),
                text=as_typed(text),
            )
        )
    return value


def scatter(text: str) -> Decimal:
    """The scatter of pieces in per cent, above 0 and up to 100; NotANumberError otherwise."""
    name = say("command.name.piece_cv")
    value = typed_number(text, name)
    if not 0 < value <= 100:
        raise NotANumberError(say("typed.not_percent", name=name, text=as_typed(text)))
    return value


def _mass(text: str, name: str) -> Decimal:
    return typed_number(text, say(f"command.name.{name}"))
