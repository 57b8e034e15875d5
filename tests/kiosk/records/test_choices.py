from __future__ import annotations

from contextlib import closing

from kiosk.records.store import Store


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
