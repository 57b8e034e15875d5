from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.helpers.command import Command, process

LENTILS = ("--pieces", "100", "--sample", "3.4", "--sample", "3.5", "--sample", "3.6")
PASTA = ("--pieces", "100", "--sample", "50.1", "--sample", "49.8", "--sample", "50.2")


def test_the_answer(gramstand: Command) -> None:
    code, [answer] = gramstand.answers(
        *("count-key", "--json", *PASTA, "--filled", "1150.0", "--empty", "150.0"),
        *("--readability", "0.1"),
    )
    assert code == 0
    assert answer == {
        "count": 1999,
        "low": 1976,
        "high": 2021,
        "half_width_percent": 1.116,
        "piece_mass_g": "0.500333",
        "score_effect": 1.28,
        "warnings": [],
    }


def test_prior_knowledge_is_used(gramstand: Command) -> None:
    words = ("count-key", "--json", "--pieces", "100", "--sample", "50.1", "--filled", "1000.0")
    assert gramstand.answers(*words)[0] == 1
    code, [answer] = gramstand.answers(*words, "--piece-cv", "4")
    assert (code, answer["count"]) == (0, 1996)


def test_pieces_in_the_container_are_told(gramstand: Command) -> None:
    words = ("count-key", "--json", *PASTA, "--filled", "400.0")
    _, [outside] = gramstand.answers(*words)
    _, [inside] = gramstand.answers(*words, "--from-container")
    assert inside["half_width_percent"] < outside["half_width_percent"]


def test_a_refused_key_still_says_why(gramstand: Command) -> None:
    code, [answer] = gramstand.answers("count-key", "--json", *LENTILS, "--filled", "1.9")
    assert code == 1
    assert list(answer) == ["refused"]
    assert "only 19 steps of 0.1 g" in answer["refused"]


def test_people_get_sentences(gramstand: Command) -> None:
    code, out, err = gramstand("count-key", *LENTILS, "--filled", "98")
    assert (code, err) == (0, "")
    assert out.startswith("2 800 pieces; 95 % sure: between 2 584 and 3 016")
    assert "Note: No readability was given" in out


def test_people_get_a_refusal_on_standard_error(gramstand: Command) -> None:
    code, out, err = gramstand("count-key", *LENTILS, "--filled", "1.9")
    assert (code, out) == (1, "")
    assert "fill in more" in err


@pytest.mark.parametrize(
    ("words", "complaint"),
    [
        (("--pieces", "100", "--filled", "98"), "needs --sample, or --table"),
        ((), "needs --pieces, --sample, --filled"),
        ((*LENTILS, "--filled", "full"), "The filled mass is not a number: 'full'"),
        ((*LENTILS, "--sample", "1_0", "--filled", "98"), "Sample 4 is not a number"),
        (
            ("--pieces", "2.5", "--sample", "3", "--filled", "98"),
            "number of pieces must be a whole",
        ),
        ((*LENTILS, "--filled", "98", "--empty", ""), "The empty mass is blank"),
        ((*LENTILS, "--filled", "98", "--readability", "0"), "The readability must be above zero"),
        ((*LENTILS, "--filled", "98", "--piece-cv", "101"), "scatter of pieces must be above 0"),
        ((*LENTILS, "--filled", "98", "--piece-cv", "0"), "scatter of pieces must be above 0"),
        ((*LENTILS, "--filled", "98", "--colour", "red"), "unrecognized arguments"),
        (("--table", "no/such/file.csv"), "cannot be read: No such file"),
        (("--table", "jars.csv", "--sample", "3.4"), "--sample is a column of the table"),
        (("--table", "jars.csv", "--readability", "-1"), "The readability must be above zero"),
    ],
)
def test_bad_input_is_one_clear_line(
    gramstand: Command, words: tuple[str, ...], complaint: str
) -> None:
    assert complaint in gramstand.refusal("count-key", "--json", *words)


HEADER = "jar,pieces,readability,empty,filled,sample_1,sample_2,sample_3\n"
GOOD = "A,100,0.1,150.0,1150.0,50.1,49.8,50.2\n"


@pytest.fixture
def table(tmp_path: Path) -> Path:
    return tmp_path / "jars.csv"


def test_a_table_gives_an_answer_a_row(gramstand: Command, table: Path) -> None:
    table.write_text(HEADER + GOOD + "B,10,,,2268,22.623,22.610,22.514\n", encoding="utf-8")
    code, answers = gramstand.answers("count-key", "--json", "--table", str(table))
    assert code == 0
    assert [(answer["jar"], answer["count"]) for answer in answers] == [("A", 1999), ("B", 1004)]
    assert next(iter(answers[0])) == "jar"


def test_a_bad_row_does_not_stop_the_others(gramstand: Command, table: Path) -> None:
    rows = "B,ten,,,2268,22.6,22.6,22.5\nC,100,1,,98,3,3,3\n,100,1,,980,30,30,30\nD,10,,,9\n"
    table.write_text(HEADER + rows + GOOD, encoding="utf-8")
    code, answers = gramstand.answers("count-key", "--table", str(table), "--json")
    assert code == 1
    assert [answer["jar"] for answer in answers] == ["B", "C", "", "D", "A"]
    assert [sorted(answer) for answer in answers[:4]] == [["jar", "refused"]] * 4
    assert answers[4]["count"] == 1999


def test_what_is_said_for_all_holds_for_each_row(gramstand: Command, table: Path) -> None:
    table.write_text("jar,pieces,filled,sample_1\nA,100,1000,50\n", encoding="utf-8")
    words = ("count-key", "--json", "--table", str(table))
    assert gramstand.answers(*words)[0] == 1
    code, [answer] = gramstand.answers(*words, "--piece-cv", "4", "--readability", "0.1")
    assert code == 0
    assert not any("No readability" in text for text in answer["warnings"])


def test_people_get_a_line_a_row(gramstand: Command, table: Path) -> None:
    table.write_text(HEADER + GOOD + "B,100,1,,98,3,3,3\n", encoding="utf-8")
    code, out, err = gramstand("count-key", "--table", str(table))
    assert code == 1
    assert out.startswith("Jar A: 1 999 pieces")
    assert err.startswith("Jar B: Sample 1 is only 3 steps")


def test_as_a_process(table: Path) -> None:
    table.write_text(HEADER + "B,x,,,,,,\n" + GOOD, encoding="utf-8-sig")
    done = process("count-key", "--table", str(table), "--json")
    assert (done.returncode, done.stderr) == (1, "")
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    assert [answer["jar"] for answer in answers] == ["B", "A"]
