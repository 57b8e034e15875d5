"""Presenter of one team's own page: its answers, how far off they were, what to practise."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kiosk.procedures.procedure import Person
from kiosk.rounds.results import Results, Row
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.texts import plural, say
from kiosk.texts.numbers import number, percent
from kiosk.ui.presenters.result_words import ScoreMark, mark_of, nth, plate_of, task_short
from kiosk.ui.presenters.views import SheetView, button


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
    error = answered.error_percent
    real = number(answered.actual, None if task is Task.MASS else 0)
    if answered.estimate is None or error is None:
        said, off = say("results.team.none", real=real), ""
    else:
        said = say("results.team.said", said=number(answered.estimate), real=real)
        off = percent(abs(error))
    name = task_short(state, row.team.division, task)
    return TeamAnswerView(
        name=name[:1].upper() + name[1:],
        mark=mark,
        said=said,
        unit=unit,
        off=off,
        side_text=say(f"results.side.{mark.side.replace(' ', '_')}") if mark.side else "",
    )
