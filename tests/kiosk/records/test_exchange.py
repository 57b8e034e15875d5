from __future__ import annotations

import csv
import sqlite3
from contextlib import closing
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.exchange import export
from kiosk.records.models import Base
from kiosk.records.store import Store
from tests.helpers.recorded import (
    balance_checked,
    check_mass,
    cup_taken,
    handed_in,
    key_made,
    key_mass,
    key_started,
)
from tests.helpers.sqlite_files import version_1


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "for the office" / "tables"


@pytest.fixture
def full(store: Store, where: str) -> str:
    """Records with something in every kind of column."""
    cup, key = cup_taken(3, empty="12.30"), key_started()
    check = check_mass("c" * 32)
    store.save(cup, handed_in(cup, "105.70"), cup_taken(4, team="", empty="-0.0"))
    store.save(key, key_mass(key, "sample", "35.4"), key_made(key))
    store.save(check, balance_checked("c" * 32))
    store.remember("material", "rice")
    return where


def rows(folder: Path, table: str) -> list[dict[str, str]]:
    with (folder / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


def refused(where: str, folder: Path) -> RecordsError:
    with pytest.raises(RecordsError) as caught:
        list(export(where, folder))
    return caught.value


def test_every_table_is_a_file_with_every_column(full: str, folder: Path) -> None:
    done = list(export(full, folder))
    assert {one.table for one in done} == set(Base.metadata.tables)
    for one in done:
        with one.file.open(encoding="utf-8", newline="") as file:
            header, *lines = csv.reader(file, strict=True)
        assert set(header) == set(Base.metadata.tables[one.table].columns.keys())
        assert len(lines) == one.rows


def test_masses_keep_their_digits_and_signs(full: str, folder: Path) -> None:
    list(export(full, folder))
    masses = [row["grams"] for row in rows(folder, "weighings")]
    assert masses[:3] == ["12.30", "105.70", "-0.0"]
    assert rows(folder, "cups_handed_in")[0]["net"] == "93.40"


def test_times_are_utc(full: str, folder: Path) -> None:
    list(export(full, folder))
    moment = datetime.fromisoformat(rows(folder, "cups_taken")[0]["at"])
    assert (moment.utcoffset(), moment.hour) == (timedelta(0), 9)


def test_frames_and_answers_are_plain(full: str, folder: Path) -> None:
    list(export(full, folder))
    assert bytes.fromhex(rows(folder, "weighings")[0]["raw"]) == b"frame"
    assert rows(folder, "cups_taken")[0]["simulated"] == "false"
    assert rows(folder, "keys_made")[0]["warnings"] == '["samples are light", "take more"]'


def test_files_are_utf_8_with_lines_by_rfc_4180(store: Store, where: str, folder: Path) -> None:
    store.save(cup_taken(1, team="Zoé, “the” 🐦"))
    list(export(where, folder))
    whole = (folder / "cups_taken.csv").read_bytes()
    assert whole.startswith(b"place,id,at,")
    assert '"Zoé, “the” 🐦"'.encode() in whole
    assert whole.count(b"\n") == whole.count(b"\r\n") == 2


HOSTILE = (
    "=cmd|' /C calc'!A0", "+1", "-1", "@SUM(1)", "\t=1", "\r\n=1", '"=1', 'a","=1', "a\r\n=1,2",
    "'=1", "＝1", "",
)  # fmt: skip


@pytest.mark.parametrize("team", HOSTILE)
def test_a_hostile_name_stays_a_name(store: Store, where: str, folder: Path, team: str) -> None:
    store.save(cup_taken(1, team=team))
    list(export(where, folder))
    [row] = rows(folder, "cups_taken")
    assert row["team"].removeprefix("'") == team
    assert not row["team"].lstrip().startswith(("=", "+", "-", "@", "＝"))
    assert None not in row  # it made no cells of its own


@pytest.mark.parametrize("table", ["weighings", "choices"])
def test_nothing_is_overwritten_and_nothing_else_written(
    full: str, folder: Path, table: str
) -> None:
    folder.mkdir(parents=True)
    theirs = folder / f"{table}.csv"
    theirs.write_text("mine")
    error = refused(full, folder)
    assert (error.problem, str(theirs) in str(error)) == (Problem.THERE_ALREADY, True)
    assert [(one.name, one.read_text()) for one in folder.iterdir()] == [(theirs.name, "mine")]


def test_half_an_export_is_taken_away(
    full: str, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened = Path.open

    def full_disk(path: Path, *args: object, **more: object) -> object:
        if path.name == "weighings.csv":
            raise OSError(28, "No space left on device")
        return opened(path, *args, **more)  # type: ignore[call-overload]  # as it was called

    monkeypatch.setattr(Path, "open", full_disk)
    assert refused(full, folder).problem is Problem.NOT_WRITABLE
    assert list(folder.iterdir()) == []


def test_a_file_is_no_folder(full: str, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    assert refused(full, tmp_path / "file").problem is Problem.THERE_ALREADY
    assert (tmp_path / "file").read_text() == "mine"


def test_older_records_are_written_as_tables_of_today_and_stay_old(
    where: str, folder: Path
) -> None:
    version_1(where)
    before = Path(where).read_bytes()
    done = {one.table: one.rows for one in export(where, folder)}
    assert (done["cups_taken"], done["check_masses"]) == (3, 0)
    assert Path(where).read_bytes() == before


def test_a_kiosk_may_have_the_records_open(full: str, store: Store, folder: Path) -> None:
    for one in export(full, folder):
        if one.table == "choices":
            continue
    store.save(cup_taken(9))
    assert "9" not in [row["number"] for row in rows(folder, "cups_taken")]


def test_without_records_nothing_is_made(tmp_path: Path, folder: Path) -> None:
    assert refused(str(tmp_path / "none.sqlite"), folder).problem is Problem.NOT_THERE
    assert not (tmp_path / "none.sqlite").exists()
    assert not folder.exists()


def test_a_cell_that_is_no_number_is_made_harmless_too(full: str, folder: Path) -> None:
    with closing(sqlite3.connect(full)) as file:
        file.execute("DROP TRIGGER weighings_no_UPDATE")
        file.execute("UPDATE weighings SET grams = '=1+1' WHERE place = 1")
        file.commit()
    list(export(full, folder))
    assert rows(folder, "weighings")[0]["grams"] == "'=1+1"


def test_the_coachs_code_leaves_in_no_export(store: Store, where: str, folder: Path) -> None:
    store.remember("coach_code", "salt$digest")
    store.remember("material", "rice")
    list(export(where, folder))
    assert [row["name"] for row in rows(folder, "choices")] == ["material"]
