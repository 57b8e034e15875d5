"""Records of another kiosk taken in: unchanged where nothing was, merged where something was."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from kiosk.records.checking import check
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.exchange import export
from kiosk.records.importing import TakenIn
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote
from kiosk.records.store import Store
from kiosk.rounds.contents import readable
from tests.helpers.recorded import (
    AT,
    balance_checked,
    check_mass,
    cup_taken,
    handed_in,
    key_made,
    key_mass,
    key_started,
)
from tests.helpers.weighings import weighed

HOSTILE = ("=1+1", "'=1", "\r\n=1", ' a ",b', "", "-1", "Zoé 🐦")
OPENED = RoundNote(
    id="a" * 32, at=AT, round_id="a" * 32, simulated=True, kind=NoteKind.ROUND,
    about="round", after=FIRST, content='{"name": "Autumn"}',
)  # fmt: skip


def answer(team: str, estimate: str, after: str = FIRST) -> RoundNote:
    content = {"team": team, "typing": "first", "estimate": estimate}
    return round_note(NoteKind.ANSWER, f"answer {team}", content, after)


def round_note(kind: NoteKind, about: str, content: object, after: str = FIRST) -> RoundNote:
    return RoundNote(
        at=AT, round_id=OPENED.id, simulated=True, kind=kind,
        about=about, after=after, content=json.dumps(content),
    )  # fmt: skip


@pytest.fixture
def another(tmp_path: Path) -> Callable[..., Path]:
    """A folder that another kiosk with these entries exported."""
    made = iter(range(99))

    def exported(*entries: object) -> Path:
        number = next(made)
        where = str(tmp_path / f"other {number}.sqlite")
        other = Store(where)
        other.save(*entries)  # type: ignore[arg-type]
        other.remember("material", "rice")
        other.close()
        folder = tmp_path / f"stick {number}"
        list(export(where, folder))
        return folder

    return exported


def whatever(*_: str) -> bool:
    """Any note can be read."""
    return True


def of(found: list[TakenIn], table: str) -> tuple[int, int, int]:
    (one,) = [one for one in found if one.table == table]
    return one.new, one.known, len(one.conflicts)


def contents(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in sorted(folder.iterdir())}


def everything() -> list[object]:
    cup, key = cup_taken(3, empty="12.30"), key_started()
    mass = check_mass("c" * 32)
    names = [cup_taken(10 + place, team=name) for place, name in enumerate(HOSTILE)]
    note = replace(answer("wren", "{}"), weighing=weighed("1.20"))
    return [
        cup, handed_in(cup, "105.70"), cup_taken(4, team="", empty="-0.0"), key,
        key_mass(key, "sample", "35.4"), key_made(key), mass, balance_checked("c" * 32),
        *names, OPENED, note,
    ]  # fmt: skip


def test_its_own_files_come_back_unchanged(
    store: Store, where: str, another: Callable[..., Path], tmp_path: Path
) -> None:
    folder = another(*everything())
    store.take_in(folder, whatever)
    list(export(where, tmp_path / "again"))
    assert contents(tmp_path / "again") == contents(folder)


def test_what_was_taken_in_holds_together(
    store: Store, where: str, another: Callable[..., Path]
) -> None:
    store.take_in(another(*everything()), whatever)
    assert check(where, lambda *_: True).findings == ()


def test_taken_in_twice_it_is_kept_once(store: Store, another: Callable[..., Path]) -> None:
    folder = another(*everything())
    store.take_in(folder, whatever)
    assert of(store.take_in(folder, whatever), "cups_taken") == (0, 2 + len(HOSTILE), 0)


def test_rows_of_both_stand_side_by_side(store: Store, another: Callable[..., Path]) -> None:
    store.save(OPENED, answer("heron", "1"))
    found = store.take_in(another(OPENED, answer("wren", "2")), whatever)
    assert of(found, "round_notes") == (1, 1, 0)
    assert [note.about for note in store.round_notes(OPENED.id)] == [
        "round", "answer heron", "answer wren",
    ]  # fmt: skip


def test_what_was_answered_on_both_is_a_conflict_and_the_one_here_stands(
    store: Store, another: Callable[..., Path]
) -> None:
    here = answer("wren", "1")
    store.save(OPENED, here)
    there = answer("wren", "2")
    later = answer("wren", "3", after=there.id)
    found = store.take_in(another(OPENED, there, later), whatever)
    (notes,) = [one for one in found if one.table == "round_notes"]
    assert [conflict.id for conflict in notes.conflicts] == [there.id, later.id]
    assert notes.conflicts[0].theirs["content"] == there.content
    assert store.round_notes(OPENED.id) == [OPENED, here]


def team(name: str, division: str, after: str = FIRST) -> RoundNote:
    content = {"team": name, "division": division, "sitting": 1, "gone": ""}
    return round_note(NoteKind.TEAM, f"team {name}", content, after)


HERON_IS_HERE, WREN_IS_HERE = team("heron", "d"), team("wren", "d")
LOCKED = round_note(NoteKind.STEP, "step d", {"division": "d", "stage": "locked"})


def test_an_answer_that_comes_after_the_lock_is_a_conflict(
    store: Store, another: Callable[..., Path]
) -> None:
    store.save(OPENED, HERON_IS_HERE, LOCKED)
    found = store.take_in(another(OPENED, HERON_IS_HERE, answer("heron", "2")), whatever)
    assert of(found, "round_notes") == (0, 2, 1)


def test_a_lock_that_knew_nothing_of_an_answer_here_is_a_conflict(
    store: Store, another: Callable[..., Path]
) -> None:
    there, here = answer("heron", "2"), answer("wren", "1")
    theirs = another(OPENED, HERON_IS_HERE, WREN_IS_HERE, there, LOCKED)
    store.save(OPENED, HERON_IS_HERE, WREN_IS_HERE, here)
    assert of(store.take_in(theirs, whatever), "round_notes") == (1, 3, 1)
    assert [note.about for note in store.round_notes(OPENED.id)][-1] == "answer heron"


def test_a_lock_that_knew_all_that_is_here_is_taken_in(
    store: Store, another: Callable[..., Path]
) -> None:
    there, both = answer("heron", "2"), answer("wren", "1")
    theirs = another(OPENED, HERON_IS_HERE, both, there, LOCKED)
    store.save(OPENED, HERON_IS_HERE, both)
    assert of(store.take_in(theirs, whatever), "round_notes") == (2, 3, 0)


ROBIN_IS_ELSEWHERE = team("robin", "other")


def test_a_lock_is_taken_in_whatever_was_noted_here_in_another_division(
    store: Store, another: Callable[..., Path]
) -> None:
    theirs = another(OPENED, HERON_IS_HERE, ROBIN_IS_ELSEWHERE, LOCKED)
    store.save(OPENED, HERON_IS_HERE, ROBIN_IS_ELSEWHERE, answer("robin", "1"))
    assert of(store.take_in(theirs, whatever), "round_notes") == (1, 3, 0)


@pytest.mark.parametrize("here", ["d", "other"])
def test_a_lock_that_knew_nothing_of_a_team_that_moved_is_a_conflict(
    store: Store, another: Callable[..., Path], here: str
) -> None:
    first = team("robin", "other" if here == "d" else "d")
    moved, robin = team("robin", here, after=first.id), answer("robin", "1")
    theirs = another(OPENED, first, LOCKED)
    store.save(OPENED, first, moved, robin)
    assert of(store.take_in(theirs, whatever), "round_notes") == (0, 2, 1)


def test_a_lock_that_knew_nothing_of_a_key_here_is_a_conflict(
    store: Store, another: Callable[..., Path]
) -> None:
    theirs = another(OPENED, HERON_IS_HERE, LOCKED)
    store.save(OPENED, HERON_IS_HERE, round_note(NoteKind.KEY, "key d mass", {"division": "d"}))
    assert of(store.take_in(theirs, whatever), "round_notes") == (0, 2, 1)


def test_what_cannot_be_read_is_a_conflict_and_so_is_what_follows_it(
    store: Store, another: Callable[..., Path]
) -> None:
    asked = []

    def but_rounds(kind: str, about: str, content: str) -> bool:
        asked.append((kind, about, content))
        return kind != NoteKind.ROUND

    found = store.take_in(another(OPENED, HERON_IS_HERE), but_rounds)
    assert of(found, "round_notes") == (0, 0, 2)
    assert asked[0] == (OPENED.kind, OPENED.about, OPENED.content)


def test_a_note_that_holds_no_note_is_a_conflict(
    store: Store, another: Callable[..., Path]
) -> None:
    store.save(OPENED)
    folder = another(OPENED, answer("wren", "2"))
    file = folder / "round_notes.csv"
    file.write_text(re.sub(r'"{""team.*}"', "[]", file.read_text(encoding="utf-8")), "utf-8")
    assert "[]" in file.read_text(encoding="utf-8")
    assert of(store.take_in(folder, readable), "round_notes") == (0, 1, 1)


def test_a_cup_handed_in_elsewhere_is_out_no_more(
    store: Store, another: Callable[..., Path]
) -> None:
    cup = cup_taken(3)
    store.save(cup)
    store.take_in(another(cup, handed_in(cup, "105.7")), whatever)
    assert store.cups_out(simulated=False) == []


def test_a_number_that_is_out_on_both_stays_with_the_one_here(
    store: Store, another: Callable[..., Path]
) -> None:
    mine, other = cup_taken(3, team="Wren"), cup_taken(3, team="Heron")
    store.save(mine)
    found = store.take_in(another(other), whatever)
    assert of(found, "labels_taken") == (0, 1, 1)
    assert [cup.team for cup in store.cups_out(simulated=False)] == ["Wren"]


def test_what_is_remembered_here_is_not_written_over(
    store: Store, another: Callable[..., Path]
) -> None:
    store.remember("material", "beans")
    store.take_in(another(), whatever)
    assert store.recall("material") == "beans"


def refused(store: Store, folder: Path) -> RecordsError:
    with pytest.raises(RecordsError) as caught:
        store.take_in(folder, whatever)
    return caught.value


def test_a_folder_without_all_tables_is_refused(store: Store, another: Callable[..., Path]) -> None:
    folder = another(cup_taken(3))
    (folder / "weighings.csv").unlink()
    assert refused(store, folder).problem is Problem.NO_TABLE


@pytest.mark.parametrize(
    ("old", "new", "problem"),
    [
        (b"place,id,at,number", b"place,id,at,digit", Problem.OTHER_TABLE),
        (b",3,", b",three,", Problem.UNREADABLE_TABLE),
        (b",3,", b",3,4,", Problem.UNREADABLE_TABLE),
        (b"false", b"perhaps", Problem.UNREADABLE_TABLE),
        (b"Heron", b"\xff\xfe", Problem.UNREADABLE_TABLE),
    ],
)
def test_a_file_that_somebody_changed_is_named_and_nothing_is_taken(
    store: Store, another: Callable[..., Path], old: bytes, new: bytes, problem: Problem
) -> None:
    folder = another(cup_taken(3, team="Heron"))
    file = folder / "cups_taken.csv"
    whole = file.read_bytes()
    assert old in whole
    file.write_bytes(whole.replace(old, new))
    error = refused(store, folder)
    assert (error.problem, "cups_taken.csv" in str(error)) == (problem, True)
    assert store.cups_out(simulated=False) == []
