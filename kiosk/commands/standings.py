"""``gramstand standings``: ranks a round from two files, and says how sure each place is."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from kiosk.commands.console import BadInputError, emit, tell
from kiosk.commands.round_files import read_answers, read_keys
from kiosk.commands.settings_file import read_settings
from kiosk.estimating.standings import Standing, standings
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number

HELP: str = say("command.standings.help")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.epilog = say("command.standings.files", tasks=", ".join(Task))
    parser.add_argument("folder", metavar="FOLDER", type=Path, help=say("command.standings.folder"))


def run(options: argparse.Namespace) -> int:
    """Print the standings by the rules of this kiosk; 0. BadInputError for files that are none."""
    folder: Path = options.folder
    if not folder.is_dir():
        raise BadInputError(say("command.standings.no_folder", folder=folder))
    keys, answers = read_keys(folder), read_answers(folder)
    found = standings(keys, answers, read_settings().rules)
    if options.json:
        for standing in found:
            emit(_as_json(standing))
    elif found:
        tell("\n".join(_table(found)))
    else:
        tell(say("command.standings.nobody"))
    return 0


def _as_json(standing: Standing) -> dict[str, object]:
    return {
        "place": standing.place,
        "team": standing.team,
        "scores": [float(points) for points in standing.scores],
        "total": float(standing.total),
        "place_low": standing.place_low,
        "place_high": standing.place_high,
    }


def _table(found: Sequence[Standing]) -> list[str]:
    head = [
        say("command.standings.place"),
        say("command.standings.team"),
        *Task,
        say("command.standings.total"),
        say("command.standings.range"),
    ]
    rows = [head, *map(_cells, found)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(head))]
    return [
        "  ".join(
            # Names stand to the left, numbers to the right.
            cell.ljust(width) if column == 1 else cell.rjust(width)
            for column, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]


def _cells(standing: Standing) -> list[str]:
    low, high = standing.place_low, standing.place_high
    return [
        str(standing.place),
        "".join(char if char.isprintable() else "?" for char in standing.team),
        *(number(points) for points in standing.scores),
        number(standing.total),
        str(low) if low == high else say("command.standings.from_to", low=low, high=high),
    ]
