"""Is the balance right? A known mass, what the balance showed, and a verdict that may be open.

Limits are the in-service ones of a class III instrument: one, two or three divisions up to 500,
2 000 and more divisions of load (OIML R 76-1:2006, Table 6, doubled for use in service; the same
in Canada's Specifications Relating to Non-automatic Weighing Devices, SI/98-81; NIST Handbook 44,
Scales, Table 6, has the same up to 4 000 divisions and five above). The step of the display is
taken for the verification interval. A display hides up to half a step, and a known mass is known
to its own tolerance: a deviation counts as fine or as not fine only when neither can change the
verdict.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from kiosk.estimating.known_masses import KnownMass

# (divisions of load, limit in divisions); heavier loads have the last limit
LIMITS = ((500, 1), (2_000, 2), (10_000, 3))
HALF = Decimal("0.5")
NOTHING = KnownMass(grams=Decimal(0), tolerance=Decimal(0))


class Verdict(StrEnum):
    """What can be said of one load or one test."""

    FINE = "fine"
    NOT_FINE = "not fine"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """By how many grams it is off, by how many it may be, and what that means."""

    off: Decimal
    limit: Decimal
    verdict: Verdict


def limit(load: Decimal, readability: Decimal) -> Decimal:
    """The largest error in grams that a load of so many grams may show in service."""
    divisions = abs(load) / readability
    steps = next((steps for most, steps in LIMITS if divisions <= most), LIMITS[-1][1])
    return steps * readability


def judge(known: KnownMass, shown: Decimal, readability: Decimal) -> Finding:
    """One load: what it is, and what the balance showed; all in grams."""
    return _finding(shown - known.grams, known, readability, HALF)


def judge_zero(shown: Sequence[Decimal], readability: Decimal) -> Finding:
    """Whether the emptied pan came back to zero each time: by the worst of ``shown``.

    ValueError if there is none.
    """
    return judge(NOTHING, max(shown, key=abs), readability)


def judge_spread(shown: Sequence[Decimal], load: Decimal, readability: Decimal) -> Finding:
    """Repeated weighings, or places on the pan: they may differ by the limit of the load.

    (SI/98-81; R 76-1, 3.6.1 from memory, not verified.) A difference of two displayed values
    hides up to a whole step. ValueError for fewer than two.
    """
    if len(shown) < 2:
        raise ValueError("one weighing shows no spread")
    load_alone = KnownMass(grams=load, tolerance=Decimal(0))
    return _finding(max(shown) - min(shown), load_alone, readability, Decimal(1))


def _finding(off: Decimal, known: KnownMass, readability: Decimal, hidden: Decimal) -> Finding:
    allowed = limit(known.grams, readability)
    unknown = hidden * readability + known.tolerance
    verdict = Verdict.CANNOT_TELL
    if abs(off) + unknown <= allowed:
        verdict = Verdict.FINE
    elif abs(off) - unknown > allowed:
        verdict = Verdict.NOT_FINE
    return Finding(off=off, limit=allowed, verdict=verdict)


def overall(loads: Iterable[Verdict], tests: Iterable[Verdict]) -> Verdict:
    """The verdict on the balance: one part that is not fine is enough against it.

    For it, a known load must be fine; that a balance repeats does not show that it is right.
    """
    loads = tuple(loads)
    if Verdict.NOT_FINE in (*loads, *tests):
        return Verdict.NOT_FINE
    return Verdict.FINE if Verdict.FINE in loads else Verdict.CANNOT_TELL


def off_by_one_share(
    loads: Iterable[tuple[KnownMass, Decimal]], readability: Decimal
) -> bool | None:
    """Whether one factor explains what all loads show; None for fewer than two.

    Such an error cancels where pieces are counted by weight, because the sample and the container
    are off by the same share.
    """
    shares = [_share(known, shown, readability) for known, shown in loads]
    if len(shares) < 2:
        return None
    return max(low for low, _ in shares) <= min(high for _, high in shares)


def _share(known: KnownMass, shown: Decimal, readability: Decimal) -> tuple[Decimal, Decimal]:
    unknown = HALF * readability + known.tolerance
    return (shown - unknown) / known.grams, (shown + unknown) / known.grams
