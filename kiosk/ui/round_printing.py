"""The papers of a round, made and saved in the writer's thread."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from kiosk.reports.day_points import DayList
from kiosk.rounds.sheets import sheet_number, sheet_rows, team_code
from kiosk.rounds.state import RoundState
from kiosk.settings import Paper
from kiosk.texts import say

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may

Save = Callable[["Store", Path, Paper], Path]


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """Where a paper is and a sentence that says so; without a file the sentence says why not."""

    file: Path | None
    words: str


def make(store: Store, save: Save, paper: Paper) -> Made:
    """Make one, among the documents of whoever runs the kiosk."""
    from kiosk.reports.saving import PaperError, papers_folder

    try:
        file = save(store, papers_folder(), paper)
    except PaperError as error:
        return Made(file=None, words=str(error))
    return Made(file=file, words=say("papers.saved_in", folder=file.parent))


def answer_sheets(state: RoundState, sitting: int, place: str) -> Save:
    """One page for each team of that sitting."""

    def save(_store: Store, folder: Path, paper: Paper) -> Path:
        from kiosk.reports.answer_sheet import AnswerSheet, Asked  # brings reportlab along
        from kiosk.reports.round_papers import save_answer_sheets
        from kiosk.reports.things import Thing

        sheets = [
            AnswerSheet(
                round_name=state.plan.name,
                place=place,
                division=team.division,
                sitting=sitting,
                team=team.label,
                number=sheet_number(state, team.team),
                cup=str(team.cup or ""),
                asked=tuple(
                    Asked(thing=Thing(row.thing.value), label=row.label)
                    for row in sheet_rows(state, team)
                ),
                rules=state.rules,
                minutes=state.rules.minutes + team.extra_minutes,
                simulated=state.simulated,
                code=team_code(state.id, team.team) if state.rules.teams_type else "",
            )
            for team in state.teams_of(sitting=sitting)
        ]
        return save_answer_sheets(sheets, folder, paper)

    return save


def sitting_list(state: RoundState, sitting: int, place: str) -> Save:
    """Who sits there."""

    def save(_store: Store, folder: Path, paper: Paper) -> Path:
        from kiosk.reports.round_papers import save_sitting_list  # brings reportlab along
        from kiosk.reports.sitting_list import SittingList, SittingTeam

        teams = tuple(
            SittingTeam(
                number=sheet_number(state, team.team),
                team=team.label,
                cup=str(team.cup or ""),
                minutes=state.rules.minutes + team.extra_minutes,
            )
            for team in state.teams_of(sitting=sitting)
        )
        found = SittingList(
            round_name=state.plan.name,
            place=place,
            sitting=sitting,
            minutes=state.rules.minutes,
            teams=teams,
            simulated=state.simulated,
        )
        return save_sitting_list(found, folder, paper)

    return save


def day_list(read: Callable[[Store], DayList]) -> Save:
    """What is to be seen to, as the records have it."""

    def save(store: Store, folder: Path, paper: Paper) -> Path:
        from kiosk.reports.round_papers import save_day_list  # brings reportlab along

        return save_day_list(read(store), folder, paper)

    return save


def helpers_card(_store: Store, folder: Path, paper: Paper) -> Path:
    """The page for a new helper."""
    from kiosk.reports.round_papers import save_helpers_card  # brings reportlab along

    return save_helpers_card(folder, paper)
