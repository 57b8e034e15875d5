"""A round as its notes add up to."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property
from itertools import groupby

from kiosk.records.round_notes import FIRST, NoteKind, RoundNote, began
from kiosk.rounds.contents import (
    Answer,
    BoundKey,
    ClockNote,
    CupNote,
    KeptList,
    Plan,
    Protest,
    Stage,
    Step,
    Team,
    Typing,
)
from kiosk.rounds.noted import NotedRound
from kiosk.settings import Rules, Task


@dataclass(frozen=True)
class RoundState(NotedRound):
    """Everything that was noted about one round, and what it says; see `of`."""

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
