from __future__ import annotations

import json
from math import pi

import pytest

from tests.helpers.command import Command, process

BOX = ("box", "--length", "12", "--width", "9", "--height", "23")
CYLINDER = ("cylinder", "--diameter", "8", "--height", "15")
TAPERED = ("tapered", "--top", "9.5", "--bottom", "6", "--height", "12")
WATER = ("water", "--grams", "100.00", "--celsius", "20")


def test_the_answer(gramstand: Command) -> None:
    code, [answer] = gramstand.answers("volume", *BOX, "--json")
    assert code == 0
    assert answer == {"volume_cm3": 2484.0, "low": 2463.5, "high": 2504.5}


@pytest.mark.parametrize(
    ("words", "cm3"),
    [
        (CYLINDER, pi * 4**2 * 15),
        (TAPERED, pi / 12 * 12 * (9.5**2 + 9.5 * 6 + 6**2)),
        (WATER, 100.285),  # Z of ISO 8655-6 at 20 °C: 1.0029
    ],
)
def test_each_shape(gramstand: Command, words: tuple[str, ...], cm3: float) -> None:
    code, [answer] = gramstand.answers("volume", *words, "--json")
    assert code == 0
    assert answer["volume_cm3"] == pytest.approx(cm3, rel=3e-6)
    assert answer["low"] < answer["volume_cm3"] < answer["high"]


@pytest.mark.parametrize("words", [("--json", "volume", *BOX), ("volume", "--json", *BOX)])
def test_json_may_stand_before_the_shape_too(gramstand: Command, words: tuple[str, ...]) -> None:
    assert gramstand.answers(*words)[1][0]["volume_cm3"] == 2484


def test_a_finer_ruler_makes_it_narrower(gramstand: Command) -> None:
    _, [rough] = gramstand.answers("volume", *BOX, "--json")
    _, [fine] = gramstand.answers("volume", *BOX, "--json", "--ruler", "0.05")
    assert fine["high"] - fine["low"] == pytest.approx((rough["high"] - rough["low"]) / 2, rel=0.02)


def test_an_edge_may_be_measured_at_several_places(gramstand: Command) -> None:
    _, [once] = gramstand.answers("volume", *BOX, "--json")
    _, [twice] = gramstand.answers("volume", *BOX, "--length", "12.4", "--json")
    assert twice["volume_cm3"] == pytest.approx(12.2 * 9 * 23)
    assert twice["high"] - twice["low"] > once["high"] - once["low"]


def test_people_get_a_sentence(gramstand: Command) -> None:
    assert gramstand("volume", *BOX) == (
        0,
        "2 484.0 cm³; 95 % sure: between 2 463.5 and 2 504.5.\n",
        "",
    )


@pytest.mark.parametrize(("height", "noted"), [("23", False), ("24", True)])
def test_too_large_for_the_event_is_pointed_out(
    gramstand: Command, height: str, noted: bool
) -> None:
    # 13 x 13 x 23 stays under 4000 cm³: common practice, no source
    words = ("box", "--length", "13", "--width", "13", "--height", height)
    assert ("More than 4 000 cm³" in gramstand("volume", *words)[1]) == noted


def test_how_it_was_filled_is_pointed_out(gramstand: Command) -> None:
    assert "How exactly it was filled" in gramstand("volume", *WATER)[1]
    assert "How exactly" not in gramstand("volume", *WATER, "--grams", "100.20")[1]


NONSENSE = (
    *("", " ", "nan", "inf", "1e3", "1e400", "1_0", "0x10", "٣", "three", "1,5", "0", "9" * 41),
    *("-1", "-0", "10000001", "9" * 40),
)
OPTIONS = [
    *((BOX, name) for name in ("--length", "--width", "--height", "--ruler")),
    *((CYLINDER, name) for name in ("--diameter", "--height", "--ruler")),
    *((TAPERED, name) for name in ("--top", "--bottom", "--height", "--ruler")),
    *((WATER, name) for name in ("--grams", "--readability")),
]


@pytest.mark.parametrize("text", NONSENSE)
@pytest.mark.parametrize(("words", "option"), OPTIONS)
def test_nonsense_is_one_clear_line(
    gramstand: Command, words: tuple[str, ...], option: str, text: str
) -> None:
    line = gramstand.refusal("volume", *words, f"{option}={text}", "--json")
    assert line.startswith("gramstand volume: The ")


@pytest.mark.parametrize("text", ["", "nan", "inf", "1e1", "warm", "٢٠", "-1", "40.1", "9" * 40])
def test_water_has_a_temperature(gramstand: Command, text: str) -> None:
    line = gramstand.refusal("volume", *WATER, f"--celsius={text}", "--json")
    assert line.startswith("gramstand volume: The ")


@pytest.mark.parametrize(
    ("words", "complaint"),
    [
        ((), "SHAPE"),
        (("cube", "--length", "3"), "invalid choice: 'cube'"),
        (("box",), "--length, --width, --height"),
        ((*CYLINDER, "--length", "3"), "unrecognized arguments: --length 3"),
        ((*BOX, "--rul", "0.1"), "unrecognized arguments: --rul"),
        (("box", "--length", "--width", "9", "--height", "23"), "--length: expected one argument"),
    ],
)
def test_a_wrong_line_is_one_clear_line(
    gramstand: Command, words: tuple[str, ...], complaint: str
) -> None:
    assert complaint in gramstand.refusal("volume", *words)


@pytest.mark.parametrize(("words", "option"), OPTIONS)
@pytest.mark.parametrize("text", ["0." + "0" * 37 + "1", "10000"])
def test_extremes_get_an_answer(
    gramstand: Command, words: tuple[str, ...], option: str, text: str
) -> None:
    code, [answer] = gramstand.answers("volume", *words, option, text, "--json")
    assert code == 0
    assert 0 <= answer["low"] <= answer["volume_cm3"] <= answer["high"]
    assert gramstand("volume", *words, option, text)[0] == 0


def test_as_a_process() -> None:
    done = process("volume", *TAPERED, "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert sorted(json.loads(done.stdout)) == ["high", "low", "volume_cm3"]
