from __future__ import annotations

import argparse
import subprocess
import sys
from types import SimpleNamespace

import pytest

import kiosk.__main__ as entry
from tests.helpers.command import Command, process
from tests.helpers.imports import ROOT


class Doing(SimpleNamespace):
    """A command that keeps the options it was run with, or does as it is told."""

    HELP = "do it"
    options: argparse.Namespace | None = None
    fault: type[BaseException] | None = None

    def configure(self, parser: argparse.ArgumentParser) -> None:
        parser.add_argument("--scale")

    def run(self, options: argparse.Namespace) -> int:
        if self.fault:
            raise self.fault
        self.options = options
        return 7


@pytest.fixture
def doing(monkeypatch: pytest.MonkeyPatch) -> Doing:
    module = Doing()
    monkeypatch.setattr(entry, "import_module", lambda name: module)
    return module


def test_a_command_gets_its_options_and_gives_its_code(gramstand: Command, doing: Doing) -> None:
    assert gramstand("listen", "--scale", "here") == (7, "", "")
    assert doing.options == argparse.Namespace(json=False, scale="here")


@pytest.mark.parametrize("words", [("--json", "listen"), ("listen", "--json")])
def test_json_may_stand_before_or_after_the_command(
    gramstand: Command, doing: Doing, words: tuple[str, ...]
) -> None:
    gramstand(*words)
    assert doing.options == argparse.Namespace(json=True, scale=None)


@pytest.mark.parametrize("words", [(), ("--json",), ("--scale", "here")])
def test_without_a_command_the_kiosk_opens(
    gramstand: Command, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    module, asked = Doing(), list[str]()
    monkeypatch.setattr(entry, "import_module", lambda name: asked.append(name) or module)
    assert gramstand(*words)[0] == 7
    assert asked == [entry.KIOSK]


def test_an_unknown_command_is_one_clear_line(gramstand: Command) -> None:
    line = gramstand.refusal("wiegen")
    assert line.startswith("gramstand: there is no command 'wiegen'; there are ")
    assert all(name in line for name in entry.COMMANDS)


def test_options_are_not_guessed_from_their_beginning(gramstand: Command, doing: Doing) -> None:
    assert "--sca" in gramstand.refusal("listen", "--sca", "here")


@pytest.mark.parametrize(("fault", "code"), [(KeyboardInterrupt, 130), (SystemExit, 0)])
def test_an_end_by_the_person_is_quiet(
    gramstand: Command, doing: Doing, fault: type[BaseException], code: int
) -> None:
    doing.fault = fault
    assert gramstand("listen") == (code, "", "")


def test_a_reader_that_went_away_is_no_trouble() -> None:
    score = [sys.executable, "-m", "kiosk", "score", "--actual", "4", "--estimate", "3"]
    with subprocess.Popen(
        score, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as running:
        assert running.stdout is not None
        assert running.stderr is not None
        running.stdout.close()  # before the first line is written: the process is still starting
        complaints = running.stderr.read()
        code = running.wait(60)
    assert (code, complaints) == (entry.NOBODY_READS, b"")


@pytest.mark.parametrize("name", entry.COMMANDS)
def test_every_command_can_be_asked_for_help(gramstand: Command, name: str) -> None:
    code, out, err = gramstand(name, "--help")
    assert (code, err) == (0, "")
    assert out.startswith(f"usage: gramstand {name} ")
    assert "--json" in out


def test_help_lists_the_commands(gramstand: Command) -> None:
    code, out, _ = gramstand("--help")
    assert code == 0
    assert all(f"\n  {name} " in out for name in entry.COMMANDS)


HEAVY = ("kivy", "sqlalchemy", "numpy", "serial")


def test_a_score_waits_for_nothing_heavy() -> None:
    look = (
        "import sys; from kiosk.__main__ import main;"
        "main(['score', '--actual', '4', '--estimate', '3', '--json']);"
        f"sys.exit(' '.join(name for name in {HEAVY} if name in sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", look], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.stderr.strip() == ""


def test_as_a_process_bad_input_is_one_line_and_2() -> None:
    done = process("scor")
    assert (done.returncode, done.stdout, done.stderr.count("\n")) == (2, "", 1)
    assert "Traceback" not in done.stderr
