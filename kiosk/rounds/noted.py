"""The notes of a round as chains, one for each thing, and the next note about anything in it."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from typing import Any, Self, TypeVar

from kiosk.evidence import Weighing
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote
from kiosk.rounds.contents import Content, read

_Kind = TypeVar("_Kind", bound=Content)


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A note with its content read, and its place among all notes of its round, from 0."""

    note: RoundNote
    content: Content
    place: int


@dataclass(frozen=True)
class NotedRound:
    """Everything that was noted about one round, in order of keeping; see `of`."""

    id: str
    simulated: bool
    chains: Mapping[str, tuple[Said, ...]] = field(default_factory=dict)  # by what they are about
    length: int = 0  # how many notes there are
    last: str = FIRST  # the id of the latest
    unread: Mapping[str, int] = field(default_factory=dict)  # id and place of what we cannot read

    @classmethod
    def of(cls, notes: Sequence[RoundNote]) -> Self:
        """The round of these notes, the first of which opens it. ValueError without any."""
        if not notes:
            raise ValueError("a round has at least the note that opens it")
        return cls(notes[0].round_id, notes[0].simulated).with_notes(notes)

    def with_note(self, note: RoundNote) -> Self:
        """The round with one more note; one that is there already changes nothing."""
        return self.with_notes([note])

    def with_notes(self, notes: Iterable[RoundNote]) -> Self:
        """The round with all of these; those that are there already change nothing.

        A newer version may have written what this one cannot read: that is counted only.
        """
        chains, unread = dict(self.chains), dict(self.unread)
        length, last = self.length, self.last
        for note in notes:
            chain = chains.get(note.about, ())
            if note.id in unread or any(said.note.id == note.id for said in chain):
                continue
            content = read(note.kind, note.about, note.content)
            if content is None:
                unread[note.id] = length
            else:
                chains[note.about] = (*chain, Said(note=note, content=content, place=length))
            length, last = length + 1, note.id
        return replace(self, chains=chains, length=length, last=last, unread=unread)

    def up_to(self, place: int) -> Self:
        """The round as it was when the note at that place had been kept."""
        earlier = {
            about: found
            for about, chain in self.chains.items()
            if (found := tuple(said for said in chain if said.place <= place))
        }
        latest = max((chain[-1] for chain in earlier.values()), key=lambda said: said.place)
        unread = {each: at for each, at in self.unread.items() if at <= latest.place}
        length, last = latest.place + 1, latest.note.id
        return replace(self, chains=earlier, length=length, last=last, unread=unread)

    # What is said -----------------------------------------------------------------------------

    def latest(self, kind: type[_Kind], about: str) -> _Kind | None:
        """What was said last about that thing."""
        chain = self.chains.get(about)
        content = chain[-1].content if chain else None
        return content if isinstance(content, kind) else None

    def all_latest(self, kind: type[_Kind]) -> list[_Kind]:
        """What was said last about each thing of that kind, in order of their first notes."""
        return [
            content
            for chain in self._by_kind.get(kind.KIND, ())
            if isinstance(content := chain[-1].content, kind)
        ]

    @cached_property
    def found(self) -> dict[Hashable, Any]:
        """What was found out about this state: see `kiosk.rounds.once`."""
        return {}

    @cached_property
    def _by_kind(self) -> dict[NoteKind, list[tuple[Said, ...]]]:
        found: dict[NoteKind, list[tuple[Said, ...]]] = {}
        for chain in self.chains.values():
            found.setdefault(chain[0].content.KIND, []).append(chain)
        return found

    def history(self, about: str) -> Sequence[Said]:
        """All that was said about that thing, oldest first."""
        return self.chains.get(about, ())

    def next_note(
        self,
        content: Content,
        *,
        at: datetime,
        new_id: Callable[[], str],
        weighing: Weighing | None = None,
        zero: Weighing | None = None,
    ) -> RoundNote:
        """The note that says this, following what was said last about the same thing."""
        chain = self.chains.get(content.about)
        return RoundNote(
            id=new_id(),
            at=at,
            round_id=self.id,
            simulated=self.simulated,
            kind=content.KIND.value,
            about=content.about,
            after=chain[-1].note.id if chain else FIRST,
            content=content.model_dump_json(),
            weighing=weighing,
            zero=zero,
        )
