"""What a check means for the event, in plain words."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from kiosk.estimating.balance_check import Verdict
from kiosk.procedures.check_log import CheckLog
from kiosk.records.entries import CheckRole
from kiosk.settings import Rules
from kiosk.texts import say
from kiosk.texts.numbers import grams, number

COARSE_POINTS = Decimal("0.5")  # by which a cup's score may move with one step of the scale


def meanings(log: CheckLog, rules: Rules) -> tuple[str, ...]:
    """One sentence for each thing that was found, the worst first."""
    return (*_failures(log), *_open(log), *_steps(log, rules), *_good(log))


def _verdicts(log: CheckLog, *roles: CheckRole) -> list[str]:
    return [row.verdict for row in log.rows() if row.test in roles]


def _failures(log: CheckLog) -> Iterator[str]:
    if Verdict.NOT_FINE in _verdicts(log, CheckRole.LOAD):
        share = {True: "one_share", False: "uneven", None: "one_load"}[log.one_share]
        yield say(f"check.means.{share}")
    for role in (CheckRole.REPEAT, CheckRole.POSITION, CheckRole.ZERO):
        if Verdict.NOT_FINE in _verdicts(log, role):
            yield say(f"check.means.{role}")


def _open(log: CheckLog) -> Iterator[str]:
    known = [each.task.thing.known for each in log.of(CheckRole.LOAD)]
    if any(mass.gross_check for mass in known if mass is not None):
        yield say("check.means.coins")
    elif not known:
        yield say("check.means.unknown")
    elif log.verdict is not Verdict.NOT_FINE and Verdict.CANNOT_TELL in _verdicts(
        log, CheckRole.LOAD
    ):
        yield say("check.means.close")


def _steps(log: CheckLog, rules: Rules) -> Iterator[str]:
    points = 100 * log.step / rules.cup_target_g
    step = grams(log.step, log.step)
    if points == 1:
        yield say("check.means.whole", step=step)
    elif points >= COARSE_POINTS:
        yield say("check.means.steps", step=step, points=number(points.normalize() + 0))


def _good(log: CheckLog) -> Iterator[str]:
    if log.verdict is Verdict.FINE:
        yield say("check.means.fine")
