"""What every page of a round can do."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.texts import say
from kiosk.ui.presenters.views import ButtonView, SheetView, button
from kiosk.ui.presenters.wall_views import clock_words
from kiosk.weighing.pan_events import PanEvent

if TYPE_CHECKING:
    from kiosk.ui.pages.room import Room


class Role(StrEnum):
    """Who may see a page."""

    COACH = "coach"
    HELPER = "helper"  # sees no key
    EVERYBODY = "everybody"


class Page:
    """One page. What it shows is made anew from the room's state each time it is asked for."""

    role = Role.COACH
    asks = False  # one question, whose answer leads on to the next one or is noted
    types_on = False  # takes presses also while the last one is being written down

    def __init__(self, room: Room) -> None:
        self.room = room

    def who(self) -> Role:
        """Who may see it now."""
        return self.role

    def view(self) -> SheetView:
        """What the page shows now."""
        raise NotImplementedError

    def press(self, event: PersonEvent) -> None:
        """Take a press; `Person.HOME` leaves the page unless a page does something else with it."""
        if event.kind is Person.HOME:
            self.room.back()

    def strip(self) -> tuple[str, ...]:
        """The words for the status strip, after what the balance does."""
        if not self.room.is_open:
            return (say("strip.round"),)
        return (say("strip.round"), *clock_words(self.room.state, self.room.now_utc()))

    def opened(self) -> None:
        """The page has come to the front, by being opened or by another one's leaving."""

    def changed(self) -> None:
        """The round's notes may be others now: written here, or read anew."""

    def pan_event(self, event: PanEvent) -> None:
        """Something happened on the pan while this page lay in front."""

    def tick(self, now: float) -> None:
        """Time passes."""


def back_button() -> ButtonView:
    """Leaves a page."""
    return button(say("button.back"), Person.HOME, sign="back")
