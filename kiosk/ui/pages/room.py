"""The room of a round: which round is open, what is noted about it, which page lies in front."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING, TypeVar

from kiosk.evidence import Weighing
from kiosk.procedures.procedure import PersonEvent
from kiosk.records.round_notes import RoundNote
from kiosk.rounds.contents import Content, Plan
from kiosk.rounds.state import RoundState, open_round
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.presenters.views import SheetView
from kiosk.ui.set_aside import set_aside
from kiosk.weighing.pan_events import PanEvent

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may
    from kiosk.ui.desk_base import DeskBase


T = TypeVar("T")


class Room:
    """One for a desk. `desk` gives the records, the time, the settings and the other jobs."""

    def __init__(self, desk: DeskBase) -> None:
        self.desk = desk
        self.helper = False  # opened by a helper's code: pages for helpers only
        self._state: RoundState | None = None
        self._stored: RoundState | None = None  # as it was read, without what is being written
        self._asked: RoundState | None = None  # as it was when somebody here was asked something
        self._pages: list[Page] = []
        self._visits = 0  # how often everybody left: an answer from before one is for nobody

    # The round --------------------------------------------------------------------------------

    @property
    def state(self) -> RoundState:
        """The round that is open. AssertionError while there is none: see `is_open`."""
        assert self._state is not None
        return self._state

    @property
    def is_open(self) -> bool:
        """Whether a round is open."""
        return self._state is not None

    def begin(self, plan: Plan) -> None:
        """Open a round that nobody opened before."""
        world = self.desk.world
        note = open_round(
            plan, simulated=self.desk.facts.simulated, at=self.now_utc(), new_id=world.new_id
        )
        self._state = self._stored = RoundState.of([note])
        self.desk.notebook.write([note])

    def read(self, round_id: str, then: Callable[[], None] = lambda: None) -> None:
        """Read all notes of that round, which is open from then on."""

        def done(found: RoundState) -> None:
            set_aside(found.length)
            self._state = self._stored = found
            self._tell()
            then()

        # A district's round takes a while to add up: that is no work for the screen's thread.
        self.look_up(lambda store: RoundState.of(store.round_notes(round_id)), done)

    def look_up(self, query: Callable[[Store], T], done: Callable[[T], None]) -> None:
        """Ask the records for a page; an answer that comes after everybody left is dropped."""
        visit = self._visits

        def answered(found: T) -> None:
            if visit == self._visits:
                done(found)

        self.desk.notebook.look_up(query, answered)

    def read_again(self) -> None:
        """See what others noted meanwhile."""
        if self._state is not None:
            self.read(self._state.id)

    def follow(self) -> None:
        """See what others noted meanwhile, without making anybody here wait."""
        if self._stored is None:
            return
        round_id, last = self._stored.id, self._stored.last

        def done(notes: list[RoundNote]) -> None:
            if self._stored is not None and self._stored.id == round_id and notes:
                self._state = self._stored = self._stored.with_notes(notes)
                self._tell()

        self.desk.notebook.glance(lambda store: store.round_notes(round_id, last), done)

    def close(self) -> None:
        """No round is open any more."""
        self._state, self._stored, self._asked, self._pages = None, None, None, []
        self._visits += 1

    def say(
        self, *contents: Content, weighing: Weighing | None = None, zero: Weighing | None = None
    ) -> None:
        """Note all of these, or none; masses go with each of them.

        What answers a question follows what stood when it was asked: if somebody else changed it
        since, the records refuse the answer instead of letting it write over what nobody here saw.
        """
        notes: list[RoundNote] = []
        state = self._asked or self.state
        following: dict[str, RoundNote] = {}  # that the state does not know yet
        for content in contents:
            if content.about in following:
                state, following = state.with_notes(following.values()), {}
            note = state.next_note(
                content,
                at=self.now_utc(),
                new_id=self.desk.world.new_id,
                weighing=weighing,
                zero=zero,
            )
            notes.append(note)
            following[note.about] = note
        self.take(notes)

    def take(self, notes: list[RoundNote]) -> None:
        """Keep notes that were made elsewhere, by a procedure for example."""
        self._state = self.state.with_notes(notes)
        self.desk.notebook.write(notes)
        self._tell()

    def noted(self, *notes: RoundNote) -> None:
        """Notes that are being kept already."""
        if self._state is not None and notes:
            mine = [note for note in notes if note.round_id == self.state.id]
            self._state = self._state.with_notes(mine)
            self._tell()

    def _tell(self) -> None:
        for page in self._pages:
            page.changed()

    # Pages ------------------------------------------------------------------------------------

    @property
    def page(self) -> Page:
        """The page in front."""
        return self._pages[-1]

    @property
    def role(self) -> Role:
        """Who may see it."""
        return self.page.who() if self._pages else Role.COACH

    def open(self, page: Page) -> None:
        """Lay a page on top of those that are there."""
        self._pages.append(page)
        if page.asks:
            self._asked = self._asked or self._state
        helpers = page.role is Role.HELPER and not page.asks and self.desk.lock.helper_digest
        if page.role is Role.EVERYBODY or helpers:
            self._lock_behind()
        page.opened()

    def _lock_behind(self) -> None:
        """Others may come to the screen now: the way back is behind the code, if any.

        Helpers are others where they have a code of their own.
        """
        if self.desk.lock.digest:
            self.desk.lock.close()

    def replace(self, page: Page) -> None:
        """Lay a page in the place of the one in front."""
        self._pages.pop()
        self.open(page)

    def back(self) -> None:
        """Take the page in front away; the table is under the last one."""
        self._pages.pop()
        if self._pages:
            self.page.opened()
        else:
            self.close()
            self.desk.leave_room()

    # What comes in ----------------------------------------------------------------------------

    def view(self) -> SheetView:
        """What the page in front shows."""
        return self.page.view()

    def strip(self) -> tuple[str, ...]:
        """The words for the status strip."""
        return self.page.strip()

    def press(self, event: PersonEvent) -> None:
        """A press on the page in front."""
        try:
            self.page.press(event)
        finally:
            if not self._pages or not self.page.asks:
                self._asked = None

    def pan_event(self, event: PanEvent) -> None:
        """Something happened on the pan."""
        if self._pages:
            self.page.pan_event(event)

    def tick(self, now: float) -> None:
        """Time passes."""
        if self._pages:
            self.page.tick(now)

    def now_utc(self) -> datetime:
        """The time of day."""
        return self.desk.world.utc(self.desk.world.now())
