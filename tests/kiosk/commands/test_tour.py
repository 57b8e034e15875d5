"""``gramstand tour``: a picture of each screen, or a sentence why there is none."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tests.helpers.command import Command, process

PNG = b"\x89PNG\r\n\x1a\n"


def size_of(picture: Path) -> tuple[int, int]:
    """Width and height, from the head of a PNG file (ISO/IEC 15948, IHDR)."""
    head = picture.read_bytes()[:24]
    assert head.startswith(PNG)
    return int.from_bytes(head[16:20]), int.from_bytes(head[20:24])


def test_it_saves_a_picture_of_each_screen_in_the_size_wanted(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "pictures"
    done = process("tour", "--pictures", str(folder), "--size", "800x480", "--json")
    assert (done.returncode, done.stderr) == (0, "")
    told = [json.loads(line) for line in done.stdout.splitlines()]
    assert [set(each) for each in told] == [{"picture", "screen", "title"}] * len(told)
    pictures = [Path(each["picture"]) for each in told]
    assert sorted(pictures) == sorted(folder.iterdir())
    assert {size_of(picture) for picture in pictures} == {(800, 480)}
    seen = {each["screen"] for each in told}
    assert {"home", "take cup", "score", "key", "rows", "queue", "paper"} <= seen


@pytest.fixture
def gramstand(capsys: pytest.CaptureFixture[str]) -> Command:
    return Command(capsys)


def test_a_folder_that_cannot_be_made_is_named(gramstand: Command, tmp_path: Path) -> None:
    in_the_way = tmp_path / "file"
    in_the_way.write_text("")
    code, out, err = gramstand("tour", "--pictures", str(in_the_way / "pictures"), "--json")
    assert (code, out, err.count("\n")) == (1, "", 1)
    assert f"Pictures cannot be saved in {in_the_way / 'pictures'}: " in err


def test_a_picture_that_cannot_be_written_ends_it(tmp_path: Path) -> None:
    (tmp_path / "01-home.png").mkdir()
    done = process("tour", "--pictures", str(tmp_path), env=os.environ | {"HOME": str(tmp_path)})
    assert (done.returncode, done.stdout) == (1, "")
    assert done.stderr == f"Pictures cannot be saved in {tmp_path}: Is a directory\n"


def test_it_needs_a_folder(gramstand: Command) -> None:
    assert "--pictures" in gramstand.refusal("tour")


def test_a_bad_size_is_refused(gramstand: Command, tmp_path: Path) -> None:
    refusal = gramstand.refusal("tour", "--pictures", str(tmp_path), "--size", "small")
    assert "'small' is no window size" in refusal
