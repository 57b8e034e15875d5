"""Conventions of the repository that nobody has to remember."""

from __future__ import annotations

import ast
import re
import subprocess
import tomllib
from pathlib import Path

import pytest

from tests.helpers.imports import ROOT, our_modules

TOP_LEVEL = {
    ".ci",
    ".gitignore",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "drivers",
    "fixtures",
    "kiosk",
    "pyproject.toml",
    "tests",
}
NOT_OURS = re.compile(
    r"\.git/|\.venv/|build/|dist/|.*(__pycache__|_cache|\.hypothesis|\.egg-info)/"
)
PICTURES = {".png"}
SOMEBODYS_MACHINE = re.compile(r"(?<![\w.])/(?:home|opt|root|tmp|work|Users)/\w|[A-Z]:\\+Users\b")
COMMANDS = ("sh kiosk/start.sh", "sh tests/run.sh")
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def kept_files() -> list[str]:
    """The files under version control; in an unpacked archive, all but what tools leave behind."""
    words = ["git", "-c", "safe.directory=*", "ls-files", "-z"]
    try:
        done = subprocess.run(words, cwd=ROOT, capture_output=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        every = (file.relative_to(ROOT).as_posix() for file in ROOT.rglob("*") if file.is_file())
        return [name for name in every if not NOT_OURS.match(name)]
    return done.stdout.decode().strip("\0").split("\0")


FILES = kept_files()
TEXTS = [name for name in FILES if Path(name).suffix not in PICTURES and (ROOT / name).exists()]


def test_nothing_new_at_the_top() -> None:
    assert {name.split("/")[0] for name in FILES} <= TOP_LEVEL


def test_names_no_place_on_somebodys_machine() -> None:
    found = {
        name: SOMEBODYS_MACHINE.findall((ROOT / name).read_text(encoding="utf-8")) for name in TEXTS
    }
    assert {name: places for name, places in found.items() if places} == {}


@pytest.mark.parametrize(
    "text", ["see /ho" + "me/ann/notes", "in /tm" + "p/x", '"C:' + r'\\Users\ann"']
)
def test_a_place_on_a_machine_is_noticed(text: str) -> None:
    assert SOMEBODYS_MACHINE.search(text)


@pytest.mark.parametrize("text", ["/dev/ttyUSB0", "tests/work/x", "g/home/x", "~/.local/share"])
def test_other_paths_are_fine(text: str) -> None:
    assert not SOMEBODYS_MACHINE.search(text)


def test_every_module_says_what_it_is_for() -> None:
    silent = [
        name
        for name, file in our_modules().items()
        if not ast.get_docstring(ast.parse(file.read_text(encoding="utf-8")))
    ]
    assert silent == []


def test_a_look_lies_beside_its_class() -> None:
    looks = [ROOT / name for name in FILES if name.endswith(".kv")]
    assert looks
    assert [look.name for look in looks if not look.with_suffix(".py").exists()] == []


@pytest.mark.parametrize("command", COMMANDS)
def test_readme_names_the_two_commands_each_on_its_line(command: str) -> None:
    assert command in map(str.strip, README.splitlines())
    assert (ROOT / command.removeprefix("sh ")).is_file()


def test_ci_runs_the_readmes_own_test_command() -> None:
    lines = (ROOT / ".ci/run").read_text(encoding="utf-8").splitlines()
    assert "sh tests/run.sh" in lines


@pytest.mark.parametrize("document", ["README.md", "DEVELOPERS.md"])
def test_links_between_files_lead_somewhere(document: str) -> None:
    text = (ROOT / document).read_text(encoding="utf-8")
    links = re.findall(r"\]\(([^)#\s]+)", text)
    assert [link for link in links if "://" not in link and not (ROOT / link).exists()] == []


def dependencies() -> list[str]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    extras = project["optional-dependencies"].values()
    wanted = [*project["dependencies"], *(one for extra in extras for one in extra)]
    return sorted(re.split(r"[^\w-]", one, maxsplit=1)[0] for one in wanted)


def test_every_dependency_has_its_reason() -> None:
    assert [name for name in dependencies() if f"| `{name}` |" not in DEVELOPERS] == []
