"""Sending a saved sheet to the system's printer, if this machine has one."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from kiosk.texts import say

COMMANDS = ("lp", "lpr")  # POSIX has the first, Berkeley's way is the second
PATIENCE_S = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """Whether a printer took a file, and a sentence that says so or what to do instead."""

    taken: bool
    words: str


def send_to_printer(file: Path) -> Sent:
    """Send ``file`` to the default printer; waits till it is in the queue, not till it is out."""
    hand_over = _way()
    if hand_over is None:
        return Sent(taken=False, words=say("paper.printer.none", folder=file.parent))
    why = hand_over(file)
    if why is None:
        return Sent(taken=True, words=say("paper.printer.sent", name=file.name))
    words = say("paper.printer.refused", name=file.name, why=why, folder=file.parent)
    return Sent(taken=False, words=words)


def printer_found() -> bool:
    """Whether this machine has a way to print; a printer may still be off, or out of paper."""
    return _way() is not None


def _way() -> Callable[[Path], str | None] | None:
    """How this machine prints: a function that says why a file was not taken, None if it was."""
    start: Callable[[str, str], None] | None = getattr(os, "startfile", None)  # Windows
    if start is not None:
        return lambda file: _started(start, file)
    command = next(filter(None, map(shutil.which, COMMANDS)), None)
    return None if command is None else lambda file: _queued(command, file)


def _started(start: Callable[[str, str], None], file: Path) -> str | None:
    try:
        start(str(file.absolute()), "print")
    except OSError as error:
        return error.strerror or str(error)
    return None


def _queued(command: str, file: Path) -> str | None:
    words = [command, str(file.absolute())]
    try:
        done = subprocess.run(
            words, stdin=subprocess.DEVNULL, capture_output=True, timeout=PATIENCE_S, check=False
        )
    except subprocess.TimeoutExpired:
        return say("paper.printer.silent")
    except OSError as error:
        return error.strerror or str(error)
    if done.returncode == 0:
        return None
    said = done.stderr.decode(errors="replace").strip() or f"{Path(command).name} {done.returncode}"
    return said.splitlines()[0]
