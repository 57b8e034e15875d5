"""Each band of the trough has its own even scale, and there is no gap between them."""

from __future__ import annotations

import pytest

from kiosk.ui.widgets.gauge_scale import SEGMENTS, place, start


def test_the_bands_fill_the_trough() -> None:
    assert start(len(SEGMENTS)) == pytest.approx(1)


@pytest.mark.parametrize("index", range(len(SEGMENTS)))
def test_a_band_starts_where_the_one_before_ends(index: int) -> None:
    _, low, high, share, _ = SEGMENTS[index]
    assert place(low) == pytest.approx(start(index))
    assert place(high) == pytest.approx(start(index) + share)
    assert place((low + high) / 2) == pytest.approx(start(index) + share / 2)


@pytest.mark.parametrize(("count", "share"), [(0, 0), (99, 0), (20_001, 1), (10**9, 1)])
def test_it_stops_at_both_ends(count: int, share: float) -> None:
    assert place(count) == pytest.approx(share)
