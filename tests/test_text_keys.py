"""Every text that a source asks for is in the catalogue, and every text there is asked for."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.texts.catalogue import ENGLISH
from tests.helpers.imports import ROOT
from tests.helpers.text_keys import (
    KEY,
    Catalogue,
    Uses,
    faults,
    unused,
    uses_in_kv,
    uses_in_python,
)

CATALOGUE_FOLDER = ROOT / "kiosk/texts/catalogue"
READERS = {".py": uses_in_python, ".kv": uses_in_kv}


def sources() -> dict[str, Path]:
    files = sorted(
        file
        for file in (ROOT / "kiosk").rglob("*")
        if file.suffix in READERS and CATALOGUE_FOLDER not in file.parents
    )
    return {str(file.relative_to(ROOT)): file for file in files}


SOURCES = sources()


def uses_of(name: str) -> Uses:
    file = SOURCES[name]
    return READERS[file.suffix](file.read_text(encoding="utf-8"))


def test_asks_only_for_texts_that_exist() -> None:
    found = {name: faults(uses_of(name), ENGLISH) for name in SOURCES}
    assert {name: faults_of for name, faults_of in found.items() if faults_of} == {}


def test_every_text_is_used() -> None:
    left = sorted(unused(map(uses_of, SOURCES), ENGLISH))
    assert not left, f"nobody says {', '.join(left)}"


MADE_UP: Catalogue = {
    "kiosk.closing": "Closing",
    "cup.title": "Cup {number}",
    "cup.step.1": "one",
    "cup.step.2": "two",
    "cup.left": ("{count} cup", "{count} cups"),
}


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("say('cup.titel', number=7)", "line 1: cup.titel is no text"),
        ("say('nowhere.title')", "line 1: nowhere.title is no text"),
        ("say('cup.title')", "line 1: cup.title also needs number"),
        ("say('cup.left')", "line 1: say() is the wrong way to ask for cup.left"),
        (
            "plural('cup.title', 2, number=1)",
            "line 1: plural() is the wrong way to ask for cup.title",
        ),
        ("ASK = Ask(title='cup.titel')", "cup.titel is no text"),
    ],
)
def test_a_made_up_fault_is_found(source: str, expected: str) -> None:
    assert faults(uses_in_python(source), MADE_UP) == [expected]


def test_a_wrong_key_in_kv_is_found() -> None:
    assert faults(
        uses_in_kv("Label:\n    text: say('cup.titel', number=root.number)"), MADE_UP
    ) == ["line 2: cup.titel is no text"]


@pytest.mark.parametrize(
    "source",
    [
        "say('cup.title', number=7)",
        "say('cup.title', **values)",
        "plural('cup.left', 2)",
        "say(f'cup.step.{step}')",
        "say(f'cup.st{rest}')",
        "steps = 'cup.step'",
        "file = 'cup.png'",
        "module = 'kiosk.commands.listen'",
        "'''cup.titel is spoken of in a sentence.'''",
    ],
)
def test_what_is_right_is_not_called_a_fault(source: str) -> None:
    assert faults(uses_in_python(source), MADE_UP) == []


def test_unused_texts_are_found() -> None:
    source = "say(f'cup.step.{step}'); plural('cup.left', 2)"
    assert unused([uses_in_python(source)], MADE_UP) == {"cup.title", "kiosk.closing"}


def test_a_key_without_a_fixed_beginning_uses_nothing() -> None:
    assert unused([uses_in_python("say(f'{area}.{name}')")], MADE_UP) == set(MADE_UP)


def test_texts_are_used_from_kv() -> None:
    uses = uses_in_kv('text: say("cup.title", number=1)')
    assert unused([uses], MADE_UP) == MADE_UP.keys() - {"cup.title"}


def test_keys_are_dotted_words() -> None:
    assert [key for key in ENGLISH if not KEY.fullmatch(key)] == []
