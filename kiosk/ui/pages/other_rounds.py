"""Other rounds that use the same jars and boxes: what is released here tells their real values."""

from __future__ import annotations

from typing import TYPE_CHECKING

from kiosk.rounds.bound import TOLD_BY, in_a_round
from kiosk.rounds.contents import BoundKey
from kiosk.rounds.state import RoundState
from kiosk.texts import say

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


def rounds_with_its_keys(store: Store, state: RoundState, division: str) -> list[str]:
    """The names of other rounds that are not final and use a key of that division."""
    mine = {key.key_id for key in state.all_latest(BoundKey) if key.division == division}
    others = [
        RoundState.of(store.round_notes(each.id, kinds=TOLD_BY))
        for each in store.rounds(state.simulated)
        if each.id != state.id
    ]
    return [
        other.plan.name if other.readable else say("rounds.newer")
        for other in others
        if mine & in_a_round([other])
    ]
