"""``gramstand count-key``: a count by weight from masses, or one for each row of a table."""

from __future__ import annotations

import argparse
from decimal import Decimal

from kiosk.commands.console import BadInputError, complain, emit, plain, tell
from kiosk.commands.count_cells import Cells, count_input, positive, scatter
from kiosk.commands.count_table import read_table
from kiosk.estimating.count_key import CountKey, Refused, count_key
from kiosk.texts import say
from kiosk.texts.numbers import grams, number, percent

HELP = say("command.count_key.help")
_OPTIONS = ("pieces", "sample", "filled", "empty")
_NEEDED = ("pieces", "sample", "filled")


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    for name, placeholder in (("pieces", "N"), ("filled", "M"), ("empty", "M")):
        parser.add_argument(f"--{name}", metavar=placeholder, help=say(f"command.count_key.{name}"))
    parser.add_argument(
        "--sample", metavar="M", action="append", help=say("command.count_key.sample")
    )
    parser.add_argument("--readability", metavar="D", help=say("command.count_key.readability"))
    parser.add_argument("--piece-cv", metavar="PCT", help=say("command.count_key.piece_cv"))
    parser.add_argument(
        "--from-container", action="store_true", help=say("command.count_key.from_container")
    )
    parser.add_argument("--table", metavar="FILE.csv", help=say("command.count_key.table"))


def run(options: argparse.Namespace) -> int:
    """Print the key or keys; 0, or 1 if one was refused. BadInputError for what cannot be read."""
    try:
        return _table(options) if options.table is not None else _one(options)
    except ValueError as trouble:
        raise BadInputError(str(trouble)) from trouble


def _one(options: argparse.Namespace) -> int:
    missing = [f"--{name}" for name in _NEEDED if getattr(options, name) is None]
    if missing:
        raise BadInputError(say("command.count_key.needs", options=", ".join(missing)))
    cells = Cells(
        pieces=options.pieces,
        samples=tuple(options.sample),
        filled=options.filled,
        empty=options.empty,
        readability=options.readability,
    )
    answer = count_key(count_input(cells, _prior(options), in_fill=options.from_container))
    if options.json:
        emit(_as_json(answer))
    elif isinstance(answer, Refused):
        complain(answer.sentence)
    else:
        tell("\n".join(_as_text(answer)))
    return 1 if isinstance(answer, Refused) else 0


def _table(options: argparse.Namespace) -> int:
    for name in _OPTIONS:
        if getattr(options, name) is not None:
            raise BadInputError(say("command.count_key.either", option=f"--{name}"))
    prior, step = _prior(options), options.readability
    if step is not None:
        positive(step, "readability")
    code = 0
    for row in read_table(options.table):
        answer: CountKey | str
        try:
            given = count_input(
                row.cells(default_readability=step), prior, in_fill=options.from_container
            )
        except ValueError as trouble:
            answer = str(trouble)
        else:
            key = count_key(given)
            answer = key.sentence if isinstance(key, Refused) else key
        code |= isinstance(answer, str)
        _show_row(row.jar, answer, as_json=options.json)
    return code


def _show_row(jar: str, answer: CountKey | str, *, as_json: bool) -> None:
    if as_json:
        found = {"refused": plain(answer)} if isinstance(answer, str) else _as_json(answer)
        emit({"jar": jar, **found})
    elif isinstance(answer, str):
        complain(say("command.count_key.row", jar=jar, text=answer))
    else:
        tell(say("command.count_key.row", jar=jar, text=" ".join(_as_text(answer))))


def _prior(options: argparse.Namespace) -> Decimal | None:
    return None if options.piece_cv is None else scatter(options.piece_cv)


def _as_json(answer: CountKey | Refused) -> dict[str, object]:
    if isinstance(answer, Refused):
        return {"refused": plain(answer.sentence)}
    return {
        "count": answer.count,
        "low": answer.low,
        "high": answer.high,
        "half_width_percent": float(answer.half_width_percent),
        "piece_mass_g": answer.piece_mass_g,
        "score_effect": float(answer.score_effect),
        "warnings": [plain(text) for text in answer.warnings],
    }


def _as_text(key: CountKey) -> list[str]:
    return [
        say(
            "command.count_key.count",
            count=number(key.count),
            low=number(key.low),
            high=number(key.high),
            half=percent(key.half_width_percent),
        ),
        say(
            "command.count_key.piece",
            mass=grams(key.piece_mass_g),
            points=number(key.score_effect, 1),
        ),
        *(say("command.count_key.note", text=text) for text in key.warnings),
    ]
