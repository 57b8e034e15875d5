"""Numbers as people type them: ASCII digits, one sign, one point, and nothing clever.

``Decimal`` itself would take ``1_0``, ``1e9``, ``nan`` and the digits of other scripts.
"""

from __future__ import annotations

import re
from decimal import Decimal

from kiosk.texts import say

MOST_CHARACTERS = 40
_SHOWN_CHARACTERS = 24
_PLAIN = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)")


class NotANumberError(ValueError):
    """What was typed is no plain number; the message is one sentence for the person."""


def typed_number(text: str, name: str) -> Decimal:
    """The number that was typed, every digit kept; spaces around it do not matter.

    ``name`` begins the sentence of a NotANumberError: ``The estimate``.
    """
    bare = text.strip(" \t")
    if not bare:
        raise NotANumberError(say("typed.blank", name=name))
    if len(bare) > MOST_CHARACTERS:
        raise NotANumberError(say("typed.too_long", name=name, limit=MOST_CHARACTERS))
    if not _PLAIN.fullmatch(bare):
        raise NotANumberError(say("typed.not_a_number", name=name, text=as_typed(bare)))
    return Decimal(bare)


def typed_whole_number(text: str, name: str) -> int:
    """A whole number above zero; NotANumberError otherwise."""
    number = typed_number(text, name)
    if number <= 0 or number != int(number):
        raise NotANumberError(say("typed.not_whole", name=name, text=as_typed(text)))
    return int(number)


def as_typed(text: str) -> str:
    """What was typed, in quotes, on one line and not too long, for a sentence about it."""
    short = text if len(text) <= _SHOWN_CHARACTERS else f"{text[:_SHOWN_CHARACTERS]}…"
    return repr(short)
