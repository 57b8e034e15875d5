"""Sending a saved sheet to the system's printer, if this machine has one."""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
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


class Sending:
    """A file on its way to the default printer; nobody waits, whoever sent it looks again."""

    def __init__(self, file: Path) -> None:
        self._file = file
        self._since: float | None = None
        self._sent: Sent | None = None
        self._process: subprocess.Popen[bytes] | None = None
        self._said = tempfile.TemporaryFile()  # noqa: SIM115 - as long as the command may speak
        self._begin()

    def look(self, now: float) -> Sent | None:
        """What came of it by ``now`` (s), None as long as the printer has not answered."""
        if self._sent is None and self._process is not None:
            self._since = now if self._since is None else self._since
            code = self._process.poll()
            if code is not None:
                self._end(self._why(code) if code else None)
            elif now - self._since > PATIENCE_S:
                self._process.kill()
                self._process.wait()
                self._end(say("paper.printer.silent"))
        return self._sent

    def _begin(self) -> None:
        start: Callable[[str, str], None] | None = getattr(os, "startfile", None)  # Windows
        command = _command()
        try:
            if start is not None:
                start(str(self._file.absolute()), "print")
                self._end(None)
            elif command is not None:
                self._process = subprocess.Popen(
                    [command, str(self._file.absolute())],
                    stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=self._said,
                )  # fmt: skip
            else:
                self._said.close()
                words = say("paper.printer.none", folder=self._file.parent)
                self._sent = Sent(taken=False, words=words)
        except OSError as error:
            self._end(error.strerror or str(error))

    def _why(self, code: int) -> str:
        """The first thing that the command said, or its code."""
        self._said.seek(0)
        said = self._said.read().decode(errors="replace").strip()
        return said.splitlines()[0] if said else f"{Path(_command() or '').name} {code}"

    def _end(self, why: str | None) -> None:
        self._said.close()
        name, folder = self._file.name, self._file.parent
        if why is None:
            self._sent = Sent(taken=True, words=say("paper.printer.sent", name=name))
        else:
            words = say("paper.printer.refused", name=name, why=why, folder=folder)
            self._sent = Sent(taken=False, words=words)


def printer_found() -> bool:
    """Whether this machine has a way to print; a printer may still be off, or out of paper."""
    return hasattr(os, "startfile") or _command() is not None


def _command() -> str | None:
    return next(filter(None, map(shutil.which, COMMANDS)), None)
