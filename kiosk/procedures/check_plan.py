"""What is weighed in a check of the balance: the things at hand, and the tasks they make."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.estimating.known_masses import COINS, WEIGHT_TOLERANCES, KnownMass, check_weight, coins
from kiosk.records.entries import CheckRole

MOST_LOADS = 3
REPEATS = 5
UNKNOWN = "something"  # a firm thing whose mass nobody knows
ANY_COINS = "coins"  # which ones is asked next
COIN_COUNTS = (5, 10, 20)


class Place(StrEnum):
    """Where on the pan."""

    CENTRE = "centre"
    LEFT = "left"
    RIGHT = "right"
    FRONT = "front"
    BACK = "back"


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckThing:
    """So many grams of a class of weights, so many coins of a kind, or something unknown."""

    kit: str
    count: int = 0

    @property
    def known(self) -> KnownMass | None:
        """What it weighs, where that is known."""
        if self.kit in WEIGHT_TOLERANCES:
            return check_weight(self.count, self.kit)
        return coins(self.kit, self.count) if self.kit in COINS else None

    @property
    def name(self) -> str:
        """How the records call it."""
        if self.kit in WEIGHT_TOLERANCES:
            return f"{self.count} g {self.kit}"
        return f"{self.count} x {self.kit}" if self.kit in COINS else self.kit


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One weighing: the thing, the test that it serves, its place among those, where it stands."""

    role: CheckRole
    thing: CheckThing
    number: int = 1
    place: Place = Place.CENTRE

    @property
    def name(self) -> str:
        """How the records call it."""
        if self.role is CheckRole.POSITION:
            return f"{self.thing.name}, {self.place}"
        return self.thing.name


def loads_of(kit: str) -> tuple[CheckThing, ...]:
    """The known loads that a kit has, lightest first; none where nothing is known."""
    counts = tuple(WEIGHT_TOLERANCES.get(kit, COIN_COUNTS if kit in COINS else ()))
    return tuple(CheckThing(kit=kit, count=count) for count in counts)


def further_tests(thing: CheckThing) -> tuple[Task, ...]:
    """Five weighings of one thing, then one in the centre and at each edge of the pan."""
    repeats = (
        Task(role=CheckRole.REPEAT, thing=thing, number=number + 1) for number in range(REPEATS)
    )
    places = (
        Task(role=CheckRole.POSITION, thing=thing, number=number + 1, place=place)
        for number, place in enumerate(Place)
    )
    return (*repeats, *places)


def heaviest(things: tuple[CheckThing, ...]) -> CheckThing:
    """The one with which to repeat; something unknown where no load was weighed."""
    return max(things, key=_grams, default=CheckThing(kit=UNKNOWN))


def _grams(thing: CheckThing) -> Decimal:
    return thing.known.grams if thing.known else Decimal(0)
