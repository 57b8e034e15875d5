"""Keys that are in a round: nobody guesses against them or sees their answers till it is over."""

from __future__ import annotations

from collections.abc import Iterable

from kiosk.records.round_notes import NoteKind
from kiosk.rounds.contents import BoundKey, Stage
from kiosk.rounds.state import RoundState

TOLD_BY = (NoteKind.ROUND, NoteKind.KEY, NoteKind.STEP)  # all that has to be read for it


def in_a_round(rounds: Iterable[RoundState]) -> frozenset[str]:
    """The ids of the keys that are bound to a division whose results are not final."""
    return frozenset(
        key.key_id
        for state in rounds
        for key in state.all_latest(BoundKey)
        if state.stage(key.division) is not Stage.FINAL
    )
