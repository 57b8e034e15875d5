"""The cups that are out: tapped by number, in places that stay."""

from __future__ import annotations

from typing import Any

import pytest

from kiosk.ui.widgets.cup import CupKey, CupRow, CupTable, MoreKey
from tests.helpers.offscreen import frames, tap_at


def shown_table(window: Any, count: int, **look: Any) -> CupTable:
    cups = [(number, f"Pair {number}") for number in range(1, count + 1)]
    table = CupTable(cups=cups, size_hint=(None, None), size=(542, 282), pos=(400, 100), **look)
    window.add_widget(table)
    frames(2)
    return table


def keys(table: Any) -> dict[int, CupKey]:
    return {key.number: key for key in table.children if isinstance(key, CupKey)}


def more_key(table: CupTable) -> MoreKey:
    return next(key for key in table.children if isinstance(key, MoreKey))


def test_a_tap_chooses_the_number(window: Any) -> None:
    table = shown_table(window, 9)
    chosen: list[int] = []
    table.bind(on_choose=lambda _table, number: chosen.append(number))
    tap_at(*keys(table)[8].center)
    assert chosen == [8]


def test_a_cup_handed_in_moves_nobody_before_it(window: Any) -> None:
    table = shown_table(window, 9)
    before = {number: tuple(key.pos) for number, key in keys(table).items()}
    table.cups = table.cups[:5]
    frames(2)
    assert all(tuple(key.pos) == before[number] for number, key in keys(table).items())


def test_the_chosen_cup_is_marked(window: Any) -> None:
    table = shown_table(window, 9, chosen=3)
    assert keys(table)[3].look == "chosen"
    assert keys(table)[4].look == "out"


def test_fifteen_cups_need_no_second_page(window: Any) -> None:
    assert len(keys(shown_table(window, 15))) == 15


def test_more_cups_turn_by_the_last_place(window: Any) -> None:
    table = shown_table(window, 17)
    assert max(keys(table)) == 14
    tap_at(*more_key(table).center)
    frames(2)
    assert sorted(keys(table)) == [15, 16, 17]


def test_the_last_page_turns_to_the_first(window: Any) -> None:
    table = shown_table(window, 17)
    table.page = 1
    more_key(table).dispatch("on_release")
    assert table.page == 0


def test_choosing_turns_to_the_page_of_the_cup(window: Any) -> None:
    table = shown_table(window, 40)
    table.chosen = 31
    frames(2)
    assert keys(table)[31].look == "chosen"


def test_a_page_that_has_gone_is_left(window: Any) -> None:
    table = shown_table(window, 17)
    table.page = 1
    table.cups = table.cups[:3]
    frames(2)
    assert sorted(keys(table)) == [1, 2, 3]


def test_a_row_tells_number_and_more_apart(window: Any) -> None:
    row = CupRow(numbers=[7, 8], mine=7, more="more", size_hint=(None, None), size=(400, 66))
    heard: list[object] = []
    row.bind(on_choose=lambda _row, number: heard.append(number))
    row.bind(on_others=lambda _row: heard.append("more"))
    window.add_widget(row)
    frames(2)
    for child in reversed(row.children):
        tap_at(*child.center)
    assert heard == [7, 8, "more"]


def test_a_row_as_a_picture_takes_no_taps(window: Any) -> None:
    row = CupRow(numbers=[7], tappable=False, size_hint=(None, None), size=(400, 66))
    window.add_widget(row)
    frames(2)
    row.bind(on_choose=lambda *_: pytest.fail("a picture was tapped"))
    tap_at(*row.children[0].center)
    assert keys(row)[7].tappable is False
