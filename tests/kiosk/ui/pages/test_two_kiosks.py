"""Two kiosks in one round: what stood open at one never writes over what the other decided."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.procedures.procedure import Person
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.store import Store
from kiosk.rounds.contents import Answer, ClockTurn, Content, Protest, Stage, Step, Typing
from kiosk.rounds.state import RoundState
from kiosk.settings import Over, Task
from kiosk.ui.pages.clock import ClockPage
from kiosk.ui.pages.division_results import ResultsPage
from kiosk.ui.pages.evidence import EvidencePage
from kiosk.ui.pages.judging import JudgePage
from kiosk.ui.pages.one_team import TeamPage
from kiosk.ui.pages.page import Page
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.rules import RulesPage, TieBreakPage
from kiosk.ui.pages.teams import TeamsPage
from kiosk.ui.presenters.page_views import RowsView
from tests.helpers.result_rounds import BIRDS, keys, over, played
from tests.helpers.room import BareDesk, press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import DIVISION, answer, said, team, with_teams

READS = 999  # what one typing says and the other does not


class Two:
    """Rooms of two kiosks on the same records, with the same round open."""

    def __init__(self, folder: Path, state: RoundState) -> None:
        store = Store(str(folder / "records"))
        self.here, self.there = room_of(store, state), Room(BareDesk(store))  # type: ignore[arg-type]
        self.there.read(state.id)
        for room in (self.here, self.there):
            room.desk.procedure = None

    def open(self, page: type[Page], *values: object) -> None:
        """Open that page here."""
        self.here.open(page(self.here, *values))

    def there_says(self, *contents: Content) -> None:
        """The other kiosk notes these, and this one follows, whatever is open."""
        self.there.say(*contents)
        self.here.follow()

    def refused(self) -> Problem:
        """Why the records do not take what is typed here as a reason now."""
        with pytest.raises(RecordsError) as told:
            type_words(self.here, "seen on paper")
        return told.value.problem


def body(room: Room) -> str:
    view = room.page.view()
    assert isinstance(view, RowsView)
    return view.body


def judged(estimate: int) -> Answer:
    return answer("Wren", Task.COUNT_LOW, estimate, Typing.JUDGE)


def test_an_answer_to_an_old_question_is_refused(tmp_path: Path) -> None:
    two = Two(tmp_path, said(played(), answer("Wren", Task.COUNT_LOW, READS, Typing.SECOND)))
    two.open(JudgePage)
    press(two.here, Person.CHOOSE, ("wren", Task.COUNT_LOW))
    tap_row(two.here, "999")
    two.there_says(judged(400))
    assert two.refused() is Problem.LOST_RACE
    two.here.read_again()
    assert two.here.state.answer("wren", Task.COUNT_LOW, Typing.JUDGE) == judged(400)


def test_a_question_that_was_asked_since_is_answered(tmp_path: Path) -> None:
    two = Two(tmp_path, with_teams(BIRDS))
    two.there_says(two.there.state.team("wren").model_copy(update={"members": 3}))
    two.open(TeamPage, "wren")
    tap_row(two.here, "Absent today")
    tap_row(two.here, "1")
    found = two.here.state.team("wren")
    assert (found.members, found.absent) == (3, 1)


def test_a_team_that_left_while_it_was_asked_for_is_no_trouble(tmp_path: Path) -> None:
    two = Two(tmp_path, played(steps=(Stage.LOCKED, Stage.RELEASED)))
    two.open(ResultsPage, DIVISION)
    wren = two.there.state.team("wren").model_copy(update={"gone": "ill", "reason": "ill"})
    for row in ("Correct an answer", "A team's page"):
        tap_row(two.here, row)
        two.there.read_again()
        two.there_says(wren.model_copy(update={"reason": row}))
        press(two.here, Person.CHOOSE, "wren")
        assert isinstance(two.here.page, ResultsPage)


def test_a_protest_is_decided_once(tmp_path: Path) -> None:
    protest = Protest(protest="p", team="wren", task=Task.COUNT_LOW)
    two = Two(tmp_path, said(played(steps=(Stage.LOCKED, Stage.RELEASED)), protest))
    two.open(EvidencePage, "p")
    press(two.here, Person.GO_ON)
    tap_row(two.here, "refused")
    two.there_says(protest.model_copy(update={"accepted": True, "reason": "3 is an 8"}))
    assert two.refused() is Problem.LOST_RACE


def test_nothing_is_locked_that_became_doubtful_while_it_was_asked(tmp_path: Path) -> None:
    two = Two(tmp_path, played())
    two.open(ResultsPage, DIVISION)
    press(two.here, Person.GO_ON)
    two.there_says(answer("Wren", Task.COUNT_LOW, READS, Typing.SECOND))
    press(two.here, Person.YES)
    assert two.here.state.stage(DIVISION) is Stage.OPEN
    assert len(rows_of(two.here.page)) == 1


def test_a_step_that_another_kiosk_made_is_not_made_again(tmp_path: Path) -> None:
    two = Two(tmp_path, played())
    two.open(ResultsPage, DIVISION)
    press(two.here, Person.GO_ON)
    two.there_says(Step(division=DIVISION, stage=Stage.LOCKED))
    press(two.here, Person.YES)
    assert len(two.here.state.history(f"step {DIVISION}")) == 1


def test_a_rule_that_was_asked_for_before_the_start_stays_as_it_was(tmp_path: Path) -> None:
    two = Two(tmp_path, with_teams(BIRDS))
    two.open(RulesPage)
    tap_row(two.here, "Over the real number")
    two.there_says(*over())
    with pytest.raises(RecordsError) as told:
        press(two.here, Person.CHOOSE, Over.MIRRORED)
    assert told.value.problem is Problem.ROUND_FROZEN


def test_a_tie_break_is_not_tapped_any_more_after_the_start(tmp_path: Path) -> None:
    two = Two(tmp_path, with_teams(BIRDS))
    two.open(TieBreakPage)
    two.there_says(*over())
    view = two.here.page.view()
    assert isinstance(view, RowsView)
    assert {row.says for row in view.rows} == {None}


def test_a_clock_that_was_stopped_meanwhile_takes_no_reason_for_its_pause(tmp_path: Path) -> None:
    two = Two(tmp_path, said(with_teams(BIRDS), *keys(), over()[0]))
    two.open(ClockPage, 1)
    press(two.here, Person.STAY)
    two.there.follow()
    two.there_says(over()[1])
    type_words(two.here, "fire alarm")
    assert [note.turn for _, note in two.here.state.clock_notes(1)] == [
        ClockTurn.START, ClockTurn.PAUSE, ClockTurn.STOP,
    ]  # fmt: skip


def test_a_number_that_two_kiosks_gave_is_pointed_out_and_mended(tmp_path: Path) -> None:
    two = Two(tmp_path, with_teams(BIRDS))
    two.open(TeamsPage)
    two.there_says(team("Robin", cup=4))
    assert body(two.here) == "Sitting 1: two teams have cup 4. In Teams, give one of them another."
    tap_row(two.here, "Robin")
    tap_row(two.here, "Number on the cup")
    tap_row(two.here, "5")
    press(two.here, Person.HOME)
    assert body(two.here) == "A label is enough: no names of children."


def test_a_label_that_two_kiosks_gave_is_pointed_out(tmp_path: Path) -> None:
    two = Two(tmp_path, with_teams(BIRDS))
    two.open(TeamsPage)
    two.there_says(team("wren", cup=5).model_copy(update={"team": "another"}))
    assert body(two.here).startswith("Two teams are called Wren.")
