"""Sending a file to the printer, and what is said when there is none or it will not."""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path

import pytest
from pytest_mock import MockerFixture

from kiosk.reports.printer import PATIENCE_S, Sending, Sent, printer_found

SHELL = pytest.mark.skipif(sys.platform == "win32", reason="commands are shell scripts here")


@pytest.fixture
def path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder that is all of the PATH."""
    folder = tmp_path / "bin"
    folder.mkdir()
    monkeypatch.setenv("PATH", str(folder))
    return folder


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    file = tmp_path / "Round 2 day list.pdf"
    file.write_bytes(b"%PDF invented\n")
    return file


def command(folder: Path, name: str, *lines: str) -> None:
    """A command in that folder that does what ``lines`` say to a shell."""
    file = folder / name
    file.write_text("\n".join(["#!/bin/sh", *lines, ""]), encoding="utf-8")
    file.chmod(0o755)


def what_comes_of(paper: Path) -> Sent:
    """Send it, and look until the command has ended."""
    sending, give_up = Sending(paper), time.monotonic() + 10
    while (sent := sending.look(0.0)) is None:
        assert time.monotonic() < give_up
        time.sleep(0.001)  # another process has to run
    return sent


@SHELL
@pytest.mark.parametrize("name", ["lp", "lpr"])
def test_a_file_goes_to_the_command_that_is_there(path: Path, paper: Path, name: str) -> None:
    command(path, name, f'read -r line <"$1"; echo "$line" >"{path}/queue"')
    sent = what_comes_of(paper)
    assert sent.taken
    assert sent.words == "Sent to the printer: Round 2 day list.pdf"
    assert (path / "queue").read_text(encoding="utf-8") == "%PDF invented\n"


@SHELL
def test_a_printer_that_refuses_is_quoted(path: Path, paper: Path) -> None:
    command(path, "lp", 'echo "lp: Error - no default destination." >&2', "echo more >&2", "exit 1")
    sent = what_comes_of(paper)
    assert not sent.taken
    assert "(lp: Error - no default destination.)" in sent.words
    assert str(paper.parent) in sent.words


@SHELL
def test_a_printer_that_does_not_answer_is_not_waited_for(path: Path, paper: Path) -> None:
    command(path, "lp", "while :; do :; done")
    sending = Sending(paper)
    assert sending.look(100.0) is None
    assert sending.look(99.0 + PATIENCE_S) is None
    sent = sending.look(101.0 + PATIENCE_S)
    assert sent is not None
    assert not sent.taken
    assert "it did not answer" in sent.words


@SHELL
def test_a_command_that_cannot_be_started_is_told(path: Path, paper: Path) -> None:
    command(path, "lp", "")
    (path / "lp").write_bytes(b"#!/nowhere/at/all\n")
    assert "No such file or directory" in what_comes_of(paper).words


def test_without_a_printer_it_says_where_the_file_is(path: Path, paper: Path) -> None:
    assert list(path.iterdir()) == []
    assert not printer_found()
    sent = what_comes_of(paper)
    assert not sent.taken
    assert sent.words.startswith("This machine has no printer.")
    assert str(paper.parent) in sent.words


def test_where_the_system_opens_files_it_prints_them(paper: Path, mocker: MockerFixture) -> None:
    start = mocker.patch.object(os, "startfile", create=True)
    assert what_comes_of(paper).taken
    start.assert_called_once_with(str(paper), "print")
    start.side_effect = OSError(1155, "No application is associated")
    sent = what_comes_of(paper)
    assert not sent.taken
    assert "No application is associated" in sent.words
