"""A round is what its notes add up to."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kiosk.rounds.contents import ClockNote, ClockTurn, CupNote, CupTurn, Stage, Step, Typing
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from tests.helpers.pan import STARTED
from tests.helpers.round_notes import DIVISION, answer, opened, said, team, with_teams
from tests.helpers.weighings import weighed


def test_without_a_note_there_is_no_round() -> None:
    with pytest.raises(ValueError, match="opens"):
        RoundState.of([])


def test_notes_that_went_through_the_records_make_the_same_round() -> None:
    state = said(with_teams(["Wren", "Heron"]), answer("Wren", Task.COUNT_LOW, "240"))
    notes = [one.note for chain in state.chains.values() for one in chain]
    assert RoundState.of(notes) == state


@pytest.mark.parametrize(
    "other",
    [
        {"kind": "prize"},
        {"content": '{"division": "Grades 4 to 6", "stage": "audited"}'},
        {"content": "[]"},
        {"about": "step Grades 7 to 8"},
    ],
    ids=lambda other: next(iter(other.items())),
)
def test_what_a_newer_version_wrote_is_counted_only(other: dict[str, str]) -> None:
    state = with_teams(["Wren"])
    step = state.next_note(
        Step(division=DIVISION, stage=Stage.LOCKED), at=STARTED, new_id=lambda: "b" * 32
    )
    newer = replace(step, **other)  # type: ignore[arg-type]  # all of them are texts
    found = state.with_notes([newer, newer])
    assert found.unread == {newer.id: state.length}
    assert (found.stage(DIVISION), found.last) == (Stage.OPEN, newer.id)
    after = said(found, team("Heron")).history("team heron")
    assert [one.place for one in after] == [state.length + 1]
    assert state.with_note(newer).up_to(state.length - 1).unread == {}


def test_a_team_that_is_renamed_keeps_its_answers() -> None:
    state = said(with_teams(["Wren"]), answer("Wren", Task.COUNT_LOW, "240"))
    state = said(state, state.team("wren").model_copy(update={"label": "Wrens"}))
    (found,) = state.teams
    kept = state.answer(found.team, Task.COUNT_LOW, Typing.FIRST)
    assert (found.label, kept and kept.estimate) == ("Wrens", Decimal(240))


def test_who_is_gone_takes_no_part() -> None:
    state = said(with_teams(["Wren", "Heron"]), team("Wren", gone="ill"))
    assert [one.label for one in state.teams] == ["Heron"]
    assert [one.label for one in state.everybody] == ["Wren", "Heron"]


def test_who_is_gone_before_the_start_freezes_no_key() -> None:
    start = ClockNote(sitting=1, turn=ClockTurn.START)
    assert not said(with_teams(["Wren"]), team("Wren", gone="ill"), start).division_begun(DIVISION)
    assert said(with_teams(["Wren"]), start, team("Wren", gone="ill")).division_begun(DIVISION)


def test_divisions_stand_as_in_the_rules_and_unknown_ones_behind() -> None:
    state = said(opened(), team("Wren", division="Guests"), team("Heron", division="Grades 7 to 8"))
    assert state.divisions == ["Grades 7 to 8", "Guests"]


def test_each_note_follows_the_one_before_about_the_same_thing() -> None:
    state = said(with_teams(["Wren"]), Step(division=DIVISION, stage=Stage.LOCKED))
    state = said(state, Step(division=DIVISION, stage=Stage.OPEN, reason="a sheet was found"))
    first, second = (one.note for one in state.history(f"step {DIVISION}"))
    assert (first.after, second.after) == ("", first.id)
    assert state.stage(DIVISION) is Stage.OPEN


def test_what_was_undone_does_not_count_but_stays() -> None:
    state = said(
        with_teams(["Wren"]), CupNote(team="wren", turn=CupTurn.EMPTY), weighing=weighed("12.3")
    )
    state = said(state, CupNote(team="wren", turn=CupTurn.FILLED), weighing=weighed("112.5"))
    state = said(state, CupNote(team="wren", turn=CupTurn.UNDONE))
    assert [content.turn for _, content in state.cup_notes("wren")] == [CupTurn.EMPTY]
    assert len(state.history("cup wren")) == 3


def test_it_can_be_seen_as_it_was() -> None:
    state = with_teams(["Wren", "Heron"])
    earlier = state.up_to(1)
    assert [team.label for team in earlier.teams] == ["Wren"]
    assert state.with_note(state.history("team wren")[0].note) == state
    assert earlier.with_notes([state.history("team heron")[0].note]) == state
