"""Entries: what happened, as frozen values. Procedures make them, the store keeps them.

An entry is appended and never edited. A mistake is answered by another entry that names the
first one and gives the reason. Every entry has its own id, made where the entry is made, so that
storing it twice (an answer got lost, the kiosk tries again) keeps it once.

A cup:  CupTaken -> CupHandedIn (once), or TryThrownAway.
A guess: GuessMade; once for all AnswerShown, after which no guess counts.
A key:  KeyStarted -> KeyMass, MassVoided, KeyChanged, in any order -> KeyMade, or KeyDropped.
A volume key: see volume_entries. A jar that has a key: see jar_entries.
A check of the balance: CheckMass, one each weighing -> BalanceChecked, once.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from uuid import uuid4

from kiosk.evidence import Source, Weighing

LAST_NUMBER = 99  # cups are numbered from 1 to 99, then from 1 again


def new_id() -> str:
    """A name that no other entry has, on this kiosk or another: 32 hexadecimal digits."""
    return uuid4().hex


class MassRole(StrEnum):
    """What was on the pan while a key was made."""

    TRAY = "tray"
    SAMPLE = "sample"
    EMPTY = "empty"
    FILLED = "filled"


class CheckRole(StrEnum):
    """For which test of a balance a mass was weighed."""

    LOAD = "load"
    REPEAT = "repeat"
    POSITION = "position"
    ZERO = "zero"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One thing that happened at ``at`` (UTC); ValueError for a time that is not in UTC."""

    id: str = field(default_factory=new_id)
    at: datetime

    def __post_init__(self) -> None:
        if self.at.utcoffset() != timedelta(0):
            raise ValueError(f"{self.at!r} is not a time in UTC")


@dataclass(frozen=True, slots=True, kw_only=True)
class CupTaken(Entry):
    """An empty cup was weighed and taken away to be filled: a try that is out.

    ``number`` runs from 1 to 99; ``team`` is "" for somebody who is just trying.
    """

    number: int
    team: str
    material: str
    empty: Weighing

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        if not 1 <= self.number <= LAST_NUMBER:
            raise ValueError(f"cups are numbered 1 to {LAST_NUMBER}, not {self.number}")

    @property
    def simulated(self) -> bool:
        """Whether the simulated balance weighed it."""
        return self.empty.source is Source.SIMULATED


@dataclass(frozen=True, slots=True, kw_only=True)
class CupOut:
    """A cup that is out since ``since`` (UTC), as the store gives it back; ``id`` is the try's."""

    id: str
    number: int
    team: str
    material: str
    empty: Weighing
    since: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class CupHandedIn(Entry):
    """The cup of a try came back, was weighed and scored; once for each try.

    ``net`` and ``target`` are grams, ``side`` is under, over or exact. ``confirmed`` is True when
    the person was asked whether it is this cup and said yes.
    """

    try_id: str
    filled: Weighing
    net: Decimal
    target: Decimal
    points: Decimal
    side: str
    confirmed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TryThrownAway(Entry):
    """A try does not count, whether its cup is still out or was handed in."""

    try_id: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyStarted(Entry):
    """A count key was begun; its id is the key's id.

    ``piece_cv_percent`` is the scatter of single pieces known beforehand, None if unknown.
    ``pieces`` are in each sample.
    """

    material: str
    scatter_class: str
    piece_cv_percent: Decimal | None
    pieces: int


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyMass(Entry):
    """A mass was kept for a key; ``role`` is one of MassRole.

    ``tare`` is what was shown before a sample was added to others; None: the tray of the key.
    """

    key_id: str
    role: str
    weighing: Weighing
    tare: Weighing | None = None

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        MassRole(self.role)


@dataclass(frozen=True, slots=True, kw_only=True)
class MassVoided(Entry):
    """A mass of a key in the making does not count."""

    mass_id: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyChanged(Entry):
    """An answer about a key was given or changed; None leaves what was said before.

    ``pieces`` are in each sample from now on; ``back_in`` says whether the counted pieces went
    back into the container. ``goal`` names how full it shall be: a band, a number, or any.
    ``in_lots``: the fill is weighed in lots, each with an empty and a filled mass of its own.
    ``bits`` says whether broken pieces count, each as one.
    """

    key_id: str
    pieces: int | None = None
    back_in: bool | None = None
    goal: str | None = None
    in_lots: bool | None = None
    bits: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyMade(Entry):
    """A key was finished and given to the jar ``letter``.

    ``low`` and ``high`` bound 95 %, in pieces; ``score_effect`` is in points.
    """

    key_id: str
    letter: str
    count: int
    low: int
    high: int
    half_width_percent: Decimal
    piece_mass_g: Decimal
    score_effect: Decimal
    warnings: tuple[str, ...]
    from_container: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyDropped(Entry):
    """A key does not count, whether it is in the making or was made; its letter is free again."""

    key_id: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GuessMade(Entry):
    """A team guessed what a key says; ``guess`` in pieces or cm³.

    ``team`` is "" for somebody who is just trying. Which guess counts is decided where it is kept:
    a team's first one, made before the answer was shown.
    """

    key_id: str
    team: str
    guess: Decimal

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        if not self.guess >= 0:
            raise ValueError(f"{self.guess} is no guess")


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerShown(Entry):
    """What a key says was shown to those who guess."""

    key_id: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckMass(Entry):
    """A mass was weighed in a check of the balance, in the order of the check.

    ``name`` says what lay there and where ("100 g M1, left edge"); ``known`` and ``tolerance`` are
    its grams where they are known. A later mass of the same ``row`` counts instead of this one.
    """

    check_id: str
    role: str
    row: int
    name: str
    known: Decimal | None
    tolerance: Decimal | None
    weighing: Weighing

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        CheckRole(self.role)


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedRow:
    """One verdict of a check; ``shown`` is a mass or a spread, all in grams.

    ``name`` is what lay there, ``verdict`` is fine, not fine or cannot tell.
    """

    test: str
    name: str
    known: Decimal | None
    shown: Decimal
    off: Decimal
    limit: Decimal
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BalanceChecked(Entry):
    """A check of the balance is over; its id is the ``check_id`` of its masses."""

    balance: str
    readability: Decimal
    rows: tuple[CheckedRow, ...]
    verdict: str
