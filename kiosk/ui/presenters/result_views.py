"""Presenter of results as a table: for the coach, and for the wall."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import TypeVar

from kiosk.procedures.procedure import Person
from kiosk.rounds.contents import KeptList
from kiosk.rounds.results import Results, Row
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.result_words import (
    ScoreMark,
    mark_of,
    plate_note,
    plate_of,
    range_words,
    task_short,
)
from kiosk.ui.presenters.views import ButtonView, SheetView, button

T = TypeVar("T")

ROWS = 10  # teams on a page, of the table and of the wall
MOST_DOTS = 24  # of the strip of places; beyond it a dot is no single place


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultLine:
    """A team's row. ``safe`` are the words for its range of places, "" where none is known.

    ``now``, ``low`` and ``high`` are places as shares of the strip, 0 for the first.
    """

    place: str
    shared: bool
    medal: bool
    team: str
    marks: tuple[ScoreMark, ...]
    total: str
    safe: str = ""
    moves: bool = False
    now: float = 0.0
    low: float = 0.0
    high: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultsView(SheetView):
    """A page of the table. ``sums`` are the last rows: their name, and a text for each task.

    ``plate`` says how far the results are, ``plate_note`` stands beside it. ``heads`` name team,
    tasks, total and, with ``ranges``, the strip of ``dots`` places. ``advice`` tells of a medal
    that is not safe. ``switch`` are the words tents and numbers. ``legend`` stands beside the
    buttons: a sign (place, moves, = or *), and what it means. ``sides`` are the words under,
    on target and over.
    """

    screen: str = "results"
    plate: str = ""
    plate_note: str = ""
    sides: tuple[str, str, str] = ("", "", "")
    heads: tuple[str, ...] = ()
    lines: tuple[ResultLine, ...] = ()
    sums: tuple[tuple[str, tuple[str, ...]], ...] = ()
    tents: bool = False
    ranges: bool = False
    dots: int = 0
    switch: tuple[str, str] = ("", "")
    advice: str = ""
    legend: tuple[tuple[str, str], ...] = ()
    turn: ButtonView | None = None


def results_view(
    state: RoundState,
    found: Results,
    *,
    left: timedelta,
    turned: int,
    tents: bool,
    widest: Task | None,
) -> ResultsView:
    """The coach's table; ``widest`` is the task whose key moves places most, None: no ranges."""
    ranges = widest is not None and not tents
    shown, turn = _page(found.rows, turned)
    return ResultsView(
        title=found.division,
        plate=plate_of(found.stage),
        plate_note=plate_note(found.stage, left),
        sides=(say("results.side.under"), say("results.side.on_target"), say("results.side.over")),
        heads=heads(state, found.division, ranges=ranges),
        lines=tuple(
            _line(state, row, len(found.rows), ranges=ranges and found.drawn) for row in shown
        ),
        sums=_sums(state, found),
        tents=tents,
        ranges=ranges,
        dots=min(len(found.rows), MOST_DOTS) if ranges else 0,
        switch=(say("results.tents"), say("results.numbers")),
        advice=_advice(state, found, widest),
        legend=_legend(shown, ranges=ranges),
        turn=turn,
        home=button(say("button.back"), Person.HOME, sign="back"),
        main=button(say("results.print"), Person.PRINT, sign="printer"),
    )


def wall_results_view(
    state: RoundState, found: Results, *, left: timedelta, turned: int
) -> ResultsView:
    """For everybody: nothing of how sure a place is."""
    shown, turn = _page(found.rows, turned)
    return ResultsView(
        screen="results wall",
        title=found.division,
        plate=plate_of(found.stage),
        plate_note=plate_note(found.stage, left),
        heads=heads(state, found.division, ranges=False),
        lines=tuple(_line(state, row, len(found.rows), ranges=False) for row in shown),
        tents=True,
        turn=turn,
        home=button(say("results.wall.leave"), Person.HOME),
    )


def kept_list_view(state: RoundState, kept: KeptList, *, title: str, turned: int) -> ResultsView:
    """A list as it was; what changed it stands in the place of the advice."""
    decimals = state.rules.decimals
    places = [row.place for row in kept.rows]
    lines = [
        ResultLine(
            place=str(row.place),
            shared=places.count(row.place) > 1,
            medal=row.place <= state.rules.medals and bool(row.total),
            team=row.label,
            marks=tuple(ScoreMark(points=number(points, decimals)) for points in row.scores),
            total=number(row.total, decimals),
        )
        for row in kept.rows
    ]
    shown, turn = _page(lines, turned)
    return ResultsView(
        title=title,
        plate=say("results.plate.earlier"),
        heads=heads(state, kept.division, ranges=False),
        lines=tuple(shown),
        advice=kept.why,
        turn=turn,
        home=button(say("button.back"), Person.HOME, sign="back"),
    )


def heads(state: RoundState, division: str, *, ranges: bool) -> tuple[str, ...]:
    """The words over the columns."""
    tasks = (task_short(state, division, task) for task in Task)
    total = say("results.head.total", most=100 * len(Task))
    last = (say("results.head.safe"),) if ranges else ()
    return (say("results.head.team"), *tasks, total, *last)


def _page(rows: Sequence[T], turned: int) -> tuple[Sequence[T], ButtonView | None]:
    pages = max(1, -(-len(rows) // ROWS))
    start = turned % pages * ROWS
    if pages == 1:
        return rows, None
    following = (turned + 1) % pages * ROWS
    last = min(following + ROWS, len(rows))
    words = say("results.turn", first=following + 1, last=last)
    return rows[start : start + ROWS], button(words, Person.MORE)


def _line(state: RoundState, row: Row, teams: int, *, ranges: bool) -> ResultLine:
    low, high = min(row.place, row.place_low), max(row.place, row.place_high)
    now, first, last = (
        (place - 1) / max(1, teams - 1) if ranges else 0.0 for place in (row.place, low, high)
    )
    return ResultLine(
        place=str(row.place),
        shared=row.shared,
        medal=bool(row.medal),
        team=row.team.label,
        marks=tuple(mark_of(state, row, place) for place in range(len(row.scores))),
        total=number(row.total, state.rules.decimals),
        safe=range_words(row) if ranges else "",
        moves=ranges and not row.safe,
        now=now,
        low=first,
        high=last,
    )


def _sums(state: RoundState, found: Results) -> tuple[tuple[str, tuple[str, ...]], ...]:
    rows = (("best", found.best), ("median", found.median))
    return tuple(
        (
            say(f"results.{name}"),
            tuple(number(points, state.rules.decimals) for points in scores),
        )
        for name, scores in rows
    )


def _legend(rows: Sequence[Row], *, ranges: bool) -> tuple[tuple[str, str], ...]:
    """What the signs on this page mean."""
    corrected = any(answered.corrected for row in rows for answered in row.answered)
    signs = (
        ("place", "place", ranges),
        ("moves", "moves", ranges and any(not row.safe for row in rows)),
        ("shared", "=", any(row.shared for row in rows)),
        ("corrected", "*", corrected),
    )
    return tuple((sign, say(f"results.legend.{name}")) for name, sign, there in signs if there)


def _advice(state: RoundState, found: Results, widest: Task | None) -> str:
    if widest is None or not found.drawn or not found.unsafe_medals:
        return ""
    what = task_short(state, found.division, widest)
    kind = "mass" if widest is Task.MASS else "jar" if widest.value.startswith("count") else "box"
    return say(f"results.unsafe.{kind}", what=what)
