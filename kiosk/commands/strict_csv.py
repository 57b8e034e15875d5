"""Tables as CSV with a header that must be just so; every complaint names the file and the line."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from kiosk.commands.console import BadInputError
from kiosk.texts import say
from kiosk.texts.typed import as_typed

_SPACES = " \t"


@dataclass(frozen=True, slots=True)
class Row:
    """The cells of one row without spaces around them, and the line on which it begins."""

    file: Path
    line: int
    cells: tuple[str, ...]

    def wrong(self, why: object) -> BadInputError:
        """The complaint that this row cannot be read."""
        return BadInputError(say("strict.line", file=self.file, line=self.line, why=why))


def read_rows(file: Path, columns: Sequence[str]) -> Iterator[Row]:
    """The rows under the header, each with a cell for every column; blank lines do not matter.

    BadInputError for a file that is not there, is no CSV in UTF-8, or has another header.
    """
    found = _all_rows(file)
    header = next(found, None)
    if header is None:
        raise BadInputError(say("strict.empty", file=file, columns=",".join(columns)))
    if header.cells != tuple(columns):
        raise header.wrong(
            say(
                "strict.header",
                columns=",".join(columns),
                found=as_typed(",".join(header.cells)),
            )
        )
    for row in found:
        if len(row.cells) != len(columns):
            raise row.wrong(say("strict.cells", count=len(row.cells), wanted=len(columns)))
        yield row


def _all_rows(file: Path) -> Iterator[Row]:
    try:
        with file.open(encoding="utf-8-sig", newline="") as lines:
            yield from _parsed(file, lines)
    except FileNotFoundError as error:
        raise BadInputError(say("strict.missing", file=file)) from error
    except UnicodeDecodeError as error:
        raise BadInputError(say("strict.not_text", file=file)) from error
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise BadInputError(say("strict.unreadable", file=file, why=why)) from error


def _parsed(file: Path, lines: Iterator[str]) -> Iterator[Row]:
    reader = csv.reader(lines, strict=True)
    width = 0
    while True:
        begin = reader.line_num + 1
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            raise Row(file, begin, ()).wrong(say("strict.no_csv", why=error)) from error
        texts = [cell.strip(_SPACES) for cell in cells]
        if any(texts):
            width = width or _without_blank_end(texts)
            del texts[max(width, _without_blank_end(texts)) :]
            yield Row(file, begin, tuple(texts))


def _without_blank_end(texts: Sequence[str]) -> int:
    """How many cells there are up to the last one that says something."""
    return max(place for place, text in enumerate(texts, start=1) if text)
