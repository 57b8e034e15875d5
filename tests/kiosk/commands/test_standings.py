from __future__ import annotations

from pathlib import Path

import pytest

from tests.helpers.command import Command

KEYS = """task,actual,half_width_percent
mass,100,0
count low,800,2
count middle,4000,5
count high,18000,2
volume 1,500,1
volume 2,1500,1
volume 3,3500,1
"""
ANSWERS = """team,task,estimate
Heron,mass,93.4
Wren,count middle,3900
Teal,count middle,4100
"""


class Round:
    """A folder with the two files, and the command on it."""

    def __init__(self, folder: Path, gramstand: Command) -> None:
        self.folder = folder
        self._gramstand = gramstand
        self.write("keys.csv", KEYS)
        self.write("answers.csv", ANSWERS)

    def write(self, name: str, text: str | bytes) -> None:
        (self.folder / name).write_bytes(text if isinstance(text, bytes) else text.encode())

    def standings(self) -> list[dict[str, object]]:
        code, found = self._gramstand.answers("standings", str(self.folder), "--json")
        assert code == 0
        return found

    def places(self) -> list[tuple[object, object]]:
        return [(row["place"], row["team"]) for row in self.standings()]

    def refusal(self) -> str:
        return self._gramstand.refusal("standings", str(self.folder), "--json")

    def text(self) -> str:
        code, out, err = self._gramstand("standings", str(self.folder))
        assert (code, err) == (0, "")
        return out


@pytest.fixture
def a_round(tmp_path: Path, gramstand: Command, monkeypatch: pytest.MonkeyPatch) -> Round:
    monkeypatch.setattr(
        "kiosk.commands.settings_file.settings_path", lambda: tmp_path / "settings.json"
    )
    return Round(tmp_path, gramstand)


def test_a_team_is_one_object_in_the_order_of_places(a_round: Round) -> None:
    assert a_round.standings() == [
        {"place": 1, "team": "Wren", "scores": [0.0, 0.0, 97.5, 0.0, 0.0, 0.0, 0.0],
         "total": 97.5, "place_low": 1, "place_high": 3},
        {"place": 1, "team": "Teal", "scores": [0.0, 0.0, 97.5, 0.0, 0.0, 0.0, 0.0],
         "total": 97.5, "place_low": 1, "place_high": 3},
        {"place": 3, "team": "Heron", "scores": [93.4, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0],
         "total": 93.4, "place_low": 2, "place_high": 3},
    ]  # fmt: skip


def test_the_table_is_for_people(a_round: Round) -> None:
    head, first, *_ = (" ".join(line.split()) for line in a_round.text().splitlines())
    assert head.startswith("place team mass count low count middle count high volume 1 volume 2")
    assert head.endswith(" volume 3 total 95 % of draws")
    assert first == "1 Wren 0.0 0.0 97.5 0.0 0.0 0.0 0.0 97.5 1 to 3"


def test_the_league_s_rules_are_those_of_the_kiosk(a_round: Round) -> None:
    a_round.write("settings.json", '{"rules": {"over": "zero", "decimals": 0}}')
    assert [row["total"] for row in a_round.standings()] == [98.0, 93.0, 0.0]


def test_a_blank_answer_is_none_but_names_its_team(a_round: Round) -> None:
    a_round.write("answers.csv", ANSWERS + "Pipit,mass,\n")
    assert a_round.places()[-1] == (4, "Pipit")


def test_only_a_header_means_that_nobody_answered(a_round: Round) -> None:
    a_round.write("answers.csv", "team,task,estimate\n")
    assert a_round.standings() == []
    assert a_round.text() == "No team has answered.\n"


SAME = [(1, "Wren"), (1, "Teal"), (3, "Heron")]


@pytest.mark.parametrize(
    "text",
    [
        b"\xef\xbb\xbf" + ANSWERS.encode(),
        ANSWERS.replace("\n", "\r\n").encode(),
        b"\n" + ANSWERS.replace("\n", "\n\n , ,\n").encode(),
        ANSWERS.replace("Wren", '"Wren"').replace("3900", '" 3900 "').encode(),
        ANSWERS.replace("\n", ",,\n").encode(),
        ANSWERS.rstrip("\n").encode(),
    ],
    ids=["byte order mark", "CRLF", "blank lines", "quotes", "blank columns", "no last line end"],
)
def test_files_as_spreadsheets_write_them(a_round: Round, text: bytes) -> None:
    a_round.write("answers.csv", text)
    assert a_round.places() == SAME


def test_names_keep_their_commas_quotes_and_letters(a_round: Round) -> None:
    a_round.write("answers.csv", 'team,task,estimate\n"Gros-bec, ""Zoé""",mass,100\n')
    assert a_round.places() == [(1, 'Gros-bec, "Zoé"')]


def test_a_name_cannot_break_the_table(a_round: Round) -> None:
    a_round.write("answers.csv", 'team,task,estimate\n"a\nb\x1b[2J",mass,100\n')
    assert len(a_round.text().splitlines()) == 2
    assert "a?b?[2J" in a_round.text()


@pytest.mark.parametrize(
    ("row", "why"),
    [
        ("Heron,mas,4", "There is no task 'mas'; there are mass, count low,"),
        ("Heron,Mass,4", "There is no task 'Mass'"),
        ("Heron,mass,90", "'Heron' has answered mass already"),
        ("Pipit,mass,many", "The estimate is not a number: 'many'."),
        ("Pipit,mass,1e2", "not a number"),
        ("Pipit,mass,nan", "not a number"),
        ('Pipit,mass,"93,4"', "not a number"),
        ("Pipit,mass,-4", "An estimate cannot be below zero."),
        (",mass,4", "The team is blank"),
        ("Pipit,mass", "This row has 2 cells, not 3."),
        ("Pipit,mass,4,5", "This row has 4 cells, not 3."),
        ('Pipit,mass,"4', "This is no CSV:"),
        ('Pipit,ma"ss"x,4', "There is no task"),
        ('"Pipit"x,mass,4', "This is no CSV:"),
    ],
)
def test_a_bad_answer_is_one_line_with_its_place(a_round: Round, row: str, why: str) -> None:
    a_round.write("answers.csv", f"{ANSWERS}\n{row}\n")
    line = a_round.refusal()
    assert f"answers.csv, line 6: {why}" in line if why[0].isupper() else why in line


def test_lines_are_those_of_an_editor_even_behind_a_broken_name(a_round: Round) -> None:
    a_round.write("answers.csv", 'team,task,estimate\n"a\nb",mass,4\nHeron,mass,x\n')
    assert "answers.csv, line 4: " in a_round.refusal()


@pytest.mark.parametrize(
    ("old", "new", "why"),
    [
        ("task,actual", "Task,actual", "line 1: The first line must be task,actual,half_width_"),
        (",", ";", "line 1: The first line must be"),
        ("mass,100,0\n", "", "keys.csv has no key for mass: each"),
        ("count low,800,2\ncount middle,4000,5\n", "", "no key for count low, count middle:"),
        ("count low", "mass", "line 3: mass has a key already"),
        ("count low", "count", "line 3: There is no task 'count'"),
        ("100,0", "0,0", "line 2: The actual value must be above zero."),
        ("100,0", "-5,0", "line 2: The actual value must be above zero."),
        ("100,0", "x,0", "line 2: The actual value is not a number: 'x'."),
        ("100,0", "100,", "line 2: The half width is blank"),
        ("100,0", "100,-1", "line 2: The half width must be from 0 to under 100"),
        ("100,0", "100,100", "line 2: The half width must be from 0 to under 100"),
        (KEYS, "", "keys.csv is empty: its first line must be task,actual,half_width_percent."),
    ],
)
def test_a_bad_key_is_one_line_with_its_place(a_round: Round, old: str, new: str, why: str) -> None:
    a_round.write("keys.csv", KEYS.replace(old, new))
    assert why in a_round.refusal()


def test_a_file_in_another_encoding_is_refused(a_round: Round) -> None:
    a_round.write("answers.csv", "team,task,estimate\nZoé,mass,4\n".encode("latin-1"))
    assert "answers.csv is not a table in UTF-8" in a_round.refusal()


@pytest.mark.parametrize("name", ["keys.csv", "answers.csv"])
def test_a_file_that_is_not_there_is_named(a_round: Round, name: str) -> None:
    (a_round.folder / name).unlink()
    assert f"There is no file {a_round.folder / name}." in a_round.refusal()


def test_a_folder_in_place_of_a_file_is_refused(a_round: Round) -> None:
    (a_round.folder / "keys.csv").unlink()
    (a_round.folder / "keys.csv").mkdir()
    assert "keys.csv cannot be read: " in a_round.refusal()


def test_a_folder_that_is_not_there_is_named(gramstand: Command, tmp_path: Path) -> None:
    assert "There is no folder " in gramstand.refusal("standings", str(tmp_path / "nowhere"))
