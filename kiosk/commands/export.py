"""``gramstand export``: every table of the records as a CSV file."""

from __future__ import annotations

import argparse
from pathlib import Path

from kiosk.commands.console import emit, tell
from kiosk.commands.records_place import add_place, refused
from kiosk.records.errors import RecordsError
from kiosk.texts import plural, say

HELP: str = say("command.export.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("folder", metavar="FOLDER", type=Path, help=say("command.export.folder"))
    add_place(parser)


def run(options: argparse.Namespace) -> int:
    """Write the files and name each when it is whole; 0, or 1 with a sentence."""
    from kiosk.records.exchange import export

    try:
        for done in export(options.records, options.folder):
            if options.json:
                emit({"table": done.table, "file": str(done.file), "rows": done.rows})
            else:
                rows = plural("command.export.rows", done.rows)
                tell(say("command.export.table", table=done.table, rows=rows, file=done.file))
    except RecordsError as error:
        return refused(error, as_json=options.json)
    return 0
