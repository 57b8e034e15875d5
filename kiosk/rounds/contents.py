"""What the notes of a round hold, one model for each kind.

A note holds the whole of what is said about its thing by then, so that the latest one of a chain
is enough; only a clock and a cup are the sum of all their notes. `about` names the thing.
"""

from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from typing import ClassVar

from pydantic import BaseModel, ConfigDict, Field

from kiosk.records.round_notes import NoteKind
from kiosk.settings import Rules, Task


class Content(BaseModel):
    """What every note can do: name its thing, and become text and back."""

    model_config = ConfigDict(frozen=True)
    KIND: ClassVar[NoteKind]

    @property
    def about(self) -> str:
        """The name of the thing among those of its round."""
        raise NotImplementedError


class Plan(Content):
    """The round itself."""

    KIND = NoteKind.ROUND
    name: str
    rules: Rules = Rules()

    @property
    def about(self) -> str:
        """There is one."""
        return "round"


class Team(Content):
    """Who takes part. `cup` is the number on the team's cup, 0 for none yet.

    `gone` says why a team takes no part any more; `into` is the team that it was merged into.
    `reason` is told for a change after the answers of its division were locked.
    """

    KIND = NoteKind.TEAM
    team: str  # an id that stays when the label changes
    label: str
    school: str = ""
    division: str
    sitting: int = Field(default=1, ge=1)
    members: int = Field(default=2, ge=1, le=3)
    absent: int = Field(default=0, ge=0)
    extra_minutes: int = Field(default=0, ge=0)
    cup: int = 0
    gone: str = ""
    into: str = ""
    reason: str = ""

    @property
    def about(self) -> str:
        """The team, whatever it is called."""
        return f"team {self.team}"


class BoundKey(Content):
    """The key by which a division's answers to a task are scored, as it was when it was bound.

    `letter` is what stands on the jar or box. `reason` is told when it replaces another one after
    the round began.
    """

    KIND = NoteKind.KEY
    division: str
    task: Task
    key_id: str
    letter: str
    actual: Decimal
    half_width_percent: Decimal
    reason: str = ""

    @property
    def about(self) -> str:
        """The task of that division."""
        return f"key {self.division} {self.task}"


class ClockTurn(StrEnum):
    """What happened to a clock."""

    START = "start"
    PAUSE = "pause"
    GO_ON = "go on"
    STOP = "stop"


class ClockNote(Content):
    """Something happened to the clock of a sitting, at the note's own moment."""

    KIND = NoteKind.CLOCK
    sitting: int
    turn: ClockTurn
    reason: str = ""

    @property
    def about(self) -> str:
        """The sitting's clock."""
        return f"clock {self.sitting}"


class CupTurn(StrEnum):
    """What happened to a team's cup."""

    EMPTY = "empty"  # weighed before it was filled
    FILLED = "filled"  # handed in and weighed
    SPILLED_BEFORE = "spilled before"  # hand-in: may be filled again
    SPILLED_AFTER = "spilled after"  # hand-in: the judge decides
    CRACKED = "cracked"  # another cup, weighed empty again
    SET_ASIDE = "set aside"  # will not rest
    LATE = "late"
    NOT_HANDED_IN = "not handed in"
    UNDONE = "undone"  # what was noted last does not count


class CupNote(Content):
    """Something happened to the cup of a team; its masses stand beside the note.

    `typed`: the judge read the balance and typed it. `protest` is the id of the protest in which
    the cup was weighed once more, also after the lock.
    """

    KIND = NoteKind.CUP
    team: str
    turn: CupTurn
    typed: bool = False
    protest: str = ""

    @property
    def about(self) -> str:
        """The team's cup."""
        return f"cup {self.team}"


class Typing(StrEnum):
    """Which time an answer was typed."""

    TEAM = "team"  # by the team itself, at the kiosk
    FIRST = "first"
    SECOND = "second"
    JUDGE = "judge"  # decides where the two differ or cannot be read, or corrects later


class Answer(Content):
    """What a team answered to a task, as typed once; None is blank.

    `unreadable`: nobody can read it, the judge decides. `by` names who typed, never a child.
    """

    KIND = NoteKind.ANSWER
    team: str
    task: Task
    typing: Typing
    estimate: Decimal | None = Field(default=None, ge=0)
    unreadable: bool = False
    by: str = ""
    reason: str = ""

    @property
    def about(self) -> str:
        """The answer in that typing."""
        return f"answer {self.team} {self.task} {self.typing}"


class Stage(StrEnum):
    """How far the results of a division are."""

    OPEN = "open"
    LOCKED = "locked"  # answers and cups are in; the scorer sees hints
    RELEASED = "released"  # provisional, the time for protests runs
    FINAL = "final"


class Step(Content):
    """A division went on to another stage, or back, for a reason."""

    KIND = NoteKind.STEP
    division: str
    stage: Stage
    reason: str = ""

    @property
    def about(self) -> str:
        """The division."""
        return f"step {self.division}"


class Protest(Content):
    """A team protests against a task's score; `accepted` None while nobody decided."""

    KIND = NoteKind.PROTEST
    protest: str
    team: str
    task: Task
    text: str = ""
    accepted: bool | None = None
    reason: str = ""

    @property
    def about(self) -> str:
        """The protest."""
        return f"protest {self.protest}"


class ListedTeam(BaseModel):
    """A row of a result list as it was."""

    model_config = ConfigDict(frozen=True)
    place: int
    label: str
    scores: tuple[Decimal, ...]
    total: Decimal


class KeptList(Content):
    """A result list as it was before something changed; `why` says what."""

    KIND = NoteKind.LIST
    division: str
    why: str
    rows: tuple[ListedTeam, ...]

    @property
    def about(self) -> str:
        """The division's lists, one after the other."""
        return f"list {self.division}"


_MODELS: dict[NoteKind, type[Content]] = {
    model.KIND: model
    for model in (Plan, Team, BoundKey, ClockNote, CupNote, Answer, Step, Protest, KeptList)
}


def read(kind: str, about: str, content: str) -> Content | None:
    """What a note holds; None if another version wrote it so that this one cannot tell."""
    try:
        found = _MODELS[NoteKind(kind)].model_validate_json(content)
    except ValueError:
        return None
    return found if found.about == about else None


def readable(kind: str, about: str, content: str) -> bool:
    """Whether this version can tell what a note holds, and that it is about what it says."""
    return read(kind, about, content) is not None
