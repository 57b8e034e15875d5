"""The entry: finds the command, reads its options, and says in one line what was wrong."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from importlib import import_module
from types import ModuleType
from typing import NoReturn

from kiosk.commands.console import BadInputError, complain
from kiosk.texts import say

COMMANDS = {
    "listen": "kiosk.commands.listen",
    "balances": "kiosk.commands.balances",
    "learn": "kiosk.commands.learn",
    "replay": "kiosk.commands.replay",
    "score": "kiosk.commands.score",
    "count-key": "kiosk.commands.count_key",
    "sample-plan": "kiosk.commands.sample_plan",
    "volume": "kiosk.commands.volume",
    "standings": "kiosk.commands.standings",
    "export": "kiosk.commands.export",
    "import": "kiosk.commands.take_in",
    "backup": "kiosk.commands.backup",
    "check": "kiosk.commands.check",
    "tour": "kiosk.commands.tour",
}
KIOSK = "kiosk.commands.open_kiosk"
DONE, BAD_INPUT = 0, 2
INTERRUPTED, NOBODY_READS = 130, 141  # what a shell says of a program ended by these signals


class _OneLineParser(argparse.ArgumentParser):
    """An argument parser whose troubles are one line, without the usage."""

    def error(self, message: str) -> NoReturn:
        raise BadInputError(message)


def main(argv: Sequence[str] | None = None) -> int:
    """Run ``gramstand`` with these words (the process's own if None); the exit code."""
    try:
        return _run(list(sys.argv[1:] if argv is None else argv))
    except BrokenPipeError:
        # Else the interpreter would complain when it flushes standard output at its end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOBODY_READS
    except KeyboardInterrupt:
        return INTERRUPTED


def _run(words: list[str]) -> int:
    name = "gramstand"
    try:
        command, rest = _command(words)
        name = f"gramstand {command}" if command else name
        module = import_module(COMMANDS[command] if command else KIOSK)
        parser = _parser(name, module)
        if command is None and {"-h", "--help"} & set(rest):  # else no module is fetched for it
            parser.epilog = _list_of_commands()
        options = parser.parse_args(rest)
        code: int = module.run(options)
    except BadInputError as trouble:
        complain(f"{name}: {trouble}")
        return BAD_INPUT
    except SystemExit:  # the parser has printed its help
        code = DONE
    sys.stdout.flush()
    return code


def _command(words: list[str]) -> tuple[str | None, list[str]]:
    """The command's name, None for the kiosk itself, and the words that are its options."""
    ahead = [word for word in words[:1] if word == "--json"]
    rest = words[len(ahead) :]
    if not rest or rest[0].startswith("-"):
        return None, [*ahead, *rest]
    if rest[0] not in COMMANDS:
        known = ", ".join(COMMANDS)
        raise BadInputError(say("command.unknown", name=repr(rest[0]), commands=known))
    return rest[0], [*ahead, *rest[1:]]


def _parser(name: str, module: ModuleType) -> argparse.ArgumentParser:
    parser = _OneLineParser(
        prog=name,
        description=module.HELP,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--json", action="store_true", help=say("command.json"))
    module.configure(parser)
    return parser


def _list_of_commands() -> str:
    lines = [f"  {name:<12}{import_module(path).HELP}" for name, path in COMMANDS.items()]
    return "\n".join([say("command.list"), *lines])


if __name__ == "__main__":
    sys.exit(main())
