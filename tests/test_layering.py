"""The levels of the house: no arrow runs up, and the pure rooms stay pure.

Two looks at the same rules: what our sources import, read from their text; and what came along
when a pure room was imported in a process of its own.
"""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator

import pytest

from tests.helpers.house import COMES_ALONE, LEVELS, NEVER, ONLY_IN, PURE, WORLD, WORLDLY_CALLS
from tests.helpers.imports import ROOT, Import, called, imports_in, our_modules, within


def room_of(path: str) -> str | None:
    """The room of a dotted path, None outside the house and for the bare ``kiosk``."""
    return next((room for room in LEVELS if within(path, room)), None)


def faults(source: str, module: str, *, is_package: bool = False) -> list[str]:
    """Everything in a source that the rules of the house forbid, one sentence each."""
    tree = ast.parse(source)
    found = []
    for taken in imports_in(tree, module, is_package=is_package):
        found += [
            f"{module}:{taken.line} imports {taken.path}: {why}" for why in _why(taken, module)
        ]
    if _lies_in(module, PURE):
        found += [f"{module}:{line} calls {name}()" for name, line in _worldly_calls(tree)]
    return found


def _why(taken: Import, module: str) -> Iterator[str]:
    own, other = room_of(module), room_of(taken.path)
    if own and other and own != other and LEVELS[other] >= LEVELS[own]:
        yield f"{other} does not lie below {own}"
    if own and _lies_in(taken.path, NEVER.get(own, ())):
        yield f"{own} must not know it"
    for name, rooms in ONLY_IN.items():
        if within(taken.path, name) and not _lies_in(module, rooms):
            yield f"only {' and '.join(rooms)} may"
    if _lies_in(module, PURE) and _lies_in(taken.path, WORLD):
        yield "a pure module has no clock, thread, file or port"
    if own == "kiosk.ui" and other == "kiosk.estimating" and not (taken.name or "")[:1].isupper():
        yield "a screen shows values, it makes no sums"


def _worldly_calls(tree: ast.AST) -> Iterator[tuple[str, int]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and called(node) in WORLDLY_CALLS:
            yield called(node), node.lineno


def _lies_in(path: str, places: tuple[str, ...]) -> bool:
    return any(within(path, place) for place in places)


MODULES = our_modules()


def test_imports_only_what_its_room_may_know() -> None:
    found = [
        f"{module}: {fault}"
        for module, file in MODULES.items()
        for fault in faults(
            file.read_text(encoding="utf-8"), module, is_package=file.name == "__init__.py"
        )
    ]
    assert found == []


def test_every_module_lives_in_a_room() -> None:
    assert [name for name in MODULES if name != "kiosk" and not room_of(name)] == []


def test_drivers_package_imports_nothing_by_itself() -> None:
    tree = ast.parse(MODULES["drivers"].read_text(encoding="utf-8"))
    assert list(imports_in(tree, "drivers", is_package=True)) == []


MADE_UP_FAULTS = [
    ("kiosk.weighing.tare", "import time", "pure"),
    ("kiosk.weighing.tare", "from time import monotonic", "pure"),
    ("kiosk.procedures.pour", "def late():\n    import threading", "pure"),
    ("kiosk.procedures.pour", "import os.path", "pure"),
    (
        "kiosk.procedures.pour",
        "from importlib import import_module\nimport_module('socket')",
        "pure",
    ),
    ("kiosk.procedures.pour", "stamp = datetime.now(UTC)", "calls datetime.now()"),
    ("kiosk.procedures.pour", "stamp = datetime.date.today()", "calls date.today()"),
    ("kiosk.estimating.score", "text = open('answers').read()", "calls open()"),
    ("kiosk.estimating.score", "from drivers.reading import Reading", "not lie below"),
    ("kiosk.records.store", "import drivers.reading", "not lie below"),
    ("kiosk.records.store", "from kiosk.estimating import score", "not lie below"),
    ("kiosk.weighing.tare", "from kiosk.reports.sheets import Sheet", "not lie below"),
    ("kiosk.settings", "from kiosk.evidence import Source", "not lie below"),
    ("kiosk.weighing.tare", "from ..ui import theme", "not lie below"),
    ("kiosk.procedures.pour", "from kiosk import ui", "not lie below"),
    ("kiosk.ui.app", "import kiosk.commands.listen", "not lie below"),
    (
        "kiosk.weighing.tare",
        "from drivers.transports.serial_port import SerialPort",
        "must not know",
    ),
    ("kiosk.procedures.pour", "import drivers.balance", "must not know"),
    ("kiosk.reports.sheets", "from drivers.reading import Reading", "must not know"),
    ("drivers.framing", "from kiosk.texts import say", "must not know"),
    ("kiosk.commands.listen", "from kivy.app import App", "only kiosk.ui and"),
    ("drivers.balance", "import serial", "only drivers.transports"),
    ("drivers.discovery", "import hid", "only drivers.transports.hid_binding may"),
    ("drivers.discovery", "import_module('hidraw')", "only drivers.transports.hid_binding may"),
    ("kiosk.ui.app", "from sqlalchemy.orm import Session", "only kiosk.records may"),
    ("kiosk.ui.app", "import threading", "only drivers.balance"),
    ("kiosk.ui.presenters.cups", "from kiosk.estimating.score import score", "no sums"),
    ("kiosk.ui.presenters.cups", "import kiosk.estimating.score", "no sums"),
]


@pytest.mark.parametrize(("module", "source", "expected"), MADE_UP_FAULTS)
def test_a_made_up_fault_is_found(module: str, source: str, expected: str) -> None:
    assert any(expected in fault for fault in faults(source, module))


MADE_UP_GOOD = [
    (
        "kiosk.weighing.tare",
        "from drivers.reading import Reading\nfrom kiosk.evidence import Source",
    ),
    ("kiosk.weighing.tare", "from datetime import UTC, datetime\nimport math, timeit"),
    ("kiosk.procedures.pour", "self.now(at)\nself.door.open()"),
    ("kiosk.procedures.pour", "from ..weighing import tare\nfrom . import procedure"),
    ("kiosk.ui.presenters.cups", "from kiosk.estimating.score import Score"),
    ("kiosk.texts", "import os\nfrom pathlib import Path"),
    ("drivers.balance", "import threading, time"),
    ("kiosk.commands.tour", "from kiosk.ui import app"),
]


@pytest.mark.parametrize(("module", "source"), MADE_UP_GOOD)
def test_what_is_allowed_is_not_called_a_fault(module: str, source: str) -> None:
    assert faults(source, module) == []


def test_relative_imports_of_a_package_count_from_itself() -> None:
    tree = ast.parse("from . import pour\nfrom ..ui import theme")
    paths = [taken.path for taken in imports_in(tree, "kiosk.procedures", is_package=True)]
    assert paths == ["kiosk.procedures.pour", "kiosk.ui.theme"]


COMPANY = """
import importlib, sys
forbidden, modules = sys.argv[1].split(), sys.argv[2].split()
for module in modules:
    importlib.import_module(module)
inside = lambda name: any(name == place or name.startswith(place + ".") for place in forbidden)
print(*sorted(name for name in sys.modules if inside(name)))
"""


def start(modules: list[str], forbidden: tuple[str, ...]) -> subprocess.Popen[str]:
    """A fresh process that imports ``modules`` and prints which forbidden ones are there then."""
    words = [sys.executable, "-c", COMPANY, " ".join(forbidden), " ".join(modules)]
    return subprocess.Popen(
        words, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )


def company(process: subprocess.Popen[str]) -> str:
    """What such a process printed, or why it failed."""
    output, trouble = process.communicate(timeout=60)
    return trouble if process.returncode else output.strip()


def members(room: str) -> list[str]:
    """The modules of a room that are imported for the test, in order."""
    left_out, _ = COMES_ALONE[room]
    return [name for name in MODULES if within(name, room) and not _lies_in(name, left_out)]


ROOMS = [room for room in COMES_ALONE if members(room)]


@pytest.fixture(scope="module")
def companies() -> dict[str, str]:
    """What came along with each room; the processes run at the same time."""
    running = {room: start(members(room), COMES_ALONE[room][1]) for room in ROOMS}
    return {room: company(process) for room, process in running.items()}


@pytest.mark.parametrize("room", ROOMS)
def test_brings_nothing_along_that_it_must_not_know(companies: dict[str, str], room: str) -> None:
    assert companies[room] == ""


def test_bad_company_is_noticed() -> None:
    assert company(start(["drivers.reading", "serial"], ("serial",))).split()[0] == "serial"


def test_a_module_that_cannot_be_imported_is_noticed() -> None:
    assert "No module named 'drivers.nothing'" in company(start(["drivers.nothing"], ("serial",)))
