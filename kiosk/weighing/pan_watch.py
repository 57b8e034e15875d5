"""Turns readings into what happened on the pan, one event an episode.

The zero band is three divisions wide on either side, but never under 0.02 g: a few divisions below
zero are still an empty pan. A pan that rests below it had something on when the balance set itself
to zero; a net reading was tared by the balance's own key. Both want a clean pan, and so does any
silence: until an empty pan has been seen to rest at zero, nothing comes or goes or settles here.
In that time ``must_empty`` asks for it, and PAN_EMPTY is the event that ends it. What is in the
way meanwhile may change; once it has passed, why an empty pan is asked for is told again.
"""

from __future__ import annotations

from decimal import Decimal

from drivers.reading import Basis, Range, Reading
from kiosk.evidence import Source
from kiosk.weighing.hearing import Hearing
from kiosk.weighing.judgement import LEAST_ZERO_G, Judgement
from kiosk.weighing.load import Load
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble
from kiosk.weighing.pan_state import PanPhase, PanState
from kiosk.weighing.settling import Rest
from kiosk.weighing.troubles import NO_LOAD, PASSING, SILENCES, trouble_of

__all__ = ["PanPhase", "PanState", "PanWatch"]

NO_MASS_AFTER_S = 0.5
UNIT_AFTER_S = 2.5  # many hold it back until the load rests
QUIET_AFTER_S = 120.0  # they switch themselves off after three minutes (common practice)
FALLEN_READINGS = 2
OVER_FRAMES = 2  # a load that lands hard is over the capacity for one


class PanWatch:
    """Watches one pan. ``readability`` in grams, None if only the readings can tell it."""

    def __init__(self, readability: Decimal | None, source: Source) -> None:
        self._source = source
        self._judgement = Judgement(readability)
        self._prints = self._judgement.prints
        self._load = Load()
        self._hearing = Hearing()
        self._grams: Decimal | None = None
        self._too_heavy = False
        self._trouble: Trouble | None = None
        self._demand: Trouble | None = None  # why an empty pan at zero is asked for
        self._taken_off = False
        self._look = False
        self._below = 0  # readings in a row far below zero on a pan that was empty

    def identified(self, readability: Decimal | None, capacity: Decimal | None) -> None:
        """Note what the balance says of itself; over its capacity it says so with each frame."""
        if readability is not None and readability > 0:
            self._judgement.identified(readability)

    def lost(self, at: float) -> list[PanEvent]:
        """The port is gone."""
        self._hearing.lost = True
        return self._fall_silent(at, Trouble.LOST)

    def back(self, at: float) -> list[PanEvent]:
        """The port is open again; what comes through it tells the rest."""
        self._hearing.opened(at)
        self._judgement.start_again(at)
        if self._prints.keyed:
            return self._fall_silent(at, Trouble.QUIET)
        self._prints.opened()
        return []

    def tick(self, now: float) -> list[PanEvent]:
        """Let time pass until ``now``; silence is an event, but not for who prints at a key."""
        hearing = self._hearing
        hearing.passes(now)
        known = self._prints.tick(now)
        if self._prints.keyed:
            quiet = hearing.last is not None and now - hearing.last >= QUIET_AFTER_S
            asked = known and self._demand is not None
            return self._fall_silent(now, Trouble.QUIET) if quiet or asked else []
        silence = hearing.silence
        return [] if silence is None else self._fall_silent(now, silence)

    def garbage(self, at: float) -> list[PanEvent]:
        """Bytes came that are no frame."""
        if not self._hearing.garbage(at) or self._trouble is Trouble.GARBLED:
            return []
        return self._hinder(at, Trouble.GARBLED)

    def weigh_again(self, at: float) -> None:
        """Judge the present load, or the empty pan, once more: from readings after ``at`` only."""
        self._load.judge_again()
        self._judgement.start_again(at)

    def reading(self, reading: Reading) -> list[PanEvent]:
        """Take a reading in; one that is older than a second is not looked at."""
        hearing = self._hearing
        if hearing.is_old(reading.at):
            return []
        hearing.frame(reading.at, over=reading.range is Range.OVER)
        self._prints.heard(reading.at)
        if reading.range is Range.OVER:
            return self._overloaded(reading.at)
        if reading.grams is None:
            return self._without_mass(reading)
        hearing.mass_came(reading.at)
        if reading.basis is Basis.NET:
            self._taken_off = reading.grams < -LEAST_ZERO_G
            return self._hinder(reading.at, Trouble.TARED)
        return self._with_mass(reading)

    @property
    def state(self) -> PanState:
        """The pan as it is now."""
        judgement, now = self._judgement, self._hearing.now
        flowing = self._grams is not None and (self._prints.keyed or self._hearing.fresh)
        return PanState(
            phase=self._phase(flowing=flowing),
            trouble=self._trouble,
            grams=self._grams if flowing else None,
            loaded=self._load.present,
            progress=judgement.progress(now) if flowing else 0.0,
            restless_for=judgement.restless_for(now) if flowing else 0.0,
            must_empty=self._demand is not None,
            readings_flow=flowing,
            readability=judgement.step,
            unit=judgement.unit,
            press=judgement.press(loaded=self._load.present),
            taken_off=self._taken_off,
            look=self._look and self._demand is None,
            creeping=flowing and judgement.creeping(now),
        )

    def _phase(self, *, flowing: bool) -> PanPhase:
        if self._hearing.silent is not None or self._hearing.last is None:
            return PanPhase.SILENT
        if self._too_heavy:
            return PanPhase.TOO_HEAVY
        if self._trouble in NO_LOAD:
            return PanPhase.UNREADABLE
        if not flowing:
            return PanPhase.MOVING
        if self._judgement.rest is not None:
            return PanPhase.EMPTY if self._load.gone else PanPhase.STABLE
        still = self._judgement.progress(self._hearing.now) > 0
        return PanPhase.SETTLING if still else PanPhase.MOVING

    # Without a mass

    def _fall_silent(self, at: float, trouble: Trouble) -> list[PanEvent]:
        if self._hearing.silent is trouble:
            return []
        self._hearing.fell_silent(trouble)
        self._look = True
        self._stop(at, trouble, demand=trouble)
        return [self._event(PanKind.SILENT, at)]

    def _overloaded(self, at: float) -> list[PanEvent]:
        if self._too_heavy or (self._hearing.over < OVER_FRAMES and not self._prints.keyed):
            return []
        self._stop(at, self._trouble, demand=self._demand)
        self._load.forget(present=True)
        self._too_heavy = True
        return [self._event(PanKind.OVERLOADED, at)]

    def _without_mass(self, reading: Reading) -> list[PanEvent]:
        hearing = self._hearing
        if hearing.mass is None:
            hearing.mass = reading.at
        trouble = trouble_of(reading)
        patience = UNIT_AFTER_S if trouble is Trouble.UNIT else NO_MASS_AFTER_S
        if reading.at - hearing.mass < patience and not self._prints.keyed:
            return []
        self._taken_off |= trouble is Trouble.BELOW_ZERO
        return self._hinder(reading.at, trouble)

    def _hinder(self, at: float, trouble: Trouble) -> list[PanEvent]:
        if self._trouble is trouble and not self._too_heavy:
            return []
        self._stop(at, trouble, demand=self._demand if trouble in PASSING else trouble)
        return [self._event(PanKind.UNREADABLE, at)]

    def _stop(self, at: float, trouble: Trouble | None, *, demand: Trouble | None) -> None:
        """Nothing that was known of the load holds any longer."""
        self._trouble, self._demand = trouble, demand
        self._grams = None
        self._too_heavy = False
        self._load.forget(present=self._load.present and demand is None)
        self._judgement.start_again(at)

    # With a mass

    def _with_mass(self, reading: Reading) -> list[PanEvent]:
        assert reading.grams is not None
        passed = self._passed(reading.at)
        self._grams = reading.grams
        begun, move, band, noise = self._judgement.take(reading)
        if self._falls_below(reading.grams, band + noise) or (
            begun is not None and begun.grams < -band
        ):
            self._taken_off, self._look = True, False
            return self._hinder(reading.at, Trouble.BELOW_ZERO)
        if self._demand is not None:
            if begun is None or begun.grams > band:
                return passed
            self._demand, self._trouble, self._taken_off = None, None, False
        kinds = self._load.shown(reading.grams, band, noise, move)
        if begun is not None:
            kinds += self._load.rested(begun.grams, band)
        self._look &= PanKind.LOAD_PLACED not in kinds
        return [self._event(kind, reading.at, begun) for kind in kinds]

    def _passed(self, at: float) -> list[PanEvent]:
        """What was in the way for a while is not; an empty pan may still be asked for."""
        if not (self._too_heavy or self._trouble in PASSING):
            return []
        self._too_heavy = False
        self._trouble = self._demand
        if self._demand is None:
            return []
        kind = PanKind.SILENT if self._demand in SILENCES else PanKind.UNREADABLE
        return [self._event(kind, at)]

    def _falls_below(self, grams: Decimal, limit: Decimal) -> bool:
        """Whether an empty pan goes below zero: what lay there unseen is being lifted.

        It need not rest there: a quick hand puts the next thing on at once. The swing of a load
        that was seen to leave is something else.
        """
        self._below = self._below + 1 if self._load.gone and grams < -limit else 0
        return self._below >= FALLEN_READINGS

    def _event(self, kind: PanKind, at: float, rest: Rest | None = None) -> PanEvent:
        rests = rest is not None and kind in (PanKind.SETTLED, PanKind.PAN_EMPTY)
        told = kind in (PanKind.UNREADABLE, PanKind.SILENT)
        return PanEvent(
            kind=kind,
            at=at,
            reading=rest.reading if rests and rest is not None else None,
            readability=self._judgement.step,
            source=self._source,
            trouble=self._trouble if told else None,
        )
