"""Volume keys by water: two masses or more, a temperature, simulated apart from real."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from decimal import Decimal

import pytest

from kiosk.evidence import Source
from kiosk.records.checking import check
from kiosk.records.errors import Problem
from kiosk.records.store import Store
from kiosk.records.volume_entries import SizeRead, VolumeDropped, VolumeMade, VolumeStarted
from kiosk.records.water_entries import WaterRole, WaterVoided, WaterWeighed
from tests.helpers.recorded import AT, refused, weighing
from tests.helpers.sqlite_files import version_1, version_8

SIMULATED = Source.SIMULATED


def started(shape: str = "water") -> VolumeStarted:
    return VolumeStarted(shape=shape, at=AT)


def water(
    key: VolumeStarted,
    role: WaterRole = WaterRole.FILLED,
    grams: str = "1084.2",
    source: Source = Source.BALANCE,
) -> WaterWeighed:
    warm = None if role is WaterRole.EMPTY else Decimal("21.0")
    mass = weighing(grams, source=source)
    return WaterWeighed(key_id=key.id, role=role, celsius=warm, weighing=mass, at=AT)


def both(key: VolumeStarted, source: Source = Source.BALANCE) -> tuple[WaterWeighed, WaterWeighed]:
    return water(key, WaterRole.EMPTY, "84.10", source), water(key, source=source)


def made(key: VolumeStarted, number: int = 3) -> VolumeMade:
    return VolumeMade(
        key_id=key.id, number=number, cm3=Decimal("1003.1"), low=Decimal("1001"),
        high=Decimal("1005"), score_effect=Decimal("0.2"), at=AT,
    )  # fmt: skip


def kept(store: Store, number: int = 3, source: Source = Source.BALANCE) -> VolumeStarted:
    key = started()
    store.save(key, *both(key, source), made(key, number))
    return key


def ruled(store: Store, number: int) -> None:
    key = started("box")
    size = SizeRead(key_id=key.id, edge="long", typed="9", unit="cm", at=AT)
    store.save(key, size, made(key, number))


def numbers(store: Store, *, simulated: bool) -> list[int]:
    found = [volume.made.number for volume in store.volumes(simulated)]
    assert [box.letter for box in store.boxes_to_guess(simulated)] == sorted(map(str, found))
    return found


def test_a_draft_goes_on_after_a_restart_with_its_digits(store: Store, where: str) -> None:
    key = started()
    masses = both(key)
    store.save(key, *masses)
    store.close()
    with closing(Store(where)) as restarted:
        found = restarted.open_volume(simulated=False)
    assert found is not None
    assert (found.shape, found.waters) == ("water", masses)
    assert found.waters[0].weighing.grams.as_tuple() == Decimal("84.10").as_tuple()
    assert str(found.waters[1].celsius) == "21.0"


def test_a_voided_mass_does_not_count_and_is_voided_once(store: Store) -> None:
    key = started()
    empty, filled = both(key)
    store.save(key, empty, filled, WaterVoided(water_id=filled.id, reason="again", at=AT))
    found = store.open_volume(simulated=False)
    assert found is not None
    assert found.waters == (empty,)
    again = WaterVoided(water_id=filled.id, reason="again", at=AT)
    assert refused(store, again) is Problem.GONE_ALREADY


def test_a_key_needs_both_masses(store: Store) -> None:
    for mass in both(key := started()):
        other = started()
        lone = WaterWeighed(
            key_id=other.id, role=mass.role, celsius=mass.celsius, weighing=mass.weighing, at=AT
        )
        assert refused(store, other, lone, made(other)) is Problem.NO_MASSES
    assert refused(store, key, made(key)) is Problem.NO_MASSES


def test_masses_of_two_kinds_never_make_one_key(store: Store) -> None:
    key = started()
    empty, _ = both(key)
    assert refused(store, key, empty, water(key, source=SIMULATED)) is Problem.MIXED


def test_only_water_has_a_temperature() -> None:
    with pytest.raises(ValueError, match="an empty container has none"):
        WaterWeighed(
            key_id="k", role=WaterRole.EMPTY, celsius=Decimal(20), weighing=weighing("9"), at=AT
        )


def test_a_simulated_box_is_seen_beside_the_simulated_balance_alone(store: Store) -> None:
    ruled(store, 1)
    kept(store, 2)
    kept(store, 4, SIMULATED)
    assert numbers(store, simulated=False) == [1, 2]
    assert numbers(store, simulated=True) == [1, 2, 4]
    assert [volume.draft.simulated for volume in store.volumes(simulated=True)] == [
        False,
        False,
        True,
    ]


def test_a_simulated_draft_is_gone_on_with_beside_the_simulated_balance_alone(store: Store) -> None:
    key = started()
    store.save(key, *both(key, SIMULATED))
    assert store.open_volume(simulated=False) is None
    assert store.open_volume(simulated=True) is not None


def test_a_simulated_box_gives_way_to_a_real_one_never_the_other_way(store: Store) -> None:
    kept(store, 4, SIMULATED)
    ruled(store, 4)
    assert numbers(store, simulated=True) == [4]
    assert [volume.draft.shape for volume in store.volumes(simulated=True)] == ["box"]
    key = started()
    assert refused(store, key, *both(key, SIMULATED), made(key, 4)) is Problem.BOX_TAKEN


def test_the_check_passes_sound_keys_and_finds_mixed_ones(store: Store, where: str) -> None:
    kept(store, 3)
    dropped = kept(store, 4, SIMULATED)
    store.save(VolumeDropped(key_id=dropped.id, reason="measured again", at=AT))
    key = kept(store, 5, SIMULATED)
    store.close()
    assert check(where, lambda *_: True).findings == ()
    with closing(sqlite3.connect(where)) as file, file:
        columns = "key_id, role, celsius, weighing_id, id, at"
        file.execute(
            f"INSERT INTO waters_weighed ({columns}) "
            f"SELECT '{key.id}', role, celsius, weighing_id, 'f' || id, at "
            "FROM waters_weighed ORDER BY place LIMIT 1"
        )
    (found,) = check(where, lambda *_: True).findings
    assert "simulated" in found.text


@pytest.mark.parametrize("older", [version_1, version_8])
def test_older_records_take_water(where: str, older: object) -> None:
    older(where)  # type: ignore[operator]  # one of the two
    with closing(Store(where)) as store:
        kept(store, 5)
        assert numbers(store, simulated=False)[-1] == 5
    with closing(sqlite3.connect(where)) as file, pytest.raises(sqlite3.IntegrityError):
        file.execute("INSERT INTO volumes_started (shape, id, at) VALUES ('pyramid', 'x', '2026')")


def test_what_a_ruler_measured_before_stays(where: str) -> None:
    version_8(where)
    with closing(Store(where)) as store:
        (box,) = store.volumes(simulated=False)
        draft = store.open_volume(simulated=False)
    assert (box.made.number, [size.typed for size in box.draft.sizes]) == (3, ["7.25", "5", "4.0"])
    assert draft is not None
    assert (draft.shape, [size.typed for size in draft.sizes]) == ("tapered box", ["24.50", "18.2"])
