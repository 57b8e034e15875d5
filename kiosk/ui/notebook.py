"""The notebook: what the desk writes down and looks up, and what it may show meanwhile.

While an answer of the writer is out, nothing new is shown, so that what stands on the screen is
written down. A failure keeps what could not be done and does it again on request, in order; it may
be dropped only if nothing captured is among it, or if that can never be kept as it is.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING, TypeVar

from kiosk.records.backlog import News
from kiosk.records.entries import CupHandedIn, CupOut, Entry, KeyDropped
from kiosk.records.errors import MAY_PASS, NEVER_FITS, RecordsError
from kiosk.records.volume_entries import VolumeDropped
from kiosk.records.writer import Failed, Writer
from kiosk.ui.noting import note
from kiosk.ui.presenters.cup_views import TRIES_SHOWN, error_percent
from kiosk.ui.presenters.surroundings import TableFacts

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may

T = TypeVar("T")
_Ask = Callable[[Callable[[T], None], Failed], None]


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
        self._passing = False  # it was no fault of what was asked
        self._writes = 0  # so far
        self._glances = 0  # that are out
        self._to_follow: Callable[[], None] | None = None  # when they are answered
        self._refusals: list[str] = []  # of what was captured while the records were away

    @property
    def up_to_date(self) -> bool:
        """False while something is out that the screen must wait for."""
        return self._waiting == 0

    def write(self, entries: Sequence[Entry]) -> None:
        """Take entries into what is known at the table, and keep them."""
        self._writes += 1
        for entry in entries:
            note(self._facts, entry)

        def save(done: Callable[[None], None], failed: Failed) -> None:
            self._writer.save(*entries, done=lambda: done(None), failed=failed)

        self._request(save, lambda _: self._written(entries), captured=True)

    def _written(self, entries: Sequence[Entry]) -> None:
        if self._facts.not_stored:
            return  # the records cannot be asked; they will be when they are there again
        if self._facts.team and any(isinstance(entry, CupHandedIn) for entry in entries):
            self._read_tries(self._facts.team)
        if any(isinstance(entry, KeyDropped | VolumeDropped) for entry in entries):
            self._read_labels()

    def _read_labels(self) -> None:
        """Which letters and numbers have a key; one that was dropped gives its own back."""
        simulated = self._facts.simulated
        self.look_up(lambda store: _labels(store, simulated), self._take_labels)

    def _take_labels(self, labels: tuple[list[str], list[str]]) -> None:
        letters, boxes = labels
        self._facts.used_letters, self._facts.used_boxes = tuple(letters), tuple(boxes)
        self._facts.keys_kept = len(letters)

    def look_up(self, query: Callable[[Store], T], done: Callable[[T], None]) -> None:
        """Ask the records; `done` is given the answer."""
        self._request(partial(_asking, self._writer, query), done)

    def look_up_or(
        self, query: Callable[[Store], T], done: Callable[[T], None], otherwise: T
    ) -> None:
        """Ask the records; if they cannot answer, `otherwise` has to do, and nobody is stopped."""
        self._waiting += 1

        def answered(value: T) -> None:
            self._waiting -= 1
            done(value)
            self._changed()

        self._writer.ask(query, done=answered, failed=lambda _: answered(otherwise))

    def follow(self, look: Callable[[], None]) -> None:
        """Let `look` glance at what it wants, after those glances are answered that are out.

        However often it is asked for meanwhile, that is once: on a slow line glances would pile up
        otherwise, and what is captured would wait behind them.
        """
        if self._glances:
            self._to_follow = look
        else:
            look()

    def glance(self, query: Callable[[Store], T], done: Callable[[T], None]) -> None:
        """Ask what others may have changed, without making anybody at this table wait.

        The answer is dropped while something of our own is not stored, which it would lack, and
        asked for anew if we wrote something in between.
        """
        writes = self._writes

        def answered(value: T) -> None:
            self._glances -= 1
            if self.failure is None and not self._facts.not_stored:
                if writes != self._writes:
                    self.glance(query, done)
                    return
                done(value)
                self._changed()
            self._glanced()

        def failed(_: RecordsError) -> None:
            self._glances -= 1
            self._glanced()

        self._glances += 1
        self._writer.ask(query, done=answered, failed=failed)

    def _glanced(self) -> None:
        if not self._glances and self._to_follow is not None:
            look, self._to_follow = self._to_follow, None
            look()

    def read_table(self) -> None:
        """Follow the cups, letters and boxes as all kiosks together have them."""
        simulated = self._facts.simulated

        def done(found: tuple[list[CupOut], tuple[list[str], list[str]]]) -> None:
            if simulated is self._facts.simulated:
                self._facts.cups, labels = found
                self._take_labels(labels)

        self.glance(lambda store: (store.cups_out(simulated), _labels(store, simulated)), done)

    def journal_said(self, news: News) -> None:
        """So much is captured and not yet stored, and this will never be."""
        self._facts.not_stored = news.waiting
        self._refusals += news.refused
        self._changed()

    @property
    def refusal(self) -> str | None:
        """Why something captured earlier will never be stored, None if nobody has to be told."""
        return self._refusals[0] if self._refusals else None

    @property
    def worth_trying(self) -> bool:
        """Whether what could not be done may work by itself a moment later."""
        return self.failure is not None and self._passing

    def remember(self, name: str, text: str) -> None:
        """Keep a choice; one that is lost is made again, so nobody waits for it."""
        self._writes += 1
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
        if self.failure is None:
            return bool(self._refusals)
        return not self._at_stake

    def drop(self) -> None:
        """Give up what could not be done, or go on after a refusal was seen."""
        if self.failure is None:
            del self._refusals[:1]
        elif self.droppable:
            self._forget()

    def _forget(self) -> None:
        self._undone, self._at_stake, self.failure = [], False, None

    def _request(self, ask: _Ask[T], done: Callable[[T], None], *, captured: bool = False) -> None:
        self._waiting += 1

        def answered(value: T) -> None:
            self._waiting -= 1
            done(value)
            self._changed()

        def failed(error: RecordsError) -> None:
            self._waiting -= 1
            self.failure = str(error)
            self._passing = error.problem in MAY_PASS
            self._at_stake |= captured and error.problem not in NEVER_FITS
            self._undone.append(lambda: self._request(ask, done, captured=captured))
            self._changed()

        ask(answered, failed)

    def _read_tries(self, team: str) -> None:
        simulated = self._facts.simulated

        def read(store: Store) -> tuple[float, ...] | None:
            tries = store.last_tries(team, simulated, TRIES_SHOWN)
            return tuple(error_percent(each.net, each.target) for each in tries)

        def done(errors: tuple[float, ...] | None) -> None:
            if errors is not None:  # else this try stands alone
                self._facts.errors = errors

        self.look_up_or(read, done, None)


def _asking(
    writer: Writer, query: Callable[[Store], T], done: Callable[[T], None], failed: Failed
) -> None:
    writer.ask(query, done=done, failed=failed)


def _labels(store: Store, simulated: bool) -> tuple[list[str], list[str]]:
    letters = [jar.letter for jar in store.jars_to_guess(simulated)]
    return letters, [box.letter for box in store.boxes_to_guess(simulated)]
