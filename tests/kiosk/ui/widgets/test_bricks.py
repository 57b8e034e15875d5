"""A mass as bricks of one step of the balance each."""

from __future__ import annotations

import pytest

from kiosk.ui.widgets.bricks import grouped, grouping


@pytest.mark.parametrize(
    ("steps", "group"), [(0, 1), (35, 1), (60, 1), (61, 10), (600, 10), (601, 100), (6001, 1000)]
)
def test_never_more_than_sixty_bricks(steps: int, group: int) -> None:
    assert grouping(steps) == group


def test_one_brick_a_step() -> None:
    assert grouped(36, 1, 1) == (36, 1)


def test_ten_steps_a_brick() -> None:
    assert grouped(362, 21, 10) == (36, 2)


def test_a_small_difference_does_not_disappear() -> None:
    assert grouped(362, 1, 10) == (36, 1)


def test_no_difference_no_brick() -> None:
    assert grouped(360, 0, 10) == (36, 0)


def test_nothing_weighed_nothing_drawn() -> None:
    assert grouped(0, 0, 1) == (0, 0)
