"""What a balance answers in SMA SCP-0499, told apart and cut at its byte positions.

A standard reply has 18 bytes between line feed and carriage return::

    s r n m f wwwwwwwwww uuu

``s`` status, ``r`` range, ``n`` gross or net, ``m`` motion, ``f`` reserved, ten characters of
weight, three of unit. Letters mean different things in different places (``U``, ``T``), so only
the position decides. Besides there are ``?`` (not understood), ``!`` (badly received),
``xxx:text`` (a line about the balance) and four characters of diagnostics.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

_STANDARD_LENGTH = 18
_INFORMATION = re.compile(rb"([A-Z][A-Z0-9 _]{2}):([ -~]*)")
_DIAGNOSTICS = re.compile(rb"[R ][E ][C ][ -~]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """A standard reply, each field as it stands; single characters but for the last two."""

    status: str
    scale_range: str
    kind: str
    motion: str
    digits: bytes
    unit: str


@dataclass(frozen=True, slots=True)
class Information:
    """One line about the balance; ``tag`` and ``text`` without their padding."""

    tag: str
    text: str


@dataclass(frozen=True, slots=True)
class Diagnostics:
    """The result of a self test; each True is a fault."""

    memory: bool
    settings_memory: bool
    calibration: bool
    other: bool


class NotUnderstood:
    """``?``: the balance does not know the request."""


class SayAgain:
    """``!``: the request reached the balance damaged."""


Reply = Weight | Information | Diagnostics | NotUnderstood | SayAgain


def decode(body: bytes) -> Reply | None:
    """The reply in a frame's body; None for what is no reply of this format."""
    if body == b"?":
        return NotUnderstood()
    if body == b"!":
        return SayAgain()
    # Lines with a tag first: one may happen to have 18 bytes, while a standard reply never has a
    # colon in its fourth place.
    if line := _INFORMATION.fullmatch(body):
        return Information(trimmed(line[1].decode("ascii")), line[2].decode("ascii").strip())
    if len(body) == _STANDARD_LENGTH:
        return _weight(body)
    if _DIAGNOSTICS.fullmatch(body):
        return Diagnostics(*(place != " " for place in body.decode("ascii")))
    return None


def trimmed(text: str) -> str:
    """``text`` without padding: some balances send the underscore that print shows for a space."""
    return text.strip(" _")


def _weight(body: bytes) -> Weight:
    text = body.decode("latin-1")
    return Weight(
        status=text[0],
        scale_range=text[1],
        kind=text[2],
        motion=text[3],
        digits=body[5:15],
        unit=text[15:18],
    )
