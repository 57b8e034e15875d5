"""Recordings: what a port said, line by line with its time, as JSON Lines."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Annotated, Literal, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationError

from drivers.packet import Packet
from kiosk.commands.console import BadInputError
from kiosk.texts import say

M = TypeVar("M", bound=BaseModel)


def _from_hex(text: object) -> object:
    return bytes.fromhex(text) if isinstance(text, str) else text


class Header(BaseModel):
    """The first line: what was recorded. ``packets``: each line holds one whole report."""

    model_config = ConfigDict(frozen=True)

    recording: Literal[1]
    dialect: str
    readability_g: Decimal | None = Field(default=None, gt=0)
    synthetic: bool = False
    note: str = ""
    packets: bool = False


class _Line(BaseModel):
    t: float = Field(ge=0, allow_inf_nan=False)
    hex: Annotated[bytes, BeforeValidator(_from_hex)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """A recording that was read whole."""

    header: Header
    packets: tuple[Packet, ...]


def read_recording(path: Path) -> Recording:
    """The recording in a file; BadInputError names the line and what is wrong with it."""
    try:
        lines = path.read_text(encoding="utf-8").splitlines()
    except OSError as error:
        raise BadInputError(
            say("recording.unreadable", file=path, why=error.strerror or error)
        ) from error
    except UnicodeDecodeError as error:
        raise BadInputError(say("recording.no_text", file=path)) from error
    if not lines:
        raise BadInputError(say("recording.empty", file=path))
    header = _parsed(Header, path, 1, lines[0])
    return Recording(header=header, packets=tuple(_packets(path, lines[1:])))


def _packets(path: Path, lines: list[str]) -> Iterator[Packet]:
    before = 0.0
    for number, text in enumerate(lines, start=2):
        if not text.strip():
            continue
        line = _parsed(_Line, path, number, text)
        if line.t < before:
            raise BadInputError(say("recording.backwards", file=path, line=number))
        before = line.t
        yield Packet(at=line.t, data=line.hex)


def _parsed(model: type[M], path: Path, number: int, text: str) -> M:
    try:
        return model.model_validate(json.loads(text, parse_float=Decimal))
    except ValidationError as error:
        first = error.errors()[0]
        why = f"{'.'.join(str(part) for part in first['loc'])}: {first['msg']}"
    except ValueError as error:
        why = str(error)
    raise BadInputError(say("recording.bad_line", file=path, line=number, why=why))
