"""The results of a division from what is missing to the final list, by presses on its pages."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.evidence import Weighing
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person, Procedure
from kiosk.records.store import Store
from kiosk.rounds.contents import Answer, CupNote, CupTurn, KeptList, Stage, Step, Typing
from kiosk.rounds.standing import settled
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task, Weighed
from kiosk.ui.lock import digest_of
from kiosk.ui.pages.division_results import ResultsPage
from kiosk.ui.pages.kept_list import list_before
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.reckoning import AGAIN_S, Reckoning
from kiosk.ui.pages.results import results_page, stands
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView
from kiosk.ui.presenters.result_views import ResultsView
from kiosk.ui.presenters.team_result_views import TeamResultsView
from kiosk.ui.presenters.views import QuestionView
from tests.helpers.pan import memory
from tests.helpers.result_rounds import BIRDS, keys, played, with_other_division
from tests.helpers.room import press, room_of, rows_of, tap_row, type_words
from tests.helpers.round_notes import DIVISION, answer, said, with_teams
from tests.helpers.weighings import weighed

Open = Callable[[RoundState], Room]


@pytest.fixture
def opened(tmp_path: Path) -> Open:
    """Opens a round at its results."""

    def open_(state: RoundState) -> Room:
        room = room_of(Store(str(tmp_path / "records")), state)
        room.desk.procedure = None
        room.open(results_page(room))
        return room

    return open_


def rows(room: Room) -> RowsView:
    view = room.page.view()
    assert isinstance(view, RowsView)
    return view


def table(room: Room) -> ResultsView:
    view = room.page.view()
    assert isinstance(view, ResultsView)
    return view


def go_on(room: Room) -> None:
    """The next stage, and yes."""
    press(room, Person.GO_ON)
    press(room, Person.YES)


def later(room: Room, minutes: float) -> None:
    now = room.now_utc() + timedelta(minutes=minutes)
    room.now_utc = lambda: now  # type: ignore[method-assign]  # a clock of the test's own


RELEASED = (Stage.LOCKED, Stage.RELEASED)


def test_what_is_missing_stands_before_the_lock(opened: Open) -> None:
    room = opened(said(with_teams(BIRDS), *keys()))
    everybody = "Wren, Heron, Teal, Swift"
    assert [(row.text, row.note, row.value) for row in rows(room).rows] == [
        ("Sittings that are not over", "sitting 1", "1"),
        ("Cups neither handed in nor decided", everybody, "4"),
        ("Sheets not typed twice", everybody, "4"),
    ]
    go_on(room)
    assert room.state.stage(DIVISION) is Stage.OPEN


def test_many_missing_names_are_counted(opened: Open) -> None:
    room = opened(said(with_teams([f"Finch {number}" for number in range(9)]), *keys()))
    assert rows(room).rows[1].note.endswith("Finch 5 and 3 more")


def test_a_division_goes_from_open_to_final(opened: Open) -> None:
    room = opened(played(rules=Rules(protest_minutes=5)))
    assert rows_of(room.page) == ["Nothing is missing."]
    go_on(room)
    assert stands(room.state) == "locked"
    assert "Wall view" not in rows_of(room.page)
    go_on(room)
    assert stands(room.state) == "provisional"
    assert rows(room).body == "Provisional: protest time left 5:00."
    go_on(room)
    assert room.state.stage(DIVISION) is Stage.RELEASED  # the time is not over
    later(room, 6)
    go_on(room)
    assert room.state.stage(DIVISION) is Stage.FINAL
    assert rows(room).main is None


def test_the_judge_decides_about_a_cup_before_the_lock(opened: Open) -> None:
    state = with_teams(["Wren", "Heron"])
    room = opened(said(state, CupNote(team="wren", turn=CupTurn.SPILLED_AFTER)))
    press(room, Person.KEEP)
    assert [(row.text, row.note) for row in rows(room).rows] == [
        ("Wren", "spilled after it was handed in")
    ]
    tap_row(room, "Wren")
    type_words(room, "95,5")
    type_words(room, "swept together")
    assert settled(room.state, DIVISION)["wren"] == {Task.MASS: Decimal("95.5")}


def test_a_step_back_needs_a_reason(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    press(room, Person.UNDO)
    type_words(room, "a key is doubtful")
    assert room.state.stage(DIVISION) is Stage.LOCKED
    assert "a key is doubtful" in room.state.history(f"step {DIVISION}")[-1].note.content


def test_a_step_back_keeps_the_list_that_was_shown(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    press(room, Person.UNDO)
    type_words(room, "released by mistake")
    ((_, kept),) = room.state.kept_lists(DIVISION)
    assert (kept.why, len(kept.rows)) == ("a step back: released by mistake", len(BIRDS))
    press(room, Person.UNDO)
    type_words(room, "something was forgotten")
    assert len(room.state.kept_lists(DIVISION)) == 1  # nobody saw what was locked only


def test_several_divisions_are_asked_for(opened: Open) -> None:
    room = opened(with_other_division(played(steps=[Stage.LOCKED])))
    assert [(row.text, row.value) for row in rows(room).rows] == [
        ("Grades 4 to 6", "locked"), ("Grades 7 to 8", "not locked"),
    ]  # fmt: skip
    tap_row(room, "Grades 4 to 6")
    assert isinstance(room.page, ResultsPage)


# The table ------------------------------------------------------------------------------------


def test_the_table_tells_the_coach_how_safe_places_are(opened: Open) -> None:
    room = opened(played(percent="3", shares=(0.97, 1.031, 0.8, 0.5), steps=[Stage.LOCKED]))
    tap_row(room, "Result list")
    view = table(room)
    assert room.role is Role.COACH
    assert [(line.place, line.team, line.safe) for line in view.lines] == [
        ("1", "Wren", "1st or 2nd"), ("2", "Heron", "1st or 2nd"),
        ("3", "Teal", "safe"), ("4", "Swift", "safe"),
    ]  # fmt: skip
    assert view.advice == "A medal is not safe. Counting more of jar A would help most."


def test_tents_say_nothing_of_safe_places(opened: Open) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    tap_row(room, "Result list")
    press(room, Person.COVER)
    assert (table(room).tents, table(room).ranges) == (True, False)


def test_draws_are_made_once_for_a_state(opened: Open, monkeypatch: pytest.MonkeyPatch) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    asked: list[object] = []
    monkeypatch.setattr(room.desk.notebook, "glance", lambda query, done: asked.append(done))
    tap_row(room, "Result list")
    first = table(room)
    assert (table(room), len(asked)) == (first, 1)
    assert {line.safe for line in first.lines} == {""}  # not known yet; the scores are


def test_draws_that_were_dropped_are_made_after_a_while(
    opened: Open, monkeypatch: pytest.MonkeyPatch
) -> None:
    room, asked = opened(played(steps=[Stage.LOCKED])), list[object]()
    monkeypatch.setattr(room.desk.notebook, "glance", lambda _query, done: asked.append(done))
    reckoning, now = Reckoning(room, DIVISION), room.desk.world.now()
    for waited in (0, 1, AGAIN_S + 1):
        world = replace(room.desk.world, now=lambda: now + waited)  # noqa: B023  # used at once
        monkeypatch.setattr(room.desk, "world", world)
        assert not reckoning.best_known.drawn
    assert len(asked) == 2


def test_pages_of_the_table_name_the_next_places(opened: Open) -> None:
    room = opened(played([f"Finch{n}" for n in range(14)], steps=[Stage.LOCKED]))
    tap_row(room, "Result list")
    turn = table(room).turn
    assert turn is not None
    assert turn.text == "11 to 14"
    press(room, Person.MORE)
    assert len(table(room).lines) == 4


def test_the_wall_shows_no_ranges_and_turns_by_itself(opened: Open) -> None:
    room = opened(played([f"Finch{n}" for n in range(14)], steps=RELEASED))
    tap_row(room, "Wall view")
    assert room.role is Role.EVERYBODY
    assert {line.safe for line in table(room).lines} == {""}
    for now, shown in ((0.0, 10), (11.9, 10), (12.0, 4), (23.0, 4), (24.1, 10)):
        room.tick(now)
        assert len(table(room).lines) == shown


def test_the_wall_leads_back_behind_the_code(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    room.desk.lock.digest = digest_of("271828")
    tap_row(room, "Wall view")
    assert not room.desk.lock.open
    press(room, Person.HOME)
    assert room.role is Role.COACH


def test_a_team_sees_its_own_page(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    tap_row(room, "A team's page")
    tap_row(room, "Teal")
    view = room.page.view()
    assert isinstance(view, TeamResultsView)
    assert room.role is Role.EVERYBODY
    assert (view.title, view.place) == ("Teal", "4th of 4 teams")
    first = view.answers[0]
    assert (first.name, first.said, first.off, first.side_text) == (
        "Cup", "80.0 of 100", "20.0 %", "under",
    )  # fmt: skip
    assert view.practise


def test_pages_of_teams_are_printed_once_they_are_released(opened: Open) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    tap_row(room, "Print")
    assert rows_of(room.page) == ["Result list"]
    room.say(Step(division=DIVISION, stage=Stage.RELEASED))
    assert rows_of(room.page) == ["Result list", "Team pages"]


def test_what_is_final_offers_no_change(opened: Open) -> None:
    room = opened(played(steps=[*RELEASED, Stage.FINAL]))
    assert rows_of(room.page) == ["Result list", "A team's page", "Wall view", "Print"]


def test_a_release_points_out_another_round_with_the_same_jars(opened: Open) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    begun = said(with_teams(["Robin"]), *keys())
    other = room_of(room.desk.notebook.store, begun)  # type: ignore[attr-defined]
    press(room, Person.GO_ON)
    view = room.page.view()
    assert isinstance(view, QuestionView)
    assert f"are also in {other.state.plan.name}, which is not final" in view.body


def test_a_release_points_out_what_looks_like_a_slip(opened: Open) -> None:
    tenfold = answer("Teal", Task.COUNT_LOW, 4120, Typing.JUDGE)
    room = opened(said(played(), tenfold, Step(division=DIVISION, stage=Stage.LOCKED)))
    press(room, Person.GO_ON)
    view = room.page.view()
    assert isinstance(view, QuestionView)
    assert view.body.endswith("1 answer looks like a slip: see the hints first.")


# Corrections ----------------------------------------------------------------------------------


def test_a_correction_after_the_release_keeps_the_list_and_shows(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    later(room, 1)
    tap_row(room, "Correct an answer")
    tap_row(room, "Teal")
    tap_row(room, "jar A")
    type_words(room, "412")
    type_words(room, "the sheet says so")
    ((_, kept),) = room.state.kept_lists(DIVISION)
    assert kept.why == "Teal, jar A: the sheet says so"
    tap_row(room, "Result list")
    (teal,) = [line for line in table(room).lines if line.team == "Teal"]
    assert [mark.corrected for mark in teal.marks] == [False, True] + [False] * 5
    assert ("*", "corrected") in table(room).legend
    press(room, Person.HOME)
    tap_row(room, "Earlier lists")
    press(room, Person.CHOOSE, room.state.kept_lists(DIVISION)[0])
    earlier = table(room)
    assert [line.team for line in earlier.lines] == ["Wren", "Swift", "Heron", "Teal"]
    assert (earlier.lines[3].marks[1].points, earlier.advice) == ("80.1", kept.why)


def test_before_the_release_nobody_saw_a_list_to_keep(opened: Open) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    tap_row(room, "Correct an answer")
    tap_row(room, "Teal")
    tap_row(room, "box 1")
    type_words(room, "blank")
    type_words(room, "nothing on the sheet")
    assert room.state.kept_lists(DIVISION) == []
    judged = room.state.answer("teal", Task.VOLUME_1, Typing.JUDGE)
    assert judged is not None
    assert (judged.estimate, judged.reason) == (None, "nothing on the sheet")


@pytest.mark.parametrize("words", ["97.5", "-3", "two", "1e3", "007"])
def test_what_is_no_count_is_not_taken(opened: Open, words: str) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    tap_row(room, "Correct an answer")
    tap_row(room, "Teal")
    tap_row(room, "jar A")
    type_words(room, words)
    assert room.state.answer("teal", Task.COUNT_LOW, Typing.JUDGE) is None


def test_a_count_beyond_the_rules_is_asked_about(opened: Open) -> None:
    room = opened(played(steps=[Stage.LOCKED]))
    tap_row(room, "Correct an answer")
    tap_row(room, "Teal")
    tap_row(room, "jar A")
    type_words(room, "41200")
    press(room, Person.ENTER)
    type_words(room, "it says so")
    judged = room.state.answer("teal", Task.COUNT_LOW, Typing.JUDGE)
    assert judged is not None
    assert judged.estimate == 41200


def test_a_hint_leads_to_its_correction(opened: Open) -> None:
    tenfold = [
        Answer.model_validate(
            {"team": "teal", "task": Task.COUNT_LOW, "typing": typing, "estimate": 4120}
        )
        for typing in (Typing.FIRST, Typing.SECOND)
    ]
    state = said(played(), *tenfold)
    room = opened(state)
    go_on(room)
    tap_row(room, "Hints")
    (hint,) = rows(room).rows
    assert (hint.text, hint.note) == ("Teal, jar A: 4\u2009120", "about ten times too much")
    press(room, Person.CHOOSE, hint.says.value if hint.says else None)
    type_words(room, "412")
    type_words(room, "a zero too many")
    assert rows_of(room.page) == []


# Protests -------------------------------------------------------------------------------------


def protest(room: Room, against: str) -> None:
    tap_row(room, "Protests")
    press(room, Person.GO_ON)
    tap_row(room, "Teal")
    tap_row(room, against)
    type_words(room, "that is wrong")


def test_a_protest_opens_the_evidence_of_an_answer(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    protest(room, "jar C")
    assert rows(room).corner == "Score: 80.0 of 100"
    assert rows_of(room.page) == [
        "Typed first: 2\u2009810", "Typed second: 2\u2009810", "Key of jar C: 3\u2009512 pieces",
    ]  # fmt: skip
    assert rows(room).rows[2].note == "95 % sure: between 3\u2009483 and 3\u2009541"


def test_a_protest_opens_the_evidence_of_a_cup(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    protest(room, "cup")
    found = [(row.text, row.value) for row in rows(room).rows]
    assert found == [
        ("Cup 3, empty: 12.0 g", ""),
        ("Handed in: 92.0 g, inside 80.0 g", "counts"),
        ("Goal: 100 g", ""),
    ]


def test_a_protest_is_decided_with_a_reason(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    protest(room, "jar C")
    press(room, Person.GO_ON)
    tap_row(room, "refused")
    type_words(room, "the score stands")
    assert rows(room).body == "refused: the score stands"
    assert rows(room).main is None
    press(room, Person.HOME)
    assert [(row.text, row.value) for row in rows(room).rows] == [("Teal, jar C", "refused")]


def test_a_cup_is_weighed_again_and_both_masses_are_kept(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    running: list[Procedure] = []
    room.desk.memory = memory()
    room.desk.run = running.append  # type: ignore[method-assign, assignment]  # no desk
    protest(room, "cup")
    press(room, Person.STAY)
    (procedure,) = running
    assert isinstance(procedure, CupQueue)
    assert [cup.team.team for cup in procedure.list.pending] == ["teal"]
    again: Weighing = weighed("93.0")
    note = procedure.list.note(CupTurn.FILLED, at=room.now_utc(), weighing=again)
    assert procedure.list.pending == []
    room.take([note])
    assert [row.value for row in rows(room).rows] == [
        "", "counts", "counts if the protest is accepted", "",
    ]  # fmt: skip
    assert not room.state.kept_lists(DIVISION)


def weighed_in_protest(room: Room, grams: str = "93.0") -> None:
    """The cup against whose mass Teal protests is weighed once more."""
    protest(room, "cup")
    (found,) = room.state.protests
    note = CupNote(team="teal", turn=CupTurn.FILLED, protest=found.protest)
    room.say(note, weighing=weighed(grams))


def decide(room: Room, how: str) -> None:
    press(room, Person.GO_ON)
    tap_row(room, how)
    type_words(room, "weighed again")


@pytest.mark.parametrize(
    ("grams", "how", "values", "kept"),
    [
        ("93.0", "accepted", ["", "", "counts", ""], 1),
        ("93.0", "refused", ["", "counts", "the protest was refused", ""], 0),
        ("92.0", "accepted", ["", "", "counts", ""], 0),
    ],
)
def test_the_list_is_kept_only_where_the_decision_changes_it(
    opened: Open, grams: str, how: str, values: list[str], kept: int
) -> None:
    room = opened(played(steps=RELEASED))
    weighed_in_protest(room, grams)
    decide(room, how)
    assert [row.value for row in rows(room).rows] == values
    assert len(room.state.kept_lists(DIVISION)) == kept
    assert rows(room).beside_home is None  # nothing is weighed after the decision


@pytest.mark.parametrize(
    ("counts", "value", "notes"),
    [
        (Weighed.LAST, "counts if the protest is accepted", ["81.0 g counts", "80.0 g stays"]),
        (
            Weighed.FIRST,
            "the rules let the first count",
            ["80.0 g counts: by the rules the first mass", "80.0 g stays"],
        ),
    ],
)
def test_the_decision_says_which_mass_will_count(
    opened: Open, counts: Weighed, value: str, notes: list[str]
) -> None:
    room = opened(played(rules=Rules(weighed_again=counts), steps=RELEASED))
    weighed_in_protest(room)
    assert rows(room).rows[2].value == value
    press(room, Person.GO_ON)
    assert [row.note for row in rows(room).rows] == notes


def test_protests_of_final_results_can_only_be_read(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    protest(room, "cup")
    room.say(Step(division=DIVISION, stage=Stage.FINAL))
    view = rows(room)
    assert (view.main, view.second, view.beside_home) == (None, None, None)
    assert view.body.endswith("These results are final. A step back in Results opens them.")
    press(room, Person.HOME)
    assert (rows(room).main, len(rows(room).rows)) == (None, 1)


def test_a_key_that_is_changed_after_the_release_keeps_the_list(opened: Open) -> None:
    room = opened(played(steps=RELEASED))
    (kept,) = list_before(room, DIVISION, "jar A, another key: counted again")
    assert isinstance(kept, KeptList)
    assert [row.label for row in kept.rows] == ["Wren", "Swift", "Heron", "Teal"]
