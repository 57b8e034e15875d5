from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from drivers.dialects import make_dialect, use_shapes
from drivers.errors import BadShape
from drivers.line_shape import LineShape
from kiosk.commands.console import BadInputError
from kiosk.commands.shapes import ShapeFiles, checked_name, shapes_folder, use_kept_shapes
from tests.helpers.command import Command


@pytest.fixture
def kept(tmp_path: Path) -> ShapeFiles:
    return ShapeFiles(tmp_path / "not made yet")


@pytest.fixture
def _own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    monkeypatch.setenv("HOME", str(tmp_path))
    yield
    use_shapes(None)


def test_a_shape_is_found_again_by_its_name(kept: ShapeFiles) -> None:
    shape = LineShape(name="room 3")
    kept.keep(shape)
    assert kept.shape("room 3") == shape
    assert kept.names() == ("room 3",)


def test_nothing_kept_is_no_trouble(kept: ShapeFiles) -> None:
    assert kept.names() == ()
    assert kept.shape("room 3") is None


@pytest.mark.parametrize("name", ["../room", "", ".hidden", "a/b", "x" * 41])
def test_a_name_that_none_may_have_is_never_looked_up(kept: ShapeFiles, name: str) -> None:
    kept.keep(LineShape(name="room"))
    assert kept.shape(name) is None


def test_a_copied_file_goes_by_its_own_name(kept: ShapeFiles) -> None:
    kept.keep(LineShape(name="room 3"))
    (kept.folder / "room 4.json").write_bytes((kept.folder / "room 3.json").read_bytes())
    shape = kept.shape("room 4")
    assert shape is not None
    assert shape.name == "room 4"


def test_a_broken_file_is_said_with_what_to_do(kept: ShapeFiles) -> None:
    kept.keep(LineShape(name="room"))
    (kept.folder / "room.json").write_text('{"version": 7, "name": "room"}')
    with pytest.raises(BadShape, match=r"of 'room' cannot be used .*version.*Learn it once more\."):
        kept.shape("room")


@pytest.mark.parametrize("name", ["window", "Room 3", "a-b_c.d", "Küche", "7"])
def test_names_may_be_words(name: str) -> None:
    assert checked_name(name) == name


@pytest.mark.parametrize("name", ["", " a", "a ", "a.", ".a", "a/b", "a\\b", "a\n", "x" * 41])
def test_other_names_are_refused(name: str) -> None:
    with pytest.raises(BadInputError, match="cannot be a name"):
        checked_name(name)


@pytest.mark.parametrize("name", ["sma", "SMA", "lines", "hid-scale"])
def test_the_name_of_a_dialect_is_taken(name: str) -> None:
    with pytest.raises(BadInputError, match="is the name of a dialect already"):
        checked_name(name)


@pytest.mark.usefixtures("_own_folder")
def test_once_used_the_kept_shapes_are_dialects() -> None:
    ShapeFiles(shapes_folder()).keep(LineShape(name="room"))
    use_kept_shapes()
    assert make_dialect("room", "the balance").name == "room"


@pytest.mark.usefixtures("_own_folder")
def test_a_recording_can_be_replayed_by_a_kept_shape(gramstand: Command, tmp_path: Path) -> None:
    ShapeFiles().keep(LineShape(name="room", unit="g", unit_place="nowhere"))
    recording = tmp_path / "made.jsonl"
    lines = ['{"recording": 1, "dialect": "sma", "readability_g": 0.1}']
    zero = b"0.0\r".hex()
    lines += [f'{{"t": {n / 10}, "hex": "{zero}"}}' for n in range(30)]
    recording.write_text("\n".join(lines))
    code, answers = gramstand.answers("replay", "--json", "--dialect", "room", str(recording))
    assert code == 0
    assert [answer["event"] for answer in answers] == ["pan empty"]


@pytest.mark.usefixtures("_own_folder")
@pytest.mark.parametrize("command", [("listen", "--scale", "COM3"), ("--scale", "COM3")])
def test_a_broken_shape_ends_with_two_and_one_clear_line(
    gramstand: Command, command: tuple[str, ...]
) -> None:
    ShapeFiles().keep(LineShape(name="room"))
    (shapes_folder() / "room.json").write_text("{")
    assert "of 'room' cannot be used" in gramstand.refusal(*command, "--dialect", "room")
