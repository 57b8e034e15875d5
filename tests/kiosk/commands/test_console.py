from __future__ import annotations

import io
import json
import sys
from decimal import Decimal

import pytest

from kiosk.commands.console import NO_BREAK, complain, emit, tell
from kiosk.texts.numbers import MINUS, THIN_SPACE


def test_masses_are_plain_strings_and_other_numbers_are_numbers(
    capsys: pytest.CaptureFixture[str],
) -> None:
    emit({"grams": Decimal("3.40"), "tiny": Decimal("1E-9"), "count": 3, "half": 0.5, "no": None})
    assert json.loads(capsys.readouterr().out) == {
        "grams": "3.40",
        "tiny": "0.000000001",
        "count": 3,
        "half": 0.5,
        "no": None,
    }


def test_an_answer_is_one_line_of_plain_characters(capsys: pytest.CaptureFixture[str]) -> None:
    emit({"text": f"1{THIN_SPACE}000\nand more"})
    line = capsys.readouterr().out
    assert line.isascii()
    assert (line.count("\n"), line[-1]) == (1, "\n")


def test_json_has_no_nan(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(ValueError, match="JSON compliant"):
        emit({"score": float("nan")})
    assert capsys.readouterr().out == ""


def test_what_is_no_answer_is_not_printed() -> None:
    with pytest.raises(TypeError, match="set has no place"):
        emit({"score": {1}})


def test_a_complaint_is_one_line_on_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    complain("one\ntwo")
    captured = capsys.readouterr()
    assert (captured.out, captured.err) == ("", "one two\n")


def test_a_poor_console_gets_plainer_signs(monkeypatch: pytest.MonkeyPatch) -> None:
    raw = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(raw, encoding="cp1252"))
    tell(f"{MINUS}1 000 g é")
    assert raw.getvalue().decode("cp1252").splitlines() == ["-1 000 g é"]


def test_people_read_ordinary_spaces(capsys: pytest.CaptureFixture[str]) -> None:
    tell(f"{MINUS}1{THIN_SPACE}000{NO_BREAK}g")
    assert capsys.readouterr().out == f"{MINUS}1 000 g\n"
