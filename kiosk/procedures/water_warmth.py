"""How warm is the water? The typed part of measuring a container with water."""

from __future__ import annotations

from decimal import Decimal
from enum import Enum

from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import PersonEvent, Procedure, Surroundings
from kiosk.procedures.water_draft import WaterDraft
from kiosk.texts import say

COLDEST, WARMEST = 5, 40  # °C of water that a hand fills in
USUAL_COLDEST, USUAL_WARMEST = 10, 30  # °C; any other is asked about
MOST_DIGITS = 3


class WaterState(Enum):
    """Where the coach stands."""

    RESUME = "resume"
    CAUTION = "caution"
    WARMTH = "warmth"
    SURE = "sure"
    CLEAR = "clear"
    EMPTY = "empty"
    LIFT = "lift"
    FILLED = "filled"
    NOT_FULL = "not full"
    TOO_HEAVY = "too heavy"
    RESULT = "result"
    SAVED = "saved"
    LEAVING = "leaving"
    SHAPES = "shapes"
    LEFT = "left"


S = WaterState


class WaterWarmth(Procedure):
    """``text`` is what is typed of the temperature, ``note`` what is wrong with it."""

    def __init__(
        self, surroundings: Surroundings, *, pan: PanMemory, draft: WaterDraft | None = None
    ) -> None:
        super().__init__(S.CAUTION if draft is None else S.RESUME, surroundings, pan)
        self.draft = draft
        self.text = ""
        self.note = ""
        self.celsius: Decimal | None = None  # of the water that is filled in now

    @property
    def kept(self) -> WaterDraft:
        """The draft, in all states that have one."""
        if self.draft is None:
            raise AssertionError(f"{self.state} has no draft")
        return self.draft

    def _type(self, event: PersonEvent) -> S:
        self.note = ""
        if len(self.text) < MOST_DIGITS:
            self.text += event.value
        return S.WARMTH

    def _rub_out(self, _event: PersonEvent) -> S:
        self.text, self.note = self.text[:-1], ""
        return S.WARMTH

    def _judge_warmth(self, event: PersonEvent) -> S:
        typed = int(self.text)
        if not COLDEST <= typed <= WARMEST:
            wrong = "water.warmth.cold" if typed < COLDEST else "water.warmth.warm"
            self.text, self.note = "", say(wrong, least=COLDEST, most=WARMEST)
            return S.WARMTH
        return self._warm(event) if USUAL_COLDEST <= typed <= USUAL_WARMEST else S.SURE

    def _warm(self, _event: PersonEvent) -> S:
        self.celsius = Decimal(self.text)
        return self._to_pan()

    def _not_so(self, _event: PersonEvent) -> S:
        self.text = ""
        return S.WARMTH

    def _ask_warmth(self) -> S:
        """Water for another filling may be warmer or colder; what it was stands there."""
        last = self.kept.fillings[-1].celsius if self.kept.fillings else self.celsius
        self.celsius, self.note = None, ""
        self.text = "" if last is None else f"{last}"
        return S.WARMTH

    def _to_pan(self) -> S:
        """What is to be weighed next; the pan is to be seen empty before it."""
        if self.celsius is None:
            return self._ask_warmth()
        if self.kept.empty is None:
            return S.CLEAR if self.pan.loaded else S.EMPTY
        return S.LIFT if self.pan.loaded else S.FILLED
