"""``gramstand sample-plan``: the fewest pieces to count for a key that is as good as wanted."""

from __future__ import annotations

import argparse
from decimal import Decimal

from kiosk.commands.console import BadInputError, complain, emit, plain, tell
from kiosk.commands.count_cells import at_most, positive, scatter
from kiosk.estimating.sample_plan import (
    USUAL_COUNT,
    USUAL_PIECE_CV_PERCENT,
    NoPlan,
    PlanInput,
    SamplePlan,
    sample_plan,
)
from kiosk.texts import say
from kiosk.texts.numbers import number, percent
from kiosk.texts.typed import typed_whole_number

HELP = say("command.sample_plan.help")
HEAVIEST = 1_000_000  # grams
MOST_PERCENT = 100
FULLEST = 1_000_000_000  # pieces


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    for name, placeholder in (("piece_mass", "W"), ("readability", "D"), ("goal_percent", "P")):
        parser.add_argument(
            f"--{name.replace('_', '-')}",
            metavar=placeholder,
            required=True,
            help=say(f"command.sample_plan.{name}"),
        )
    parser.add_argument(
        "--piece-cv",
        metavar="PCT",
        help=say("command.sample_plan.piece_cv", usual=USUAL_PIECE_CV_PERCENT),
    )
    parser.add_argument(
        "--count", metavar="N", help=say("command.sample_plan.count", usual=USUAL_COUNT)
    )


def run(options: argparse.Namespace) -> int:
    """Print the plan; 0, or 1 if there is none. BadInputError for what cannot be read."""
    try:
        given = _given(options)
    except ValueError as trouble:
        raise BadInputError(str(trouble)) from trouble
    answer = sample_plan(given)
    if options.json:
        emit(_as_json(answer))
    elif isinstance(answer, NoPlan):
        complain(answer.sentence)
    else:
        tell("\n".join(_as_text(answer, given)))
    return 1 if isinstance(answer, NoPlan) else 0


def _given(options: argparse.Namespace) -> PlanInput:
    return PlanInput(
        piece_mass=_up_to(HEAVIEST, options.piece_mass, "piece_mass"),
        readability=_up_to(HEAVIEST, options.readability, "readability"),
        goal_percent=_up_to(MOST_PERCENT, options.goal_percent, "goal_percent"),
        piece_cv_percent=None if options.piece_cv is None else scatter(options.piece_cv),
        count=USUAL_COUNT if options.count is None else _count(options.count),
    )


def _up_to(limit: int, text: str, name: str) -> Decimal:
    return at_most(limit, positive(text, name), text, name)


def _count(text: str) -> int:
    count = typed_whole_number(text, say("command.name.count"))
    return int(at_most(FULLEST, Decimal(count), text, "count"))


def _as_json(answer: SamplePlan | NoPlan) -> dict[str, object]:
    if isinstance(answer, NoPlan):
        return {"refused": plain(answer.sentence)}
    return {
        "samples": answer.samples,
        "pieces_each": answer.pieces_each,
        "half_width_percent": float(answer.half_width_percent),
    }


def _as_text(plan: SamplePlan, given: PlanInput) -> list[str]:
    lines = [
        say(
            "command.sample_plan.done",
            samples=plan.samples,
            pieces=plan.pieces_each,
            half=percent(plan.half_width_percent, 2),
            count=number(given.count),
        )
    ]
    if given.piece_cv_percent is None:
        lines.append(say("command.sample_plan.assumed", usual=USUAL_PIECE_CV_PERCENT))
    if plan.total >= given.count:
        lines.append(say("command.sample_plan.count_all", count=number(given.count)))
    return lines
