"""Where records are: a file of one kiosk, or a server."""

from __future__ import annotations

import re
from pathlib import Path

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.server import SCHEMES
from kiosk.records.sqlite_file import usual_file


def file_of(where: str | None) -> Path | None:
    """The file that ``where`` names, the usual one for None; None if it names a server.

    RecordsError for an address that is neither.
    """
    scheme, found, _ = (where or "").partition("://")
    if not found:
        return Path(where).expanduser().absolute() if where else usual_file()
    if scheme.partition("+")[0] not in SCHEMES:
        shown = re.sub("//.*@", "//", where or "")  # a password is not for the screen
        raise RecordsError(Problem.BAD_ADDRESS, where=shown)
    return None
