"""The notebook: what the desk writes down and looks up, and what it may show meanwhile.

While an answer of the writer is out, nothing new is shown, so that what stands on the screen is
written down. A failure keeps what could not be done and does it again on request, in order; it may
be dropped only if nothing captured is among it, or if that can never be kept as it is.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, TypeVar

from kiosk.records.entries import (
    BalanceChecked,
    CupHandedIn,
    CupOut,
    CupTaken,
    Entry,
    KeyDropped,
    KeyMade,
    TryThrownAway,
)
from kiosk.records.errors import NEVER_FITS, RecordsError
from kiosk.records.volume_entries import VolumeDropped, VolumeMade
from kiosk.records.writer import Writer
from kiosk.ui.presenters.cup_views import TRIES_SHOWN, error_percent
from kiosk.ui.presenters.surroundings import TableFacts

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may

T = TypeVar("T")


class Notebook:
    """Writes for one desk. `changed` is called when an answer has come."""

    def __init__(self, writer: Writer, facts: TableFacts, changed: Callable[[], None]) -> None:
        self.failure: str | None = None
        self._writer = writer
        self._facts = facts
        self._changed = changed
        self._waiting = 0
        self._undone: list[Callable[[], None]] = []
        self._at_stake = False  # something captured that can still be kept

    @property
    def up_to_date(self) -> bool:
        """False while something is out that the screen must wait for."""
        return self._waiting == 0

    def write(self, entries: Sequence[Entry]) -> None:
        """Take entries into what is known at the table, and keep them."""
        for entry in entries:
            self._note(entry)
        self._request(
            lambda store: store.save(*entries), lambda _: self._written(entries), captured=True
        )

    def _written(self, entries: Sequence[Entry]) -> None:
        if self._facts.team and any(isinstance(entry, CupHandedIn) for entry in entries):
            self._read_tries(self._facts.team)
        if any(isinstance(entry, KeyDropped | VolumeDropped) for entry in entries):
            self._read_labels()

    def _read_labels(self) -> None:
        """Which letters and numbers have a key; one that was dropped gives its own back."""
        simulated = self._facts.simulated

        def done(labels: tuple[list[str], list[str]]) -> None:
            letters, boxes = labels
            self._facts.used_letters, self._facts.used_boxes = tuple(letters), tuple(boxes)
            self._facts.keys_kept = len(letters)

        self._request(
            lambda store: (
                [jar.letter for jar in store.jars_to_guess(simulated)],
                [box.letter for box in store.boxes_to_guess(simulated)],
            ),
            done,
        )

    def look_up(self, query: Callable[[Store], T], done: Callable[[T], None]) -> None:
        """Ask the records; `done` is given the answer."""
        self._request(query, done)

    def remember(self, name: str, text: str) -> None:
        """Keep a choice; one that is lost is made again, so nobody waits for it."""
        self._writer.ask(
            lambda store: store.remember(name, text), done=lambda _: None, failed=lambda _: None
        )

    def try_again(self) -> None:
        """Do what could not be done before, in order."""
        undone = self._undone
        self._forget()
        for request in undone:
            request()

    @property
    def droppable(self) -> bool:
        """Whether what could not be done may be given up: no mass is lost by it."""
        return self.failure is not None and not self._at_stake

    def drop(self) -> None:
        """Give up what could not be done."""
        if self.droppable:
            self._forget()

    def _forget(self) -> None:
        self._undone, self._at_stake, self.failure = [], False, None

    def _request(
        self, query: Callable[[Store], T], done: Callable[[T], None], *, captured: bool = False
    ) -> None:
        self._waiting += 1

        def answered(value: T) -> None:
            self._waiting -= 1
            done(value)
            self._changed()

        def failed(error: RecordsError) -> None:
            self._waiting -= 1
            self.failure = str(error)
            self._at_stake |= captured and error.problem not in NEVER_FITS
            self._undone.append(lambda: self._request(query, done, captured=captured))
            self._changed()

        self._writer.ask(query, done=answered, failed=failed)

    def _read_tries(self, team: str) -> None:
        simulated = self._facts.simulated
        self._waiting += 1

        def answered(errors: tuple[float, ...] | None) -> None:
            self._waiting -= 1
            if errors is not None:  # else this try stands alone: no reason to stop anybody
                self._facts.errors = errors
            self._changed()

        self._writer.ask(
            lambda store: tuple(
                error_percent(each.net, each.target)
                for each in store.last_tries(team, simulated, TRIES_SHOWN)
            ),
            done=answered,
            failed=lambda _: answered(None),
        )

    def _note(self, entry: Entry) -> None:
        facts = self._facts
        if isinstance(entry, CupTaken):
            facts.cups.append(
                CupOut(
                    id=entry.id,
                    number=entry.number,
                    team=entry.team,
                    material=entry.material,
                    empty=entry.empty,
                    since=entry.at,
                )
            )
        elif isinstance(entry, CupHandedIn):
            (cup,) = [cup for cup in facts.cups if cup.id == entry.try_id]
            facts.cups.remove(cup)
            facts.team = cup.team
            facts.errors = (error_percent(entry.net, entry.target),)
        elif isinstance(entry, TryThrownAway):
            facts.cups = [cup for cup in facts.cups if cup.id != entry.try_id]
        elif isinstance(entry, BalanceChecked):
            facts.last_check = entry
        elif isinstance(entry, KeyMade):
            facts.used_letters = (*facts.used_letters, entry.letter)
            facts.keys_kept += 1
            facts.letter = ""
            facts.printed = ()
        elif isinstance(entry, VolumeMade):
            facts.used_boxes = (*facts.used_boxes, str(entry.number))
            facts.letter = ""
            facts.printed = ()
