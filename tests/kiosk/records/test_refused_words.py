"""What was refused is named so that whoever captured it finds it again."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.records.refused_words import Content, described
from kiosk.records.round_notes import RoundNote
from kiosk.rounds.contents import Answer, ClockNote, ClockTurn, CupNote, CupTurn, Typing
from kiosk.rounds.contents import Content as Said
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from tests.helpers.recorded import cup_taken, handed_in
from tests.helpers.result_rounds import keys
from tests.helpers.round_notes import answer, said, with_teams
from tests.helpers.weighings import weighed

STATE = said(with_teams(["Wren"]), *keys())


def last(round_id: str, about: str) -> Content | None:
    """What `STATE` says last."""
    assert round_id == STATE.id
    chain = STATE.history(about)
    return chain[-1].content.model_dump() if chain else None


def note(content: Said, grams: str = "", state: RoundState = STATE) -> RoundNote:
    """The next note of the round, with a mass and the empty pan before it."""
    mass, zero = (weighed(grams), weighed("0.0")) if grams else (None, None)
    found = said(state, content, weighing=mass, zero=zero)
    return found.history(content.about)[-1].note


def typed(task: Task, estimate: object) -> Answer:
    return answer("Wren", task, estimate, Typing.SECOND)


CUP = CupNote(team="wren", turn=CupTurn.FILLED)


@pytest.mark.parametrize(
    ("refused", "words"),
    [
        (note(CUP, "106.1"), "cup of Wren"),
        (note(CupNote(team="wren", turn=CupTurn.LATE)), "cup of Wren"),
        (note(typed(Task.COUNT_MIDDLE, 3400)), "Wren, jar C"),
        (note(typed(Task.VOLUME_1, Decimal(999))), "Wren, box 1"),
        (note(typed(Task.COUNT_LOW, None)), "Wren, jar A"),
        (note(ClockNote(sitting=2, turn=ClockTurn.STOP)), "clock of sitting 2"),
        (handed_in(cup_taken(7), "105.7"), "105.7 g"),
    ],
)
def test_it_is_named(refused: RoundNote, words: str) -> None:
    assert described([refused], last) == words


def test_an_answer_without_a_key_is_named_by_its_sheet() -> None:
    refused = note(typed(Task.COUNT_LOW, 400), state=with_teams(["Wren"]))
    team_only = {"team wren": {"label": "Wren", "division": "Any"}}
    assert described([refused], lambda _, about: team_only.get(about)) == "sheet of Wren"


def test_of_an_unknown_team_no_more_is_told() -> None:
    assert described([note(CUP, "106.1")], lambda *_: None) == "a note of a round"


def test_nothing_at_all_is_said_so() -> None:
    assert described([], last) == "no mass"
