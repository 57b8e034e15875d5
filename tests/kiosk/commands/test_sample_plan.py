from __future__ import annotations

import json

import pytest

from tests.helpers.command import Command, process

LENTILS = ("--piece-mass", "0.035", "--readability", "0.1", "--goal-percent", "3")
KNOWN = (*LENTILS, "--piece-cv", "12")


def test_the_answer(gramstand: Command) -> None:
    code, [answer] = gramstand.answers("sample-plan", "--json", *KNOWN)
    assert code == 0
    assert answer == {"samples": 3, "pieces_each": 111, "half_width_percent": 2.948}


def test_count_key_keeps_the_promise(gramstand: Command) -> None:
    _, [plan] = gramstand.answers("sample-plan", "--json", *KNOWN, "--count", "2000")
    sample = f"{plan['pieces_each'] * 0.035:.1f}"
    code, [key] = gramstand.answers(
        *("count-key", "--json", "--pieces", str(plan["pieces_each"]), "--filled", "70.0"),
        *("--readability", "0.1", "--piece-cv", "12"),
        *("--sample", sample) * plan["samples"],
    )
    assert code == 0
    assert key["half_width_percent"] <= plan["half_width_percent"] <= 3


def test_a_plan_that_nobody_can_make_is_refused(gramstand: Command) -> None:
    words = ("--piece-mass", "0.025", "--readability", "1", "--goal-percent", "3")
    code, [answer] = gramstand.answers("sample-plan", "--json", *words)
    assert code == 1
    assert list(answer) == ["refused"]
    assert "use a scale that steps by 0.1 g" in answer["refused"]


def test_people_get_a_sentence(gramstand: Command) -> None:
    assert gramstand("sample-plan", *KNOWN) == (
        0,
        "Count 3 samples of 111: good to 2.95 % for a jar of 5 000.\n",
        "",
    )


def test_people_are_told_what_was_assumed(gramstand: Command) -> None:
    code, out, err = gramstand("sample-plan", *LENTILS)
    assert (code, err) == (0, "")
    assert "taken to differ by 20 %" in out


@pytest.mark.parametrize(("count", "noted"), [("300", True), ("1000", False)])
def test_a_plan_of_more_than_the_jar_is_pointed_out(
    gramstand: Command, count: str, noted: bool
) -> None:
    _, out, _ = gramstand("sample-plan", *KNOWN, "--count", count)
    assert (f"count all {count} instead" in out) == noted


def test_people_get_a_refusal_on_standard_error(gramstand: Command) -> None:
    code, out, err = gramstand("sample-plan", *LENTILS, "--piece-cv", "90", "--count", "50")
    assert (code, out) == (1, "")
    assert err.count("\n") == 1


NONSENSE = (
    "",
    " ",
    "nan",
    "inf",
    "1e3",
    "1e400",
    "1_0",
    "0x10",
    "٣",
    "three",
    "1,5",
    "0",
    "9" * 41,
)


@pytest.mark.parametrize("text", [*NONSENSE, "-1", "-0", "1000001", "9" * 40])
@pytest.mark.parametrize("option", ["--piece-mass", "--readability", "--goal-percent"])
def test_nonsense_is_one_clear_line(gramstand: Command, option: str, text: str) -> None:
    line = gramstand.refusal("sample-plan", "--json", *KNOWN, f"{option}={text}")
    assert line.startswith("gramstand sample-plan: The ")


@pytest.mark.parametrize("text", [*NONSENSE, "-1", "1.5", "1000000001"])
def test_a_count_is_a_whole_number(gramstand: Command, text: str) -> None:
    line = gramstand.refusal("sample-plan", "--json", *KNOWN, f"--count={text}")
    assert line.startswith("gramstand sample-plan: The number of pieces in the jar")


@pytest.mark.parametrize("text", [*NONSENSE, "-5", "100.1"])
def test_a_scatter_lies_within_a_hundred_per_cent(gramstand: Command, text: str) -> None:
    line = gramstand.refusal("sample-plan", "--json", *KNOWN, f"--piece-cv={text}")
    assert line.startswith("gramstand sample-plan: The scatter of pieces")


def test_what_is_needed_is_said(gramstand: Command) -> None:
    line = gramstand.refusal("sample-plan", "--json")
    assert all(name in line for name in ("--piece-mass", "--readability", "--goal-percent"))


@pytest.mark.parametrize(
    "option", ["--piece-mass", "--readability", "--piece-cv", "--goal-percent"]
)
@pytest.mark.parametrize("text", ["0." + "0" * 37 + "1", "100"])
def test_extremes_get_an_answer(gramstand: Command, option: str, text: str) -> None:
    code, [answer] = gramstand.answers("sample-plan", "--json", *KNOWN, option, text)
    assert code == ("refused" in answer)


def test_as_a_process() -> None:
    done = process("sample-plan", *KNOWN, "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["samples"] == 3
