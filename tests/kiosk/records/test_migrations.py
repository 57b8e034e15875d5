"""Records of an older version open in place, keep what they hold and take what is new."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Callable
from contextlib import closing
from decimal import Decimal

import pytest
from sqlalchemy import Connection

from kiosk.records import sqlite_file
from kiosk.records.entries import new_id
from kiosk.records.errors import RecordsError
from kiosk.records.migrations import migrate
from kiosk.records.models import SCHEMA_VERSION
from kiosk.records.store import Store
from tests.helpers.recorded import balance_checked, check_mass
from tests.helpers.sqlite_files import pragma, version_1, version_8

_FOREIGN_KEY_OF_A_COLUMN = re.compile(r"(\w+_id)VARCHAR\(32\)(CONSTRAINT\w+?)(REFERENCES)")


def shape(where: str) -> set[tuple[str, frozenset[str]]]:
    """Every table, index and trigger as the file describes it, without its spaces.

    A column that was added later stands behind the others, so their order says nothing, and it
    names its own foreign key.
    """
    with closing(sqlite3.connect(where)) as file:
        found = file.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL")
        return {(name, _parts("".join(sql.split()))) for name, sql in found}


def _parts(sql: str) -> frozenset[str]:
    """What stands between the commas of a table, and the whole of anything else."""
    head, _, rest = sql.partition("(")
    if not head.startswith("CREATETABLE"):
        return frozenset({sql})
    apart = _FOREIGN_KEY_OF_A_COLUMN.sub(
        r"\1VARCHAR(32),\2FOREIGNKEY(\1)\3", rest.removesuffix(")")
    )
    return frozenset({head, *apart.split(",")})


def content(where: str) -> dict[str, list[dict[str, object]]]:
    """The rows of every table, each cell by the name of its column."""
    with closing(sqlite3.connect(where)) as file:
        file.row_factory = sqlite3.Row
        tables = file.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall()
        return {
            name: [dict(row) for row in file.execute(f"SELECT * FROM {name}")] for (name,) in tables
        }


def test_a_file_of_version_1_becomes_one_of_the_present_version(where: str) -> None:
    version_1(where)
    assert pragma(where, "user_version") == 1
    Store(where).close()
    assert pragma(where, "user_version") == SCHEMA_VERSION


@pytest.mark.parametrize("older", [version_1, version_8])
def test_it_then_looks_like_a_new_file(
    where: str, tmp_path: object, older: Callable[[str], None]
) -> None:
    older(where)
    Store(where).close()
    fresh = f"{tmp_path}/fresh.sqlite"
    Store(fresh).close()
    assert shape(where) == shape(fresh)


def test_nothing_that_was_kept_is_lost(where: str) -> None:
    version_1(where)
    before = content(where)
    Store(where).close()
    after = content(where)
    assert before["keys_changed"]
    for table, rows in before.items():
        assert len(after[table]) == len(rows)
        for old, new in zip(rows, after[table], strict=True):
            assert {name: new[name] for name in old} == old


def test_what_an_older_version_did_not_ask_is_not_answered(where: str) -> None:
    version_1(where)
    Store(where).close()
    changed = content(where)["keys_changed"]
    answers = {(row["goal"], row["in_lots"], row["bits"]) for row in changed}
    assert answers == {(None, None, None)}


def test_what_was_kept_can_be_read_and_gone_on_with(where: str) -> None:
    version_1(where)
    store = Store(where)
    assert [cup.team for cup in store.cups_out(simulated=False)] == ["Wren"]
    assert store.cups_out(simulated=False)[0].empty.grams.as_tuple() == Decimal("14.10").as_tuple()
    (key,) = store.keys(simulated=False)
    assert (key.made.letter, key.made.count, len(key.draft.masses)) == ("C", 2830, 4)
    assert store.next_cup_number(simulated=False) == 3
    store.close()


def test_it_takes_a_check_of_the_balance(where: str) -> None:
    version_1(where)
    store = Store(where)
    check_id = new_id()
    store.save(check_mass(check_id), balance_checked(check_id))
    assert store.last_check("bench", simulated=False) == balance_checked(check_id)
    store.close()


def test_the_new_tables_are_guarded_too(where: str) -> None:
    version_1(where)
    store = Store(where)
    check_id = new_id()
    store.save(check_mass(check_id), balance_checked(check_id))
    store.close()
    with (
        closing(sqlite3.connect(where)) as file,
        pytest.raises(sqlite3.IntegrityError, match="kept rows are never changed"),
    ):
        file.execute("UPDATE balances_checked SET verdict = 'fine'")


def test_opening_again_changes_nothing(where: str) -> None:
    version_1(where)
    Store(where).close()
    before = shape(where)
    Store(where).close()
    assert shape(where) == before


def test_a_migration_that_is_interrupted_leaves_the_old_file(
    monkeypatch: pytest.MonkeyPatch, where: str
) -> None:
    class PowerCutError(Exception):
        pass

    def power_cut(connection: Connection, version: int) -> None:
        migrate(connection, version)
        raise PowerCutError

    version_1(where)
    before = shape(where)
    with monkeypatch.context() as patch:
        patch.setattr(sqlite_file, "migrate", power_cut)
        with pytest.raises(PowerCutError):
            Store(where)
    assert (shape(where), pragma(where, "user_version")) == (before, 1)
    Store(where).close()
    assert pragma(where, "user_version") == SCHEMA_VERSION


def test_an_older_program_refuses_the_new_file(where: str) -> None:
    version_1(where)
    Store(where).close()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sqlite_file, "SCHEMA_VERSION", 1)
        with pytest.raises(RecordsError, match="newer Gramstand"):
            Store(where)
