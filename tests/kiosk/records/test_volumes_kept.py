"""Volume keys: sizes as they were typed, a number for one box only, no scale behind them."""

from __future__ import annotations

from contextlib import closing
from decimal import Decimal

import pytest

from kiosk.records.checking import check
from kiosk.records.entries import GuessMade
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from kiosk.records.volume_entries import (
    LAST_BOX,
    SizeRead,
    SizeVoided,
    VolumeDropped,
    VolumeMade,
    VolumeStarted,
)
from tests.helpers.recorded import AT, refused
from tests.helpers.sqlite_files import version_1


def started(shape: str = "box") -> VolumeStarted:
    return VolumeStarted(shape=shape, at=AT)


def size(
    key: VolumeStarted, edge: str = "long", typed: str = "18.40", unit: str = "cm"
) -> SizeRead:
    return SizeRead(key_id=key.id, edge="long", typed=typed, unit=unit, at=AT)


def made(key: VolumeStarted, number: int = 3, low: str = "2115") -> VolumeMade:
    return VolumeMade(
        key_id=key.id, number=number, cm3=Decimal("2150.4"), low=Decimal(low),
        high=Decimal("2185"), score_effect=Decimal("1.6"), at=AT,
    )  # fmt: skip


def kept(store: Store, number: int = 3) -> VolumeStarted:
    key = started()
    store.save(key, size(key), made(key, number))
    return key


def test_a_draft_goes_on_after_a_restart_with_its_digits(store: Store, where: str) -> None:
    key = started("tapered box")
    first = size(key)
    store.save(key, first)
    store.close()
    with closing(Store(where)) as restarted:
        found = restarted.open_volume(simulated=False)
    assert found is not None
    assert (found.id, found.shape, found.since, found.sizes) == (
        key.id,
        "tapered box",
        AT,
        (first,),
    )
    assert found.sizes[0].typed == "18.40"


def test_a_voided_size_does_not_count(store: Store) -> None:
    key = started()
    wrong, right = size(key, typed="184"), size(key)
    store.save(key, wrong, right, SizeVoided(size_id=wrong.id, reason="undone", at=AT))
    found = store.open_volume(simulated=False)
    assert found is not None
    assert found.sizes == (right,)


def test_a_key_whose_sizes_are_all_voided_is_nothing_to_go_on_with(store: Store) -> None:
    key = started()
    only = size(key)
    store.save(key, only, SizeVoided(size_id=only.id, reason="undone", at=AT))
    assert store.open_volume(simulated=False) is None


def test_a_finished_key_comes_back_whole_and_is_no_draft(store: Store) -> None:
    key = started()
    edge, volume = size(key), made(key)
    store.save(key, edge, volume)
    (found,) = store.volumes(simulated=False)
    assert (found.made, found.draft.sizes) == (volume, (edge,))
    assert store.open_volume(simulated=False) is None


def test_two_boxes_never_have_one_number(store: Store) -> None:
    kept(store)
    other = started()
    assert refused(store, other, size(other), made(other)) is Problem.BOX_TAKEN


def test_a_dropped_key_frees_its_number(store: Store) -> None:
    key = kept(store)
    store.save(VolumeDropped(key_id=key.id, reason="measured again", at=AT))
    assert store.volumes(simulated=False) == []
    kept(store)


@pytest.mark.parametrize("late", [size, made])
def test_a_finished_key_takes_nothing_more(store: Store, late: object) -> None:
    key = kept(store)
    assert refused(store, late(key)) is Problem.KEY_CLOSED  # type: ignore[operator]


def test_a_key_without_sizes_is_none(store: Store) -> None:
    key = started()
    assert refused(store, key, made(key)) is Problem.NO_SIZES


def test_a_size_is_voided_once(store: Store) -> None:
    key = started()
    only = size(key)
    gone = SizeVoided(size_id=only.id, reason="undone", at=AT)
    assert refused(store, gone) is Problem.SIZE_GONE
    store.save(key, only, gone)
    again = SizeVoided(size_id=only.id, reason="undone", at=AT)
    assert refused(store, again) is Problem.GONE_ALREADY


def test_a_box_can_be_guessed_by_its_number(store: Store) -> None:
    key = kept(store, number=7)
    store.save(GuessMade(key_id=key.id, team="Heron", guess=Decimal(2000), at=AT))
    (box,) = store.boxes_to_guess(simulated=False)
    assert (box.letter, box.guesses) == ("7", 1)
    assert store.jars_to_guess(simulated=False) == []


@pytest.mark.parametrize("number", [0, LAST_BOX + 1])
def test_a_box_has_a_number_that_can_be_chosen(number: int) -> None:
    with pytest.raises(ValueError, match="numbered 1 to 26"):
        made(started(), number)


def test_a_shape_or_unit_that_nobody_knows_is_none() -> None:
    with pytest.raises(ValueError, match="pyramid"):
        started("pyramid")
    with pytest.raises(ValueError, match="ell"):
        size(started(), unit="ell")


def test_sound_volumes_pass_the_check_and_others_are_found(store: Store, where: str) -> None:
    kept(store)
    store.close()
    assert check(where, lambda *_: True).findings == ()
    with closing(Store(where)) as again:
        key = started()
        again.save(key, size(key), made(key, number=4, low="2151"))
    (found,) = check(where, lambda *_: True).findings
    assert "2150.4 cm³ do not lie between 2151 and 2185" in found.text


def test_records_of_the_first_version_take_volumes(where: str) -> None:
    version_1(where)
    with closing(Store(where)) as store:
        kept(store)
        assert [volume.made.number for volume in store.volumes(simulated=False)] == [3]
