"""The supervisor's list of a sitting: who is here, and whose cup and sheet came in.

It serves while the kiosk does, and when it does not: on paper nobody is forgotten.
"""

from __future__ import annotations

from dataclasses import dataclass

from kiosk.reports.page import MARGIN, Page, numbered
from kiosk.settings import Paper
from kiosk.texts import plural, say

TITLE, PLAIN, SMALL = 26.0, 11.0, 8.5
LINE = 24.0
TICK = 12.0
TEAM_AT, CUP_AT = 44.0, 0.42  # points; from here parts of the width between the margins
MINUTES_AT, TICKS_AT, TICKS_APART = 0.48, 0.585, 0.085
NOTES_AT = 0.82
SIGNED = 50.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SittingTeam:
    """A team, the number of its sheet and what stands on its cup, "" for none yet."""

    number: int
    team: str
    cup: str
    minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SittingList:
    """A sitting; ``minutes`` is the usual time, by which teams with another one stand out."""

    round_name: str
    place: str
    sitting: int
    minutes: int
    teams: tuple[SittingTeam, ...]
    simulated: bool


def sitting_list(sitting: SittingList, paper: Paper) -> bytes:
    """A PDF; each page repeats the heading."""
    return numbered(lambda pages: _written(sitting, paper, pages))


def _written(sitting: SittingList, paper: Paper, pages: int) -> Page:
    title = say("paper.sitting.head", sitting=sitting.sitting)
    across = say("paper.simulated") if sitting.simulated else ""
    foot = f"{sitting.round_name}: {title}"
    page = Page(paper, title=foot, across=across, foot=foot, of=pages)
    y = _heading(page, sitting, title)
    for team in sitting.teams:
        if y < MARGIN + SIGNED:
            page.turn()
            y = _heading(page, sitting, title)
        _team(page, team, sitting.minutes, y)
        y -= LINE
    _signed(page)
    return page


def _at(page: Page, part: float) -> float:
    return MARGIN + part * (page.right - MARGIN)


def _heading(page: Page, sitting: SittingList, title: str) -> float:
    """The baseline of the first team."""
    y = page.top - TITLE
    page.words(MARGIN, y, title, TITLE, bold=True)
    teams = plural("paper.sitting.teams", len(sitting.teams))
    usual = say("paper.sitting.usual", minutes=sitting.minutes)
    page.words(page.right, y, f"{teams}, {usual}", PLAIN, at=1)
    y -= 2 * PLAIN
    where = ", ".join(part for part in (sitting.round_name, sitting.place) if part)
    page.name(MARGIN, y, where, PLAIN, page.right - MARGIN)
    y -= 2.4 * PLAIN
    for x, key, at in _columns(page):
        page.words(x, y, say(f"paper.sitting.{key}"), SMALL, at=at)
    page.stroke((MARGIN, y - 5), (page.right, y - 5), thick=1.2)
    return y - LINE


def _columns(page: Page) -> list[tuple[float, str, float]]:
    """Where each head stands, its key, and how it is set (see ``Page.words``)."""
    ticks = ("here", "cup_in", "sheet_in")
    return [
        (MARGIN, "sheet", 0),
        (MARGIN + TEAM_AT, "team", 0),
        (_at(page, CUP_AT), "cup", 0.5),
        (_at(page, MINUTES_AT), "minutes", 0.5),
        *((_tick(page, place), key, 0.5) for place, key in enumerate(ticks)),
        (_at(page, NOTES_AT), "notes", 0),
    ]


def _tick(page: Page, place: int) -> float:
    """The middle of a column of boxes to tick."""
    return _at(page, TICKS_AT + place * TICKS_APART)


def _team(page: Page, team: SittingTeam, usual: int, y: float) -> None:
    page.words(MARGIN + 18, y, f"{team.number}", PLAIN, bold=True, at=1)
    x, cup = MARGIN + TEAM_AT, _at(page, CUP_AT)
    page.name(x, y, team.team, PLAIN, cup - x - 18)
    page.words(cup, y, team.cup, page.room(team.cup, PLAIN, 28), at=0.5)
    other = team.minutes != usual
    page.words(_at(page, MINUTES_AT), y, f"{team.minutes}", PLAIN, bold=other, at=0.5)
    for place in range(3):
        page.box(_tick(page, place) - TICK / 2, y - 2, TICK, TICK)
    page.stroke((MARGIN, y - 8), (page.right, y - 8), thick=0.25)


def _signed(page: Page) -> None:
    y, apart = MARGIN + 2 * SMALL, (page.right - MARGIN) / 3
    for place, key in enumerate(("began", "ended", "signature")):
        x = MARGIN + place * apart
        page.stroke((x, y), (x + apart - PLAIN, y))
        page.words(x, y - PLAIN, say(f"paper.sitting.{key}"), SMALL)
