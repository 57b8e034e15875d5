"""Jars with a key, weighed closed: the last such mass is theirs, checks beside it are kept."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from kiosk.evidence import Source
from kiosk.records.entries import KeyChanged, KeyDropped, MassRole, new_id
from kiosk.records.errors import Problem
from kiosk.records.jar_entries import JarRole, JarWeighed
from kiosk.records.store import Store
from tests.helpers.both_stores import BOTH_STORES
from tests.helpers.recorded import AT, key_made, key_mass, key_started, refused, weighing

pytestmark = BOTH_STORES


def jar_weighed(
    key_id: str, grams: str, role: JarRole = JarRole.CLOSED, source: Source = Source.BALANCE
) -> JarWeighed:
    return JarWeighed(key_id=key_id, role=role, weighing=weighing(grams, source=source), at=AT)


def keep_key(store: Store, letter: str = "C") -> str:
    started = key_started()
    filled = key_mass(started, MassRole.FILLED, "732.1")
    store.save(started, filled, key_made(started, letter))
    return started.id


def test_a_jar_is_known_by_what_it_weighed_closed_last(store: Store) -> None:
    key = keep_key(store)
    store.save(jar_weighed(key, "741.3"), jar_weighed(key, "741.9"))
    store.save(jar_weighed(key, "738.0", JarRole.CHECKED))
    (jar,) = store.closed_jars(simulated=False)
    assert jar.closed is not None
    assert jar.filled is not None
    assert (jar.letter, str(jar.closed.grams), str(jar.filled.grams)) == ("C", "741.9", "732.1")


def test_jars_come_by_letter_and_some_were_never_weighed_closed(store: Store) -> None:
    for letter in "BA":
        keep_key(store, letter)
    jars = store.closed_jars(simulated=False)
    assert [(jar.letter, jar.closed) for jar in jars] == [("A", None), ("B", None)]
    assert store.closed_jars(simulated=True) == []


def test_a_jar_filled_in_lots_was_never_weighed_whole(store: Store) -> None:
    started = key_started()
    lots = [key_mass(started, MassRole.FILLED, grams) for grams in ("732.1", "730.0")]
    store.save(started, *lots, KeyChanged(key_id=started.id, in_lots=True, at=AT))
    store.save(key_made(started, "C"))
    (jar,) = store.closed_jars(simulated=False)
    assert jar.filled is None


def test_a_jar_without_a_key_is_not_taken(store: Store) -> None:
    assert refused(store, jar_weighed(new_id(), "741.3")) is Problem.NO_KEY
    key = keep_key(store)
    store.save(KeyDropped(key_id=key, reason="poured out", at=AT))
    assert refused(store, jar_weighed(key, "741.3")) is Problem.NO_KEY


def test_a_simulated_mass_is_not_taken_for_a_real_jar(store: Store) -> None:
    key = keep_key(store)
    simulated = jar_weighed(key, "741.3", source=Source.SIMULATED)
    assert refused(store, simulated) is Problem.MIXED


def test_written_twice_it_is_kept_once_with_its_digits(store: Store) -> None:
    key = keep_key(store)
    entry = jar_weighed(key, "741.30")
    store.save(entry)
    store.save(entry)
    (jar,) = store.closed_jars(simulated=False)
    assert jar.closed == entry.weighing
    assert jar.closed.grams.as_tuple() == Decimal("741.30").as_tuple()
    other = replace(entry, role=JarRole.CHECKED)
    assert refused(store, other) is Problem.OTHER_CONTENT
