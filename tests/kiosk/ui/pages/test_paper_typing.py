"""Sheets typed from paper, twice, by two people; what differs goes to the judge."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.store import Store
from kiosk.rounds.contents import Answer, Stage, Step, Typing
from kiosk.rounds.sheets import sheet_rows
from kiosk.rounds.typed_answers import Stand, sheet, typed
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView
from kiosk.ui.presenters.sheet_views import PaperView
from tests.helpers.room import press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import DIVISION, with_teams

SIX = ("250", "2500", "14000", "900", "2000", "3500")


@pytest.fixture
def room(tmp_path: Path) -> Room:
    room = room_of(Store(str(tmp_path / "records")), with_teams(["Wren", "Heron"]))
    room.open(HubPage(room))
    tap_row(room, "Answers")
    return room


def open_sheet(room: Room, by: str) -> None:
    if room.page.view().beside_home is not None:
        press(room, Person.UNDO)
        type_words(room, by)
        tap_row(room, "Wren")
    else:
        tap_row(room, "Wren")
        type_words(room, by)


def type_row(room: Room, digits: str) -> None:
    for digit in digits:
        press(room, Person.TYPE, digit)
    press(room, Person.ENTER)


def view(room: Room) -> PaperView:
    shown = room.page.view()
    assert isinstance(shown, PaperView)
    return shown


def first_time(room: Room) -> None:
    open_sheet(room, "KL")
    for digits in SIX:
        type_row(room, digits)


def stands(room: Room) -> list[Stand]:
    order = [row.task for row in sheet_rows(room.state, room.state.team("wren"))]
    found = {each.task: each.stand for each in sheet(room.state, "wren")}
    return [found[task] for task in order]


def test_a_sheet_typed_once_goes_back_to_the_list(room: Room) -> None:
    first_time(room)
    assert rows_of(room.page) == ["Wren", "Heron"]
    assert set(stands(room)) == {Stand.ONCE}


def test_the_first_typing_is_hidden_till_the_row_is_typed_again(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    rows = view(room).rows
    assert [(row.first, row.hidden) for row in rows] == [("", True)] * 6
    type_row(room, SIX[0])
    assert (view(room).rows[0].first, view(room).rows[0].state) == ("250", "done")


def test_two_typings_that_agree_settle_the_sheet(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    for digits in SIX:
        type_row(room, digits)
    assert set(stands(room)) == {Stand.AGREED}


def test_a_mismatch_is_looked_at_again_before_the_next_row(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    type_row(room, "520")
    shown = view(room)
    assert (shown.present, shown.rows[0].first) == (0, "250")
    assert shown.hint.startswith("The two differ")
    type_row(room, "250")
    assert (view(room).present, stands(room)[0]) == (1, Stand.AGREED)


def test_who_typed_wrong_the_first_time_is_corrected_with_a_trace(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    type_row(room, "520")
    press(room, Person.UNDO)
    task = sheet_rows(room.state, room.state.team("wren"))[0].task
    found = typed(room.state, "wren", task)
    assert (found.stand, found.value) == (Stand.AGREED, Decimal(520))
    history = room.state.history(f"answer wren {task} {Typing.FIRST}")
    assert [said.content.by for said in history] == ["KL", "MN"]  # type: ignore[attr-defined]


def test_what_stays_different_waits_for_the_judge_who_gives_a_reason(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    type_row(room, "520")
    press(room, Person.ENTER)  # the judge decides
    press(room, Person.NO)  # the second row cannot be read
    for digits in SIX[2:]:
        type_row(room, digits)
    assert stands(room)[:2] == [Stand.MISMATCH, Stand.UNREADABLE]
    press(room, Person.HOME)
    press(room, Person.KEEP)
    shown = room.page.view()
    assert isinstance(shown, RowsView)
    mismatch = next(row for row in shown.rows if "520" in row.note)
    assert mismatch.says is not None
    room.press(mismatch.says)
    tap_row(room, "520")
    type_words(room, "so it stands on paper")
    assert stands(room)[0] is Stand.DECIDED


def test_a_row_left_empty_is_blank_and_settled(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    press(room, Person.CHOOSE, 5)
    press(room, Person.ENTER)
    assert stands(room)[5] is Stand.MISMATCH  # it was not blank the first time


def test_a_number_beyond_the_public_limit_is_asked_about_and_taken(room: Room) -> None:
    open_sheet(room, "KL")
    type_row(room, "25000")
    assert "20\u2009000" in view(room).hint
    press(room, Person.ENTER)
    assert stands(room)[0] is Stand.ONCE


def test_the_same_typist_is_pointed_out(room: Room) -> None:
    first_time(room)
    tap_row(room, "Wren")
    assert room.page.view().title == "Did you type this sheet before?"


def test_after_the_lock_no_sheet_opens(room: Room) -> None:
    room.say(Step(division=DIVISION, stage=Stage.LOCKED))
    shown = room.page.view()
    assert isinstance(shown, RowsView)
    assert {row.says for row in shown.rows} == {None}


def test_a_row_that_was_typed_keeps_its_number_unless_another_is_typed(room: Room) -> None:
    open_sheet(room, "KL")
    type_row(room, "250")
    press(room, Person.CHOOSE, 0)
    press(room, Person.ENTER)
    task = sheet_rows(room.state, room.state.team("wren"))[0].task
    first = typed(room.state, "wren", task).first
    assert first is not None
    assert (first.estimate, view(room).present) == (Decimal(250), 1)
    press(room, Person.CHOOSE, 0)
    type_row(room, "26")
    changed = typed(room.state, "wren", task).first
    assert changed is not None
    assert changed.estimate == 26


def test_a_sheet_left_open_takes_nothing_once_the_results_are_locked(room: Room) -> None:
    open_sheet(room, "KL")
    room.say(Step(division=DIVISION, stage=Stage.LOCKED))
    type_row(room, "250")
    assert set(stands(room)) == {Stand.MISSING}
    assert view(room).hint.startswith("The results are locked")


def elsewhere(room: Room, place: int, estimate: int | None, typing: Typing = Typing.FIRST) -> None:
    """Another kiosk notes a row of the sheet, and this one follows."""
    other = Room(room.desk)
    other.read(room.state.id)
    task = sheet_rows(room.state, room.state.team("wren"))[place].task
    other.say(
        Answer(
            team="wren", task=task, typing=typing, by="XY",
            estimate=None if estimate is None else Decimal(estimate),
        )
    )  # fmt: skip
    room.follow()


def kept(room: Room, place: int) -> Decimal | None:
    task = sheet_rows(room.state, room.state.team("wren"))[place].task
    first = typed(room.state, "wren", task).first
    return None if first is None else first.estimate


def test_a_row_typed_elsewhere_stays_as_it_was_typed_there(room: Room) -> None:
    open_sheet(room, "KL")
    press(room, Person.TYPE, "2")
    elsewhere(room, 0, 250)
    shown = view(room)
    assert (shown.present, shown.rows[0].first) == (0, "250")
    assert shown.hint.startswith("This row was just typed elsewhere")
    type_row(room, "50")  # the rest of what was begun
    assert (kept(room, 0), kept(room, 1), view(room).present) == (Decimal(250), None, 1)


def test_a_row_left_blank_elsewhere_is_not_noted_again(room: Room) -> None:
    open_sheet(room, "KL")
    elsewhere(room, 0, None)
    shown = view(room)
    assert (shown.rows[0].first, shown.main and shown.main.text) == ("blank", "Next row")
    press(room, Person.ENTER)
    task = sheet_rows(room.state, room.state.team("wren"))[0].task
    assert len(room.state.history(f"answer wren {task} {Typing.FIRST}")) == 1


def test_a_row_typed_elsewhere_is_changed_after_a_tap_on_it(room: Room) -> None:
    open_sheet(room, "KL")
    elsewhere(room, 0, 250)
    press(room, Person.CHOOSE, 0)
    type_row(room, "260")
    assert kept(room, 0) == 260


@pytest.mark.parametrize("place", [2, 5], ids=["another row", "the last row"])
def test_other_rows_typed_elsewhere_take_no_digits_away(room: Room, place: int) -> None:
    open_sheet(room, "KL")
    press(room, Person.TYPE, "2")
    elsewhere(room, place, 77)
    type_row(room, "50")
    assert (kept(room, 0), kept(room, place)) == (Decimal(250), Decimal(77))


def test_following_what_was_noted_here_takes_no_digits_away(room: Room) -> None:
    open_sheet(room, "KL")
    type_row(room, "250")
    press(room, Person.CHOOSE, 0)
    press(room, Person.TYPE, "4")
    room.follow()
    room.read_again()
    type_row(room, "50")
    assert (kept(room, 0), kept(room, 1)) == (Decimal(450), None)


def test_a_sheet_opened_again_goes_on_where_it_was_left_before_what_differs(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    type_row(room, "520")
    press(room, Person.ENTER)  # the judge decides
    press(room, Person.HOME)
    tap_row(room, "Wren")
    assert view(room).present == 1
    for digits in SIX[1:]:
        type_row(room, digits)
    assert view(room).present == 0


def test_the_title_says_with_which_row_a_sheet_begins(room: Room) -> None:
    open_sheet(room, "KL")
    assert "begins with Jar 1" in view(room).title


def test_what_the_second_typist_changed_of_the_first_stands_beside_the_sheet(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    type_row(room, "520")
    press(room, Person.UNDO)
    task = sheet_rows(room.state, room.state.team("wren"))[0].task
    reason = room.state.history(f"answer wren {task} {Typing.FIRST}")[-1].content.reason  # type: ignore[attr-defined]
    assert ("250" in reason, "520" in reason) == (True, True)
    for digits in SIX[1:]:
        type_row(room, digits)
    shown = room.page.view()
    assert isinstance(shown, RowsView)
    assert (shown.rows[0].note, shown.rows[0].sign) == ("2nd look: 1 changed", "fine")


def test_the_judge_reads_jars_as_the_paper_calls_them_and_finds_nothing_chosen(room: Room) -> None:
    first_time(room)
    open_sheet(room, "MN")
    type_row(room, "520")
    press(room, Person.HOME)
    press(room, Person.KEEP)
    tap_row(room, "Wren, Jar 1")
    shown = room.page.view()
    assert isinstance(shown, RowsView)
    assert "Jar 1" in shown.title
    assert {row.look for row in shown.rows} == {"plain"}
