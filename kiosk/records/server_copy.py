"""The records of a server as a file, at one moment of them, while kiosks go on writing."""

from __future__ import annotations

from itertools import islice
from pathlib import Path
from typing import Any

from sqlalchemy import column, insert, table

from kiosk.records.errors import in_plain_words
from kiosk.records.looking import looking, stored
from kiosk.records.models import Base
from kiosk.records.sqlite_file import open_file

_AT_ONCE = 1000  # rows


def copy_to_file(where: str, path: Path) -> None:
    """Make the records file ``path`` of what is kept on the server ``where``, cell by cell."""
    with looking(where) as source:
        engine = open_file(path)
        try:
            with in_plain_words(str(path)), engine.begin() as copy:
                for one in Base.metadata.sorted_tables:
                    names = [found.name for found in one.columns]
                    untyped: Any = table(one.name, *map(column, names))
                    rows = stored(source, one, names)
                    while some := [dict(zip(names, row, strict=True))
                                   for row in islice(rows, _AT_ONCE)]:  # fmt: skip
                        copy.execute(insert(untyped), some)
        finally:
            engine.dispose()
