"""``gramstand check``: whether the records hold together."""

from __future__ import annotations

import argparse
from decimal import Decimal
from typing import TYPE_CHECKING

from kiosk.commands.console import emit, plain, tell
from kiosk.commands.records_place import add_place, refused
from kiosk.estimating.score import score
from kiosk.records.errors import RecordsError
from kiosk.settings import Over, Rules
from kiosk.texts import plural, say

if TYPE_CHECKING:
    from kiosk.records.checking import Checked
    from kiosk.records.journal import LeftBehind

HELP: str = say("command.check.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.epilog = say("command.check.epilog")
    add_place(parser)


def run(options: argparse.Namespace) -> int:
    """Print what this kiosk has not stored, and what is wrong; 0 if nothing is wrong, else 1."""
    from kiosk.records.checking import check
    from kiosk.records.journal import left_behind

    try:
        left = left_behind(options.records)
        if left is not None:
            _tell_left(left, as_json=options.json)
        checked = check(options.records, fits)
    except RecordsError as error:
        return refused(error, as_json=options.json)
    if options.json:
        _emit(checked)
    else:
        _tell(checked)
    return 1 if checked.findings else 0


def _tell_left(left: LeftBehind, *, as_json: bool) -> None:
    if as_json:
        refused = [plain(why) for why in left.refused]
        emit({"journal": str(left.file), "waiting": left.waiting, "refused": refused})
        return
    for why in left.refused:
        tell(why)
    if left.waiting:
        tell(plural("command.check.waiting", left.waiting, file=left.file))


def fits(target: Decimal, net: Decimal, points: Decimal, side: str) -> bool:
    """Whether a cup can have earned that; the rules of its day are not known, so by any rules."""
    exponent = points.as_tuple().exponent
    decimals = -exponent if isinstance(exponent, int) else 0
    try:
        scores = [score(target, net, Rules(over=over, decimals=decimals)) for over in Over]
    except ValueError:  # no such rules, or nothing that can be scored
        return False
    return any((scored.points, scored.side) == (points, side) for scored in scores)


def _emit(checked: Checked) -> None:
    for found in checked.findings:
        emit({
            "finding": found.kind.value, "table": found.table, "row": found.row,
            "text": plain(found.text),
        })  # fmt: skip
    emit({
        "sound": not checked.findings, "findings": len(checked.findings),
        "tables": checked.tables, "rows": checked.rows,
    })  # fmt: skip


def _tell(checked: Checked) -> None:
    for found in checked.findings:
        tell(found.text)
    if checked.findings:
        tell(plural("command.check.wrong", len(checked.findings)))
    else:
        rows = plural("command.check.rows", checked.rows)
        tell(say("command.check.sound", rows=rows, tables=checked.tables))
