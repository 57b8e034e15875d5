"""What every command says, and where: answers to standard output, troubles to standard error."""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping
from decimal import Decimal
from typing import TextIO

from kiosk.texts.numbers import MINUS, THIN_SPACE

NO_BREAK = "\u00a0"
_SPACES = str.maketrans({THIN_SPACE: " ", NO_BREAK: " "})
_PLAINER = str.maketrans({MINUS: "-", "…": "..."})


class BadInputError(Exception):
    """The command was given something it cannot use; the message is one line for the person."""


def emit(answer: Mapping[str, object]) -> None:
    """Print one JSON object as one line, at once; masses (Decimal) become plain strings.

    ValueError for a number that JSON does not have (nan, infinity).
    """
    line = json.dumps(answer, default=_mass, allow_nan=False)
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def plain(sentence: str) -> str:
    """A sentence with ordinary spaces only, as a terminal and a program expect them."""
    return sentence.translate(_SPACES)


def tell(text: str) -> None:
    """Print a line for a person, at once."""
    _write(plain(text), sys.stdout)


def complain(text: str) -> None:
    """Print one line about a trouble to standard error."""
    _write(plain(" ".join(text.split("\n"))), sys.stderr)


def _mass(value: object) -> str:
    if isinstance(value, Decimal):
        return f"{value:f}"
    raise TypeError(f"{type(value).__name__} has no place in an answer")


def _write(text: str, stream: TextIO) -> None:
    encoding = stream.encoding or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        # A console that lacks our signs gets its own, and question marks for the rest.
        text = text.translate(_PLAINER).encode(encoding, "replace").decode(encoding)
    stream.write(f"{text}\n")
    stream.flush()
