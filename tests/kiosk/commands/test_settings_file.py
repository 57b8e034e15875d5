"""What a kiosk is told once: read from one file, or refused with one sentence."""

from __future__ import annotations

import codecs
import json
from pathlib import Path

import pytest

from kiosk.commands.console import BadInputError
from kiosk.commands.settings_file import read_settings, settings_path
from kiosk.settings import KioskSettings


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "settings.json"


def refused(file: Path) -> str:
    """The sentence for a file that cannot be used; it names the file."""
    with pytest.raises(BadInputError) as caught:
        read_settings(file)
    sentence = str(caught.value)
    assert sentence.startswith(f"The settings file {file} cannot be used: ")
    assert "\n" not in sentence
    return sentence


def test_without_a_file_all_is_as_usual(file: Path) -> None:
    assert read_settings(file) == KioskSettings()


def test_what_is_said_counts_and_the_rest_is_as_usual(file: Path) -> None:
    file.write_text(json.dumps({"place": "Birch Valley", "teams": ["Wren"]}), encoding="utf-8")
    settings = read_settings(file)
    assert (settings.place, settings.teams) == ("Birch Valley", ("Wren",))
    assert settings.materials == KioskSettings().materials


def test_rules_of_a_league_are_taken_over(file: Path) -> None:
    file.write_text('{"rules": {"cup_target_g": 50, "over": "zero"}}', encoding="utf-8")
    rules = read_settings(file).rules
    assert (rules.cup_target_g, rules.over) == (50, "zero")


def test_what_a_newer_kiosk_knows_is_left_out(file: Path) -> None:
    file.write_text('{"colour": "green"}', encoding="utf-8")
    assert read_settings(file) == KioskSettings()


def test_a_byte_order_mark_does_not_hinder(file: Path) -> None:
    file.write_bytes(codecs.BOM_UTF8 + b'{"place": "Birch Valley"}')
    assert read_settings(file).place == "Birch Valley"


def test_a_file_that_is_no_json_is_refused(file: Path) -> None:
    file.write_text("place = Birch Valley", encoding="utf-8")
    assert "Invalid JSON" in refused(file)


@pytest.mark.parametrize(
    ("settings", "where"),
    [
        ({"less_motion": "perhaps"}, "less_motion"),
        ({"pixels_per_mm": 0}, "pixels_per_mm"),
        ({"rules": {"cup_target_g": -5}}, "rules.cup_target_g"),
        ({"rules": {"over": "triple"}}, "rules.over"),
        ({"teams": ["Wren", ""]}, "teams.1"),
        ({"materials": []}, "materials"),
    ],
)
def test_a_wrong_value_is_refused_by_its_name(
    file: Path, settings: dict[str, object], where: str
) -> None:
    file.write_text(json.dumps(settings), encoding="utf-8")
    assert f": {where}: " in refused(file)


def test_a_folder_in_its_place_is_refused(file: Path) -> None:
    file.mkdir()
    assert refused(file)


def test_it_lies_in_the_users_folder_for_settings(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", "/somewhere")
    path = settings_path()
    assert path.name == "settings.json"
    assert path.parent.name == "gramstand"
