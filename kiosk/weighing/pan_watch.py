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
from types import MappingProxyType

from drivers.reading import Basis, Fault, Range, Reading
from kiosk.evidence import Source
from kiosk.weighing.hearing import Hearing
from kiosk.weighing.load import Load
from kiosk.weighing.pan_events import PanEvent, PanKind, Trouble
from kiosk.weighing.pan_state import PanPhase, PanState, Press
from kiosk.weighing.prints import Prints
from kiosk.weighing.settling import Move, Rest, Settling
from kiosk.weighing.shown_steps import ShownSteps

__all__ = ["PanPhase", "PanState", "PanWatch"]

ZERO_DIVISIONS = 3
LEAST_ZERO_G = Decimal("0.02")
NOISES = 4.5  # beyond the zero band before something is said to lie there
NO_MASS_AFTER_S = 0.5
UNIT_AFTER_S = 2.5  # many hold it back until the load rests
QUIET_AFTER_S = 120.0  # they switch themselves off after three minutes (common practice)
FALLEN_READINGS = 2
OVER_FRAMES = 2  # a load that lands hard is over the capacity for one
_NO_LOAD = frozenset(  # what is shown is no load's mass
    {
        Trouble.NO_MASS, Trouble.UNIT, Trouble.CALIBRATION, Trouble.NO_ZERO, Trouble.ERROR,
        Trouble.BELOW_ZERO, Trouble.TARED, Trouble.GARBLED,
    }
)  # fmt: skip
_PASSING = frozenset({Trouble.NO_MASS, Trouble.UNIT})  # all others want an empty pan
_SILENCES = frozenset({Trouble.ASLEEP, Trouble.LATE, Trouble.QUIET, Trouble.LOST})
_OF_FAULT = MappingProxyType(
    {
        Fault.UNIT: Trouble.UNIT,
        Fault.CALIBRATION: Trouble.CALIBRATION,
        Fault.ZERO: Trouble.NO_ZERO,
        Fault.REPORTED: Trouble.ERROR,
    }
)


class PanWatch:
    """Watches one pan. ``readability`` in grams, None if only the readings can tell it."""

    def __init__(self, readability: Decimal | None, source: Source) -> None:
        self._told = readability
        self._source = source
        self._steps = ShownSteps()
        self._step: Decimal | None = readability
        self._settling: Settling | None = None
        self._load = Load()
        self._prints = Prints()
        self._hearing = Hearing()
        self._grams: Decimal | None = None
        self._unit: str | None = None
        self._too_heavy = False
        self._trouble: Trouble | None = None
        self._demand: Trouble | None = None  # why an empty pan at zero is asked for
        self._taken_off = False
        self._look = False
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
        self._hearing.opened(at)
        self._judge_from(at)
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
        """Judge the present load once more, from readings after ``at`` only."""
        self._load.judge_again()
        self._judge_from(at)

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
        settling, now, keyed = self._settling, self._hearing.now, self._prints.keyed
        flowing = self._grams is not None and (keyed or self._hearing.fresh)
        moving = settling if flowing and not keyed else None
        return PanState(
            phase=self._phase(flowing=flowing),
            trouble=self._trouble,
            grams=self._grams if flowing else None,
            loaded=self._load.present,
            progress=self._printed_share() if keyed else moving.progress(now) if moving else 0.0,
            restless_for=moving.restless_for(now) if moving else 0.0,
            must_empty=self._demand is not None,
            readings_flow=flowing,
            readability=self._step,
            unit=self._unit,
            press=self._press(),
            taken_off=self._taken_off,
            look=self._look and self._demand is None,
            creeping=moving.creeping(now) if moving else False,
        )

    def _phase(self, *, flowing: bool) -> PanPhase:
        if self._hearing.silent is not None or self._hearing.last is None:
            return PanPhase.SILENT
        if self._too_heavy:
            return PanPhase.TOO_HEAVY
        if self._trouble in _NO_LOAD:
            return PanPhase.UNREADABLE
        if self._settling is None or not flowing:
            return PanPhase.MOVING
        if self._rest is not None:
            return PanPhase.EMPTY if self._load.gone else PanPhase.STABLE
        if self._prints.keyed:
            return PanPhase.SETTLING if self._prints.once else PanPhase.MOVING
        still = self._settling.progress(self._hearing.now) > 0
        return PanPhase.SETTLING if still else PanPhase.MOVING

    @property
    def _rest(self) -> Rest | None:
        if self._prints.keyed:
            return self._prints.rest
        return None if self._settling is None else self._settling.rest

    def _press(self) -> Press:
        if not self._prints.keyed:
            return Press.NOTHING
        if self._prints.once is not None:
            return Press.ONCE_MORE
        return Press.EMPTY if self._rest is not None and self._load.present else Press.LOAD

    def _printed_share(self) -> float:
        return 1.0 if self._rest is not None else 0.5 if self._prints.once is not None else 0.0

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
        trouble = _OF_FAULT.get(reading.fault) if reading.fault else Trouble.NO_MASS
        patience = UNIT_AFTER_S if trouble is Trouble.UNIT else NO_MASS_AFTER_S
        if reading.at - hearing.mass < patience and not self._prints.keyed:
            return []
        if reading.range is Range.UNDER:
            self._taken_off = True
            return self._hinder(reading.at, Trouble.BELOW_ZERO)
        if self._trouble is trouble:
            return []
        if trouble not in _PASSING:
            return self._hinder(reading.at, trouble)
        self._stop(reading.at, trouble, demand=self._demand)
        return [self._event(PanKind.UNREADABLE, reading.at)]

    def _hinder(self, at: float, trouble: Trouble | None) -> list[PanEvent]:
        if self._trouble is trouble:
            return []
        self._stop(at, trouble, demand=trouble)
        return [self._event(PanKind.UNREADABLE, at)]

    def _stop(self, at: float, trouble: Trouble | None, *, demand: Trouble | None) -> None:
        """Nothing that was known of the load holds any longer."""
        self._trouble, self._demand = trouble, demand
        self._grams = None
        self._too_heavy = False
        self._load.forget(present=self._load.present and demand is None)
        self._judge_from(at)

    def _judge_from(self, at: float) -> None:
        self._prints.start_again()
        if self._settling is not None:
            self._settling.start_again(at)

    # With a mass

    def _with_mass(self, reading: Reading) -> list[PanEvent]:
        assert reading.grams is not None
        self._note_unit(reading)
        passed = self._passed(reading.at)
        self._grams = reading.grams
        begun, move, band, noise = self._judged(reading)
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

    def _judged(self, reading: Reading) -> tuple[Rest | None, Move | None, Decimal, Decimal]:
        """The rest that begins, how one ended, the half width of zero and noise in grams."""
        assert self._settling is not None
        assert self._step is not None
        band = max(ZERO_DIVISIONS * self._step, LEAST_ZERO_G)
        if self._prints.keyed:
            return (*self._prints.judge(reading, self._step, band), band, Decimal(0))
        begun, move = self._settling.feed(reading)
        return begun, move, band, Decimal(NOISES * self._settling.noise) * self._step

    def _note_unit(self, reading: Reading) -> None:
        """What another unit's digits round to is another number: nothing rests across the two."""
        self._steps.learn(reading)
        self._settle_step()
        if self._unit not in (None, reading.unit) and self._rest is None:
            self._judge_from(reading.at)
        self._unit = reading.unit

    def _passed(self, at: float) -> list[PanEvent]:
        """What was in the way for a while is not; an empty pan may still be asked for."""
        if not (self._too_heavy or self._trouble in _PASSING):
            return []
        self._too_heavy = False
        self._trouble = self._demand
        if self._demand is None:
            return []
        kind = PanKind.SILENT if self._demand in _SILENCES else PanKind.UNREADABLE
        return [self._event(kind, at)]

    def _falls_below(self, grams: Decimal, limit: Decimal) -> bool:
        """Whether an empty pan goes below zero: what lay there unseen is being lifted.

        It need not rest there: a quick hand puts the next thing on at once. The swing of a load
        that was seen to leave is something else.
        """
        self._below = self._below + 1 if self._load.gone and grams < -limit else 0
        return self._below >= FALLEN_READINGS

    def _settle_step(self) -> None:
        """The step is what the balance says, unless its display goes by larger ones."""
        told = None if self._told is None else self._steps.no_finer_than(self._told)
        known = [step for step in (told, self._steps.grams) if step is not None]
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
