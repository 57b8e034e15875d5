"""Which keys are in a round."""

from __future__ import annotations

from decimal import Decimal

from kiosk.rounds.bound import TOLD_BY, in_a_round
from kiosk.rounds.contents import BoundKey, Stage, Step
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from tests.helpers.round_notes import DIVISION, said, with_teams


def bound(key_id: str) -> BoundKey:
    return BoundKey(
        division=DIVISION, task=Task.COUNT_LOW, key_id=key_id, letter="A",
        actual=Decimal(400), half_width_percent=Decimal(1),
    )  # fmt: skip


def test_a_bound_key_is_in_a_round_till_its_results_are_final() -> None:
    state = said(with_teams(["Wren"]), bound("a"))
    assert in_a_round([state]) == {"a"}
    assert in_a_round([said(state, Step(division=DIVISION, stage=Stage.FINAL))]) == set()


def test_a_key_that_was_replaced_is_free() -> None:
    assert in_a_round([said(with_teams(["Wren"]), bound("a"), bound("b"))]) == {"b"}


def test_a_part_of_the_notes_tells_it() -> None:
    state = said(with_teams(["Wren"]), bound("a"), Step(division=DIVISION, stage=Stage.LOCKED))
    kept = (each for chain in state.chains.values() for each in chain)
    notes = [each.note for each in kept if each.content.KIND in TOLD_BY]  # one chain a thing
    part = RoundState.of(notes)
    assert part.length == 3
    assert in_a_round([part]) == {"a"}
