"""Presenters of results: the table of a division, the same for the wall, and one team's page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from decimal import Decimal

from kiosk.procedures.procedure import Person
from kiosk.rounds.contents import Stage
from kiosk.rounds.results import Answered, Results, Row
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.texts import plural, say
from kiosk.texts.numbers import number, percent
from kiosk.ui.presenters.cup_views import ON_TARGET_PERCENT
from kiosk.ui.presenters.views import ButtonView, SheetView, button
from kiosk.ui.presenters.wall_views import time_left

ROWS = 10  # teams on a page, of the table and of the wall
MOST_DOTS = 24  # of the strip of places; beyond it a dot is no single place


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreMark:
    """One score: its points, its side ("" without an answer), estimate / real value or None."""

    points: str
    side: str = ""
    share: float | None = None
    corrected: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultLine:
    """A team's row. ``safe`` are the words for its range of places, "" where none is shown.

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


@dataclass(frozen=True, slots=True, kw_only=True)
class TeamAnswerView:
    """One answer on its tent: what was said, how far off, what it earned."""

    name: str
    mark: ScoreMark
    said: str
    unit: str
    off: str
    side_text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TeamResultsView(SheetView):
    """What one team gets to see: ``place`` and ``total`` in words, its answers, what to practise.

    ``out_of`` stands below the total; ``practise`` are whole sentences.
    """

    screen: str = "team results"
    plate: str = ""
    place: str = ""
    total: str = ""
    out_of: str = ""
    answers: tuple[TeamAnswerView, ...] = ()
    practise_title: str = ""
    practise: tuple[str, ...] = ()


# Words ----------------------------------------------------------------------------------------


def task_short(state: RoundState, division: str, task: Task) -> str:
    """How a task is called in the head of a table: the letter says which jar or box it is."""
    if task is Task.MASS:
        return say("results.head.cup")
    key = state.key(division, task)
    return say(
        "results.head.jar" if task.value.startswith("count") else "results.head.box",
        letter=key.letter if key else "",
    ).strip()


def plate_of(stage: Stage) -> str:
    """How far the results are, in one word."""
    return say(f"results.plate.{stage}")


def plate_note(stage: Stage, left: timedelta) -> str:
    """What is left of the time for protests."""
    if stage is not Stage.RELEASED:
        return ""
    if not left:
        return say("results.protest_over")
    return say("results.protest_left", left=time_left(left))


def nth(place: int) -> str:
    """A place as people say it: 1st, 2nd, 11th."""
    last = 0 if place % 100 in (11, 12, 13) else place % 10
    return say(f"results.nth.{last if last in (1, 2, 3) else 'other'}", place=place)


def range_words(row: Row) -> str:
    """Where the keys' uncertainty may put a team."""
    if row.safe:
        return say("results.safe")
    low, high = min(row.place, row.place_low), max(row.place, row.place_high)
    return say(
        "results.range.two" if high - low == 1 else "results.range.many",
        low=nth(low), high=nth(high),
    )  # fmt: skip


def side_of(answered: Answered, half_width_percent: Decimal) -> str:
    """Under, over or on target: within 2 % of the real value, or inside the key's interval."""
    if answered.score is None:
        return ""
    error = answered.score.error_percent
    if abs(error) <= max(Decimal(ON_TARGET_PERCENT), half_width_percent):
        return "on target"
    return "over" if error > 0 else "under"


def mark_of(state: RoundState, row: Row, place: int, *, digits: int | None = None) -> ScoreMark:
    """One of a team's scores."""
    answered, points = row.answered[place], row.scores[place]
    key = state.key(row.team.division, answered.task)
    width = key.half_width_percent if key else Decimal(0)
    estimate = answered.estimate
    return ScoreMark(
        points=number(points, state.rules.decimals if digits is None else digits),
        side=side_of(answered, width),
        share=None if estimate is None else float(estimate / answered.actual),
        corrected=answered.corrected,
    )


# The table ------------------------------------------------------------------------------------


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
    ranges = widest is not None and found.drawn and not tents
    shown, turn = _page(found.rows, turned)
    return ResultsView(
        title=found.division,
        plate=plate_of(found.stage),
        plate_note=plate_note(found.stage, left),
        sides=(say("results.side.under"), say("results.side.on_target"), say("results.side.over")),
        heads=heads(state, found, ranges=ranges),
        lines=tuple(_line(state, row, len(found.rows), ranges=ranges) for row in shown),
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
        heads=heads(state, found, ranges=False),
        lines=tuple(_line(state, row, len(found.rows), ranges=False) for row in shown),
        tents=True,
        turn=turn,
        home=button(say("results.wall.leave"), Person.HOME),
    )


def heads(state: RoundState, found: Results, *, ranges: bool) -> tuple[str, ...]:
    """The words over the columns."""
    tasks = (task_short(state, found.division, task) for task in Task)
    total = say("results.head.total", most=100 * len(Task))
    last = (say("results.head.safe"),) if ranges else ()
    return (say("results.head.team"), *tasks, total, *last)


def _page(rows: Sequence[Row], turned: int) -> tuple[Sequence[Row], ButtonView | None]:
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
    signs = {
        "place": ranges,
        "moves": ranges and any(not row.safe for row in rows),
        "=": any(row.shared for row in rows),
        "*": corrected,
    }
    return tuple((sign, say(f"results.legend.{sign}")) for sign, there in signs.items() if there)


def _advice(state: RoundState, found: Results, widest: Task | None) -> str:
    if widest is None or not found.drawn or not found.unsafe_medals:
        return ""
    what = task_short(state, found.division, widest)
    kind = "mass" if widest is Task.MASS else "jar" if widest.value.startswith("count") else "box"
    return say(f"results.unsafe.{kind}", what=what)


# One team -------------------------------------------------------------------------------------


def team_results_view(
    state: RoundState, found: Results, row: Row, practise: Sequence[str]
) -> TeamResultsView:
    """What one team gets to see."""
    place = say("results.team.shared" if row.shared else "results.team.place", nth=nth(row.place))
    return TeamResultsView(
        title=row.team.label,
        plate=plate_of(found.stage),
        place=f"{place} {plural('results.team.among', len(found.rows))}",
        total=number(row.total, state.rules.decimals),
        out_of=say("results.head.total", most=100 * len(Task)),
        answers=tuple(_answer(state, row, place) for place in range(len(row.answered))),
        practise_title=say("results.team.practise"),
        practise=tuple(practise),
        home=button(say("button.back"), Person.HOME, sign="back"),
    )


def _answer(state: RoundState, row: Row, place: int) -> TeamAnswerView:
    answered, mark = row.answered[place], mark_of(state, row, place)
    task = answered.task
    unit = say(f"results.unit.{task.value.partition(' ')[0]}")
    if answered.estimate is None or answered.score is None:
        said, off = say("results.team.none", real=number(answered.actual)), ""
    else:
        said = say(
            "results.team.said", said=number(answered.estimate), real=number(answered.actual)
        )
        off = percent(abs(answered.score.error_percent))
    name = task_short(state, row.team.division, task)
    return TeamAnswerView(
        name=name[:1].upper() + name[1:],
        mark=mark,
        said=said,
        unit=unit,
        off=off,
        side_text=say(f"results.side.{mark.side.replace(' ', '_')}") if mark.side else "",
    )
