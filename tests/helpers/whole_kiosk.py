"""A kiosk without a window: a real desk, writer, journal and watcher, and hands that press.

The thread that calls it stands for the screen's: what the other threads have waits in a queue
until the hands look at it.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from queue import Empty, SimpleQueue

from kiosk.procedures.procedure import Person, PersonEvent, Surroundings
from kiosk.records.backlog import News
from kiosk.records.entries import new_id
from kiosk.records.journal import Journal
from kiosk.records.watcher import Watcher, watching
from kiosk.records.writer import Writer, opening
from kiosk.rounds.state import RoundState
from kiosk.settings import KioskSettings
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.weighing.pan_events import PanEvent

PATIENCE_S = 30.0
GLANCE_S = 0.02


class WholeKiosk:
    """One kiosk on the records ``where``, which waits in ``journal`` for them if it has to.

    ``saw`` is told the round each time that it is another one for this kiosk.
    """

    def __init__(
        self,
        where: str,
        journal: Path,
        settings: KioskSettings | None = None,
        saw: Callable[[RoundState], None] = lambda _: None,
    ) -> None:
        self.journal = journal
        self.told: list[str] = []  # each sentence of something refused, as it was read
        self._saw = saw
        self._seen: RoundState | None = None
        self._inbox: SimpleQueue[Callable[[], None]] = SimpleQueue()
        self._writer = Writer(
            opening(where),
            self._inbox.put,
            open_journal=lambda: Journal(journal),
            told=self._journal_said,
        )
        settings = settings or KioskSettings()
        self.desk = Desk(
            facts=TableFacts(settings=settings, simulated=True),
            world=Surroundings(
                rules=settings.rules,
                utc=lambda at: datetime.now(UTC) - timedelta(seconds=time.monotonic() - at),
                new_id=new_id,
                now=time.monotonic,
            ),
            writer=self._writer,
            weigh_again=lambda: None,
            changed=self._changed,
        )
        self._watcher = Watcher(
            watching(where), lambda: self._inbox.put(lambda: self.desk.others_wrote())
        )
        self.desk.open()
        self._watcher.start()

    def close(self) -> bool:
        """Let go of everything; whether all that was asked for was done."""
        self._watcher.close(PATIENCE_S)
        return self._writer.close(PATIENCE_S)

    @property
    def round(self) -> RoundState:
        """The round that is open, as this kiosk knows it."""
        return self.desk.room.state

    @property
    def not_stored(self) -> int:
        """How many saves wait in the journal."""
        return self.desk.facts.not_stored

    def _journal_said(self, news: News) -> None:
        self.desk.journal_said(news)

    def _changed(self) -> None:
        room = self.desk.room
        if room.is_open and room.state is not self._seen:
            self._seen = room.state
            self._saw(room.state)

    # The screen's thread ----------------------------------------------------------------------

    def turn(self, patience: float = GLANCE_S) -> None:
        """Take in what came from the other threads, waiting for it no longer than that."""
        try:
            self._inbox.get(timeout=patience)()
            while True:
                self._inbox.get_nowait()()
        except Empty:
            pass

    def until(self, come: Callable[[], bool], what: str) -> None:
        """Follow what happens until that has come. AssertionError if it does not."""
        end = time.monotonic() + PATIENCE_S
        while not come():
            self.turn()
            if time.monotonic() > end:
                raise AssertionError(f"{what} did not come; {self.desk.failure or 'no failure'}")

    def follow(self, ended: Callable[[], bool]) -> None:
        """Follow what happens until that is so, however long it takes."""
        while not ended():
            self.turn()

    def rest(self, seconds: float) -> None:
        """Hands do nothing for so long."""
        end = time.monotonic() + seconds
        while (left := end - time.monotonic()) > 0:
            self.turn(left)

    def read_refusals(self) -> None:
        """Read each sentence about what was refused, and go on."""
        self.until(lambda: self.desk.settled_for_showing, "an answer of the records")
        while self.desk.failure is not None:
            assert self.desk.may_leave, self.desk.failure
            self.told.append(self.desk.failure)
            self.desk.go_home()
            self.until(lambda: self.desk.settled_for_showing, "an answer of the records")

    # Hands ------------------------------------------------------------------------------------

    def enter(self, name: str, *, new: bool = False) -> None:
        """Open the round of that name."""
        self.until(lambda: self.desk.ready, "the records")
        self.read_refusals()
        self.desk.run_round()
        self.until(lambda: self.desk.place is Place.ROUND, "the rounds")
        if new:
            self.press(Person.KEEP)
            self.words(name)
        else:
            self.tap(name)
        self.until(lambda: self.desk.room.is_open, "the round")

    def press(self, kind: Person, value: object = None) -> None:
        """Press something on the page in front, after reading what was refused meanwhile."""
        self.read_refusals()
        self.desk.room_press(PersonEvent(kind, value))
        self.read_refusals()

    def tap(self, text: str) -> None:
        """Tap the row with these words."""
        self.read_refusals()
        page = self.desk.room.page
        assert isinstance(page, RowsPage)
        (says,) = [row.says for row in page.rows() if row.text == text]
        assert says is not None, f"{text} cannot be tapped"
        self.press(says.kind, says.value)

    def words(self, words: str) -> None:
        """Type these words, and be done."""
        self.press(Person.CHOOSE, words)
        self.press(Person.ENTER)

    def back(self, pages: int = 1) -> None:
        """Leave so many pages."""
        for _ in range(pages):
            self.press(Person.HOME)

    def at_table(self, kind: Person, value: object = None) -> None:
        """Press something at the cup table."""
        self.until(lambda: self.desk.settled_for_showing, "an answer of the records")
        self.desk.press(PersonEvent(kind, value))

    def pan(self, *events: PanEvent) -> None:
        """Let these happen on the pan."""
        for event in events:
            self.desk.pan_event(event)
        self.until(lambda: self.desk.settled_for_showing, "an answer of the records")
