"""What README shows is what the program does."""

from __future__ import annotations

import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from kiosk.__main__ import COMMANDS
from tests.helpers.imports import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
EXAMPLE = re.compile(r"^```console\n\$ gramstand (.+)\n((?:.*\n)*?)```$", re.MULTILINE)
EXAMPLES = EXAMPLE.findall(README)


@pytest.mark.parametrize(("words", "shown"), EXAMPLES, ids=[words for words, _ in EXAMPLES])
def test_an_example_prints_what_is_shown(words: str, shown: str, tmp_path: Path) -> None:
    done = subprocess.run(
        [
            sys.executable,
            "-X",
            "utf8",
            "-m",
            "kiosk",
            *shlex.split(words.replace("FOLDER", str(tmp_path))),
        ],
        cwd=ROOT,
        capture_output=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )
    assert (done.stdout, done.returncode) == (shown, 0)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_told_of(name: str) -> None:
    developers = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert f"gramstand {name}" in README + developers
