"""Only the notes of a large round are kept from the search for unused cycles."""

from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest

from kiosk.ui.set_aside import MANY, set_aside


@pytest.fixture
def before() -> Iterator[int]:
    yield gc.get_freeze_count()
    gc.unfreeze()


def test_a_large_round_is_set_aside(before: int) -> None:
    set_aside(MANY)
    assert gc.get_freeze_count() > before


def test_a_small_round_is_not(before: int) -> None:
    set_aside(MANY - 1)
    assert gc.get_freeze_count() == before
