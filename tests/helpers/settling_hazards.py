"""What must not be captured: a pour while it rises, a hand that trembles on the pan."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from drivers.simulated.profile import Profile
from drivers.simulated.weighing_pan import WeighingPan
from kiosk.evidence import Source
from kiosk.weighing.pan_events import PanEvent, PanKind
from kiosk.weighing.pan_watch import PanWatch
from tests.helpers.loads import FINE, Kind, averaged, put_on, shown
from tests.helpers.settling_trials import GAP_SECONDS, play

SECONDS = 10.0
EMPTY_SECONDS = 3.0
LOADED_SECONDS = 6.0
TREMOR_DIVISIONS = 8.0
SLOWLY_POURED_DIVISIONS = 60.0
REST_SECONDS = 14.0  # after it


def pour_is_captured(kind: Kind, divisions_per_second: float, rng: np.random.Generator) -> bool:
    """Pour evenly into a cup that rested; True if anything settles while the reading rises."""
    cup = rng.uniform(100, 500) * kind.division
    speed = divisions_per_second * kind.division
    times = np.arange(0, EMPTY_SECONDS + LOADED_SECONDS + SECONDS, 1 / FINE)
    began = EMPTY_SECONDS + LOADED_SECONDS
    load = np.where(times < EMPTY_SECONDS, 0.0, cup) + speed * np.clip(times - began, 0, None)
    grams = averaged(low_pass(load, kind.filter_seconds), kind.averaging_seconds)
    late = 3 * kind.filter_seconds + kind.averaging_seconds  # until the display rises evenly
    return settles(kind, times, grams, rng, began + late + 0.5)


def poured_slowly(
    kind: Kind, divisions_per_second: float, rng: np.random.Generator
) -> tuple[list[PanEvent], float]:
    """What is told from the first grain on to a cup that rested; the grams that lie there then."""
    cup, poured = rng.uniform(100, 500) * kind.division, SLOWLY_POURED_DIVISIONS * kind.division
    began, lasts = EMPTY_SECONDS + LOADED_SECONDS, SLOWLY_POURED_DIVISIONS / divisions_per_second
    times = np.arange(0, began + lasts + REST_SECONDS, 1 / FINE)
    load = np.interp(times, [0, began, began + lasts], [cup, cup, cup + poured])
    load[times < EMPTY_SECONDS] = 0.0
    grams = averaged(low_pass(load, kind.filter_seconds), kind.averaging_seconds)
    watch = PanWatch(kind.readability, Source.SIMULATED)
    told = play(watch, shown(kind, times, grams, rng, float(times[-1])), 0.0)
    return [event for event in told if event.at >= began], cup + poured


def trembling_hand_is_captured(kind: Kind, rng: np.random.Generator) -> bool:
    """Lean on the pan: a tremor of 8 divisions as shown, the noise three times the usual."""
    times = np.arange(0, EMPTY_SECONDS + SECONDS, 1 / FINE)
    tremor = sum(
        np.sin(2 * np.pi * rng.uniform(2, 9) * times + rng.uniform(0, 2 * np.pi)) for _ in range(3)
    )
    rms = TREMOR_DIVISIONS * np.sqrt(2 / 3) * kind.division
    leaning = rng.uniform(200, 1000) * kind.division + rms * tremor
    grams = np.where(times < EMPTY_SECONDS, 0.0, leaning)
    return settles(kind, times, grams, rng, EMPTY_SECONDS, noisier=3.0)


def swaying_hand_is_captured(kind: Kind, number: int, rng: np.random.Generator) -> bool:
    """Lean on the simulated pan: a slow sway, most of it below 4 Hz, that the filter dampens."""
    pan = WeighingPan(
        Profile(
            readability=kind.readability,
            capacity=20_000 * kind.readability,
            noise=0.0,
            filter_seconds=kind.filter_seconds,
            readings_per_second=FINE,
            seed=number,
        )
    )
    samples = pan.advance(EMPTY_SECONDS)
    pan.lean(rng.uniform(200, 1000) * kind.division, TREMOR_DIVISIONS, EMPTY_SECONDS)
    samples += pan.advance(EMPTY_SECONDS + SECONDS)
    times = np.array([sample.at for sample in samples])
    grams = np.array([sample.quiet for sample in samples])
    return settles(kind, times, grams, rng, EMPTY_SECONDS, noisier=3.0)


def settles(
    kind: Kind,
    times: np.ndarray,
    grams: np.ndarray,
    rng: np.random.Generator,
    since: float,
    noisier: float = 1.0,
) -> bool:
    """Whether anything settles after ``since``, when the noise grows, on a balance in use."""
    watch = PanWatch(kind.readability, Source.SIMULATED)
    play(watch, put_on(kind, 1, rng, 6.0).readings, 0.0)
    rough = replace(kind, noise=noisier * kind.noise)
    before = [r for r in shown(kind, times, grams, rng, since) if r.at < since]
    after = [r for r in shown(rough, times, grams, rng, float(times[-1])) if r.at >= since]
    play(watch, before, GAP_SECONDS)
    return any(e.kind is PanKind.SETTLED for e in play(watch, after, GAP_SECONDS))


def low_pass(grams: np.ndarray, seconds: float) -> np.ndarray:
    """A filter of that time constant over fine samples."""
    share = 1 - np.exp(-1 / (FINE * seconds))
    passed, value = np.empty_like(grams), 0.0
    for place, gram in enumerate(grams):
        value += share * (gram - value)
        passed[place] = value
    return passed
