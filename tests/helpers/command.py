"""Runs ``gramstand`` in this process, and in one of its own."""

from __future__ import annotations

import json
import subprocess
import sys
from typing import Any

import pytest

from kiosk.__main__ import main
from tests.helpers.imports import ROOT


class Command:
    """``gramstand`` in this process: its exit code, answers and complaint."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self._capsys = capsys

    def __call__(self, *words: str) -> tuple[int, str, str]:
        """Exit code, standard output, standard error."""
        code = main(words)
        captured = self._capsys.readouterr()
        return code, captured.out, captured.err

    def answers(self, *words: str) -> tuple[int, list[dict[str, Any]]]:
        """Exit code and the JSON objects; nothing else may stand on standard output."""
        code, out, _ = self(*words)
        return code, [json.loads(line) for line in out.splitlines()]

    def refusal(self, *words: str) -> str:
        """The one line of a command that ends with 2 and prints no answer."""
        code, out, err = self(*words)
        assert (code, out, err.count("\n")) == (2, "", 1)
        return err


def process(*words: str, **more: Any) -> subprocess.CompletedProcess[str]:
    """``gramstand`` in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "kiosk", *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        **more,
    )
