"""What one team takes home: each answer on its tent, how far off it was, and what it earned."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from kiosk.estimating.score import Score, Side, ratio_points
from kiosk.reports.fonts import width
from kiosk.reports.page import MARGIN, Page
from kiosk.reports.practice import TeamAnswer, practise_next
from kiosk.reports.things import Thing, picture
from kiosk.settings import Over, Paper, Rules
from kiosk.texts import plural, say
from kiosk.texts.numbers import MINUS, number, percent

TITLE, MIDDLE, PLAIN, SMALL, TINY = 26.0, 16.0, 11.0, 9.0, 7.0
LINE = 64.0  # from one answer to the next
PICTURE = 22.0
WORDS_AT, TENT_AT, ERROR_AT = 32.0, 158.0, 345.0  # from the margin
TENT_WIDE, TENT_HIGH = 168.0, 38.0
MARK = 4.5
DOUBLE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class TeamPage:
    """One team's results of a round: its place, ``shared`` or not, among ``teams``."""

    round_name: str
    place: str
    division: str
    team: str
    standing: int
    shared: bool
    teams: int
    total: Decimal
    answers: tuple[TeamAnswer, ...]
    rules: Rules
    final: bool
    simulated: bool


def team_pages(teams: Sequence[TeamPage], paper: Paper) -> bytes:
    """A PDF with one page a team. ValueError without any team."""
    if not teams:
        raise ValueError("there is no team to print")
    across = say("paper.simulated") if any(team.simulated for team in teams) else ""
    page = Page(paper, title=say("paper.team.head", name=teams[0].round_name), across=across)
    for turn, team in enumerate(teams):
        if turn:
            page.turn()
        _team(page, team)
    return page.finish()


def _team(page: Page, team: TeamPage) -> None:
    y = _head(page, team)
    for answer in team.answers:
        _answer(page, answer, team.rules, y)
        y -= LINE
    y += LINE - 3 * PLAIN
    sentences = list(practise_next(team.answers, team.rules))
    if not sentences:
        return
    page.words(MARGIN, y, say("paper.team.practise"), PLAIN, bold=True)
    y -= 1.5 * PLAIN
    for sentence in sentences:
        y = page.prose(y, sentence, PLAIN) - 2


def _head(page: Page, team: TeamPage) -> float:
    """Who, which place and how many points; the base of the first tent."""
    y, rules = page.top - TITLE, team.rules
    key = "paper.team.shared" if team.shared else "paper.team.place"
    standing = say(key, place=team.standing)
    page.words(page.right, y, standing, TITLE, bold=True, at=1)
    room = page.right - MARGIN - width(standing, TITLE, bold=True) - TITLE
    page.name(MARGIN, y, team.team, TITLE, room, bold=True)
    y -= 2 * PLAIN
    state = say("paper.results.final" if team.final else "paper.results.provisional")
    among = f"{plural('paper.team.among', team.teams)}, {state}"
    page.words(page.right, y, among, PLAIN, at=1)
    where = ", ".join(part for part in (team.round_name, team.division, team.place) if part)
    page.name(MARGIN, y, where, PLAIN, page.right - MARGIN - width(among, PLAIN) - PLAIN)
    y -= 2 * PLAIN
    most = 100 * len(team.answers)
    total = say("paper.team.total", points=number(team.total, rules.decimals), most=most)
    page.words(MARGIN, y, total, MIDDLE, bold=True)
    page.stroke((MARGIN, y - PLAIN), (page.right, y - PLAIN), thick=1.5)
    return y - 2.5 * PLAIN - TENT_HIGH


def _answer(page: Page, answer: TeamAnswer, rules: Rules, y: float) -> None:
    x, error = MARGIN + WORDS_AT, answer.error(rules)
    picture(page, answer.thing, MARGIN, y + 8, PICTURE)
    room = TENT_AT - WORDS_AT - 10
    page.name(x, y + 26, answer.name, 1.2 * PLAIN, room, bold=True)
    for line, words in enumerate((_said(answer), _real(answer))):
        page.words(x, y + 12 - 12 * line, words, page.room(words, SMALL, room))
    tent = MARGIN + TENT_AT
    _tent(page, tent, y, answer, rules)
    if error is not None and answer.answer is not None:
        _mark(page, tent, y, Fraction(answer.answer) / Fraction(answer.actual), error.side, rules)
        _error(page, MARGIN + ERROR_AT, y, error)
    _points(page, answer, rules, y)


def _said(answer: TeamAnswer) -> str:
    if answer.answer is None:
        return say("paper.team.none")
    key = "paper.team.filled" if answer.thing is Thing.CUP else "paper.team.said"
    return say(key, value=number(answer.answer), unit=answer.thing.unit)


def _real(answer: TeamAnswer) -> str:
    cup = answer.thing is Thing.CUP
    key = "paper.team.asked" if cup else "paper.team.real"
    return say(key, value=number(answer.actual, None if cup else 0), unit=answer.thing.unit)


def _error(page: Page, x: float, y: float, error: Score) -> None:
    """The signed error, and its side in words."""
    if error.side is Side.EXACT:
        page.words(x, y + 16, say("paper.team.exact"), PLAIN, bold=True)
        return
    off = percent(abs(error.error_percent))
    sign = MINUS if error.side is Side.UNDER else "+"
    size = page.room(f"{sign}{off}", PLAIN, 74, bold=True)
    page.words(x, y + 22, f"{sign}{off}", size, bold=True)
    words = say(f"paper.team.{error.side}")
    page.words(x, y + 9, words, SMALL)


def _points(page: Page, answer: TeamAnswer, rules: Rules, y: float) -> None:
    page.words(page.right, y + 16, number(answer.points, rules.decimals), MIDDLE, bold=True, at=1)
    words = answer.note or say("paper.team.points")
    page.words(page.right, y + 4, words, page.room(words, SMALL, 80), at=1)


def _height(share: Fraction, rules: Rules) -> float:
    return TENT_HIGH * float(ratio_points(share, rules.over)) / 100


def _tent(page: Page, x: float, y: float, answer: TeamAnswer, rules: Rules) -> None:
    """The rule as a drawing: 0 at the left peg, the real value under the peak, double right."""
    middle, right = x + TENT_WIDE / 2, x + TENT_WIDE
    foot = middle if rules.over is Over.ZERO else right
    page.stroke((x, y), (middle, y + TENT_HIGH), (foot, y), thick=0.9)
    page.stroke((x, y), (right, y))
    actual = answer.actual
    for place, value in ((x, 0), (middle, actual), (right, DOUBLE * actual)):
        page.words(place, y - TINY - 6, number(value), TINY, at=0.5)


def _mark(page: Page, x: float, y: float, share: Fraction, side: Side, rules: Rules) -> None:
    """Down for under, up for over, a diamond on target: told apart without colour."""
    at = x + TENT_WIDE * float(min(share, Fraction(DOUBLE))) / DOUBLE
    top = y + _height(share, rules)
    page.stroke((at, y), (at, top), thick=2.2)
    shapes = {
        Side.UNDER: ((-MARK, MARK), (MARK, MARK), (0, -MARK)),
        Side.OVER: ((-MARK, -MARK), (MARK, -MARK), (0, MARK)),
        Side.EXACT: ((-MARK, 0), (0, MARK), (MARK, 0), (0, -MARK)),
    }
    page.filled(*((at + dx, top + dy) for dx, dy in shapes[side]))
