"""Letters in pages: used ones stay to be seen and cannot be chosen."""

from __future__ import annotations

from typing import Any

from kiosk.ui.widgets.jar_letters import JarKey, JarLetters
from tests.helpers.offscreen import frames, tap_at


def shown(window: Any, **look: Any) -> JarLetters:
    letters = JarLetters(
        letters=list("ABCDEFGHIJKLMNOPQRSTUVWXYZ"), size_hint=(None, None), size=(458, 88), **look
    )
    window.add_widget(letters)
    frames(2)
    return letters


def keys(letters: JarLetters) -> dict[str, JarKey]:
    return {key.letter: key for key in letters.children if isinstance(key, JarKey)}


def chosen_by_tap(letters: JarLetters, letter: str) -> list[str]:
    heard: list[str] = []
    letters.bind(on_choose=lambda _letters, which: heard.append(which))
    tap_at(*keys(letters)[letter].center)
    return heard


def test_the_first_page_has_five_jars(window: Any) -> None:
    assert sorted(keys(shown(window))) == list("ABCDE")


def test_a_tap_chooses(window: Any) -> None:
    assert chosen_by_tap(shown(window), "C") == ["C"]


def test_a_used_letter_cannot_be_chosen(window: Any) -> None:
    letters = shown(window, used=["A", "B"], used_text="used")
    assert chosen_by_tap(letters, "B") == []
    assert keys(letters)["B"].used_text == "used"


def test_the_next_page_is_named(window: Any) -> None:
    assert shown(window)._more.text == "F to J"


def test_a_tap_turns_the_page(window: Any) -> None:
    letters = shown(window)
    tap_at(*letters._more.center)
    frames(2)
    assert sorted(keys(letters)) == list("FGHIJ")


def test_the_last_page_turns_to_the_first(window: Any) -> None:
    letters = shown(window)
    letters.page = 5
    frames(2)
    assert sorted(keys(letters)) == ["Z"]
    tap_at(*letters._more.center)
    frames(2)
    assert sorted(keys(letters)) == list("ABCDE")


def test_what_is_used_later_is_seen(window: Any) -> None:
    letters = shown(window)
    letters.used = ["D"]
    assert chosen_by_tap(letters, "D") == []


def test_the_page_of_the_chosen_letter_is_shown(window: Any) -> None:
    assert "H" in keys(shown(window, used=list("ABCDEFG"), chosen="H"))


def test_another_chosen_letter_turns_its_page_up(window: Any) -> None:
    letters = shown(window, chosen="A")
    letters.chosen = "Z"
    frames(2)
    assert "Z" in keys(letters)


def test_the_chosen_letter_does_not_keep_the_page_from_turning(window: Any) -> None:
    letters = shown(window, chosen="A")
    tap_at(*letters._more.center)
    frames(2)
    assert sorted(keys(letters)) == list("FGHIJ")
