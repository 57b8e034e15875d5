"""What counts of a team's cup: its masses, and what the judge decides about it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from kiosk.rounds.contents import Answer, Protest, Team, Typing
from kiosk.rounds.cups import Filling, cup_of, net_mass
from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from kiosk.settings import Task


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """What counts of a team's cup: a weighing, or what the judge says, whichever came later.

    ``grams`` are None where it counts as none. ``place`` among all notes is where it began to
    count. ``filling`` is None where the judge decided.
    """

    grams: Decimal | None
    place: int
    filling: Filling | None = None


@once
def counted(state: RoundState, team: Team) -> Counted | None:
    """What counts of a team's cup, None while nothing does."""
    filling = cup_of(state, team).counting(state.rules)
    judged = state.history(f"answer {team.team} {Task.MASS} {Typing.JUDGE}")[-1:]
    found = [
        Counted(grams=said.content.estimate, place=said.place)
        for said in judged
        if isinstance(said.content, Answer)
    ]
    if filling is not None and filling.counts_from is not None:
        grams = net_mass(state, team)
        found.append(Counted(grams=grams, place=filling.counts_from, filling=filling))
    return max(found, key=lambda each: each.place, default=None)


def if_accepted(state: RoundState, protest: Protest) -> Counted | None:
    """What would count of the protesting team's cup if its protest were accepted now."""
    accepted = protest.model_copy(update={"accepted": True})
    at = state.history(protest.about)[-1].note.at
    note = state.next_note(accepted, at=at, new_id=lambda: "if accepted")
    return counted(state.with_note(note), state.team(protest.team))


def weighed_in(state: RoundState, protest: Protest) -> bool:
    """Whether a cup was weighed once more in that protest."""
    fillings = cup_of(state, state.team(protest.team)).fillings
    return any(each.protest == protest.protest for each in fillings)
