"""The pan of a balance without a cable: an adult types what its display shows.

Makes the same events as a watched pan. The digits typed tell the step, so the zero of the empty
pan is asked for first, with all its digits; a number that has more or fewer of them than the last
one is most likely a slip and is taken only when it is typed to be so.
"""

from __future__ import annotations

import re
from decimal import Decimal

from drivers.reading import Range, Reading
from kiosk.evidence import Source
from kiosk.texts import plural, say
from kiosk.texts.typed import as_typed
from kiosk.weighing.judgement import LEAST_ZERO_G, ZERO_DIVISIONS
from kiosk.weighing.pan_events import PanEvent, PanKind
from kiosk.weighing.pan_state import PanPhase, PanState
from kiosk.weighing.shown_steps import ShownSteps

MOST_DIGITS, MOST_DECIMALS = 5, 3  # 99 999 g and 0.001 g: no table balance shows more
BALANCE = "typed"
_SHOWN = re.compile(r"(0|[1-9][0-9]*)(?:[.,]([0-9]+))?", re.ASCII)


class NotTakenError(ValueError):
    """What was typed cannot be taken; the message is one sentence for the person."""


class UnlikelyError(NotTakenError):
    """What was typed looks like a slip; it can be taken when the person is sure."""


class TypedPan:
    """One pan whose readings are typed."""

    def __init__(self) -> None:
        self._steps = ShownSteps()
        self._decimals: int | None = None
        self._grams: Decimal | None = None
        self._loaded = False
        self._rested = False

    @property
    def zeroed(self) -> bool:
        """Whether the empty pan's zero is known, and with it the digits."""
        return self._decimals is not None

    def typed(
        self, text: str, at: float, *, sure: bool = False, empty: bool = False
    ) -> list[PanEvent]:
        """Take what the display shows at monotonic second `at`, in grams.

        A zero is an empty pan; `empty` says so of a number that is off zero by a few steps.
        Raises NotTakenError, and UnlikelyError unless `sure`.
        """
        bare = text.strip()
        value, decimals = _mass(bare)
        if not self.zeroed and value:
            raise NotTakenError(say("typed_pan.not_zero"))
        if bare == "0" and self.zeroed:
            return self.pan_empty(at)  # in short, whatever number of zeros is shown
        if self.zeroed and decimals != self._decimals and not sure:
            raise UnlikelyError(plural("typed_pan.decimals", self._decimals or 0))
        if empty and value > self._zero_band():
            raise NotTakenError(say("typed_pan.not_zero"))
        self._decimals = decimals
        reading = _reading(value, bare, at)
        self._steps.learn(reading)
        return self._put_on(reading) if value and not empty else self._emptied(at, reading)

    def pan_empty(self, at: float) -> list[PanEvent]:
        """The person says that the pan is empty; what it shows exactly is not known.

        Raises NotTakenError while it is not even known how many digits that has.
        """
        if not self.zeroed:
            raise NotTakenError(say("typed_pan.zero_first"))
        return self._emptied(at, None)

    def _zero_band(self) -> Decimal:
        return max(ZERO_DIVISIONS * (self._steps.grams or Decimal(0)), LEAST_ZERO_G)

    def tick(self, _now: float) -> list[PanEvent]:
        """Nothing happens on this pan but what a person says."""
        return []

    def weigh_again(self, _at: float) -> None:
        """The present load wants to be read off once more."""
        self._rested = False

    @property
    def state(self) -> PanState:
        """The pan as it was typed last."""
        return PanState(
            phase=self._phase(),
            grams=self._grams,
            loaded=self._loaded,
            must_empty=not self.zeroed,
            readings_flow=True,
            readability=self._steps.grams,
        )

    def _phase(self) -> PanPhase:
        if not self.zeroed or (self._loaded and not self._rested):
            return PanPhase.MOVING
        return PanPhase.STABLE if self._loaded else PanPhase.EMPTY

    def _put_on(self, reading: Reading) -> list[PanEvent]:
        grams = reading.grams
        assert grams is not None
        more = not self._loaded or grams > (self._grams or 0)
        self._grams, self._loaded, self._rested = grams, True, True
        came = PanKind.LOAD_PLACED if more else PanKind.DISTURBED
        return [self._event(came, reading.at), self._event(PanKind.SETTLED, reading.at, reading)]

    def _emptied(self, at: float, zero: Reading | None) -> list[PanEvent]:
        gone = [self._event(PanKind.LOAD_REMOVED, at)] if self._loaded else []
        shown = zero.grams if zero else None
        self._grams = Decimal(0).scaleb(-(self._decimals or 0)) if shown is None else shown
        self._loaded = self._rested = False
        return [*gone, self._event(PanKind.PAN_EMPTY, at, zero)]

    def _event(self, kind: PanKind, at: float, reading: Reading | None = None) -> PanEvent:
        return PanEvent(
            kind=kind,
            at=at,
            reading=reading,
            readability=self._steps.grams,
            source=Source.TYPED,
        )


def _mass(bare: str) -> tuple[Decimal, int]:
    """The number that was typed, and how many digits stand after its point."""
    if not bare:
        raise NotTakenError(say("typed_pan.blank"))
    if bare[0] in "-\u2212":
        raise NotTakenError(say("typed_pan.negative"))
    if bare[-1] in ".,":
        raise NotTakenError(say("typed_pan.unfinished"))
    match = _SHOWN.fullmatch(bare)
    if match is None:
        raise NotTakenError(say("typed_pan.no_number", text=as_typed(bare)))
    whole, decimals = match[1], match[2] or ""
    if len(whole) > MOST_DIGITS or len(decimals) > MOST_DECIMALS:
        raise NotTakenError(say("typed_pan.too_long", digits=MOST_DIGITS, decimals=MOST_DECIMALS))
    return Decimal(f"{whole}.{decimals}" if decimals else whole), len(decimals)


def _reading(grams: Decimal, typed: str, at: float) -> Reading:
    return Reading(
        value=grams,
        unit="g",
        grams=grams,
        stable=None,
        basis=None,
        range=Range.IN_RANGE,
        reason=None,
        raw=typed.encode(),
        at=at,
        balance=BALANCE,
    )
