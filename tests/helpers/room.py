"""A round's room without a window: what is noted goes straight into the records of the test."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.entries import Entry
from kiosk.records.store import Store
from kiosk.rounds.state import RoundState
from kiosk.settings import KioskSettings, Rules
from kiosk.ui.lock import Lock
from kiosk.ui.pages.page import Page
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowsView
from kiosk.ui.presenters.surroundings import TableFacts
from tests.helpers.pan import surroundings
from tests.helpers.round_notes import an_id, opened


class StraightNotebook:
    """Writes and looks up at once."""

    def __init__(self, store: Store) -> None:
        self.store = store

    def write(self, entries: Sequence[Entry]) -> None:
        self.store.save(*entries)

    def look_up(self, query: Callable[[Store], Any], done: Callable[[Any], None]) -> None:
        done(query(self.store))

    def glance(self, query: Callable[[Store], Any], done: Callable[[Any], None]) -> None:
        done(query(self.store))

    def remember(self, name: str, text: str) -> None:
        self.store.remember(name, text)


class BareDesk:
    """What a room needs of a desk."""

    def __init__(self, store: Store, settings: KioskSettings | None = None) -> None:
        self.world = replace(surroundings(), new_id=an_id)
        self.facts = TableFacts(settings=settings or KioskSettings(), simulated=True)
        self.notebook = StraightNotebook(store)
        self.lock = Lock(closes_after=60, open=True)
        self.left = False

    def leave_room(self) -> None:
        self.left = True


def room_of(store: Store, state: RoundState | None = None, rules: Rules | None = None) -> Room:
    """A room in which that round is open and kept."""
    room = Room(BareDesk(store))  # type: ignore[arg-type]  # as much of a desk as it asks for
    state = state or opened(rules)
    notes = sorted(
        (said.note for chain in state.chains.values() for said in chain), key=lambda note: note.id
    )
    first = [note for note in notes if note.id == state.id]
    store.save(*first, *(note for note in notes if note.id != state.id))
    room.read(state.id)
    return room


def rows_of(page: Page) -> list[str]:
    """The words of the rows that lie on a page."""
    view = page.view()
    assert isinstance(view, RowsView)
    return [row.text for row in view.rows]


def tap_row(room: Room, text: str) -> None:
    """Tap the row with these words on the page in front."""
    view = room.page.view()
    assert isinstance(view, RowsView)
    (row,) = [row for row in view.rows if row.text == text]
    assert row.says is not None
    room.press(row.says)


def press(room: Room, kind: Person, value: object = None) -> None:
    """Press something on the page in front."""
    room.press(PersonEvent(kind, value))


def type_words(room: Room, words: str) -> None:
    """Type these words in place of those that stand there, and be done."""
    press(room, Person.CHOOSE, "")
    for letter in words:
        press(room, Person.TYPE, letter)
    press(room, Person.ENTER)
