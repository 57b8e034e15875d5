"""``gramstand score``: one estimate against the actual value, by the default rules."""

from __future__ import annotations

import argparse
from decimal import Decimal

from kiosk.commands.console import BadInputError, emit, tell
from kiosk.estimating.score import Score, score
from kiosk.settings import Rules
from kiosk.texts import say
from kiosk.texts.numbers import number, percent
from kiosk.texts.typed import typed_number

HELP = say("command.score.help")
DOUBLE = 100  # per cent over the actual value


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("--actual", required=True, help=say("command.score.actual"))
    parser.add_argument("--estimate", required=True, help=say("command.score.estimate"))


def run(options: argparse.Namespace) -> int:
    """Print the score; 0. BadInputError for what is no number or cannot be scored."""
    try:
        scored = score(_given(options, "actual"), _given(options, "estimate"), Rules())
    except ValueError as trouble:
        raise BadInputError(str(trouble)) from trouble
    if options.json:
        emit(
            {
                "score": float(scored.points),
                "error_percent": float(scored.error_percent),
                "side": scored.side,
            }
        )
    else:
        tell(_sentence(scored))
    return 0


def _given(options: argparse.Namespace, name: str) -> Decimal:
    return typed_number(getattr(options, name), say(f"command.name.{name}"))


def _sentence(scored: Score) -> str:
    if scored.error_percent >= DOUBLE:
        return say("command.score.double", points=number(scored.points))
    return say(
        f"command.score.{scored.side}",
        points=number(scored.points),
        error=percent(abs(scored.error_percent)),
    )
