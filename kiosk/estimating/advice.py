"""What would be gained by counting more: a value for the program, a sentence for a person."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from kiosk.estimating.uncertainty import Part
from kiosk.texts import plural, say
from kiosk.texts.numbers import grams, percent


@dataclass(frozen=True, slots=True, kw_only=True)
class MoreSamples:
    """Weigh ``number`` more samples of ``pieces``; the half width then, None if nobody knows."""

    number: int
    pieces: int
    half_width_percent: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CountMoreAtOnce:
    """Count ``pieces`` into each sample instead; the half width then, None if nobody knows."""

    pieces: int
    half_width_percent: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class FinerBalance:
    """Only a balance that steps by ``readability`` grams or less would help."""

    readability: Decimal


Step = MoreSamples | CountMoreAtOnce | FinerBalance


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """How good the key is now, what limits it, and what would be gained by one step more.

    ``now_percent`` is the half width of the 95 % interval; None while nobody can tell, because
    there is a single sample or the balance hardly sees it. ``step`` is None when the key is good
    enough or nothing of this kind helps.
    """

    now_percent: Decimal | None
    dominant: Part | None
    step: Step | None
    readability: Decimal

    @property
    def sentence(self) -> str:
        """One sentence for the person who counts."""
        if self.now_percent is None:
            return say("advice.unknown", help=self.help)
        now = percent(self.now_percent)
        if self.step is None:
            return say("advice.good", now=now)
        return say("advice.gain", now=now, help=self.help)

    @property
    def help(self) -> str:
        """What to do, as the end of a sentence; what it would bring, if that is known."""
        step = self.step
        if isinstance(step, MoreSamples):
            help_ = plural("advice.more_samples", step.number, pieces=step.pieces)
        elif isinstance(step, CountMoreAtOnce):
            help_ = say("advice.at_once", pieces=step.pieces, step=grams(self.readability))
        elif isinstance(step, FinerBalance):
            return say("advice.finer", step=grams(step.readability))
        else:
            return say("advice.more_in_the_fill")
        if step.half_width_percent is None:
            return help_
        return say("advice.then", help=help_, then=percent(step.half_width_percent))
