"""The frame and its sheets: what is brought to the front, and what a press says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.presenters.views import (
    ButtonView,
    Choice,
    ChoicesView,
    HandInView,
    PutOnView,
    QuestionView,
    SamplesView,
    ScoreView,
    SheetView,
    button,
)
from kiosk.ui.screens.frame import Frame
from kiosk.ui.theme import theme
from kiosk.ui.widgets.action_button import ChoiceCard
from tests.helpers.offscreen import open_window, unseen_frames
from tests.helpers.pan import press
from tests.helpers.scenes import SCENES

SIZE = (1024, 600)
QUESTION = QuestionView(
    title="Really?",
    main=button("Yes", Person.YES),
    second=button("No", Person.NO),
    home=button("Home", Person.HOME, sign="home"),
)


class Told:
    """Stands in for the controls: notes what is said."""

    def __init__(self) -> None:
        self.presses: list[PersonEvent] = []
        self.choices: list[Any] = []

    def press(self, event: PersonEvent) -> None:
        self.presses.append(event)

    def chosen(self, value: Any) -> None:
        self.choices.append(value)


@pytest.fixture
def told() -> Told:
    return Told()


@pytest.fixture
def frame(told: Told) -> Iterator[Frame]:
    theme.less_motion = True
    window = open_window(*SIZE)
    frame = Frame(desk=told, bench=None)
    window.add_widget(frame)
    yield frame
    window.remove_widget(frame)
    theme.less_motion = False


def show(frame: Frame, view: SheetView) -> Any:
    """The sheet that shows the view."""
    frame.show(view)
    unseen_frames(2)
    return frame._shown


def pressed(sheet: Any, name: str) -> None:
    """The button with that text is released."""
    (found,) = [
        each for each in sheet.walk(restrict=True)
        if getattr(each, "text", "") == name and hasattr(each, "on_release")
    ]  # fmt: skip
    found.dispatch("on_release")


# Buttons -------------------------------------------------------------------------------------


def test_both_answers_say_what_they_mean(frame: Frame, told: Told) -> None:
    sheet = show(frame, QUESTION)
    pressed(sheet, "Yes")
    pressed(sheet, "No")
    assert told.presses == [press(Person.YES), press(Person.NO)]


def test_a_button_that_says_nothing_says_nothing(frame: Frame, told: Told) -> None:
    waiting = ButtonView(text="Waiting", sign="wait", state="waiting")
    pressed(show(frame, replace(QUESTION, main=waiting)), "Waiting")
    assert told.presses == []


def test_a_missing_second_button_leaves_its_room_to_the_main_one(frame: Frame) -> None:
    def main_wide(view: SheetView) -> float:
        sheet = show(frame, view)
        (found,) = [each for each in sheet.walk() if type(each).__name__ == "MainButton"]
        return float(found.width)

    both = main_wide(QUESTION)
    assert main_wide(replace(QUESTION, second=None)) > both


def test_home_and_its_neighbour_say_what_they_mean(frame: Frame, told: Told) -> None:
    show(frame, replace(QUESTION, beside_home=button("Cover", Person.COVER)))
    frame.ids.home_button.dispatch("on_release")
    frame.ids.beside_button.dispatch("on_release")
    assert told.presses == [press(Person.HOME), press(Person.COVER)]


def test_without_a_way_home_its_place_takes_no_touch(frame: Frame) -> None:
    show(frame, replace(QUESTION, home=None))
    assert not frame.ids.home_button.tappable
    assert frame.ids.home_button.opacity == 0


# Sheets --------------------------------------------------------------------------------------


def test_one_sheet_follows_one_view_after_another(frame: Frame) -> None:
    first = show(frame, PutOnView(title="One"))
    assert show(frame, PutOnView(title="Two")) is first
    assert first.view.title == "Two"


def test_another_screen_brings_another_sheet(frame: Frame) -> None:
    first = show(frame, PutOnView())
    second = show(frame, QUESTION)
    assert second is not first
    assert first.parent is None


def test_a_sheet_that_comes_back_is_the_same(frame: Frame) -> None:
    first = show(frame, PutOnView())
    show(frame, QUESTION)
    assert show(frame, PutOnView()) is first


@pytest.mark.parametrize(("screen", "wide"), [("home", True), ("teams", True), ("key", False)])
def test_the_pan_makes_room_for_wide_sheets(frame: Frame, screen: str, wide: bool) -> None:
    name = {"key": "container: key"}.get(screen, screen)
    show(frame, SCENES[name]().sheet)
    assert (frame.ids.pan.x > frame.right) == wide


def test_beside_the_things_a_sheet_has_only_what_every_sheet_has(frame: Frame, told: Told) -> None:
    frame.things_out = True
    sheet = show(frame, QUESTION)
    assert type(sheet).__name__ == "CompactSheet"
    pressed(sheet, "No")
    assert told.presses == [press(Person.NO)]


def test_put_away_the_sheet_comes_back_whole(frame: Frame) -> None:
    whole = show(frame, QUESTION)
    frame.things_out = True
    show(frame, QUESTION)
    frame.things_out = False
    assert show(frame, QUESTION) is whole


# What sheets say -----------------------------------------------------------------------------


def test_a_card_says_its_value(frame: Frame, told: Told) -> None:
    choices = (Choice(text="rice", value=("rice", 20)), Choice(text="sand", value="sand"))
    pressed(show(frame, ChoicesView(screen="choices", choices=choices)), "rice")
    assert told.choices == [("rice", 20)]


def test_few_cards_are_larger_ones(frame: Frame) -> None:
    def card_wide(how_many: int) -> float:
        choices = tuple(Choice(text=str(each), value=each) for each in range(how_many))
        sheet = show(frame, ChoicesView(screen="choices", choices=choices))
        cards = [each for each in sheet.walk() if isinstance(each, ChoiceCard)]
        return float(cards[0].width)

    assert card_wide(6) > 1.5 * card_wide(7)


def test_a_cup_says_its_number(frame: Frame, told: Told) -> None:
    sheet = show(frame, HandInView(title="Which?"))
    sheet.choose(7)
    assert told.presses == [press(Person.CHOOSE, 7)]


def test_an_undo_says_its_row(frame: Frame, told: Told) -> None:
    sheet = show(frame, SamplesView(title="Count"))
    sheet.undo(2)
    assert told.presses == [press(Person.UNDO, 2)]


def test_the_marker_climbs_once_for_each_scored_cup(frame: Frame) -> None:
    sheet = show(frame, ScoreView(cup_key="first", errors=(1.0,)))
    climbs: list[str] = []
    sheet.ids.tent.climb = lambda: climbs.append(sheet.view.cup_key)
    show(frame, ScoreView(cup_key="first", errors=(1.0, 2.0)))
    show(frame, ScoreView(cup_key="second", errors=(1.0, 2.0)))
    show(frame, ScoreView(cup_key="second", errors=(2.0,)))
    assert climbs == ["second"]
