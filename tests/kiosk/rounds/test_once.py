"""What is found out about a state is found once, and anew for the next state."""

from __future__ import annotations

import pytest

from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from tests.helpers.round_notes import said, team, with_teams


def test_each_state_is_asked_once_for_each_argument() -> None:
    asked: list[tuple[int, int]] = []

    @once
    def longer(state: RoundState, by: int, *, times: int = 1) -> int:
        asked.append((state.length, by))
        return state.length + by * times

    state = with_teams(["Wren"])
    assert [longer(state, 1), longer(state, 1), longer(state, 2), longer(state, 1, times=3)] == [
        3, 3, 4, 5,
    ]  # fmt: skip
    assert longer(said(state, team("Heron")), 1) == 4
    assert asked == [(2, 1), (2, 2), (2, 1), (3, 1)]


def test_what_could_not_be_found_is_looked_for_again() -> None:
    asked: list[int] = []

    @once
    def fails(state: RoundState) -> int:
        asked.append(state.length)
        raise KeyError("a key")

    state = with_teams(["Wren"])
    for _ in range(2):
        with pytest.raises(KeyError):
            fails(state)
    assert asked == [2, 2]
