"""Words for a page of a round: on the keys of the glass, and on a keyboard that is plugged in."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from kiosk.ui.app import KioskApp
from kiosk.ui.pages.hub import HubPage
from kiosk.ui.presenters.page_views import TextView
from kiosk.ui.widgets.letter_keys import CAPITAL, RUB_OUT, SPACE, LetterKeys
from tests.helpers.journey import QUIET, Journey

BACKSPACE, ENTER = 8, 13


@pytest.fixture
def words(journey: Journey) -> Iterator[Journey]:
    """The name of a new round is asked for, in the app's window."""
    app = KioskApp(lambda: journey.kiosk, QUIET)
    app.build()
    journey.tap("Run a round")
    journey.tap("A new round")
    journey.until_screen("text")
    yield journey
    journey.window.unbind(on_resize=app._resized, on_keyboard=app._key, on_textinput=app._text)


def typed(journey: Journey) -> str:
    view = journey.kiosk.station.scene().sheet
    assert isinstance(view, TextView)
    return view.typed


def press(journey: Journey, code: int) -> None:
    """A key that writes nothing."""
    journey.window.dispatch("on_keyboard", code, 0, None, [])


def write(journey: Journey, text: str) -> None:
    """As a keyboard does: each character is a key and a text, a dead key before it is neither."""
    for character in text:
        if character.isascii():
            journey.window.dispatch("on_keyboard", ord(character.lower()), 0, character, [])
        journey.window.dispatch("on_textinput", character)


def tap_keys(journey: Journey, *keys: str) -> None:
    (pad,) = (each for each in journey.kiosk.frame.walk() if isinstance(each, LetterKeys))
    for says in keys:
        journey.wait(0.3)
        (key,) = (each for each in pad.children if each.says == says)
        journey.touch(*key.to_window(*key.center))


def test_a_keyboard_writes_capitals_and_accents(words: Journey) -> None:
    write(words, "Señora Café 4")
    assert typed(words) == "Señora Café 4"


def test_backspace_rubs_out_and_enter_ends_it(words: Journey) -> None:
    write(words, "Springs")
    press(words, BACKSPACE)
    press(words, ENTER)
    words.wait(0.2)
    assert isinstance(words.desk.room.page, HubPage)
    assert words.title == "Spring"


def test_enter_ends_nothing_before_a_word_stands_there(words: Journey) -> None:
    press(words, ENTER)
    assert typed(words) == ""


def test_fingers_write_a_capital_at_the_start_of_each_word(words: Journey) -> None:
    tap_keys(words, "m", "a", "y", SPACE, "d", "a", "y", "y", RUB_OUT, SPACE, CAPITAL, "b")
    assert typed(words) == "May Day b"
