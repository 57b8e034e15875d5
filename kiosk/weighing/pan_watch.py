"""Turns readings into what happened on the pan, one event an episode.

The zero band is three divisions wide on either side, but never under 0.02 g: a few divisions below
zero are still an empty pan. Far below it, something lay on the pan when the balance set itself to
zero; a net reading was tared by the balance's own key. Both want a clean pan, and so does any
silence: until an empty pan at zero has been seen, nothing is called settled.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from drivers.reading import Basis, Range, Reading
from kiosk.evidence import Source
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble
from kiosk.weighing.settling import Rest, Settling
from kiosk.weighing.shown_steps import ShownSteps

ZERO_DIVISIONS = 3
LEAST_ZERO_G = Decimal("0.02")
ADDED_DIVISIONS = 5  # a rested load that grows by more has got something on top
SILENT_AFTER_S = 2.5
NO_MASS_AFTER_S = 0.5
STALE_AFTER_S = 1.0


class PanPhase(StrEnum):
    """What the pan looks like at this moment."""

    EMPTY = "empty"
    MOVING = "moving"
    SETTLING = "settling"
    STABLE = "stable"
    TOO_HEAVY = "too heavy"
    UNREADABLE = "unreadable"
    SILENT = "silent"


@dataclass(frozen=True, slots=True, kw_only=True)
class PanState:
    """The pan for a screen.

    ``grams`` is the newest mass, None without one; ``progress`` 0 to 1 closes the ring;
    ``restless_for`` counts seconds without rest; ``must_empty`` asks for an empty pan at zero.
    """

    phase: PanPhase = PanPhase.SILENT
    trouble: Trouble | None = None
    grams: Decimal | None = None
    progress: float = 0.0
    restless_for: float = 0.0
    must_empty: bool = False
    readings_flow: bool = False
    readability: Decimal | None = None


class PanWatch:
    """Watches one pan. ``readability`` in grams, if the balance's own word is known beforehand."""

    def __init__(self, readability: Decimal | None, source: Source) -> None:
        self._told = readability
        self._source = source
        self._steps = ShownSteps()
        self._settling: Settling | None = None
        self._step = readability
        self._grams: Decimal | None = None
        self._heard_at: float | None = None
        self._mass_at: float | None = None
        self._now = float("-inf")
        self._loaded = False
        self._empty = False
        self._settled: Decimal | None = None
        self._above = 0  # readings in a row over the zero band of an empty pan
        self._too_heavy = False
        self._silent: Trouble | None = None
        self._trouble: Trouble | None = None
        self._must_empty = False

    # What is told ----------------------------------------------------------------------------

    def identified(self, readability: Decimal | None, capacity: Decimal | None) -> None:
        """The balance said how fine it is; its capacity it watches over itself."""
        if readability is not None:
            self._told = readability
            self._set_step(readability)

    def lost(self, at: float) -> list[PanEvent]:
        """The port is gone."""
        return self._fall_silent(at, Trouble.LOST)

    def back(self, at: float) -> list[PanEvent]:
        """The port is open again; what it sends tells the rest."""
        self._now = max(self._now, at)
        self._heard_at = at
        if self._settling is not None:
            self._settling.start_again(at)
        return []

    def tick(self, now: float) -> list[PanEvent]:
        """Time passes."""
        self._now = max(self._now, now)
        if self._heard_at is None:
            self._heard_at = now
        if self._silent is None and now - self._heard_at > SILENT_AFTER_S:
            return self._fall_silent(now, Trouble.ASLEEP)
        return []

    def weigh_again(self, at: float) -> None:
        """Judge the present load once more, from readings after ``at`` only."""
        self._settled = None
        if self._settling is not None:
            self._settling.start_again(at)

    def reading(self, reading: Reading) -> list[PanEvent]:
        """Take a reading in; one that is older than a second is not looked at."""
        if reading.at < self._now - STALE_AFTER_S:
            return []
        self._now = max(self._now, reading.at)
        self._heard_at = reading.at
        self._silent = None
        if reading.range is Range.OVER:
            return self._overload(reading.at)
        if reading.grams is None:
            return self._without_mass(reading.at)
        self._mass_at = reading.at
        if reading.basis is Basis.NET:
            return self._hinder(reading.at, Trouble.TARED)
        return self._with_mass(reading)

    # Without a mass --------------------------------------------------------------------------

    def _fall_silent(self, at: float, trouble: Trouble) -> list[PanEvent]:
        if self._silent is trouble:
            return []
        self._silent = self._trouble = trouble
        self._must_empty = True
        self._forget(at)
        return [self._event(PanKind.SILENT, at, trouble)]

    def _overload(self, at: float) -> list[PanEvent]:
        if self._too_heavy:
            return []
        self._forget(at)
        self._too_heavy = self._loaded = True
        self._empty = False
        return [self._event(PanKind.OVERLOADED, at)]

    def _without_mass(self, at: float) -> list[PanEvent]:
        if self._mass_at is None:
            self._mass_at = at
        if self._trouble is not None or at - self._mass_at < NO_MASS_AFTER_S:
            return []
        self._forget(at)
        self._trouble = Trouble.NO_MASS
        return [self._event(PanKind.UNREADABLE, at, Trouble.NO_MASS)]

    def _hinder(self, at: float, trouble: Trouble) -> list[PanEvent]:
        if self._trouble is trouble:
            return []
        self._forget(at)
        self._trouble, self._must_empty = trouble, True
        return [self._event(PanKind.UNREADABLE, at, trouble)]

    def _forget(self, at: float) -> None:
        self._settled = None
        self._grams = None
        self._too_heavy = False
        self._above = 0
        if self._settling is not None:
            self._settling.start_again(at)

    # With a mass -----------------------------------------------------------------------------

    def _with_mass(self, reading: Reading) -> list[PanEvent]:
        assert reading.grams is not None
        self._learn_step(reading)
        assert self._settling is not None
        assert self._step is not None
        self._too_heavy = False
        if self._trouble is Trouble.NO_MASS:
            self._trouble = None
        self._grams = reading.grams
        begun = self._settling.feed(reading)
        band = max(ZERO_DIVISIONS * self._step, LEAST_ZERO_G)
        if self._must_empty:
            return self._wait_for_empty(begun, band, reading.at)
        return [*self._moved(reading, band), *self._rested(begun, band, reading.at)]

    def _learn_step(self, reading: Reading) -> None:
        self._steps.learn(reading)
        step = self._told or self._steps.grams
        if (step is not None and step != self._step) or self._settling is None:
            self._set_step(step or Decimal(1))

    def _set_step(self, step: Decimal) -> None:
        self._step = step
        if self._settling is None:
            self._settling = Settling(step)
        else:
            self._settling.set_step(step)

    def _wait_for_empty(self, begun: Rest | None, band: Decimal, at: float) -> list[PanEvent]:
        if begun is None:
            return []
        grams = begun.reading.grams or Decimal(0)
        if grams < -band:
            return self._hinder(at, Trouble.BELOW_ZERO)
        if grams > band:
            return []
        self._must_empty, self._trouble = False, None
        self._loaded, self._empty = False, True
        return [self._event(PanKind.PAN_EMPTY, at)]

    def _moved(self, reading: Reading, band: Decimal) -> list[PanEvent]:
        """What a reading alone tells: something came, went, or was touched."""
        grams, at = reading.grams or Decimal(0), reading.at
        assert self._settling is not None
        if not self._loaded:
            self._above = self._above + 1 if grams > band else 0
            if self._above < 2 and grams <= 3 * band:
                return []
            self._loaded, self._empty, self._above = True, False, 0
            return [self._event(PanKind.LOAD_PLACED, at)]
        if grams <= band:
            self._loaded, self._settled = False, None
            return [self._event(PanKind.LOAD_REMOVED, at)]
        if self._settled is not None and self._settling.rest is None:
            added = grams > self._settled + ADDED_DIVISIONS * (self._step or Decimal(0))
            self._settled = None
            return [self._event(PanKind.LOAD_PLACED if added else PanKind.DISTURBED, at)]
        return []

    def _rested(self, begun: Rest | None, band: Decimal, at: float) -> list[PanEvent]:
        if begun is None:
            return []
        grams = begun.reading.grams or Decimal(0)
        if grams < -band:
            return self._hinder(at, Trouble.BELOW_ZERO)
        if grams <= band:
            if self._empty:
                return []
            self._empty = True
            return [self._event(PanKind.PAN_EMPTY, at)]
        events = []
        if not self._loaded:
            self._loaded, self._empty, self._above = True, False, 0
            events.append(self._event(PanKind.LOAD_PLACED, at))
        self._settled = grams
        settled = PanEvent(
            kind=PanKind.SETTLED,
            at=at,
            reading=begun.reading,
            readability=self._step,
            source=self._source,
        )
        return [*events, settled]

    def _event(self, kind: PanKind, at: float, trouble: Trouble | None = None) -> PanEvent:
        return PanEvent(
            kind=kind, at=at, readability=self._step, source=self._source, trouble=trouble
        )

    # What is to be seen ----------------------------------------------------------------------

    @property
    def state(self) -> PanState:
        """The pan as it is now."""
        settling = self._settling
        return PanState(
            phase=self._phase(),
            trouble=self._trouble,
            grams=self._grams,
            progress=settling.progress(self._now) if settling and self._grams is not None else 0.0,
            restless_for=settling.restless_for(self._now) if settling else 0.0,
            must_empty=self._must_empty,
            readings_flow=self._silent is None and self._grams is not None,
            readability=self._step,
        )

    def _phase(self) -> PanPhase:
        if self._silent is not None or self._heard_at is None:
            return PanPhase.SILENT
        if self._too_heavy:
            return PanPhase.TOO_HEAVY
        if self._settling is None or self._grams is None:
            return PanPhase.UNREADABLE if self._trouble else PanPhase.MOVING
        if self._settling.rest is None:
            moving = self._settling.progress(self._now) <= 0
            return PanPhase.MOVING if moving else PanPhase.SETTLING
        return PanPhase.STABLE if self._loaded else PanPhase.EMPTY
