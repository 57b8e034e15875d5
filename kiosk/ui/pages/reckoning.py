"""The results of a division, worked out once for each state of the round.

Scores are had at once. How sure the places are takes thousands of draws: those are made in the
writer's thread, and are there a moment later.
"""

from __future__ import annotations

from kiosk.rounds.results import Results
from kiosk.rounds.standing import results_now
from kiosk.rounds.state import RoundState
from kiosk.ui.pages.room import Room


class Reckoning:
    """For one page, of one division of the room's round."""

    def __init__(self, room: Room, division: str) -> None:
        self._room, self._division = room, division
        self._quick: tuple[RoundState, Results] | None = None
        self._drawn: tuple[RoundState, Results] | None = None
        self._asked: RoundState | None = None  # for whose places draws are being made

    @property
    def quick(self) -> Results:
        """Without a word on how sure the places are. KeyError while a key is missing."""
        state = self._room.state
        if self._quick is None or self._quick[0] is not state:
            self._quick = state, results_now(state, self._division, draws=0)
        return self._quick[1]

    @property
    def best_known(self) -> Results:
        """With how sure the places are, as soon as that is known."""
        state = self._room.state
        if self._drawn is None or self._drawn[0] is not state:
            self._ask(state)
        if self._drawn is not None and self._drawn[0] is state:
            return self._drawn[1]
        return self.quick

    def _ask(self, state: RoundState) -> None:
        if self._asked is state:
            return
        self._asked = state

        def done(found: Results) -> None:
            self._drawn = state, found

        self._room.desk.notebook.glance(lambda _: results_now(state, self._division), done)
