"""How full the container shall be, in lots or not, and of what: the coach's answers."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from enum import Enum

from kiosk.estimating.pour_goal import AS_IT_COMES, BANDS, PourGoal, fill_mass, goal_named
from kiosk.procedures.key_draft import SAMPLES_FIRST_WANTED
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.procedure import NotOfferedError, Person, PersonEvent, WeighAgain
from kiosk.records.entries import KeyChanged

NUMBER = "number"  # chosen to type one
IN_LOTS = "in lots"  # chosen to weigh so, or not
BAG_GRAMS = Decimal(500)  # dry food comes in bags of that or more (common practice, no source)
MOST_DIGITS = 6


class ContainerState(Enum):
    """Where the coach stands."""

    BACK_IN = "back in"
    GOAL = "goal"
    NUMBER = "number"
    PAN_CLEAR = "pan clear"
    EMPTY_ON = "empty on"
    EMPTIED = "emptied"
    POUR = "pour"
    STILL = "still"
    STOPPING = "stopping"
    LOT = "lot"
    BAGS = "bags"
    KEY = "key"
    REFUSED = "refused"
    SAVED = "saved"
    LEAVING = "leaving"
    LEFT = "left"
    SAMPLES = "samples"
    CLOSING = "closing"


S = ContainerState


class FillGoal(KeyProcedure):
    """Asks for the goal; each answer is written down, so that it survives leaving."""

    typed = ""

    @property
    def goal(self) -> PourGoal | None:
        """The goal that stands; None while nobody said, or as it comes."""
        return goal_named(self.kept.goal)

    def mass_of(self, goal: PourGoal) -> Decimal:
        """What the fewest pieces of a goal weigh, in grams, by the samples."""
        return fill_mass(goal, self.kept.measured())

    @property
    def wanted(self) -> int | None:
        """The number typed, None while nothing is."""
        return int(self.typed) if self.typed else None

    @property
    def too_many(self) -> bool:
        """Whether the event has no container of so many pieces."""
        return self.wanted is not None and self.wanted > self.world.rules.count_limit

    @property
    def more_than_a_bag(self) -> bool:
        """Whether the fill may hold pieces of a bag that was not sampled.

        Of samples of another day it was asked before, with all that will be poured in mind.
        """
        draft = self.kept
        heavy = len(draft.fills) > 1 or draft.inside(None) > BAG_GRAMS
        return heavy and not draft.samples_of_another_key

    def offers(self, person: Person) -> bool:
        """As the table says; a number is taken when it is one."""
        if person is Person.ENTER:
            return super().offers(person) and bool(self.wanted) and not self.too_many
        return super().offers(person)

    def _count_anew(self, _event: PersonEvent) -> S:
        """Of all bags, mixed: nothing that was weighed of one of them tells about the others."""
        draft = self.kept
        in_lots = (mass for lot in draft.lots for mass in (lot.empty, lot.filled))
        weighed = (*draft.samples, *in_lots, draft.empty, draft.filled)
        self._void(*weighed, reason="of one bag only")
        self.draft = replace(self.kept, wanted=SAMPLES_FIRST_WANTED, back_in=None)
        return S.SAMPLES

    def _answer(self, event: PersonEvent) -> S:
        back_in = event.kind is Person.YES
        self.draft = replace(self.kept, back_in=back_in)
        self._do(KeyChanged(key_id=self.kept.id, back_in=back_in, at=self._utc_now()))
        return self._where_left()

    def _choose_goal(self, event: PersonEvent) -> S:
        if event.value == NUMBER:
            self.typed = ""
            return S.NUMBER
        if event.value == IN_LOTS:
            if not self.kept.lots:
                self._weigh_in_lots(not self.kept.in_lots)
            return S.GOAL
        if event.value not in (AS_IT_COMES, *(band.name for band in BANDS)):
            raise NotOfferedError(f"{event.value} is no goal")
        return self._aim(event.value)

    def _type(self, event: PersonEvent) -> S:
        typed = (self.typed + event.value).lstrip("0")
        if len(typed) <= MOST_DIGITS:
            self.typed = typed
        return S.NUMBER

    def _rub_out(self, _event: PersonEvent) -> S:
        self.typed = self.typed[:-1]
        return S.NUMBER

    def _enter(self, _event: PersonEvent) -> S:
        return self._aim(self.typed)

    def _aim(self, goal: str) -> S:
        self.draft = replace(self.kept, goal=goal)
        self._do(KeyChanged(key_id=self.kept.id, goal=goal, at=self._utc_now()))
        return self._where_left()

    def _in_lots(self, _event: PersonEvent) -> S:
        self._weigh_in_lots(True)
        self._do(WeighAgain())
        return S.POUR

    def _weigh_in_lots(self, in_lots: bool) -> None:
        self.draft = replace(self.kept, in_lots=in_lots)
        self._do(KeyChanged(key_id=self.kept.id, in_lots=in_lots, at=self._utc_now()))

    def _where_left(self) -> S:
        """The state in which the draft goes on, as far as it is answered and weighed."""
        draft = self.kept
        if draft.empty is not None:
            self._do(WeighAgain())
            return S.POUR
        if draft.goal is None:
            return S.GOAL
        return S.LOT if draft.lots else self._container_next()

    def _container_next(self) -> S:
        """The empty container; one that was emptied may lie on the pan by now."""
        if not self.pan.loaded:
            return S.EMPTY_ON
        if not self.kept.lots:
            return S.PAN_CLEAR
        self._do(WeighAgain())
        return S.EMPTIED
