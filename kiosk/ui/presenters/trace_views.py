"""Presenter of the live trace, and of what it tells of the scale."""

from __future__ import annotations

from decimal import Decimal

from kiosk.texts import say
from kiosk.texts.numbers import grams, number
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.views import TraceView
from kiosk.weighing.pan_history import REMEMBERED_S, PanPast

LEAST_TOP_DIVISIONS = 20  # an empty pan's trace is not blown up until its noise fills it
HEADROOM = Decimal("1.15")
_NICE = tuple(map(Decimal, ("1", "1.5", "2", "2.5", "3", "4", "5", "6", "8", "10")))


def trace_view(past: PanPast, readability: Decimal | None) -> TraceView:
    """The last ten seconds, on a scale whose ends are plain numbers."""
    step = readability or Decimal("0.1")
    masses = [mass for _, mass in past.points]
    top = _nice(max([*masses, LEAST_TOP_DIVISIONS * step]) * HEADROOM)
    bottom = min([*masses, Decimal(0)])
    bottom = -_nice(-bottom * HEADROOM) if bottom < -step * LEAST_TOP_DIVISIONS else Decimal(0)
    return TraceView(
        points=tuple(
            (
                _across(age),
                float(min(max((mass - bottom) / (top - bottom), Decimal(0)), Decimal(1))),
            )
            for age, mass in past.points
        ),
        top=grams(top.normalize() + 0),
        bottom=grams(bottom.normalize() + 0),
        stable=None if past.rest is None else _across(past.rest),
        stable_text=say("check.trace.stable"),
        ago_text=say("check.trace.ago"),
        now_text=say("check.trace.now"),
    )


def _across(age: float) -> float:
    return 1 - age / REMEMBERED_S


def _nice(mass: Decimal) -> Decimal:
    """The next larger plain number."""
    place = Decimal(1).scaleb(mass.adjusted())
    return next(each * place for each in _NICE if each * place >= mass)


def scale_facts(facts: TableFacts) -> tuple[tuple[str, str], ...]:
    """Step, most and pace of the scale, as far as they are known."""
    told = []
    if facts.readability is not None:
        told.append((say("scale.step"), grams(facts.readability, facts.readability)))
    if facts.scale.capacity is not None:
        told.append((say("scale.most"), grams(facts.scale.capacity, Decimal(1))))
    if facts.past.pace is not None:
        pace = number(Decimal(facts.past.pace), 0 if facts.past.pace >= 2 else 1)
        told.append((say("check.readings"), say("check.pace", count=pace)))
    return tuple(told)


def steadiness_lines(facts: TableFacts) -> tuple[str, ...]:
    """Noise and drift, while the pan rests for long enough."""
    step = facts.readability
    found = None if step is None else facts.past.steadiness(step)
    if step is None or found is None:
        return ()
    fine = step / 10  # noise is told to a tenth of a step
    noise = say("check.noise", mass=grams(Decimal(found.noise), fine))
    if not found.drift:
        return (say("check.steady", noise=noise),)
    drift = grams(Decimal(found.drift), step)
    return (say("check.drifting", noise=noise, drift=drift),)


def plug_text(facts: TableFacts) -> str:
    """How the scale is heard, in one word."""
    words = {"hid": "check.usb", "serial": "check.serial", "network": "check.network",
             "simulated": "check.simulated", "typed": "check.typed"}  # fmt: skip
    chosen = facts.scale.chosen
    return say(words[chosen.kind]) if chosen else ""
