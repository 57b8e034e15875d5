"""The papers of results: what the table shows, as the sheets want it, saved by the writer."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from kiosk.rounds.contents import Stage
from kiosk.rounds.corrections import corrections
from kiosk.rounds.left import left_since_lock
from kiosk.rounds.results import Results, Row, protest_ends
from kiosk.rounds.state import RoundState
from kiosk.settings import Paper, Task
from kiosk.texts import say
from kiosk.ui.presenters.result_words import task_short
from kiosk.ui.round_printing import Save

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may
    from kiosk.reports.practice import TeamAnswer  # brings reportlab along
    from kiosk.reports.results import ResultList
    from kiosk.reports.team_page import TeamPage


def result_list(state: RoundState, found: Results, place: str, now: datetime) -> Save:
    """The list of a division, as it stands now (UTC)."""

    def save(_store: Store, folder: Path, paper: Paper) -> Path:
        from kiosk.reports.round_papers import save_result_list  # brings reportlab along

        return save_result_list(list_of(state, found, place, now), folder, paper)

    return save


def team_pages(state: RoundState, found: Results, place: str) -> Save:
    """One page for each team of a division, best first."""

    def save(_store: Store, folder: Path, paper: Paper) -> Path:
        from kiosk.reports.round_papers import save_team_pages  # brings reportlab along

        pages = [page_of(state, found, row, place) for row in found.rows]
        return save_team_pages(pages, folder, paper)

    return save


def list_of(state: RoundState, found: Results, place: str, now: datetime) -> ResultList:
    """What the printed list says; times as this machine's clock shows them."""
    from kiosk.reports.results import Correction, ResultList, ResultRow

    ends = protest_ends(state, found.division)
    order = list(Task)
    return ResultList(
        round_name=state.plan.name,
        place=place,
        division=found.division,
        released=found.stage in (Stage.RELEASED, Stage.FINAL),
        final=found.stage is Stage.FINAL,
        at=now.astimezone(),
        protests_until=ends.astimezone() if ends else None,
        tasks=tuple(task_short(state, found.division, task) for task in order),
        rows=tuple(
            ResultRow(
                place=row.place,
                shared=row.shared,
                team=row.team.label,
                scores=tuple(
                    None if answered.estimate is None else points
                    for answered, points in zip(row.answered, row.scores, strict=True)
                ),
                total=row.total,
            )
            for row in found.rows
        ),
        best=found.best,
        median=found.median,
        medals=state.rules.medals,
        corrections=tuple(
            Correction(
                team=change.team.label if change.team else None,
                task=order.index(change.task),
                before=change.before,
                after=change.after,
                reason=change.reason,
            )
            for change in corrections(state, found)
        ),
        left=tuple(
            say("paper.results.left", team=team.label, reason=team.gone)
            for team in left_since_lock(state, found.division)
        ),
        decimals=state.rules.decimals,
        simulated=state.simulated,
    )


def page_of(state: RoundState, found: Results, row: Row, place: str) -> TeamPage:
    """What a team takes home."""
    from kiosk.reports.team_page import TeamPage

    return TeamPage(
        round_name=state.plan.name,
        place=place,
        division=found.division,
        team=row.team.label,
        standing=row.place,
        shared=row.shared,
        teams=len(found.rows),
        total=row.total,
        answers=team_answers(state, row),
        rules=state.rules,
        final=found.stage is Stage.FINAL,
        simulated=state.simulated,
    )


def team_answers(state: RoundState, row: Row) -> tuple[TeamAnswer, ...]:
    """A team's answers with the letters of their jars and boxes, in the order of tasks."""
    from kiosk.reports.practice import TeamAnswer
    from kiosk.reports.things import Thing

    things = {"mass": Thing.CUP, "count": Thing.JAR, "volume": Thing.BOX}
    made = []
    for answered, points in zip(row.answered, row.scores, strict=True):
        thing = things[answered.task.value.partition(" ")[0]]
        key = state.key(row.team.division, answered.task)
        number = str(row.team.cup) if thing is Thing.CUP and row.team.cup else ""
        made.append(
            TeamAnswer(
                thing=thing,
                label=key.letter if key else number,
                answer=answered.estimate,
                actual=answered.actual,
                points=points,
            )
        )
    return tuple(made)
