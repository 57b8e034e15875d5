"""A table of jars as CSV: jar, pieces, readability, empty, filled, sample_1, sample_2, ..."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from kiosk.commands.console import BadInputError
from kiosk.commands.count_cells import Cells
from kiosk.texts import say

NEEDED = ("jar", "pieces", "filled", "sample_1")
OPTIONAL = ("readability", "empty")
_SAMPLE = re.compile(r"sample_[1-9][0-9]*")


@dataclass(frozen=True, slots=True)
class Row:
    """One row; ``number`` counts from 1, cells too many are kept apart."""

    number: int
    by_column: dict[str, str]
    too_many: bool

    @property
    def jar(self) -> str:
        """The name of the jar as it stands there."""
        return self.by_column.get("jar", "")

    def cells(self, *, default_readability: str | None) -> Cells:
        """The typed numbers; blank cells are left out where they may be. ValueError if bad."""
        if self.too_many:
            raise ValueError(say("table.too_many_cells"))
        if not self.jar:
            raise ValueError(say("table.no_jar", row=self.number))
        samples = sorted(
            (name for name in self.by_column if _SAMPLE.fullmatch(name)),
            key=lambda name: int(name.removeprefix("sample_")),
        )
        return Cells(
            pieces=self.by_column.get("pieces", ""),
            samples=tuple(self.by_column[name] for name in samples if self.by_column[name]),
            filled=self.by_column.get("filled", ""),
            empty=self.by_column.get("empty") or None,
            readability=self.by_column.get("readability") or default_readability,
        )


def read_table(name: str) -> Iterator[Row]:
    """The rows that are not blank; BadInputError if the file or its header cannot be used."""
    lines = _lines(name)
    if not lines:
        raise BadInputError(say("table.no_header", file=name))
    header = [cell.strip() for cell in lines[0]]
    _check_header(name, header)
    for row, cells in enumerate(lines[1:], start=1):
        texts = [cell.strip() for cell in cells]
        if any(texts):
            by_column = dict(zip(header, texts, strict=False))
            by_column.pop("", None)
            yield Row(row, by_column, too_many=any(texts[len(header) :]))


def _lines(name: str) -> list[list[str]]:
    try:
        with Path(name).open(encoding="utf-8-sig", newline="") as file:
            return list(csv.reader(file, strict=True))
    except UnicodeDecodeError as trouble:
        raise BadInputError(say("table.not_text", file=name)) from trouble
    except (OSError, ValueError) as trouble:
        why = getattr(trouble, "strerror", None) or str(trouble)
        raise BadInputError(say("table.unreadable", file=name, why=why)) from trouble
    except csv.Error as trouble:
        raise BadInputError(say("table.unreadable", file=name, why=trouble)) from trouble


def _check_header(name: str, header: list[str]) -> None:
    named = [column for column in header if column]
    missing = [column for column in NEEDED if column not in named]
    unknown = [
        column
        for column in named
        if column not in (*NEEDED, *OPTIONAL) and not _SAMPLE.fullmatch(column)
    ]
    twice = sorted({column for column in named if named.count(column) > 1})
    for key, columns in (("missing", missing), ("unknown", unknown), ("twice", twice)):
        if columns:
            raise BadInputError(say(f"table.{key}", file=name, columns=", ".join(columns)))
