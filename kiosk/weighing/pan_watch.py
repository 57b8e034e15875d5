"""Turns readings into what happened on the pan, one event an episode.

The zero band is three divisions wide on either side, but never under 0.02 g: a few divisions below
zero are still an empty pan. A pan that rests below it had something on when the balance set itself
to zero; a net reading was tared by the balance's own key. Both want a clean pan, and so does any
silence: until an empty pan has been seen to rest at zero, nothing comes or goes or settles here.
In that time ``must_empty`` asks for it, and PAN_EMPTY is the event that ends it.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from drivers.reading import Basis, Range, Reading
from kiosk.evidence import Source
from kiosk.weighing.load import Load
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble
from kiosk.weighing.pan_state import PanPhase, PanState
from kiosk.weighing.settling import Rest, Settling
from kiosk.weighing.shown_steps import ShownSteps

__all__ = ["PanPhase", "PanState", "PanWatch"]

ZERO_DIVISIONS = 3
LEAST_ZERO_G = Decimal("0.02")
NOISES = 4.5  # beyond the zero band before something is said to lie there
SILENT_AFTER_S = 2.5
NO_MASS_AFTER_S = 0.5
STALE_AFTER_S = 1.0
FALLEN_READINGS = 2
OVER_FRAMES = 2  # a load that lands hard is over the capacity for one
_NO_LOAD = (Trouble.NO_MASS, Trouble.BELOW_ZERO, Trouble.TARED)  # what is shown is no load's mass


@dataclass(slots=True)
class _Hearing:
    """When the balance was heard, and what it said instead of a mass."""

    now: float = float("-inf")
    last: float | None = None  # the newest frame, or since when one has been waited for
    mass: float | None = None  # the newest frame with a mass
    over: int = 0  # frames in a row over the capacity
    silent: Trouble | None = None
    lost: bool = False


class PanWatch:
    """Watches one pan. ``readability`` in grams, None if only the readings can tell it."""

    def __init__(self, readability: Decimal | None, source: Source) -> None:
        self._told = readability
        self._source = source
        self._steps = ShownSteps()
        self._step: Decimal | None = readability
        self._settling: Settling | None = None
        self._load = Load()
        self._hearing = _Hearing()
        self._grams: Decimal | None = None
        self._too_heavy = False
        self._trouble: Trouble | None = None
        self._must_empty = False
        self._below = 0  # readings in a row far below zero on a pan that was empty

    def identified(self, readability: Decimal | None, capacity: Decimal | None) -> None:
        """Note what the balance says of itself; over its capacity it says so with each frame."""
        if readability is not None and readability > 0:
            self._told = readability
            self._settle_step()

    def lost(self, at: float) -> list[PanEvent]:
        """The port is gone."""
        self._hearing.lost = True
        return self._fall_silent(at, Trouble.LOST)

    def back(self, at: float) -> list[PanEvent]:
        """The port is open again; what comes through it tells the rest."""
        self._hearing.now = max(self._hearing.now, at)
        self._hearing.last = at
        self._hearing.lost = False
        self._judge_from(at)
        return []

    def tick(self, now: float) -> list[PanEvent]:
        """Let time pass until ``now``; silence is an event."""
        hearing = self._hearing
        hearing.now = max(hearing.now, now)
        if hearing.last is None:
            hearing.last = now
        if hearing.lost or now - hearing.last < SILENT_AFTER_S:
            return []
        return self._fall_silent(now, Trouble.ASLEEP)

    def weigh_again(self, at: float) -> None:
        """Judge the present load once more, from readings after ``at`` only."""
        self._load.judge_again()
        self._judge_from(at)

    def reading(self, reading: Reading) -> list[PanEvent]:
        """Take a reading in; one that is older than a second is not looked at."""
        hearing = self._hearing
        if reading.at < hearing.now - STALE_AFTER_S:
            return []
        hearing.now = max(hearing.now, reading.at)
        hearing.last, hearing.silent = reading.at, None
        hearing.over = hearing.over + 1 if reading.range is Range.OVER else 0
        if reading.range is Range.OVER:
            return self._overloaded(reading.at)
        if reading.grams is None:
            return self._without_mass(reading)
        hearing.mass = reading.at
        if reading.basis is Basis.NET:
            return self._hinder(reading.at, Trouble.TARED)
        return self._with_mass(reading)

    @property
    def state(self) -> PanState:
        """The pan as it is now."""
        settling, now = self._settling, self._hearing.now
        flowing = self._grams is not None
        return PanState(
            phase=self._phase(),
            trouble=self._trouble,
            grams=self._grams,
            loaded=self._load.present,
            progress=settling.progress(now) if settling and flowing else 0.0,
            restless_for=settling.restless_for(now) if settling and flowing else 0.0,
            must_empty=self._must_empty,
            readings_flow=flowing,
            readability=self._step,
        )

    def _phase(self) -> PanPhase:
        if self._hearing.silent is not None or self._hearing.last is None:
            return PanPhase.SILENT
        if self._too_heavy:
            return PanPhase.TOO_HEAVY
        if self._trouble in _NO_LOAD:
            return PanPhase.UNREADABLE
        if self._settling is None or self._grams is None:
            return PanPhase.MOVING
        if self._settling.rest is not None:
            return PanPhase.EMPTY if self._load.gone else PanPhase.STABLE
        still = self._settling.progress(self._hearing.now) > 0
        return PanPhase.SETTLING if still else PanPhase.MOVING

    # Without a mass

    def _fall_silent(self, at: float, trouble: Trouble) -> list[PanEvent]:
        if self._hearing.silent is trouble:
            return []
        self._hearing.silent = trouble
        self._stop(at, trouble, must_empty=True)
        return [self._event(PanKind.SILENT, at)]

    def _overloaded(self, at: float) -> list[PanEvent]:
        if self._hearing.over < OVER_FRAMES or self._too_heavy:
            return []
        self._stop(at, self._trouble, must_empty=self._must_empty)
        self._load.forget(present=True)
        self._too_heavy = True
        return [self._event(PanKind.OVERLOADED, at)]

    def _without_mass(self, reading: Reading) -> list[PanEvent]:
        hearing = self._hearing
        if hearing.mass is None:
            hearing.mass = reading.at
        if reading.at - hearing.mass < NO_MASS_AFTER_S:
            return []
        if reading.range is Range.UNDER:
            return self._hinder(reading.at, Trouble.BELOW_ZERO)
        if self._trouble is not None:
            return []
        self._stop(reading.at, Trouble.NO_MASS, must_empty=False)
        return [self._event(PanKind.UNREADABLE, reading.at)]

    def _hinder(self, at: float, trouble: Trouble) -> list[PanEvent]:
        if self._trouble is trouble:
            return []
        self._stop(at, trouble, must_empty=True)
        return [self._event(PanKind.UNREADABLE, at)]

    def _stop(self, at: float, trouble: Trouble | None, *, must_empty: bool) -> None:
        """Nothing that was known of the load holds any longer."""
        self._trouble, self._must_empty = trouble, must_empty
        self._grams = None
        self._too_heavy = False
        self._load.forget(present=self._load.present and not must_empty)
        self._judge_from(at)

    def _judge_from(self, at: float) -> None:
        if self._settling is not None:
            self._settling.start_again(at)

    # With a mass

    def _with_mass(self, reading: Reading) -> list[PanEvent]:
        assert reading.grams is not None
        self._steps.learn(reading)
        self._settle_step()
        assert self._settling is not None
        assert self._step is not None
        self._too_heavy = False
        if self._trouble is Trouble.NO_MASS:
            self._trouble = None
        self._grams = reading.grams
        begun, move = self._settling.feed(reading)
        band = max(ZERO_DIVISIONS * self._step, LEAST_ZERO_G)
        noise = Decimal(NOISES * self._settling.noise) * self._step
        if self._falls_below(reading.grams, band + noise) or (
            begun is not None and begun.grams < -band
        ):
            return self._hinder(reading.at, Trouble.BELOW_ZERO)
        if self._must_empty:
            if begun is None or begun.grams > band:
                return []
            self._must_empty, self._trouble = False, None
        kinds = self._load.shown(reading.grams, band, noise, move)
        if begun is not None:
            kinds += self._load.rested(begun.grams, band)
        return [self._event(kind, reading.at, begun) for kind in kinds]

    def _falls_below(self, grams: Decimal, limit: Decimal) -> bool:
        """Whether an empty pan goes below zero: what lay there unseen is being lifted.

        It need not rest there: a quick hand puts the next thing on at once. The swing of a load
        that was seen to leave is something else.
        """
        self._below = self._below + 1 if self._load.gone and grams < -limit else 0
        return self._below >= FALLEN_READINGS

    def _settle_step(self) -> None:
        """The step is what the balance says, unless its display goes by larger ones."""
        known = [step for step in (self._told, self._steps.grams) if step is not None]
        if not known:
            return
        self._step = max(known)
        if self._settling is None:
            self._settling = Settling(self._step)
        self._settling.set_step(self._step)

    def _event(self, kind: PanKind, at: float, rest: Rest | None = None) -> PanEvent:
        rests = rest is not None and kind in (PanKind.SETTLED, PanKind.PAN_EMPTY)
        told = kind in (PanKind.UNREADABLE, PanKind.SILENT)
        return PanEvent(
            kind=kind,
            at=at,
            reading=rest.reading if rests and rest is not None else None,
            readability=self._step,
            source=self._source,
            trouble=self._trouble if told else None,
        )
