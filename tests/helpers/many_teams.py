"""Rounds of a whole district, put into a records file in bulk. Every number is invented."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

from sqlalchemy import create_engine, insert
from sqlalchemy.orm import Session

from kiosk.evidence import Weighing
from kiosk.records.entries import new_id
from kiosk.records.models import RoundNoteRow, WeighingRow
from kiosk.records.round_notes import FIRST, RoundNote
from kiosk.records.store import Store
from kiosk.rounds.contents import (
    Answer,
    BoundKey,
    ClockNote,
    ClockTurn,
    Content,
    CupNote,
    CupTurn,
    Plan,
    Stage,
    Step,
    Team,
    Typing,
)
from kiosk.settings import Rules
from tests.helpers.pan import STARTED
from tests.helpers.result_rounds import KEYS, LETTERS
from tests.helpers.weighings import weighed

A_SITTING = 20
BIRDS = (
    "Avocet", "Bunting", "Curlew", "Dunlin", "Eider", "Fulmar", "Goldcrest", "Heron", "Ibis",
    "Jackdaw", "Kestrel", "Linnet", "Merlin", "Nuthatch", "Osprey", "Pipit", "Quail", "Redstart",
    "Siskin", "Teal",
)  # fmt: skip


@dataclass
class ManyTeams:
    """A round of so many teams, one division after the other.

    All sittings but the first are over, their cups weighed and their sheets typed twice; the
    divisions ``shown`` are released.
    """

    name: str
    teams: int
    divisions: tuple[str, ...]
    shown: tuple[str, ...]
    notes: list[RoundNote] = field(default_factory=list)
    _last: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        round_id = new_id()
        for number, (content, mass) in enumerate(self._contents()):
            about = content.about
            note = RoundNote(
                id=new_id() if number else round_id,
                at=STARTED + timedelta(milliseconds=number),
                round_id=round_id,
                simulated=True,
                kind=content.KIND.value,
                about=about,
                after=self._last.get(about, FIRST),
                content=content.model_dump_json(),
                weighing=mass,
            )
            self._last[about] = note.id
            self.notes.append(note)

    def _contents(self) -> Iterator[tuple[Content, Weighing | None]]:
        yield Plan(name=self.name, rules=Rules(divisions=self.divisions)), None
        teams = [self._team(number) for number in range(self.teams)]
        for division in self.divisions:
            for letter, (task, actual) in zip(LETTERS, KEYS.items(), strict=True):
                key = BoundKey(
                    division=division, task=task, key_id=f"{letter} {division}", letter=letter,
                    actual=Decimal(actual), half_width_percent=Decimal("0.8"),
                )  # fmt: skip
                yield key, None
        for each in teams:
            yield each, None
            yield CupNote(team=each.team, turn=CupTurn.EMPTY), weighed("12.0")
        for sitting in range(2, teams[-1].sitting + 1):
            for turn in (ClockTurn.START, ClockTurn.STOP):
                yield ClockNote(sitting=sitting, turn=turn), None
        for number, each in enumerate(teams):
            share = 0.8 + number * 37 % 401 / 1000
            if each.sitting > 1:
                mass = weighed(f"{12 + 100 * share:.1f}")
                yield CupNote(team=each.team, turn=CupTurn.FILLED), mass
                yield from ((answer, None) for answer in self._sheet(each, share))
        for division in self.shown:
            for stage in (Stage.LOCKED, Stage.RELEASED):
                yield Step(division=division, stage=stage), None

    def _team(self, number: int) -> Team:
        return Team(
            team=f"{self.name} {number}",
            label=f"{BIRDS[number % len(BIRDS)]} {number // len(BIRDS) + 1}",
            division=self.divisions[number * len(self.divisions) // self.teams],
            sitting=number // A_SITTING + 1,
            cup=number % A_SITTING + 1,
        )

    def _sheet(self, team: Team, share: float) -> Iterator[Content]:
        for task, actual in KEYS.items():
            for typing, by in ((Typing.FIRST, "KL"), (Typing.SECOND, "MN")):
                yield Answer(
                    team=team.team, task=task, typing=typing, by=by,
                    estimate=Decimal(round(actual * share)),
                )  # fmt: skip

    def keep(self, file: Path) -> None:
        """Put all notes into that records file, past the checks that a kiosk's own notes meet."""
        Store(str(file)).close()
        engine = create_engine(f"sqlite:///{file}")
        masses = [note.weighing for note in self.notes if note.weighing is not None]
        with Session(engine) as session:
            session.execute(insert(WeighingRow), [_mass(mass) for mass in masses])
            session.execute(insert(RoundNoteRow), [_row(note) for note in self.notes])
            session.commit()
        engine.dispose()


def _mass(mass: Weighing) -> dict[str, Any]:
    names = ("id", "at", "grams", "value", "unit", "raw", "readability", "balance")
    return {name: getattr(mass, name) for name in names} | {"source": mass.source.value}


def _row(note: RoundNote) -> dict[str, Any]:
    names = ("id", "at", "round_id", "simulated", "kind", "about", "after", "content")
    weighing_id = note.weighing.id if note.weighing else None
    return {name: getattr(note, name) for name in names} | {"weighing_id": weighing_id}
