"""Which keys are in a round."""

from __future__ import annotations

from decimal import Decimal

from kiosk.rounds.bound import in_a_round
from kiosk.rounds.contents import BoundKey, Stage, Step
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
