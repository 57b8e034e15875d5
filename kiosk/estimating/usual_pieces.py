"""What a piece of a common material weighs about, before one was weighed.

For advice on how much to count, never for a count: a key stands on weighed samples alone. Beads,
nuts and buttons come in all sizes, so nothing is said of them.
"""

from __future__ import annotations

from decimal import Decimal

USUAL_PIECE_GRAMS: dict[str, Decimal] = {
    "rice": Decimal("0.025"),  # 20 to 28 g per 1000 (International Rice Research Institute)
    # small below 40, large above 50 g per 1000 (Saskatchewan Pulse Growers)
    "lentils": Decimal("0.045"),
    "beans": Decimal("0.3"),  # 170 to 600 g per 1000: from memory, not verified
    "pasta": Decimal("0.5"),  # common practice, no source
}
