"""What a person should know about a count that is given all the same."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from kiosk.estimating.exact import half_up
from kiosk.estimating.samples import FEWEST_PIECES, MOST_PIECES, Samples
from kiosk.texts import say
from kiosk.texts.numbers import grams, number, percent

FEW_DIVISIONS = 200


def warnings(
    samples: Samples,
    *,
    filled: Decimal,
    empty: Decimal,
    count: int,
    limit: int,
    inferred: bool,
    whole_only: bool = False,
) -> tuple[str, ...]:
    """Sentences, the most telling first.

    ``limit`` is the largest count of the event; ``inferred``: the readability was taken from the
    digits of the masses; ``whole_only``: broken bits weigh in the fill but do not count.
    """
    finest = min(_last_place(mass) for mass in (*samples.masses, filled, empty))
    return (
        *_of_the_samples(samples),
        *_of_the_divisions(samples, filled - empty),
        *_of_the_readability(samples.readability, inferred=inferred, finest=finest),
        *_of_the_count(samples.pieces, count, limit),
        *((say("count.warning.bits"),) if whole_only else ()),
    )


def _of_the_samples(samples: Samples) -> Iterator[str]:
    masses = samples.masses
    if samples.drift:
        yield say("count.warning.old_samples", percent=percent(100 * Decimal(samples.drift)))
    if samples.differ_too_much:
        yield _differing(samples)
    if len(masses) == 1:
        yield say("count.warning.one_sample")
    if len(masses) == 2 and samples.prior is None:
        yield say("count.warning.two_samples")


def _differing(samples: Samples) -> str:
    """Against what is known of the pieces; with nothing known, against pieces of one kind."""
    known, place = samples.prior is not None, samples.farthest
    if place is None:
        return say("count.warning.differ" if known else "count.warning.differ.if")
    key = "count.warning.differ.one" if known else "count.warning.differ.if.one"
    return say(key, place=place + 1, mass=grams(samples.masses[place]))


def _of_the_divisions(samples: Samples, net: Decimal) -> Iterator[str]:
    step, lightest = samples.readability, min(samples.masses)
    if lightest < FEW_DIVISIONS * step:
        yield _few("sample", lightest, step)
        sampling = samples.sampling()
        if sampling and sampling.number > 1 and not sampling.averaging:
            yield say("count.warning.one_tray", step=grams(step))
    if net < FEW_DIVISIONS * step:
        yield _few("fill", net, step)


def _few(name: str, mass: Decimal, step: Decimal) -> str:
    steps = number(half_up(Fraction(mass) / Fraction(step), 0))
    return say(f"count.warning.few_{name}", steps=steps, step=grams(step), least=FEW_DIVISIONS)


def _of_the_readability(step: Decimal, *, inferred: bool, finest: int) -> Iterator[str]:
    if inferred:
        yield say("count.warning.readability", step=grams(step))
    elif finest < _last_place(step):
        yield say("count.warning.finer_digits", step=grams(step))


def _last_place(mass: Decimal) -> int:
    return int(mass.normalize().as_tuple().exponent)


def _of_the_count(pieces: int, count: int, limit: int) -> Iterator[str]:
    if count > limit:
        yield say("count.warning.over_limit", limit=number(limit))
    if pieces < FEWEST_PIECES:
        yield say("count.warning.few_pieces", least=FEWEST_PIECES)
    if pieces > MOST_PIECES:
        yield say("count.warning.many_pieces", most=MOST_PIECES)
