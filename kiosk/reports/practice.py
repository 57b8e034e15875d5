"""What a team does well and what it practises next, from one round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from kiosk.estimating.score import Score, Side, score
from kiosk.reports.things import Thing
from kiosk.settings import Over, Rules
from kiosk.texts import say
from kiosk.texts.numbers import number, percent

GOOD_PERCENT = Decimal(5)
FEW, MOST = 4, Decimal("0.75")  # answers from which on a side is a habit, and its share of them


@dataclass(frozen=True, slots=True, kw_only=True)
class TeamAnswer:
    """An answer and the real value; ``answer`` None when there was none.

    ``points`` are what it earned in the end; ``note`` says why that is not what the tent gives
    ("late"), "" otherwise.
    """

    thing: Thing
    label: str
    answer: Decimal | None
    actual: Decimal
    points: Decimal
    note: str = ""

    @property
    def name(self) -> str:
        """What it is, and what stands on it."""
        return self.thing.named(self.label)

    def error(self, rules: Rules) -> Score | None:
        """How far off it was."""
        return None if self.answer is None else score(self.actual, self.answer, rules)


def practise_next(answers: Sequence[TeamAnswer], rules: Rules) -> Iterator[str]:
    """Up to four sentences; none without answers."""
    if not answers:
        return
    best = max(answers, key=lambda answer: answer.points)
    if best.points > 0:
        points = number(best.points, rules.decimals)
        yield say("paper.team.best", thing=best.name, points=points)
    errors = [found for answer in answers if (found := answer.error(rules))]
    good = all(abs(found.error_percent) <= GOOD_PERCENT for found in errors)
    if good and len(errors) == len(answers):
        yield say("paper.team.all_good", percent=percent(GOOD_PERCENT, 0))
        return
    blank = next((answer for answer in answers if not answer.answer), None)
    if blank:
        yield say("paper.team.blank", thing=blank.name)
    yield from _farthest([answer for answer in answers if answer.answer], rules)
    yield from _habit([found.side for found in errors], rules)


def _farthest(answers: Sequence[TeamAnswer], rules: Rules) -> Iterator[str]:
    """About what was farthest off, whatever it earned; nothing if all is good."""
    far = [
        (abs(found.error_percent), answer, found.side)
        for answer in answers
        if (found := answer.error(rules)) and abs(found.error_percent) > GOOD_PERCENT
    ]
    if not far:
        return
    _, answer, side = max(far, key=lambda each: each[0])
    if answer.thing is not Thing.CUP or answer.answer is None:
        yield say(f"paper.team.next.{answer.thing}", thing=answer.name)
        return
    # Of what is in a cup that is too full; of what should be in one that is not.
    whole = max(answer.answer, answer.actual)
    parts = (whole / abs(answer.answer - answer.actual)).quantize(Decimal(1), ROUND_HALF_UP)
    yield say(f"paper.team.next.cup_{side}", thing=answer.name, parts=number(parts))


def _habit(sides: Sequence[Side], rules: Rules) -> Iterator[str]:
    """Whether nearly all answers lie on one side; under is wise where over earns nothing."""
    for side in (Side.UNDER, Side.OVER):
        count = sum(one is side for one in sides)
        wise = side is Side.UNDER and rules.over is Over.ZERO
        if len(sides) >= FEW and count >= MOST * len(sides) and not wise:
            yield say(f"paper.team.lean.{side}", count=count, all=len(sides))
