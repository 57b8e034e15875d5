"""A balance without a cable, by touch: an adult types what its display shows."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.hand_in import HandInState
from kiosk.ui.walk import StuckError
from kiosk.ui.widgets.number_pad import RUB_OUT, PadKey
from tests.helpers.journey import LARGE, SMALL, Journey
from tests.helpers.key_hands import KeyHands

ENTER = 13


@pytest.fixture
def typed(start: Callable[..., Journey], request: pytest.FixtureRequest) -> Journey:
    return start(size=getattr(request, "param", SMALL), typed=True)


BOTH = pytest.mark.parametrize("typed", [SMALL, LARGE], indirect=True)


def take_cup(journey: Journey, mass: str = "12.3") -> None:
    """From the instruction for an empty cup until it is taken away, the zero first if asked."""
    if "Is the pan empty?" in journey.title:
        journey.type_mass("0.0")
    journey.type_mass(mass)
    journey.tap("Pan is empty")
    journey.until_screen("take cup")


def rub_out(journey: Journey) -> None:
    """Touch the key that has a sign instead of a text."""
    journey.wait(0.5)
    (key,) = [each for each in journey.kiosk.frame.walk(restrict=True)
              if isinstance(each, PadKey) and each.says == RUB_OUT]  # fmt: skip
    journey.touch(*key.parent.to_window(*key.center))


def go_home(journey: Journey) -> None:
    journey.tap("Home")
    if journey.screen == "leave":
        journey.tap("Leave")
    journey.until_screen("home")


@BOTH
def test_the_whole_way_of_a_cup(typed: Journey) -> None:
    typed.ask_for_cup()
    assert typed.title == "Is the pan empty?"
    typed.type_mass("0.0")
    assert "Type what the scale shows." in typed.seen
    typed.type_mass("12.3")
    assert "weighs 12.3 g" in " ".join(typed.title.split())
    typed.tap("Pan is empty")
    typed.until_screen("take cup")
    go_home(typed)
    typed.tap("1")
    typed.type_mass("105.7")
    assert typed.score.points == "93.4"
    assert typed.scene.pan.line2 == "typed"


def test_the_next_pair_clears_the_pan_first(typed: Journey) -> None:
    typed.ask_for_cup()
    take_cup(typed)
    go_home(typed)
    typed.tap("1")
    typed.type_mass("105.7")
    typed.tap("Next try")
    typed.until_title("Take everything off the pan.")
    typed.tap("Pan is empty")
    typed.type_mass("11.9")
    typed.tap("Pan is empty")
    typed.until_screen("take cup")


def test_what_is_kept_says_that_it_was_typed(typed: Journey) -> None:
    typed.ask_for_cup()
    take_cup(typed)
    assert typed.kept("SELECT source, balance, value, readability FROM weighings") == [
        ("typed", "typed", "12.3", "0.1")
    ]
    assert typed.kept("SELECT simulated FROM cups_taken") == [(0,)]


def test_it_is_seen_on_every_screen(typed: Journey) -> None:
    for way in ("", "Fill a cup", "Heron"):
        if way:
            typed.tap(way)
        assert typed.scene.strip.typed
        assert typed.scene.strip.words[0] == "Typed readings"
        assert not typed.scene.strip.simulated


def test_the_digits_of_the_zero_tell_the_step(typed: Journey) -> None:
    typed.ask_for_cup()
    typed.type_mass("0.00")
    typed.type_mass("12.30")
    assert typed.kept("SELECT value, readability FROM weighings") == [("12.30", "0.01")]


def test_before_the_zero_no_mass_is_taken(typed: Journey) -> None:
    typed.ask_for_cup()
    typed.type_mass("12.3")
    assert "Not zero. Empty the pan" in typed.seen
    assert typed.rows("weighings") == 0


def test_a_forgotten_point_is_asked_about(typed: Journey) -> None:
    typed.ask_for_cup()
    typed.type_mass("0.0")
    typed.type_mass("123")
    assert "So far 1 digit after the point." in typed.seen
    assert typed.rows("weighings") == 0
    rub_out(typed)
    typed.type_mass(".3")
    assert "weighs 12.3 g" in " ".join(typed.title.split())


def test_when_the_scale_shows_it_so_it_is_taken(typed: Journey) -> None:
    typed.ask_for_cup()
    typed.type_mass("0.0")
    typed.type_mass("12")
    typed.tap("Yes")
    assert typed.kept("SELECT value, readability FROM weighings") == [("12", "1")]


def test_no_mass_stays_to_be_read_while_cups_are_out(typed: Journey) -> None:
    typed.ask_for_cup()
    take_cup(typed, "12.3")
    go_home(typed)
    typed.ask_for_cup("Goldcrest")
    typed.type_mass("13.1")
    typed.until_title("This is cup 2.")
    assert "13.1" not in typed.seen
    assert "12.3" not in typed.seen


def test_what_was_begun_is_gone_after_leaving(typed: Journey) -> None:
    typed.ask_for_cup()
    typed.type_mass("0.0")
    typed.type("47")
    typed.tap("Back")
    typed.until_screen("home")
    typed.ask_for_cup()
    assert "47" not in typed.seen


def test_a_keyboard_is_heard_only_where_a_mass_is_asked_for(typed: Journey) -> None:
    assert not typed.kiosk.station.keyboard(ord("7"))
    typed.ask_for_cup()
    assert typed.kiosk.station.keyboard(ord("7"))
    typed.wait(0.5)
    assert typed.kiosk.frame.pad_view.text == "7"


def test_a_keyboard_types_nothing_where_the_pad_takes_no_digits(typed: Journey) -> None:
    typed.ask_for_cup()
    typed.type_mass("0.0")
    typed.type_mass("12.3")
    assert not typed.kiosk.station.keyboard(ord("7"))
    typed.tap("Pan is empty")
    typed.until_screen("take cup")


def test_enter_takes_no_load_where_the_empty_pan_is_asked_for(typed: Journey) -> None:
    typed.tap("The scale")
    typed.type_mass("0.0")
    for name in ("Check the scale", "Weights M1", "50 g weight"):
        typed.tap(name)
    typed.type_mass("50.1")
    typed.type("50.1")
    typed.kiosk.station.keyboard(ENTER)
    typed.wait(0.5)
    assert typed.kiosk.frame.pad_view.text == "50.1"


def test_the_pad_is_quiet_where_no_mass_is_asked_for(typed: Journey) -> None:
    typed.ask_for_cup()
    take_cup(typed)
    with pytest.raises(StuckError):
        typed.find("That is it")


def test_a_cup_of_another_pair_is_told_by_its_mass(typed: Journey) -> None:
    typed.ask_for_cup()
    take_cup(typed)
    go_home(typed)
    typed.tap("1")
    typed.type_mass("12.3")
    procedure = typed.desk.procedure
    assert procedure is not None
    assert procedure.state is HandInState.NOTHING_INSIDE
    typed.type_mass("110.0")  # it was filled on the pan
    assert typed.score.points == "97.7"


@BOTH
def test_a_count_key(typed: Journey) -> None:
    hands = KeyHands(typed)
    hands.begin()
    typed.type_mass("0.0")
    typed.type_mass("21.4")
    hands.until_state(SamplesState.COUNT)
    for mass in ("103.1", "103.6", "102.9"):
        typed.type_mass(mass)
        hands.until_state(SamplesState.READY)
        hands.keep()
        if hands.state is SamplesState.ADD:
            typed.tap("Pan is empty")
    hands.until_state(SamplesState.SPREAD)
    typed.tap("Go on")
    typed.tap("No")
    typed.tap("as it comes")
    typed.tap("Pan is empty")
    hands.until_state(ContainerState.EMPTY_ON)
    typed.type_mass("159.9")
    hands.until_state(ContainerState.POUR)
    typed.type_mass("759.9")
    hands.finish()
    typed.tap("A")
    typed.tap("Save as jar A")
    ((count, simulated),) = typed.kept("SELECT count, simulated FROM keys_made")
    assert count == 733  # 600 g, and 81.8 g are a hundred pieces
    assert not simulated
    assert set(typed.kept("SELECT source FROM weighings")) == {("typed",)}


def say_empty(journey: Journey, zero: str) -> None:
    """Type what the empty pan shows."""
    journey.type(zero)
    journey.tap("Pan is empty")


def test_a_check_of_the_scale_keeps_each_zero_as_typed(typed: Journey) -> None:
    typed.tap("The scale")
    typed.type_mass("0.0")
    typed.tap("Check the scale")
    typed.tap("Weights M1")
    typed.tap("50 g weight")
    typed.type_mass("50.1")
    say_empty(typed, "0.1")
    typed.tap("100 g weight")
    typed.type_mass("100.0")
    say_empty(typed, "0.0")
    procedure = typed.desk.procedure
    assert isinstance(procedure, BalanceCheck)
    assert [str(zero) for zero in procedure.log.zeros] == ["0.1", "0.0"]


def test_it_is_chosen_in_the_drawer_and_left_again(start: Callable[..., Journey]) -> None:
    journey = start()
    journey.tap("The scale")
    journey.tap("Another scale")
    journey.tap("No cable")
    journey.until_title("This is the scale.")
    assert journey.scene.strip.typed
    journey.type_mass("0.0")
    assert journey.desk.facts.readability is not None
    journey.tap("Another scale")
    journey.tap("Simulated scale")
    journey.until(lambda: journey.scene.strip.simulated, "the simulated scale")
    assert journey.scene.pad is None
