from __future__ import annotations

from contextlib import closing
from dataclasses import replace

import pytest

from kiosk.evidence import Source
from kiosk.records.entries import (
    KeyChanged,
    KeyDropped,
    KeyStarted,
    MassRole,
    MassVoided,
)
from kiosk.records.errors import Problem
from kiosk.records.kept import KeyDraft
from kiosk.records.store import Store
from tests.helpers.both_stores import BOTH_STORES
from tests.helpers.recorded import AT, key_made, key_mass, key_started, refused

pytestmark = BOTH_STORES


def draft(store: Store, *, simulated: bool = False) -> KeyDraft:
    found = store.open_key(simulated)
    assert found is not None
    return found


def sampled(store: Store, *grams: str, source: Source = Source.BALANCE) -> KeyStarted:
    key = key_started()
    store.save(key, *(key_mass(key, "sample", mass, source=source) for mass in grams))
    return key


def dropped(key: KeyStarted) -> KeyDropped:
    return KeyDropped(key_id=key.id, reason="started over", at=AT)


# Going on where it was left -------------------------------------------------------------------


def test_without_a_key_there_is_nothing_to_go_on_with(store: Store) -> None:
    assert store.open_key(simulated=False) is None


def test_a_key_without_masses_is_nothing_to_go_on_with(store: Store) -> None:
    store.save(key_started())
    assert store.open_key(simulated=False) is None


def test_a_draft_goes_on_after_a_restart(store: Store, where: str) -> None:
    key = key_started()
    tray, sample = key_mass(key, "tray", "8.1"), key_mass(key, "sample", "11.6")
    store.save(key)
    store.save(tray)
    store.save(sample)
    store.close()
    with closing(Store(where)) as restarted:
        found = draft(restarted)
    assert (found.id, found.material, found.scatter_class) == (key.id, "beans", "pulses and grains")
    assert (found.pieces, found.back_in, found.since) == (100, None, key.at)
    assert found.masses == (tray, sample)
    assert found.of(MassRole.SAMPLE) == (sample.weighing,)


def test_voided_masses_are_left_out_and_the_rest_keeps_its_order(store: Store) -> None:
    key = key_started()
    first, wrong, third = (key_mass(key, "sample", mass) for mass in ("3.5", "9.9", "3.6"))
    store.save(key, first, wrong, third)
    store.save(MassVoided(mass_id=wrong.id, reason="miscounted", at=AT))
    assert draft(store).masses == (first, third)


def test_a_sample_added_to_others_keeps_the_reading_before_it(store: Store) -> None:
    key = key_started()
    first = key_mass(key, "sample", "24.9")
    added = replace(key_mass(key, "sample", "28.4"), tare=first.weighing)
    store.save(key, first, added)
    assert [mass.tare for mass in draft(store).masses] == [None, first.weighing]


def test_a_mass_is_voided_once(store: Store) -> None:
    key = key_started()
    mass = key_mass(key, "tray", "8.1")
    store.save(key, mass, MassVoided(mass_id=mass.id, reason="moved", at=AT))
    again = MassVoided(mass_id=mass.id, reason="moved", at=AT)
    assert refused(store, again) is Problem.GONE_ALREADY


def test_a_mass_that_is_not_there_cannot_be_voided(store: Store) -> None:
    gone = MassVoided(mass_id="nothing", reason="moved", at=AT)
    assert refused(store, gone) is Problem.MASS_GONE


def test_a_voiding_saved_again_is_kept_once(store: Store) -> None:
    key = key_started()
    first, second = key_mass(key, "sample", "3.5"), key_mass(key, "sample", "3.6")
    void = MassVoided(mass_id=first.id, reason="miscounted", at=AT)
    store.save(key, first, second, void)
    store.save(void)
    assert draft(store).masses == (second,)


def test_the_latest_answers_stand(store: Store) -> None:
    key = sampled(store, "3.5")
    store.save(KeyChanged(key_id=key.id, pieces=50, at=AT))
    store.save(KeyChanged(key_id=key.id, back_in=True, at=AT))
    store.save(KeyChanged(key_id=key.id, back_in=False, at=AT))
    assert (draft(store).pieces, draft(store).back_in) == (50, False)
    assert (draft(store).goal, draft(store).in_lots) == (None, False)


def test_how_full_it_shall_be_and_in_lots_are_answers_too(store: Store) -> None:
    key = sampled(store, "3.5")
    store.save(KeyChanged(key_id=key.id, goal="high", at=AT))
    store.save(KeyChanged(key_id=key.id, in_lots=True, at=AT))
    store.save(KeyChanged(key_id=key.id, goal="1500", at=AT))
    assert (draft(store).goal, draft(store).in_lots) == ("1500", True)
    store.save(KeyChanged(key_id=key.id, in_lots=False, at=AT))
    assert not draft(store).in_lots


def test_whether_bits_count_is_unknown_until_somebody_said(store: Store) -> None:
    key = sampled(store, "3.5")
    assert draft(store).bits is None
    store.save(KeyChanged(key_id=key.id, bits=False, at=AT))
    store.save(KeyChanged(key_id=key.id, pieces=50, at=AT))
    assert draft(store).bits is False


def test_the_key_begun_last_is_the_one_to_go_on_with(store: Store) -> None:
    sampled(store, "3.5")
    later = sampled(store, "3.6")
    assert draft(store).id == later.id


@pytest.mark.parametrize("end", [dropped, key_made])
def test_an_ended_key_is_not_open_and_takes_nothing_more(store: Store, end: object) -> None:
    key = key_started()
    mass = key_mass(key, "sample", "3.5")
    store.save(key, mass)
    store.save(end(key))  # type: ignore[operator]  # one of the two makers above
    assert store.open_key(simulated=False) is None
    late = (
        key_mass(key, "sample", "3.6"),
        MassVoided(mass_id=mass.id, reason="late", at=AT),
        KeyChanged(key_id=key.id, pieces=50, at=AT),
        key_made(key, "D"),
    )
    assert {refused(store, entry) for entry in late} == {Problem.KEY_CLOSED}


def test_a_mass_needs_a_key(store: Store) -> None:
    assert refused(store, key_mass(key_started(), "tray", "8.1")) is Problem.NO_KEY


# Made -----------------------------------------------------------------------------------------


def test_a_key_made_stands_with_its_evidence(store: Store) -> None:
    key = key_started()
    masses = [key_mass(key, role, "3.5") for role in MassRole]
    store.save(key, *masses, key_made(key))
    (kept,) = store.keys(simulated=False)
    assert kept.made.letter == "C"
    assert kept.draft.masses == tuple(masses)


def test_a_key_without_masses_cannot_be_made(store: Store) -> None:
    key = key_started()
    assert refused(store, key, key_made(key)) is Problem.NO_MASSES
    assert store.keys(simulated=False) == []


def test_keys_come_in_the_order_in_which_they_were_made(store: Store) -> None:
    first, second = sampled(store, "3.5"), sampled(store, "7.1")
    store.save(key_made(second, "A"))
    store.save(key_made(first, "B"))
    assert [kept.made.letter for kept in store.keys(simulated=False)] == ["A", "B"]
    assert store.used_letters(simulated=False) == {"A", "B"}


def test_a_letter_is_given_to_one_jar(store: Store) -> None:
    first, second = sampled(store, "3.5"), sampled(store, "7.1")
    store.save(key_made(first, "C"))
    assert refused(store, key_made(second, "C")) is Problem.LETTER_TAKEN
    store.save(key_made(second, "D"))


def test_a_key_dropped_after_it_was_made_frees_its_letter(store: Store) -> None:
    first, second = sampled(store, "3.5"), sampled(store, "7.1")
    store.save(key_made(first, "C"))
    store.save(dropped(first))
    assert store.keys(simulated=False) == []
    store.save(key_made(second, "C"))
    assert [kept.draft.id for kept in store.keys(simulated=False)] == [second.id]


def test_a_key_is_dropped_once(store: Store) -> None:
    key = sampled(store, "3.5")
    store.save(dropped(key))
    assert refused(store, dropped(key)) is Problem.GONE_ALREADY


# Simulated and real ---------------------------------------------------------------------------


def test_a_simulated_draft_is_offered_on_the_simulated_scale_only(store: Store) -> None:
    key = sampled(store, "3.5", source=Source.SIMULATED)
    assert store.open_key(simulated=False) is None
    assert draft(store, simulated=True).id == key.id
    assert draft(store, simulated=True).simulated


def test_one_key_never_mixes_simulated_and_real(store: Store) -> None:
    key = sampled(store, "3.5", source=Source.SIMULATED)
    assert refused(store, key_mass(key, "sample", "3.6")) is Problem.MIXED


def test_a_key_stays_simulated_when_its_masses_are_voided(store: Store) -> None:
    key = key_started()
    mass = key_mass(key, "sample", "3.5", source=Source.SIMULATED)
    store.save(key, mass, MassVoided(mass_id=mass.id, reason="undone", at=AT))
    assert refused(store, key_mass(key, "sample", "3.6")) is Problem.MIXED
    assert draft(store, simulated=True).masses == ()


def test_simulated_and_real_jars_have_letters_of_their_own(store: Store) -> None:
    real, simulated = sampled(store, "3.5"), sampled(store, "3.5", source=Source.SIMULATED)
    store.save(key_made(real, "C"), key_made(simulated, "C"))
    assert [kept.draft.id for kept in store.keys(simulated=False)] == [real.id]
    assert [kept.draft.id for kept in store.keys(simulated=True)] == [simulated.id]
