"""What cannot be written down is not shown as captured; "Try again" writes it once and goes on."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from kiosk.evidence import Source
from kiosk.procedures.count_samples import SamplesState
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands
from tests.helpers.sqlite_files import some_records

EMPTY_G, FILLED_G = 12.3, 105.7
REST_S = 2.0


class Drive:
    """The drive with the records file: pulled out, and put back."""

    def __init__(self, records: Path) -> None:
        self._records = records
        self._away = records.with_suffix(".away")

    def pull(self) -> None:
        self._records.rename(self._away)

    def put_back(self) -> None:
        self._away.rename(self._records)


@pytest.fixture
def drive(journey: Journey) -> Drive:
    return Drive(journey.records)


def fail_to_weigh(journey: Journey, drive: Drive) -> None:
    journey.ask_for_cup()
    drive.pull()
    journey.put(EMPTY_G)
    journey.until_title("Not written down yet.")


def fail_to_score(journey: Journey, drive: Drive) -> None:
    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    drive.pull()
    journey.put(FILLED_G)
    journey.until_title("Not written down yet.")


def fail_to_keep_a_sample(journey: Journey, drive: Drive) -> None:
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    hands.lay_sample()
    drive.pull()
    hands.keep()
    journey.until_title("Not written down yet.")


FAILING: dict[str, Callable[[Journey, Drive], None]] = {
    "cups_taken": fail_to_weigh,
    "cups_handed_in": fail_to_score,
    "key_masses": fail_to_keep_a_sample,
}


@pytest.mark.parametrize("table", FAILING)
def test_the_screen_says_why_and_what_to_do(journey: Journey, drive: Drive, table: str) -> None:
    FAILING[table](journey, drive)
    assert "cannot be written. See that its drive is plugged in" in journey.seen
    assert "Nothing more is weighed." in journey.seen


@pytest.mark.parametrize("table", FAILING)
def test_try_again_writes_it_once(journey: Journey, drive: Drive, table: str) -> None:
    FAILING[table](journey, drive)
    drive.put_back()
    before = journey.rows(table)
    journey.tap("Try again")
    journey.wait(1.0)
    assert journey.rows(table) == before + 1
    assert journey.title != "Not written down yet."


@pytest.mark.parametrize("table", FAILING)
def test_try_again_before_it_helps_leaves_the_screen_as_it_is(
    journey: Journey, drive: Drive, table: str
) -> None:
    FAILING[table](journey, drive)
    journey.tap("Try again")
    journey.wait(0.5)
    assert journey.title == "Not written down yet."
    drive.put_back()
    before = journey.rows(table)
    journey.tap("Try again")
    journey.wait(0.5)
    assert journey.rows(table) == before + 1


def test_a_cup_that_is_not_written_down_is_not_shown_as_weighed(
    journey: Journey, drive: Drive
) -> None:
    shown = titles_of(journey)
    fail_to_weigh(journey, drive)
    assert [title for title in shown if "weighs" in title] == []


def test_a_score_that_is_not_written_down_is_not_shown(journey: Journey, drive: Drive) -> None:
    shown = titles_of(journey)
    fail_to_score(journey, drive)
    assert [title for title in shown if "scored" in title] == []
    assert journey.scene.pan.phase != "captured"


def titles_of(journey: Journey) -> list[str]:
    """The titles of all sheets that are shown from now on."""
    shown: list[str] = []
    frame = journey.kiosk.frame
    show = frame.show

    def note(view: object) -> None:
        shown.append(str(getattr(view, "title", "")))
        show(view)

    frame.show = note
    return shown


def test_after_it_the_cup_goes_on_to_its_score(journey: Journey, drive: Drive) -> None:
    fail_to_weigh(journey, drive)
    drive.put_back()
    journey.tap("Try again")
    journey.until_title("Cup 1 weighs 12.3 g.")
    journey.bench.lift()
    journey.until_screen("take cup")
    journey.tap("Home")
    journey.tap("Leave")
    journey.tap("1")
    journey.put(FILLED_G)
    journey.until_screen("score")


def test_a_cup_lifted_in_the_meantime_is_known_to_be_out(journey: Journey, drive: Drive) -> None:
    fail_to_weigh(journey, drive)
    journey.clear()
    drive.put_back()
    journey.tap("Try again")
    journey.until_screen("take cup")


def test_nothing_is_weighed_in_the_meantime(journey: Journey, drive: Drive) -> None:
    fail_to_weigh(journey, drive)
    journey.swap(90.0)
    journey.wait(REST_S)
    drive.put_back()
    journey.tap("Try again")
    journey.wait(REST_S)
    assert journey.kept("SELECT grams FROM weighings") == [("12.3",)]


def test_the_score_comes_with_the_tries_it_belongs_to(journey: Journey, drive: Drive) -> None:
    fail_to_score(journey, drive)
    drive.put_back()
    journey.tap("Try again")
    journey.until_screen("score")
    assert [round(error) for error in journey.score.errors] == [-7]


def test_the_key_goes_on_with_its_next_sample(journey: Journey, drive: Drive) -> None:
    fail_to_keep_a_sample(journey, drive)
    drive.put_back()
    journey.tap("Try again")
    journey.wait(0.5)
    assert getattr(journey.desk.procedure, "state", None) is SamplesState.ADD


def test_home_leads_nowhere_while_something_waits(journey: Journey, drive: Drive) -> None:
    fail_to_weigh(journey, drive)
    journey.kiosk.home()
    journey.wait(0.5)
    assert journey.title == "Not written down yet."


def test_a_full_disk_is_named(journey: Journey, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(store: Store, *_entries: object) -> None:
        raise RecordsError(Problem.FULL, where=store.where)

    journey.ask_for_cup()
    with monkeypatch.context() as patch:
        patch.setattr(Store, "save", full)
        journey.put(EMPTY_G)
        journey.until_title("Not written down yet.")
        assert "is full. Make room on it, then try again." in journey.seen
    journey.tap("Try again")
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_after_a_full_disk_the_score_is_among_the_last_tries(
    journey: Journey, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(store: Store, *_entries: object) -> None:
        raise RecordsError(Problem.FULL, where=store.where)

    journey.take_cup(grams=EMPTY_G)
    journey.tap("1")
    with monkeypatch.context() as patch:
        patch.setattr(Store, "save", full)
        journey.put(FILLED_G)
        journey.until_title("Not written down yet.")
    journey.tap("Try again")
    journey.until_screen("score")
    assert [round(error) for error in journey.score.errors] == [-7]


def fail_to_get_a_number(journey: Journey, drive: Drive) -> None:
    journey.tap("Fill a cup")
    drive.pull()
    journey.tap("Heron")
    journey.until_title("That did not work.")


def test_a_number_that_cannot_be_read_is_asked_for_again(journey: Journey, drive: Drive) -> None:
    fail_to_get_a_number(journey, drive)
    drive.put_back()
    journey.tap("Try again")
    journey.until_screen("put on")


def test_where_nothing_was_captured_home_leads_home(journey: Journey, drive: Drive) -> None:
    fail_to_get_a_number(journey, drive)
    drive.put_back()
    journey.tap("Home")
    journey.until_screen("home")


def test_with_all_numbers_out_cups_can_still_be_handed_in(start: Callable[..., Journey]) -> None:
    journey = start()
    some_records(str(journey.records), cups=99, source=Source.SIMULATED)
    journey = start()
    journey.tap("Fill a cup")
    journey.tap("Wren")
    journey.until_title("That did not work.")
    assert "All 99 cup numbers are out." in journey.seen
    journey.tap("Home")
    journey.tap("1")
    journey.put(FILLED_G)
    journey.until_screen("score")


def test_a_number_that_another_kiosk_took_meanwhile_is_told_and_left(journey: Journey) -> None:
    journey.ask_for_cup()
    some_records(str(journey.records), cups=1, source=Source.SIMULATED)
    journey.put(EMPTY_G)
    journey.until_title("That did not work.")
    assert "Cup 1 is out already." in journey.seen
    journey.tap("Home")
    journey.until_screen("home")
    assert [cup.number for cup in journey.desk.facts.cups] == [1]


def test_a_score_written_late_is_shown_though_the_next_cup_lies_there(
    journey: Journey, drive: Drive
) -> None:
    journey.take_cup("Wren", 14.1)
    journey.take_cup("Heron", EMPTY_G)
    journey.tap("2")
    drive.pull()
    journey.put(FILLED_G)
    journey.until_title("Not written down yet.")
    journey.swap(110.0)
    journey.wait(REST_S)
    drive.put_back()
    journey.tap("Try again")
    journey.until_screen("score")
    assert journey.score.points == "93.4"
