"""The tent is the scoring rule: 0 at the left peg, 100 over the true value, 0 again at double."""

from __future__ import annotations

import pytest

from kiosk.ui.widgets.tent_shape import TentShape

TENT = TentShape(left=14, base=176, wide=514, high=168)


@pytest.mark.parametrize(
    ("share", "points"),
    [(0, 0), (0.5, 50), (0.875, 87.5), (1, 100), (1.25, 75), (2, 0), (2.5, 0), (100, 0)],
)
def test_the_height_is_the_score(share: float, points: float) -> None:
    assert TENT.points(share) == pytest.approx(points)
    assert TENT.y(share) == pytest.approx(176 - 168 * points / 100)


@pytest.mark.parametrize(("share", "x"), [(0, 14), (1, 14 + 257), (2, 14 + 514), (3, 14 + 514)])
def test_the_base_runs_to_double(share: float, x: float) -> None:
    assert TENT.x(share) == pytest.approx(x)


def test_a_seam_ends_on_the_slope() -> None:
    (x, y), (ridge, level) = TENT.seam(40, rising=True)
    assert (x, y) == pytest.approx(TENT.at(0.4))
    assert ridge == TENT.x(1)
    assert level == y


def test_a_seam_at_the_other_side() -> None:
    assert TENT.seam(40, rising=False)[0] == pytest.approx(TENT.at(1.6))
