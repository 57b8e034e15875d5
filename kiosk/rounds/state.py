"""A round as its notes add up to, and the next note about anything in it."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from functools import cached_property
from itertools import groupby
from typing import Any, TypeVar

from kiosk.evidence import Weighing
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote, began
from kiosk.rounds.contents import (
    Answer,
    BoundKey,
    ClockNote,
    Content,
    CupNote,
    KeptList,
    Plan,
    Protest,
    Stage,
    Step,
    Team,
    Typing,
    read,
)
from kiosk.settings import Rules, Task

_Kind = TypeVar("_Kind", bound=Content)


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A note with its content read, and its place among all notes of its round, from 0."""

    note: RoundNote
    content: Content
    place: int


@dataclass(frozen=True)
class RoundState:
    """Everything that was noted about one round, in order of keeping; see `of`."""

    id: str
    simulated: bool
    chains: Mapping[str, tuple[Said, ...]] = field(default_factory=dict)  # by what they are about
    length: int = 0  # how many notes there are
    last: str = FIRST  # the id of the latest
    unread: Mapping[str, int] = field(default_factory=dict)  # id and place of what we cannot read

    @staticmethod
    def of(notes: Sequence[RoundNote]) -> RoundState:
        """The round of these notes, the first of which opens it. ValueError without any."""
        if not notes:
            raise ValueError("a round has at least the note that opens it")
        return RoundState(notes[0].round_id, notes[0].simulated).with_notes(notes)

    def with_note(self, note: RoundNote) -> RoundState:
        """The round with one more note; one that is there already changes nothing."""
        return self.with_notes([note])

    def with_notes(self, notes: Iterable[RoundNote]) -> RoundState:
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
        return RoundState(self.id, self.simulated, chains, length, last, unread)

    def up_to(self, place: int) -> RoundState:
        """The round as it was when the note at that place had been kept."""
        earlier = {
            about: found
            for about, chain in self.chains.items()
            if (found := tuple(said for said in chain if said.place <= place))
        }
        latest = max((chain[-1] for chain in earlier.values()), key=lambda said: said.place)
        unread = {each: at for each, at in self.unread.items() if at <= latest.place}
        return RoundState(
            self.id, self.simulated, earlier, latest.place + 1, latest.note.id, unread
        )

    # What is said -----------------------------------------------------------------------------

    @property
    def readable(self) -> bool:
        """Whether this version can read what the round is called and its rules."""
        return self.latest(Plan, "round") is not None

    @property
    def plan(self) -> Plan:
        """Name and rules."""
        plan = self.latest(Plan, "round")
        assert plan is not None  # the first note of every round
        return plan

    @property
    def rules(self) -> Rules:
        """By which this round is scored."""
        return self.plan.rules

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

    @cached_property
    def everybody(self) -> Sequence[Team]:
        """All teams, those that are gone too."""
        return self.all_latest(Team)

    @cached_property
    def teams(self) -> Sequence[Team]:
        """The teams that take part, by sitting, division and order of entry."""
        here = [team for team in self.everybody if not team.gone]
        order = {division: place for place, division in enumerate(self.divisions)}
        return sorted(here, key=lambda team: (team.sitting, order[team.division]))

    @cached_property
    def divisions(self) -> Sequence[str]:
        """The divisions that have teams, those of the rules first."""
        found = dict.fromkeys(team.division for team in self.everybody if not team.gone)
        named = [name for name in self.rules.divisions if name in found]
        return [*named, *(name for name in found if name not in named)]

    @cached_property
    def sittings(self) -> Sequence[int]:
        """The numbers of the sittings that have teams."""
        return sorted({team.sitting for team in self.everybody if not team.gone})

    def team(self, team: str) -> Team:
        """The team of that id. KeyError for none."""
        found = self.latest(Team, f"team {team}")
        if found is None:
            raise KeyError(team)
        return found

    def teams_of(self, *, division: str | None = None, sitting: int | None = None) -> list[Team]:
        """The teams that take part in that division, in that sitting."""
        teams = self.teams if sitting is None else self._by_sitting.get(sitting, ())
        return [team for team in teams if division in (None, team.division)]

    @cached_property
    def _by_sitting(self) -> Mapping[int, Sequence[Team]]:
        by_sitting = groupby(self.teams, key=lambda team: team.sitting)
        return {sitting: tuple(teams) for sitting, teams in by_sitting}

    def key(self, division: str, task: Task) -> BoundKey | None:
        """The key bound to that task."""
        return self.latest(BoundKey, f"key {division} {task}")

    def answer(self, team: str, task: Task, typing: Typing) -> Answer | None:
        """What was typed that time, None if nothing was yet (blank is an answer too)."""
        return self.latest(Answer, f"answer {team} {task} {typing}")

    def stage(self, division: str) -> Stage:
        """How far the results of a division are."""
        step = self.latest(Step, f"step {division}")
        return step.stage if step else Stage.OPEN

    @property
    def protests(self) -> list[Protest]:
        """In the order in which they came."""
        return self.all_latest(Protest)

    def clock_notes(self, sitting: int) -> list[tuple[datetime, ClockNote]]:
        """What happened to a sitting's clock, and when (UTC)."""
        return [
            (said.note.at, said.content)
            for said in self.history(f"clock {sitting}")
            if isinstance(said.content, ClockNote)
        ]

    def begun(self, sitting: int) -> bool:
        """Whether the clock of that sitting was ever started."""
        return bool(self.chains.get(f"clock {sitting}"))

    @property
    def any_begun(self) -> bool:
        """Whether a clock was ever started: the rules are frozen."""
        return bool(self._starts)

    @property
    def _starts(self) -> dict[int, int]:
        return {
            content.sitting: chain[0].place
            for chain in self._by_kind.get(NoteKind.CLOCK, ())
            if isinstance(content := chain[0].content, ClockNote)
        }

    def division_begun(self, division: str) -> bool:
        """Whether a sitting of that division began: its keys are frozen."""
        teams = [
            [
                (said.place, None if team.gone else team.division, team.sitting)
                for said in chain
                if isinstance(team := said.content, Team)
            ]
            for chain in self._by_kind.get(NoteKind.TEAM, ())
        ]
        return began(division, teams, self._starts)

    def cup_notes(self, team: str) -> list[tuple[RoundNote, CupNote]]:
        """What happened to a team's cup and counts, oldest first, with the masses."""
        counting: list[tuple[RoundNote, CupNote]] = []
        for said in self.history(f"cup {team}"):
            if isinstance(said.content, CupNote):
                if said.content.turn == "undone":
                    counting = counting[:-1]
                else:
                    counting.append((said.note, said.content))
        return counting

    def kept_lists(self, division: str) -> list[tuple[datetime, KeptList]]:
        """Result lists as they were before something changed, and when that was."""
        return [
            (said.note.at, said.content)
            for said in self.history(f"list {division}")
            if isinstance(said.content, KeptList)
        ]

    # What is said next ------------------------------------------------------------------------

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


def open_round(
    plan: Plan, *, simulated: bool, at: datetime, new_id: Callable[[], str]
) -> RoundNote:
    """The note that opens a round."""
    round_id = new_id()
    return RoundNote(
        id=round_id,
        at=at,
        round_id=round_id,
        simulated=simulated,
        kind=NoteKind.ROUND.value,
        about=plan.about,
        after=FIRST,
        content=plan.model_dump_json(),
    )
