"""Whether a ten is one, by the tens before it."""

from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest

from kiosk.estimating.tens import Tens

PASTA = Tens(masses=[Decimal("5.0")] * 5, cv=0.05, readability=Decimal("0.1"))


@pytest.mark.parametrize(
    ("mass", "off"), [("5.0", 0), ("5.2", 0), ("5.5", 1), ("4.5", -1), ("6.0", 2), ("5.34", 1)]
)
def test_a_ten_that_is_some_pieces_off_is_told(mass: str, off: int) -> None:
    assert PASTA.off(Decimal(mass)) == off


@pytest.mark.parametrize(
    ("piece", "cv", "step", "tell"),
    [
        ("0.5", 0.1, "0.1", True),
        ("0.49", 0.1, "0.1", False),  # fewer than five steps
        ("0.025", 0.12, "0.001", True),
        ("0.025", 0.2, "0.001", False),  # pieces that differ so hide one
    ],
)
def test_it_is_offered_only_where_one_piece_shows(
    piece: str, cv: float, step: str, tell: bool
) -> None:
    assert Tens(masses=[10 * Decimal(piece)], cv=cv, readability=Decimal(step)).tell is tell


def test_hardly_a_true_ten_is_pointed_out_and_an_eleven_is() -> None:
    rng = np.random.default_rng(4)
    tens = rng.gamma(10 / 0.05**2, 0.5 * 0.05**2, 4_000)  # ten pieces of 0.5 g that differ by 5 %
    shown = [Decimal(str(round(float(mass), 1))) for mass in tens]
    elevens = [mass + Decimal("0.5") for mass in shown]
    assert sum(PASTA.off(mass) != 0 for mass in shown) < 0.002 * len(shown)
    assert sum(PASTA.off(mass) != 0 for mass in elevens) > 0.98 * len(shown)


def test_nothing_to_compare_with_is_refused() -> None:
    with pytest.raises(ValueError, match="compared"):
        Tens(masses=[], cv=0.05, readability=Decimal("0.1"))
