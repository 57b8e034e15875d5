"""The papers of a round, saved under names that say what they are."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from kiosk.reports.answer_sheet import AnswerSheet, answer_sheets
from kiosk.reports.day_points import DayList
from kiosk.reports.lists import day_list, helpers_card
from kiosk.reports.result_list import result_list
from kiosk.reports.results import ResultList
from kiosk.reports.saving import save_pdf
from kiosk.reports.sitting_list import SittingList, sitting_list
from kiosk.reports.team_page import TeamPage, team_pages
from kiosk.settings import Paper
from kiosk.texts import say

FORBIDDEN = '<>:"/\\|?*'  # in the names of files, on one system or another
LONGEST = 60  # of a name that a person typed


def save_answer_sheets(sheets: Sequence[AnswerSheet], folder: Path, paper: Paper) -> Path:
    """One page a team. PaperError if it is not saved, ValueError without a sheet."""
    data = answer_sheets(sheets, paper)
    name = say("paper.answers.file", name=_plain(sheets[0].round_name))
    return save_pdf(data, folder, name + _mark(sheets[0].simulated))


def save_day_list(day: DayList, folder: Path, paper: Paper) -> Path:
    """What to see to before a round. PaperError if it is not saved."""
    name = say("paper.day.file", name=_plain(day.round_name))
    return save_pdf(day_list(day, paper), folder, name)


def save_sitting_list(sitting: SittingList, folder: Path, paper: Paper) -> Path:
    """Who sits there, with boxes to tick. PaperError if it is not saved."""
    name = say(
        "paper.sitting.file", name=_plain(sitting.round_name), sitting=sitting.sitting
    ) + _mark(sitting.simulated)
    return save_pdf(sitting_list(sitting, paper), folder, name)


def save_helpers_card(folder: Path, paper: Paper) -> Path:
    """The page for a new helper. PaperError if it is not saved."""
    return save_pdf(helpers_card(paper), folder, say("paper.helper.file"))


def save_result_list(results: ResultList, folder: Path, paper: Paper) -> Path:
    """The list of a division. PaperError if it is not saved."""
    name = say("paper.results.file", name=_plain(results.round_name),
               division=_plain(results.division), state=results.state)  # fmt: skip
    return save_pdf(result_list(results, paper), folder, name + _mark(results.simulated))


def save_team_pages(teams: Sequence[TeamPage], folder: Path, paper: Paper) -> Path:
    """One page a team. PaperError if it is not saved, ValueError without a team."""
    data = team_pages(teams, paper)
    name = say("paper.team.file", name=_plain(teams[0].round_name))
    return save_pdf(data, folder, name + _mark(teams[0].simulated))


def _mark(simulated: bool) -> str:
    return say("paper.file.simulated") if simulated else ""


def _plain(name: str) -> str:
    """A name as part of the name of a file."""
    kept = "".join(c if c.isprintable() and c not in FORBIDDEN else " " for c in name)
    return " ".join(kept.split())[:LONGEST].strip(" .")
