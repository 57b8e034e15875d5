"""The results of a division, worked out once for each state of the round.

Scores are had at once. How sure the places are takes thousands of draws: those are made in the
writer's thread, and are there a moment later.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from kiosk.rounds.results import Results
from kiosk.rounds.standing import results_now, widest_key
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.ui.pages.room import Room

T = TypeVar("T")
AGAIN_S = 5.0  # an answer is dropped while something of this kiosk is not stored


class Once(Generic[T]):
    """What `make` finds in the round, found once for each state of it: pages are shown often."""

    def __init__(self, room: Room, make: Callable[[RoundState], T]) -> None:
        self._room, self._make = room, make
        self._known: tuple[RoundState, object, T] | None = None

    def now(self, moment: object = None) -> T:
        """For the present state; and for this `moment`, where time alone changes it too."""
        state = self._room.state
        if self._known is None or self._known[0] is not state or self._known[1] != moment:
            self._known = state, moment, self._make(state)
        return self._known[2]


class Reckoning:
    """For one page, of one division of the room's round."""

    def __init__(self, room: Room, division: str) -> None:
        self._room, self._division = room, division
        self._quick = Once(room, lambda state: results_now(state, division, draws=0))
        self._widest = Once(room, lambda state: widest_key(state, division))
        self._drawn: tuple[RoundState, Results] | None = None
        self._asked: RoundState | None = None  # for whose places draws are being made
        self._asked_at = 0.0

    @property
    def quick(self) -> Results:
        """Without a word on how sure the places are. KeyError while a key is missing."""
        return self._quick.now()

    @property
    def widest(self) -> Task:
        """The task whose key moves places most."""
        return self._widest.now()

    @property
    def best_known(self) -> Results:
        """With how sure the places are, as soon as that is known."""
        state, found = self._room.state, self.quick  # before draws take their share of the machine
        waited = self._room.desk.world.now() - self._asked_at
        if self._asked is not state or (self._drawn is None and waited > AGAIN_S):
            self._ask(state)
        if self._drawn is not None and self._drawn[0] is state:
            return self._drawn[1]
        return found

    def _ask(self, state: RoundState) -> None:
        self._asked, self._asked_at, self._drawn = state, self._room.desk.world.now(), None

        def done(found: Results) -> None:
            self._drawn = state, found

        self._room.desk.notebook.glance(lambda _: results_now(state, self._division), done)
