from __future__ import annotations

from contextlib import closing

import pytest

from kiosk.records.store import Store
from tests.helpers.both_stores import BOTH_STORES

pytestmark = BOTH_STORES


def test_nothing_is_recalled_that_was_not_remembered(store: Store) -> None:
    assert store.recall("team") is None


def test_a_choice_is_remembered_over_a_restart(store: Store, where: str) -> None:
    store.remember("team", "Heron")
    store.close()
    with closing(Store(where)) as restarted:
        assert restarted.recall("team") == "Heron"


def test_the_latest_choice_takes_the_place_of_the_one_before(store: Store) -> None:
    store.remember("team", "Heron")
    store.remember("material", "rice")
    store.remember("team", "Wren")
    assert (store.recall("team"), store.recall("material")) == ("Wren", "rice")


def test_on_a_server_each_kiosk_has_its_own_scale_and_all_have_one_code(
    store: Store, where: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("platform.node", lambda: "bench")
    store.remember("scale", "/dev/ttyUSB0")
    store.remember("coach_code", "a digest")
    monkeypatch.setattr("platform.node", lambda: "door")
    shared = where.startswith("postgresql")
    assert store.recall("scale") == (None if shared else "/dev/ttyUSB0")
    assert store.recall("coach_code") == "a digest"
