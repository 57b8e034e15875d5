"""``gramstand backup``: a consistent copy of the records file, while a kiosk may be writing."""

from __future__ import annotations

import argparse
from pathlib import Path

from kiosk.commands.console import emit, tell
from kiosk.commands.records_place import add_place, refused
from kiosk.records.errors import RecordsError
from kiosk.texts import say

HELP: str = say("command.backup.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("file", metavar="FILE", type=Path, help=say("command.backup.file"))
    add_place(parser)


def run(options: argparse.Namespace) -> int:
    """Make the copy; 0, or 1 with a sentence."""
    from kiosk.records.backup import backup

    try:
        size = backup(options.records, options.file)
    except RecordsError as error:
        return refused(error, as_json=options.json)
    if options.json:
        emit({"backup": str(options.file), "bytes": size})
    else:
        tell(say("command.backup.done", file=options.file))
    return 0
