"""The set-up that both start commands share, with stand-ins for Python, apt-get and sudo."""

from __future__ import annotations

import os
import shutil
import subprocess
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from tests.helpers.imports import ROOT

pytestmark = pytest.mark.skipif(os.name == "nt", reason="the start scripts are for sh")

TOOLS = ("cat", "cmp", "cp", "env", "ls", "mkdir", "rm", "sh")
PYTHON = """#!/bin/sh
echo "${0##*/} $*" >>"$CALLS"
case $1,${2-} in
    -m,venv) mkdir -p "$3/bin" && cp "$0" "$3/bin/python" ;;
    -m,pip) exit "$PIP_ENDS" ;;
    -,) cat >/dev/null; echo "$LIBRARIES_LACKING" ;;
esac
"""
BROKEN = "#!/bin/sh\nexit 127\n"
NOTES_ITSELF = '#!/bin/sh\necho "${0##*/} $*" >>"$CALLS"\n'
SET_UP = 'set -eu; root=$1; . "$root/kiosk/setup.sh"; set_up "$2"; echo ready'


@dataclass
class Machine:
    """A machine that has only what a test puts on it, and a repository on it."""

    folder: Path
    root: Path
    pip_ends: int = 0
    libraries_lacking: str = ""
    more: dict[str, str] = field(default_factory=dict)

    @property
    def venv(self) -> Path:
        return self.root / ".venv"

    def has(self, name: str, script: str = NOTES_ITSELF) -> None:
        program = self.folder / "bin" / name
        program.write_text(script)
        program.chmod(0o755)

    def set_up(self, what: str = "kiosk") -> subprocess.CompletedProcess[str]:
        surroundings = {
            "PATH": str(self.folder / "bin"),
            "CALLS": str(self.folder / "calls"),
            "PIP_ENDS": str(self.pip_ends),
            "LIBRARIES_LACKING": self.libraries_lacking,
            **self.more,
        }
        (self.folder / "calls").write_text("")
        words = [str(self.folder / "bin/sh"), "-c", SET_UP, "sh", str(self.root), what]
        return subprocess.run(
            words, env=surroundings, cwd=self.folder, capture_output=True, text=True, check=False
        )

    def calls(self, beginning: str) -> list[str]:
        lines = (self.folder / "calls").read_text().splitlines()
        return [line for line in lines if line.startswith(beginning)]


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    root = tmp_path / "a repository"
    (root / "kiosk").mkdir(parents=True)
    shutil.copy(ROOT / "kiosk/setup.sh", root / "kiosk")
    (root / "pyproject.toml").write_text("version = 1\n")
    (tmp_path / "bin").mkdir()
    for tool in TOOLS:
        found = shutil.which(tool)
        assert found
        (tmp_path / "bin" / tool).symlink_to(found)
    made = Machine(tmp_path, root)
    made.has("python3.11", PYTHON)
    made.has("id", "#!/bin/sh\necho 1000\n")
    return made


def test_a_machine_with_python_becomes_ready(machine: Machine) -> None:
    done = machine.set_up("test")
    assert (done.returncode, done.stdout) == (0, "ready\n")
    assert machine.calls("python -m pip")[0].endswith("-e .[test]")


def test_a_second_start_installs_nothing(machine: Machine) -> None:
    machine.set_up()
    done = machine.set_up()
    assert (done.stdout, done.stderr, machine.calls("python -m")) == ("ready\n", "", [])


def test_what_the_tests_need_is_enough_for_the_kiosk(machine: Machine) -> None:
    machine.set_up("test")
    machine.set_up("kiosk")
    assert machine.calls("python -m pip") == []


def test_what_the_kiosk_needs_is_not_enough_for_the_tests(machine: Machine) -> None:
    machine.set_up("kiosk")
    machine.set_up("test")
    assert len(machine.calls("python -m pip")) == 1


def test_a_changed_pyproject_is_installed_into_what_is_there(machine: Machine) -> None:
    machine.set_up()
    (machine.root / "pyproject.toml").write_text("version = 2\n")
    machine.set_up()
    assert len(machine.calls("python -m pip")) == 1
    assert machine.calls("python3.11 -m venv") == []


def test_a_moved_repository_is_installed_again(machine: Machine) -> None:
    machine.set_up()
    machine.root = machine.root.rename(machine.folder / "moved")
    machine.set_up()
    assert len(machine.calls("python -m pip")) == 1


def test_a_shim_that_runs_nothing_is_passed_over(machine: Machine) -> None:
    machine.has("python3.13", BROKEN)
    machine.has("python3.12", PYTHON)
    machine.set_up()
    assert len(machine.calls("python3.12 -m venv")) == 1


def test_without_python_one_sentence_says_which(machine: Machine) -> None:
    (machine.folder / "bin/python3.11").unlink()
    done = machine.set_up()
    assert done.returncode == 1
    assert done.stderr.splitlines() == [
        "Gramstand needs Python 3.11, 3.12 or 3.13 and found none that runs:"
        " install one of them, then start this again."
    ]


def test_without_network_one_sentence_says_so_last(machine: Machine) -> None:
    machine.pip_ends = 1
    done = machine.set_up()
    assert done.returncode == 1
    assert done.stderr.splitlines()[-1].startswith("pip could not install what Gramstand stands on")


def test_after_a_failed_installation_only_that_is_done_again(machine: Machine) -> None:
    machine.pip_ends = 1
    machine.set_up()
    machine.pip_ends = 0
    assert machine.set_up().stdout == "ready\n"
    assert machine.calls("python3.11 -m venv") == []


def test_an_interrupted_set_up_is_made_again(machine: Machine) -> None:
    machine.set_up()
    ended = subprocess.Popen(["true"])
    ended.wait()
    (machine.venv / "half-made").write_text(f"{ended.pid}\n")
    (machine.venv / "torn").write_text("")
    done = machine.set_up()
    assert done.stderr.startswith("The last set-up was interrupted")
    assert done.stdout == "ready\n"
    assert not (machine.venv / "torn").exists()


def test_a_set_up_at_work_is_left_alone(machine: Machine) -> None:
    machine.venv.mkdir()
    (machine.venv / "half-made").write_text(f"{os.getpid()}\n")
    done = machine.set_up()
    assert (done.returncode, done.stdout) == (1, "")
    assert done.stderr.startswith("Another set-up is at work")
    assert (machine.venv / "half-made").exists()


def test_an_environment_whose_python_is_gone_is_made_again(machine: Machine) -> None:
    machine.set_up()
    (machine.venv / "bin/python").write_text(BROKEN)
    assert machine.set_up().stdout == "ready\n"
    assert len(machine.calls("python3.11 -m venv")) == 1


def test_a_folder_with_other_things_is_kept(machine: Machine) -> None:
    photos = machine.folder / "photos"
    photos.mkdir()
    (photos / "one.jpg").write_text("")
    machine.more["GRAMSTAND_VENV"] = "photos"
    done = machine.set_up()
    assert done.returncode == 1
    assert f"{photos} holds other things" in done.stderr
    assert (photos / "one.jpg").exists()


def test_an_environment_elsewhere_is_made_where_it_was_named(machine: Machine) -> None:
    machine.more["GRAMSTAND_VENV"] = "else where/venv"
    assert machine.set_up().stdout == "ready\n"
    assert (machine.folder / "else where/venv/installed-kiosk").exists()
    assert not machine.venv.exists()


def test_missing_libraries_are_named_where_they_cannot_be_installed(machine: Machine) -> None:
    machine.libraries_lacking = "libgl1 libegl1"
    done = machine.set_up()
    assert done.returncode == 1
    assert "what Debian calls libgl1 libegl1" in done.stderr.splitlines()[-1]


def test_root_installs_missing_libraries_and_says_so(machine: Machine) -> None:
    machine.libraries_lacking = "libegl1"
    machine.has("apt-get")
    machine.has("id", "#!/bin/sh\necho 0\n")
    done = machine.set_up()
    assert "needs libegl1; installing that with apt-get" in done.stderr
    assert machine.calls("apt-get")[-1].endswith(" libegl1")
    assert done.stdout == "ready\n"


def test_sudo_is_used_where_it_asks_nothing(machine: Machine) -> None:
    machine.libraries_lacking = "libegl1"
    machine.has("apt-get")
    machine.has("sudo")
    assert machine.set_up().stdout == "ready\n"
    assert machine.calls("sudo")[-1].startswith(
        "sudo -n env DEBIAN_FRONTEND=noninteractive apt-get"
    )


def test_a_person_who_may_not_install_is_told_the_command(machine: Machine) -> None:
    machine.libraries_lacking = "libegl1"
    machine.has("apt-get")
    machine.has("sudo", BROKEN)
    done = machine.set_up()
    assert done.returncode == 1
    assert "run 'sudo apt-get install libegl1'" in done.stderr.splitlines()[-1]
    assert machine.calls("apt-get") == []
