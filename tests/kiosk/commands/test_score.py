from __future__ import annotations

import json

import pytest

from tests.helpers.command import Command, process


@pytest.mark.parametrize(
    ("actual", "estimate", "answer"),
    [
        ("4000", "3500", {"score": 87.5, "error_percent": -12.5, "side": "under"}),
        ("100", "112", {"score": 88.0, "error_percent": 12.0, "side": "over"}),
        ("100", "100.0", {"score": 100.0, "error_percent": 0.0, "side": "exact"}),
        ("100", "0", {"score": 0.0, "error_percent": -100.0, "side": "under"}),
        ("3", "2", {"score": 66.7, "error_percent": -33.333333, "side": "under"}),
    ],
)
def test_the_answer(
    gramstand: Command, actual: str, estimate: str, answer: dict[str, object]
) -> None:
    assert gramstand.answers("score", "--actual", actual, "--estimate", estimate, "--json") == (
        0,
        [answer],
    )


def test_an_enormous_estimate_scores_nothing(gramstand: Command) -> None:
    _, [answer] = gramstand.answers("score", "--json", "--actual", "0.001", "--estimate", "9" * 40)
    assert (answer["score"], answer["side"]) == (0.0, "over")


@pytest.mark.parametrize(
    ("estimate", "sentence"),
    [
        ("3500", "87.5 points, 12.5 % under.\n"),
        ("4500", "87.5 points, 12.5 % over.\n"),
        ("4000", "100.0 points, exactly right.\n"),
        ("9" * 40, "0.0 points, double the actual value or more.\n"),
    ],
)
def test_people_get_a_sentence(gramstand: Command, estimate: str, sentence: str) -> None:
    assert gramstand("score", "--actual", "4000", "--estimate", estimate) == (0, sentence, "")


@pytest.mark.parametrize(
    ("actual", "estimate", "complaint"),
    [
        ("0", "1", "actual value must be above zero"),
        ("-4", "1", "actual value must be above zero"),
        ("4", "-1", "estimate cannot be below zero"),
        ("4", "", "The estimate is blank"),
        ("4", "many", "The estimate is not a number: 'many'"),
        ("4", "1e3", "The estimate is not a number"),
        ("nan", "1", "The actual value is not a number"),
        ("4", "1" * 41, "The estimate has more than 40 characters"),
    ],
)
def test_bad_input_is_one_clear_line(
    gramstand: Command, actual: str, estimate: str, complaint: str
) -> None:
    line = gramstand.refusal("score", "--json", f"--actual={actual}", f"--estimate={estimate}")
    assert line.startswith("gramstand score: ")
    assert complaint in line


def test_a_missing_option_is_one_clear_line(gramstand: Command) -> None:
    assert "--estimate" in gramstand.refusal("score", "--actual", "4000")


def test_as_a_process() -> None:
    done = process("score", "--actual", "4000", "--estimate", "3500", "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["score"] == 87.5
