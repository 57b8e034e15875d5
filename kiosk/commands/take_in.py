"""``gramstand import``: takes in the tables that another kiosk exported."""

from __future__ import annotations

import argparse
from pathlib import Path

from kiosk.commands.console import emit, tell
from kiosk.commands.records_place import add_place, refused
from kiosk.records.errors import RecordsError
from kiosk.rounds.contents import readable
from kiosk.texts import plural, say

HELP: str = say("command.import.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("folder", metavar="FOLDER", type=Path, help=say("command.import.folder"))
    add_place(parser)


def run(options: argparse.Namespace) -> int:
    """Say of each table what is new and what does not fit; 0, 1 if something does not fit.

    What does not fit is not taken in, everything else is.
    """
    from kiosk.records.store import Store

    conflicts = 0
    try:
        store = Store(options.records)
        try:
            found = store.take_in(options.folder, readable)
        finally:
            store.close()
    except RecordsError as error:
        return refused(error, as_json=options.json)
    for one in found:
        conflicts += len(one.conflicts)
        ids = [conflict.id for conflict in one.conflicts]
        if options.json:
            emit({"table": one.table, "new": one.new, "known": one.known, "conflicts": ids})
        elif one.new or ids:
            new = plural("command.import.new", one.new)
            differ = plural("command.import.conflicts", len(ids)) if ids else ""
            tell(say("command.import.table", table=one.table, new=new, differ=differ).rstrip())
    if not options.json:
        tell(plural("command.import.done", sum(one.new for one in found)))
    return 1 if conflicts else 0
