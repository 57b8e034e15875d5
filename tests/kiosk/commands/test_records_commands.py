"""``gramstand export``, ``backup`` and ``check`` as a person and as a program meet them."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.commands.check import fits
from kiosk.records.journal import Journal, journal_file
from kiosk.records.models import Base
from kiosk.records.store import Store
from tests.helpers.command import Command
from tests.helpers.recorded import cup_taken, handed_in
from tests.helpers.sqlite_files import pragma

SERVER = "postgresql://kiosk:sesame@/event?host=/nowhere"


@pytest.fixture
def where(tmp_path: Path) -> str:
    """Sound records: one cup in, one out."""
    place = str(tmp_path / "records.sqlite")
    store, cup = Store(place), cup_taken(3)
    store.save(cup, handed_in(cup), cup_taken(4))
    store.close()
    return place


def spoil_points(where: str) -> None:
    with closing(sqlite3.connect(where)) as file:
        [(guard,)] = file.execute(
            "SELECT sql FROM sqlite_master WHERE name = 'cups_handed_in_no_UPDATE'"
        )
        file.execute("DROP TRIGGER cups_handed_in_no_UPDATE")
        file.execute("UPDATE cups_handed_in SET points = '99.9'")
        file.execute(guard)
        file.commit()


def test_export_names_every_file_once_it_is_there(
    gramstand: Command, where: str, tmp_path: Path
) -> None:
    folder = tmp_path / "out"
    code, found = gramstand.answers("export", str(folder), "--records", where, "--json")
    assert code == 0
    assert {row["table"] for row in found} == set(Base.metadata.tables)
    assert all(Path(row["file"]).is_file() for row in found)
    assert {row["table"]: row["rows"] for row in found}["cups_taken"] == 2


def test_export_tells_a_person(gramstand: Command, where: str, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    code, out, err = gramstand("export", str(folder), "--records", where)
    assert (code, err) == (0, "")
    assert f"cups_handed_in: 1 row in {folder / 'cups_handed_in.csv'}\n" in out


def test_export_refuses_to_overwrite(gramstand: Command, where: str, tmp_path: Path) -> None:
    words = ("export", str(tmp_path / "out"), "--records", where)
    gramstand(*words)
    code, out, err = gramstand(*words)
    assert (code, out, err.count("\n")) == (1, "", 1)
    assert "Nothing was overwritten." in err


def test_backup_makes_sound_records(gramstand: Command, where: str, tmp_path: Path) -> None:
    copy = str(tmp_path / "copy.sqlite")
    code, found = gramstand.answers("backup", copy, "--records", where, "--json")
    assert (code, found) == (0, [{"backup": copy, "bytes": Path(copy).stat().st_size}])
    assert gramstand("check", "--records", copy)[0] == 0


def test_backup_tells_a_person(gramstand: Command, where: str, tmp_path: Path) -> None:
    copy = tmp_path / "copy.sqlite"
    said = gramstand("backup", str(copy), "--records", where)
    assert said == (0, f"The records are copied to {copy}, and the copy is sound.\n", "")


def test_backup_refuses_to_overwrite(gramstand: Command, where: str) -> None:
    code, [found] = gramstand.answers("backup", where, "--records", where, "--json")
    assert (code, "is there already" in found["refused"]) == (1, True)


def test_backup_of_a_server_that_is_away_says_so(gramstand: Command, tmp_path: Path) -> None:
    code, out, err = gramstand("backup", str(tmp_path / "copy"), "--records", SERVER)
    assert (code, out, "do not answer" in err) == (1, "", True)
    assert "sesame" not in err
    assert list(tmp_path.iterdir()) == []


def test_check_of_sound_records(gramstand: Command, where: str) -> None:
    code, found = gramstand.answers("check", "--records", where, "--json")
    tables = len(Base.metadata.tables)
    # 3 weighings, 2 cups taken, 1 handed in, 1 number taken
    assert (code, found) == (0, [{"sound": True, "findings": 0, "tables": tables, "rows": 7}])
    assert gramstand("check", "--records", where)[1] == (
        f"The records hold together: 7 rows in {tables} tables.\n"
    )


def test_check_of_wrong_records(gramstand: Command, where: str) -> None:
    spoil_points(where)
    code, [found, summary] = gramstand.answers("check", "--records", where, "--json")
    assert (code, found["finding"], found["table"]) == (1, "points", "cups_handed_in")
    assert found["text"].endswith("93.4 g for 100 g is not worth 99.9 points (under).")
    assert (summary["sound"], summary["findings"]) == (False, 1)


def test_check_tells_a_person_what_is_wrong(gramstand: Command, where: str) -> None:
    spoil_points(where)
    code, out, err = gramstand("check", "--records", where)
    assert (code, err, len(out.splitlines())) == (1, "", 2)
    assert out.endswith("1 thing is wrong. Make a backup, then ask for help.\n")


@pytest.mark.parametrize(
    ("target", "net", "points", "side", "expected"),
    [
        ("100", "93.4", "93.4", "under", True),
        ("100", "104", "96.0", "over", True),
        ("100", "104", "0.0", "over", True),  # where nothing is given for too much
        ("100", "104", "95.9", "over", False),
        ("100", "93.4", "93.4", "over", False),
        ("100", "93.45", "93", "under", True),  # whole points
        ("100", "93.45", "93.5", "under", True),
        ("100", "93.45", "93.45", "under", True),
        ("100", "93.4", "93.40000", "under", False),  # no rule has five decimals
        ("100", "-3", "0.0", "under", False),
        ("0", "3", "0.0", "over", False),
        ("100", "93.4", "1E+2", "under", False),
    ],
)
def test_points_fit_by_any_rule(
    target: str, net: str, points: str, side: str, expected: bool
) -> None:
    assert fits(Decimal(target), Decimal(net), Decimal(points), side) is expected


@pytest.mark.parametrize("words", [("check",), ("export", "{out}"), ("backup", "{out}")])
@pytest.mark.parametrize("place", ["none.sqlite", ".", "mysql://server/x"])
def test_a_place_without_records_is_bad_input(
    gramstand: Command,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    words: tuple[str, ...],
    place: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    given = [word.format(out=tmp_path / "out") for word in words]
    gramstand.refusal(*given, "--records", place, "--json")
    assert list(tmp_path.iterdir()) == []


def test_without_a_place_they_mean_the_usual_file(
    gramstand: Command, where: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kiosk.records.places.usual_file", lambda: Path(where))
    assert gramstand("check")[0] == 0
    assert gramstand("backup", str(tmp_path / "copy"))[0] == 0
    assert pragma(str(tmp_path / "copy"), "integrity_check") == "ok"


def test_import_takes_in_what_was_exported(gramstand: Command, where: str, tmp_path: Path) -> None:
    folder, new = str(tmp_path / "stick"), str(tmp_path / "new.sqlite")
    gramstand("export", folder, "--records", where)
    code, found = gramstand.answers("import", folder, "--records", new, "--json")
    rows = {row["table"]: (row["new"], row["known"], row["conflicts"]) for row in found}
    assert (code, rows["cups_taken"]) == (0, (2, 0, []))
    code, out, _ = gramstand("import", folder, "--records", new)
    assert (code, out) == (0, "0 new rows in all\n")


def test_import_names_what_does_not_fit(gramstand: Command, where: str, tmp_path: Path) -> None:
    folder, other = str(tmp_path / "stick"), str(tmp_path / "other.sqlite")
    store = Store(other)
    store.save(cup_taken(4))
    store.close()
    gramstand("export", folder, "--records", other)
    code, found = gramstand.answers("import", folder, "--records", where, "--json")
    (labels,) = [row for row in found if row["table"] == "labels_taken"]
    assert (code, len(labels["conflicts"])) == (1, 1)


def test_import_of_a_folder_that_nobody_exported(
    gramstand: Command, where: str, tmp_path: Path
) -> None:
    code, out, err = gramstand("import", str(tmp_path), "--records", where)
    assert (code, out, "is missing" in err) == (1, "", True)


# What a kiosk has not stored on its server -------------------------------------------------------


@pytest.fixture
def with_a_journal(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """The journal of a kiosk whose server is away: one capture waits, one was refused."""
    monkeypatch.setattr("kiosk.records.journal.usual_file", lambda: tmp_path / "records.sqlite")
    path = journal_file(SERVER)
    assert path is not None
    with closing(Journal(path)) as journal:
        journal.add([cup_taken(7)])
        journal.refuse(1, "Cup 7 is out already.")
        journal.add([cup_taken(8)])
    return path


def test_check_tells_what_this_kiosk_has_not_stored(
    gramstand: Command, with_a_journal: Path
) -> None:
    code, out, err = gramstand("check", "--records", SERVER)
    assert (code, "do not answer" in err) == (1, True)
    assert out.splitlines() == [
        "Cup 7 is out already.",
        f"1 capture of this kiosk is not yet stored; it waits in {with_a_journal}.",
    ]


def test_check_tells_it_in_json(gramstand: Command, with_a_journal: Path) -> None:
    _, [left, _away] = gramstand.answers("check", "--records", SERVER, "--json")
    refused = ["Cup 7 is out already."]
    assert left == {"journal": str(with_a_journal), "waiting": 1, "refused": refused}


def test_check_makes_no_journal(
    gramstand: Command, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr("kiosk.records.journal.usual_file", lambda: tmp_path / "records.sqlite")
    gramstand("check", "--records", SERVER)
    assert list(tmp_path.iterdir()) == []
