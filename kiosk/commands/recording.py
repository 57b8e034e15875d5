"""Recordings of what a port said (see drivers.recording): reading them, and beginning one."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel, ValidationError

from drivers.packet import Packet
from drivers.recorder import Recorder
from drivers.recording import Header, Line
from kiosk.commands.console import BadInputError, complain
from kiosk.texts import say

M = TypeVar("M", bound=BaseModel)


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """A recording that was read whole."""

    header: Header
    lines: tuple[Line, ...]

    @property
    def packets(self) -> tuple[Packet, ...]:
        """The bytes that came, without the marks between them."""
        return tuple(Packet(at=line.t, data=line.hex) for line in self.lines if line.hex)


@contextmanager
def recording_into(path: Path | None) -> Iterator[Recorder | None]:
    """A recorder into a new file, closed at the end; None without one.

    BadInputError if there can be no such file, or already is.
    """
    if path is None:
        yield None
        return
    with closing(_recorder(path)) as recorder:
        yield recorder


def _recorder(path: Path) -> Recorder:
    try:
        return Recorder(
            path, ended=lambda why: complain(say("recording.ended", file=path, why=why))
        )
    except FileExistsError as error:
        raise BadInputError(say("recording.there", file=path)) from error
    except OSError as error:
        why = error.strerror or error
        raise BadInputError(say("recording.unwritable", file=path, why=why)) from error


def read_recording(path: Path) -> Recording:
    """The recording in a file; BadInputError names the line and what is wrong with it."""
    try:
        text = path.read_text(encoding="utf-8")
    except OSError as error:
        raise BadInputError(
            say("recording.unreadable", file=path, why=error.strerror or error)
        ) from error
    except UnicodeDecodeError as error:
        raise BadInputError(say("recording.no_text", file=path)) from error
    first, *others = text.splitlines() or [""]
    if not first:
        raise BadInputError(say("recording.empty", file=path))
    header = _parsed(Header, path, 1, first)
    if others and not text.endswith("\n") and not _is_whole(others[-1]):
        others.pop()  # whoever wrote it was stopped in the middle
    return Recording(header=header, lines=tuple(_lines(path, others)))


def _lines(path: Path, texts: list[str]) -> Iterator[Line]:
    before = 0.0
    for number, text in enumerate(texts, start=2):
        if not text.strip():
            continue
        line = _parsed(Line, path, number, text)
        if line.t < before:
            raise BadInputError(say("recording.backwards", file=path, line=number))
        before = line.t
        yield line


def _is_whole(text: str) -> bool:
    return text.rstrip().endswith("}")


def _parsed(model: type[M], path: Path, number: int, text: str) -> M:
    try:
        return model.model_validate(json.loads(text, parse_float=Decimal))
    except ValidationError as error:
        first = error.errors()[0]
        why = f"{'.'.join(str(part) for part in first['loc'])}: {first['msg']}"
    except ValueError:
        why = say("recording.not_json")
    raise BadInputError(say("recording.bad_line", file=path, line=number, why=why))
