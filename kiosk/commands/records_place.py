"""What the commands on records share: where the records are, and how a refusal ends."""

from __future__ import annotations

import argparse

from kiosk.commands.console import BadInputError, complain, emit, plain
from kiosk.records.errors import Problem, RecordsError
from kiosk.texts import say

_BAD_INPUT = (Problem.NOT_THERE, Problem.NO_FOLDER, Problem.A_FOLDER, Problem.BAD_ADDRESS)


def add_place(parser: argparse.ArgumentParser) -> None:
    """Add ``--records``, as the kiosk has it."""
    parser.add_argument("--records", metavar="WHERE", help=say("kiosk.records"))


def refused(error: RecordsError, *, as_json: bool) -> int:
    """Say why it was not done; 1. BadInputError if a place was named that cannot be one."""
    if error.problem in _BAD_INPUT:
        raise BadInputError(str(error)) from error
    if as_json:
        emit({"refused": plain(str(error))})
    else:
        complain(str(error))
    return 1
