"""Rows that follow their view, and words that are typed on glass."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.screens.rows import RowsSheet
from kiosk.ui.screens.text import TextSheet
from kiosk.ui.widgets.letter_keys import CAPITAL, RUB_OUT
from tests.helpers.offscreen import frames
from tests.helpers.page_scenes import FULL, WORDS


class Pressed:
    """A desk that remembers what it was told."""

    def __init__(self) -> None:
        self.events: list[PersonEvent] = []

    def press(self, event: PersonEvent) -> None:
        self.events.append(event)


def test_a_row_says_what_it_stands_for_and_one_without_says_nothing(window: Any) -> None:
    desk = Pressed()
    sheet = RowsSheet(desk=desk, view=FULL)
    window.add_widget(sheet)
    frames(2)
    for tile in sheet._tiles:
        tile.dispatch("on_release")
    assert desk.events == [row.says for row in FULL.rows if row.says is not None]


def test_tiles_go_and_come_back_with_the_rows(window: Any) -> None:
    sheet = RowsSheet(desk=Pressed(), view=FULL)
    window.add_widget(sheet)
    sheet.view = replace(FULL, rows=FULL.rows[:1])
    assert [tile.parent is sheet for tile in sheet._tiles] == [True, *[False] * 4]
    sheet.view = FULL
    assert all(tile.parent is sheet for tile in sheet._tiles)


def test_the_first_letter_of_a_word_is_a_capital_by_itself(window: Any) -> None:
    desk = Pressed()
    sheet = TextSheet(desk=desk, view=replace(WORDS, typed=""))
    window.add_widget(sheet)
    keys = sheet.ids.letters
    keys.pressed("w")
    sheet.view = replace(WORDS, typed="W")
    for says in ("r", CAPITAL, "e", RUB_OUT):
        keys.pressed(says)
    typed = [PersonEvent(Person.TYPE, letter) for letter in ("W", "r", "E")]
    assert desk.events == [*typed, PersonEvent(Person.RUB_OUT)]


def test_an_offer_is_taken_whole(window: Any) -> None:
    desk = Pressed()
    sheet = TextSheet(desk=desk, view=WORDS)
    window.add_widget(sheet)
    sheet.ids.offers.children[-1].dispatch("on_release")
    assert desk.events == [PersonEvent(Person.CHOOSE, WORDS.offers[0])]
