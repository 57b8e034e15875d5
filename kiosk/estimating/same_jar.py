"""Is a closed jar still what it was? Two weighings of one jar, and the pieces between them.

Two weighings of one load may differ by the in-service limit of the load (see balance_check), and
each was rounded, which hides up to a whole step of their difference. A closed jar may take up or
lose a little moisture through its lid, and the lid comes off and on: a share of the mass for that,
a judgement without a source. Each of two balances may be off by the limit, so that another balance
than the first one adds it once more.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal

from kiosk.estimating.balance_check import limit

MOISTURE_AND_LID = Decimal("0.0002")  # of the mass
ONE = Decimal(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class JarChange:
    """By how many grams a jar is heavier (lighter: below zero) than it was, and what that means.

    ``allowed`` grams lie between two weighings of a jar that is the same. ``pieces`` weigh as much
    as the change; ``fewest`` and ``most`` bound them. ``unseen`` pieces, or fewer, weigh less than
    what is allowed.
    """

    grams: Decimal
    allowed: Decimal
    pieces: int
    fewest: int
    most: int
    unseen: int

    @property
    def same(self) -> bool:
        """Whether two weighings of one jar may differ by as much."""
        return abs(self.grams) <= self.allowed


def allowed_change(mass: Decimal, step: Decimal, *, other_balance: bool) -> Decimal:
    """By how many grams two weighings of a closed jar may differ.

    ``step`` is the coarser step of the two in grams. ValueError for a step that is not above zero.
    """
    if step <= 0:
        raise ValueError("a step is above zero")
    in_service = limit(mass, step) * (2 if other_balance else 1)
    return in_service + step + abs(mass) * MOISTURE_AND_LID


def jar_change(
    before: Decimal,
    now: Decimal,
    *,
    step: Decimal,
    piece_mass: Decimal,
    other_balance: bool = False,
) -> JarChange:
    """Compare two gross masses of a closed jar; all in grams.

    ``step`` is the coarser step of the two weighings. ValueError for a step or a piece that is not
    above zero.
    """
    if piece_mass <= 0:
        raise ValueError("a piece weighs something")
    allowed = allowed_change(before, step, other_balance=other_balance)
    off = abs(now - before)
    least = max(Decimal(0), off - allowed) / piece_mass
    return JarChange(
        grams=now - before,
        allowed=allowed,
        pieces=int((off / piece_mass).quantize(ONE, ROUND_HALF_UP)),
        fewest=int(least.quantize(ONE, ROUND_FLOOR)),
        most=int(((off + allowed) / piece_mass).quantize(ONE, ROUND_CEILING)),
        unseen=int((allowed / piece_mass).quantize(ONE, ROUND_CEILING)),
    )
