"""The papers of a round from the screen: saved among the documents, printed if that can be."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.reports.printer import Sending, Sent
from kiosk.rounds.sheets import sheet_rows
from kiosk.ui.pages.papers import PapersPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView, RowView
from kiosk.ui.presenters.views import QuestionView
from tests.helpers.papers import words_on
from tests.helpers.room import press, room_of, tap_row
from tests.helpers.round_notes import opened, said, team

SHEETS = "Answer sheets, sitting 1"


@pytest.fixture
def documents(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr("kiosk.reports.saving.user_documents_path", lambda: tmp_path)
    return tmp_path / "Gramstand"


@pytest.fixture
def room(tmp_path: Path) -> Room:
    teams = (team("Wren", cup=4, extra_minutes=10), team("Heron"), team("Finch", sitting=2))
    return room_of(Store(str(tmp_path / "records")), said(opened(), *teams))


class Printer(Sending):
    """One that answers at the second look."""

    def __init__(self, file: Path, says: Sent) -> None:
        assert file.is_file()
        self._says: list[Sent | None] = [None, says]

    def look(self, now: float) -> Sent | None:
        return self._says.pop(0)


def at_papers(room: Room, says: Sent | None = None) -> None:
    """The page, beside a printer that says so, or without one."""

    def send(file: Path) -> Sending:
        assert says is not None
        return Printer(file, says)

    room.open(PapersPage(room, has_printer=lambda: says is not None, send=send))


def shown(room: Room) -> RowsView:
    view = room.page.view()
    assert isinstance(view, RowsView)
    return view


def row(room: Room, text: str) -> RowView:
    (found,) = [row for row in shown(room).rows if row.text == text]
    return found


def make(room: Room, text: str) -> None:
    tap_row(room, text)
    assert (shown(room).body, shown(room).home) == ("Making it.", None)
    room.tick(0)


def test_a_team_has_its_sheet_in_its_own_order(room: Room, documents: Path) -> None:
    at_papers(room)
    make(room, SHEETS)
    assert (row(room, SHEETS).sign, shown(room).body) == ("fine", f"Saved in {documents}")
    words = words_on((documents / row(room, SHEETS).note).read_bytes())
    wren = words[: words.index("Heron")]
    assert "Sheet 1" in wren
    assert "Cup 4" in wren
    assert "40 minutes" in wren
    rows = sheet_rows(room.state, room.state.team("wren"))
    labels = [f"{each.thing.title()} {each.label}" for each in rows]
    places = [wren.index(label) for label in labels]
    assert places == sorted(places)
    assert "Finch" not in words  # another sitting


@pytest.mark.parametrize(
    ("paper", "words"),
    [
        ("List of sitting 1", "Wren"),
        ("Day list", "3 cups, numbered"),
        ("Card for a helper", "You help today"),
    ],
)
def test_every_other_paper_is_made(room: Room, documents: Path, paper: str, words: str) -> None:
    at_papers(room)
    make(room, paper)
    assert words in words_on((documents / row(room, paper).note).read_bytes())


def test_without_keys_the_sheets_are_pointed_out(room: Room) -> None:
    at_papers(room)
    assert row(room, SHEETS).sign == "cannot tell"
    assert "no letters yet" in row(room, SHEETS).note


def test_what_cannot_be_saved_says_why(room: Room, documents: Path) -> None:
    documents.write_text("in the way")
    at_papers(room)
    make(room, SHEETS)
    asked = room.page.view()
    assert isinstance(asked, QuestionView)
    assert str(documents) in asked.body
    documents.unlink()
    press(room, Person.YES)
    room.tick(0)
    assert row(room, SHEETS).sign == "fine"


def test_without_a_printer_nothing_is_offered(room: Room, documents: Path) -> None:
    at_papers(room)
    make(room, "Day list")
    assert shown(room).main is None


def print_day_list(room: Room) -> None:
    make(room, "Day list")
    press(room, Person.PRINT)
    for _ in range(2):
        assert shown(room).body == "On its way to the printer."
        room.tick(0)


def test_what_is_printed_is_told(room: Room, documents: Path) -> None:
    at_papers(room, Sent(taken=True, words="It is in the queue."))
    print_day_list(room)
    assert shown(room).body == "It is in the queue."


def test_what_a_printer_refuses_is_asked_about(room: Room, documents: Path) -> None:
    at_papers(room, Sent(taken=False, words="No paper."))
    print_day_list(room)
    asked = room.page.view()
    assert isinstance(asked, QuestionView)
    assert asked.body == "No paper."
    press(room, Person.NO)
    assert row(room, "Day list").sign == "not fine"
