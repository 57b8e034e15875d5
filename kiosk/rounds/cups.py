"""How each team's cup stands, worked out of what was noted about it, and the order of the queue.

What lies on an empty pan before a cup comes is no part of the cup: up to two divisions above zero
are taken off its mass. More than that is brushed away before anything is weighed.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import StrEnum

from kiosk.evidence import Weighing
from kiosk.records.round_notes import RoundNote
from kiosk.rounds.contents import CupNote, CupTurn, Protest, Stage, Team
from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Weighed

TAKEN_OFF_DIVISIONS = 2


class Pass(StrEnum):
    """The two times that a cup comes to the table."""

    EMPTY = "empty"  # before the sitting
    FILLED = "filled"  # handed in


class CupStand(StrEnum):
    """Where a cup is."""

    NOT_WEIGHED = "not weighed"  # its empty mass is missing
    OUT = "out"  # weighed empty, not handed in yet
    IN = "in"  # handed in and weighed
    NO_MASS = "no mass"  # done without a mass: spilled after hand-in, late, not handed in


@dataclass(frozen=True, slots=True, kw_only=True)
class CupMass:
    """A cup as it was weighed; ``zero`` is what the empty pan showed before, None if not seen."""

    weighing: Weighing
    zero: Weighing | None = None
    typed: bool = False

    @property
    def grams(self) -> Decimal:
        """The mass without what lay on the pan before."""
        return self.weighing.grams - taken_off(self.zero)


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """A handed-in cup; what was inside is net = filled - empty, in grams.

    ``protest`` is the id of the one in which it was weighed once more. ``counts_from`` is the place
    among all notes of what makes it count, None while nothing does.
    """

    note_id: str
    filled: CupMass
    empty: CupMass
    protest: str = ""
    counts_from: int | None = None

    @property
    def net(self) -> Decimal:
        """Grams inside; at or below zero for a cup lighter than it was empty."""
        return self.filled.grams - self.empty.grams


@dataclass(frozen=True, slots=True, kw_only=True)
class TeamCup:
    """The cup of a team. ``fillings`` are all its masses, oldest first; see `counting`.

    ``ended`` is the outcome that stands instead of a mass. ``later``: it was set aside, or spilled
    before it was handed in, and comes at the end of the queue. ``closed``: its division is locked.
    """

    team: Team
    empty: CupMass | None = None
    fillings: tuple[Filling, ...] = ()
    ended: CupTurn | None = None
    later: CupTurn | None = None
    turns: tuple[CupTurn, ...] = ()
    closed: bool = False

    @property
    def stand(self) -> CupStand:
        """Where it is."""
        if self.fillings:
            return CupStand.IN
        if self.ended is not None:
            return CupStand.NO_MASS
        return CupStand.OUT if self.empty else CupStand.NOT_WEIGHED

    def had(self, turn: CupTurn) -> bool:
        """Whether that happened to it, and still counts."""
        return turn in self.turns

    def counting(self, rules: Rules) -> Filling | None:
        """The weighing that counts where a cup was weighed more than once.

        One in a protest counts once the protest is accepted, but never where the first mass counts.
        """
        if rules.weighed_again is Weighed.FIRST:
            return next((each for each in self.fillings if not each.protest), None)
        found = [(each.counts_from, each) for each in self.fillings if each.counts_from is not None]
        # Of two in one protest, which begin to count together, the later one.
        return max(reversed(found), key=lambda one: one[0])[1] if found else None

    def due(self, pass_: Pass) -> bool:
        """Whether it still has to come to the table in that pass."""
        if self.closed or self.stand in (CupStand.IN, CupStand.NO_MASS):
            return False
        return pass_ is Pass.FILLED or self.empty is None


_ENDS = (CupTurn.SPILLED_AFTER, CupTurn.LATE, CupTurn.NOT_HANDED_IN)
_LATER = (CupTurn.SET_ASIDE, CupTurn.SPILLED_BEFORE)


def taken_off(zero: Weighing | None) -> Decimal:
    """What is taken off a mass for what the empty pan showed before it, in grams, never below 0."""
    if zero is None or zero.grams <= 0 or is_dirty(zero):
        return Decimal(0)
    return zero.grams


def is_dirty(zero: Weighing) -> bool:
    """Whether so much was left on the empty pan that it has to be brushed."""
    return zero.grams > TAKEN_OFF_DIVISIONS * division(zero)


def division(weighing: Weighing) -> Decimal:
    """The step of its balance in grams, or what the last digit sent counts."""
    exponent = int(weighing.grams.as_tuple().exponent)
    return weighing.readability or Decimal(1).scaleb(exponent)


@once
def cup_of(state: RoundState, team: Team) -> TeamCup:
    """How the cup of that team stands."""
    cup = TeamCup(team=team, closed=state.stage(team.division) is not Stage.OPEN)
    places = {said.note.id: said.place for said in state.history(f"cup {team.team}")}
    for note, content in state.cup_notes(team.team):
        counts_from = _counts_from(state, content, places[note.id])
        cup = replace(cup, turns=(*cup.turns, content.turn))
        cup = _after(cup, note, content, counts_from)
    return cup


def _counts_from(state: RoundState, content: CupNote, place: int) -> int | None:
    """What was weighed in a protest counts from its acceptance on, if that came later."""
    if not content.protest:
        return place
    decisions = [
        said
        for said in state.history(f"protest {content.protest}")[-1:]
        if isinstance(said.content, Protest) and said.content.accepted and said.place > place
    ]
    return decisions[0].place if decisions else None


def _after(cup: TeamCup, note: RoundNote, content: CupNote, counts_from: int | None) -> TeamCup:
    mass = None
    if note.weighing is not None:
        mass = CupMass(weighing=note.weighing, zero=note.zero, typed=content.typed)
    match content.turn:
        case CupTurn.EMPTY | CupTurn.CRACKED:
            # A cracked cup's mass says nothing of the one that takes its place.
            return replace(cup, empty=mass, later=None)
        case CupTurn.FILLED if mass and cup.empty:
            filling = Filling(
                note_id=note.id,
                filled=mass,
                empty=cup.empty,
                protest=content.protest,
                counts_from=counts_from,
            )
            return replace(cup, fillings=(*cup.fillings, filling), later=None)
        case turn if turn in _ENDS:
            return replace(cup, ended=turn, later=None)
        case turn if turn in _LATER:
            return replace(cup, later=turn)
    return cup


@once
def cups(state: RoundState, sitting: int | None = None) -> tuple[TeamCup, ...]:
    """The cups of all teams, or of those of one sitting, by sitting, then cup number."""
    teams = sorted(state.teams_of(sitting=sitting), key=lambda team: (team.sitting, team.cup))
    return tuple(cup_of(state, team) for team in teams)


def queue(found: Iterable[TeamCup], pass_: Pass) -> list[TeamCup]:
    """Those of the cups that still have to come, in this order; those for later come last."""
    return sorted((cup for cup in found if cup.due(pass_)), key=lambda cup: cup.later is not None)


def ended(found: Iterable[TeamCup]) -> list[TeamCup]:
    """Those of the cups that are done without a mass, but may be weighed after all."""
    return [cup for cup in found if cup.stand is CupStand.NO_MASS and not cup.closed]


def net_mass(state: RoundState, team: Team) -> Decimal | None:
    """The grams that count of a team's weighings, never below 0; None where there is none."""
    filling = cup_of(state, team).counting(state.rules)
    return None if filling is None else max(Decimal(0), filling.net)


def seems_filled(grams: Decimal, others: Iterable[Decimal], rules: Rules) -> bool:
    """Whether what was put on as an empty cup weighs more than one would, beside the ``others``.

    Solid cups are heavy, so only a comparison tells: half the goal above the heaviest of them.
    """
    known = list(others)
    return bool(known) and grams > max(known) + rules.cup_target_g / 2


def seems_unfilled(grams: Decimal, empty: CupMass) -> bool:
    """Whether a cup that was handed in is no heavier than it was empty."""
    return grams - empty.grams <= TAKEN_OFF_DIVISIONS * division(empty.weighing)
