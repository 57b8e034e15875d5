"""Records of an older version on a server become those of the present one, like files do."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import closing

import psycopg
import pytest
from sqlalchemy import Connection

from kiosk.records import server
from kiosk.records.checking import check
from kiosk.records.entries import new_id
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.migrations import migrate
from kiosk.records.models import SCHEMA_VERSION
from kiosk.records.store import Store
from tests.helpers.recorded import balance_checked, check_mass, cup_taken
from tests.helpers.server_records import content, shape, version, version_1


@pytest.fixture
def older(new_database: Callable[[], str]) -> str:
    """Where records of version 1 are."""
    where = new_database()
    version_1(where)
    return where


def test_older_records_then_look_like_new_ones_and_nothing_is_lost(
    older: str, on_server: str
) -> None:
    before = content(older)
    assert version(older) == 1
    Store(older).close()
    assert (version(older), shape(older)) == (SCHEMA_VERSION, shape(on_server))
    after = content(older)
    for table in before.keys() - {"gramstand_schema"}:
        for old, new in zip(before[table], after[table], strict=True):
            assert {name: new[name] for name in old} == old


def test_what_was_kept_can_be_read_and_gone_on_with(older: str) -> None:
    with closing(Store(older)) as store:
        assert [cup.team for cup in store.cups_out(simulated=False)] == ["Wren"]
        (key,) = store.keys(simulated=False)
        assert (key.made.letter, key.made.count, len(key.draft.masses)) == ("C", 2830, 4)
        check_id = new_id()
        store.save(cup_taken(3), check_mass(check_id), balance_checked(check_id))
        assert store.next_cup_number(simulated=False) == 4
        assert store.last_check("bench", simulated=False) == balance_checked(check_id)
    assert check(older, lambda *_: True).findings == ()


def test_a_migration_that_is_interrupted_leaves_the_old_tables(
    older: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    class PowerCutError(Exception):
        pass

    def power_cut(connection: Connection, version: int) -> None:
        migrate(connection, version)
        raise PowerCutError

    before = shape(older)
    monkeypatch.setattr(server, "migrate", power_cut)
    with pytest.raises(PowerCutError):
        Store(older)
    assert (version(older), shape(older)) == (1, before)


def test_records_of_a_newer_version_are_refused_and_left_alone(
    on_server: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    with psycopg.connect(on_server) as connection:
        connection.execute("UPDATE gramstand_schema SET version = version + 1")
    try:
        with pytest.raises(RecordsError, match="newer Gramstand") as caught:
            Store(on_server)
        assert caught.value.problem is Problem.NEWER
        assert version(on_server) == SCHEMA_VERSION + 1
    finally:
        with psycopg.connect(on_server) as connection:
            connection.execute("UPDATE gramstand_schema SET version = version - 1")


def test_kept_rows_cannot_be_changed_by_another_program(on_server: str) -> None:
    with closing(Store(on_server)) as store:
        store.save(cup_taken())
    for change in ("UPDATE cups_taken SET team = 'Wren'", "DELETE FROM cups_taken"):
        with (
            psycopg.connect(on_server) as connection,
            pytest.raises(psycopg.errors.RaiseException, match="kept rows are never changed"),
        ):
            connection.execute(change)
