"""The table of results: for the coach, and without any word on sure places for the wall."""

from __future__ import annotations

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Stage
from kiosk.rounds.standing import protest_left
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.reckoning import Reckoning
from kiosk.ui.pages.result_lists import ResultPapersPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.result_views import ROWS, results_view, wall_results_view
from kiosk.ui.presenters.views import SheetView

TURNS_AFTER_S = 12.0


class TablePage(Page):
    """The coach's, as numbers with the ranges of places, or as tents."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division
        self._reckoning = Reckoning(room, division)
        self._turned, self._tents = 0, False

    def view(self) -> SheetView:
        """The page of the table to which it is turned."""
        state = self.room.state
        return results_view(
            state,
            self._reckoning.best_known,
            left=protest_left(state, self._division, self.room.now_utc()),
            turned=self._turned,
            tents=self._tents,
            widest=self._reckoning.widest,
        )

    def press(self, event: PersonEvent) -> None:
        """Turn, switch over, print."""
        match event.kind:
            case Person.MORE:
                self._turned += 1
            case Person.COVER:
                self._tents = not self._tents
            case Person.PRINT:
                self.room.open(ResultPapersPage(self.room, self._division))
            case _:
                super().press(event)


class ResultsWallPage(Page):
    """For everybody; its pages turn by themselves. A touch of the corner leads back."""

    role = Role.EVERYBODY

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division
        self._reckoning = Reckoning(room, division)
        self._turned = 0
        self._since: float | None = None  # when it was turned last

    def opened(self) -> None:
        """Whoever touches the corner has to be the coach."""
        lock_behind(self.room)

    def strip(self) -> tuple[str, ...]:
        """Nothing but whose results these are."""
        return (self.room.state.plan.name,)

    def view(self) -> SheetView:
        """The page of the table to which it is turned."""
        state = self.room.state
        return wall_results_view(
            state,
            self._reckoning.quick,
            left=protest_left(state, self._division, self.room.now_utc()),
            turned=self._turned,
        )

    def press(self, event: PersonEvent) -> None:
        """Turn at once, or leave."""
        if event.kind is Person.MORE:
            self._turn()
        else:
            super().press(event)

    def tick(self, now: float) -> None:
        """Turn by itself; results that are taken back go at once."""
        if not released(self.room, self._division):
            self.room.back()
        elif self._since is None:
            self._since = now
        elif now - self._since >= TURNS_AFTER_S:
            self._turn()
            self._since = now

    def _turn(self) -> None:
        pages = max(1, -(-len(self._reckoning.quick.rows) // ROWS))
        self._turned = (self._turned + 1) % pages
        self._since = None


def released(room: Room, division: str) -> bool:
    """Whether everybody may see the results."""
    return room.state.stage(division) in (Stage.RELEASED, Stage.FINAL)


def lock_behind(room: Room) -> None:
    """Lock the coach's side, to which a page for everybody leads back; only if there is a code."""
    if room.desk.lock.digest:
        room.desk.lock.close()
