"""Container, pour and key, as finished views."""

from __future__ import annotations

from decimal import Decimal
from string import ascii_uppercase

from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.procedure import Person
from kiosk.texts.numbers import number
from kiosk.ui.presenters.container_views import container_view
from kiosk.ui.presenters.views import KeyView, MessageView, PourView
from tests.helpers.pan import press
from tests.helpers.scenes import facts, in_container

C = ContainerState
EMPTY_JAR = Decimal("159.9")


def pour(inside: str, state: ContainerState = C.POUR) -> PourView:
    view = container_view(in_container(state), facts(), EMPTY_JAR + Decimal(inside))
    assert isinstance(view, PourView)
    return view


def key(net: str = "500.0", **known: object) -> KeyView:
    view = container_view(in_container(C.KEY, net), facts(**known), None)
    assert isinstance(view, KeyView)
    return view


# Pour ----------------------------------------------------------------------------------------


def test_an_empty_jar_counts_nothing_and_cannot_be_stopped() -> None:
    view = pour("0.0")
    assert (view.count, view.good_to) == (0, "")
    assert view.main is not None
    assert view.main.state == "off"


def test_the_count_comes_with_its_interval_and_what_it_is_good_to() -> None:
    view = pour("500.0")
    assert view.between.startswith("95 % sure: ")
    assert view.good_to.startswith("Good to ")
    assert view.main is not None
    assert view.main.says == press(Person.STOP)


def test_too_many_pieces_are_too_many_for_the_event() -> None:
    assert pour("1200.0").warning == "More than 20\u2009000 pieces: too many for the event."


def test_the_mass_of_the_empty_jar_stays_to_be_seen() -> None:
    assert pour("500.0").jar_text == "Empty jar 159.9 g"


def test_while_the_scale_comes_to_rest_nothing_can_be_pressed() -> None:
    view = pour("500.0", C.STOPPING)
    assert view.main is not None
    assert (view.main.state, view.second) == ("waiting", None)


def test_without_a_mass_on_the_pan_nothing_is_counted() -> None:
    view = container_view(in_container(C.POUR), facts(), None)
    assert isinstance(view, PourView)
    assert view.count == 0


# The key -------------------------------------------------------------------------------------


def test_a_count_never_stands_without_its_interval() -> None:
    view = key()
    assert view.title == f"{number(view.count)} whole pieces"
    assert "between" in view.sure
    assert view.band > 0


def test_a_covered_key_has_no_number_of_pieces() -> None:
    covered, shown = key(covered=True), key()
    count = number(shown.count)
    assert covered.title == "lentils"
    assert [covered.sure, covered.peak, covered.right] == ["", "", ""]
    assert count not in covered.cost + covered.real + covered.left


def test_what_it_costs_stays_on_a_covered_key() -> None:
    assert key(covered=True).cost == key().cost != ""


def test_the_cover_button_says_what_it_does_next() -> None:
    texts = [view.beside_home.text for view in (key(), key(covered=True)) if view.beside_home]
    assert texts == ["Cover the\nbig number", "Show the\nbig number"]


def test_the_first_free_letter_is_proposed() -> None:
    view = key(used_letters=("A", "B"))
    assert view.chosen == "C"
    assert view.main is not None
    assert (view.main.text, view.main.says) == ("Save as jar C", press(Person.KEEP, "C"))


def test_the_coachs_letter_is_taken() -> None:
    assert key(used_letters=("A",), letter="Q").chosen == "Q"


def test_a_letter_that_was_used_meanwhile_is_not_proposed() -> None:
    assert key(used_letters=("A", "Q"), letter="Q").chosen == "B"


def test_when_all_letters_are_used_nothing_can_be_saved() -> None:
    view = key(used_letters=tuple(ascii_uppercase))
    assert view.main is not None
    assert (view.main.text, view.main.state, view.main.says) == (
        "All letters are used.",
        "off",
        None,
    )


def test_the_first_warning_stands_on_the_key() -> None:
    assert key("1100.0").note == "More than 20\u2009000 pieces: too many for the event."


def test_the_key_says_what_it_is_unsure_by_and_what_would_help() -> None:
    assert key("900.0").note == (
        "Unsure mostly because pieces differ. "
        "It would help to weigh 2 more samples of 500 to reach about 1.0 %."
    )


def test_a_refused_key_says_what_would_help() -> None:
    view = container_view(in_container(C.REFUSED), facts(), None)
    assert isinstance(view, MessageView)
    assert "fill in more" in view.lines[0]
    assert view.main is not None
    assert view.second is not None
    assert (view.main.says, view.second.says) == (press(Person.MORE), press(Person.UNDO))


def test_a_saved_key_says_which_letter_goes_on_the_jar() -> None:
    view = container_view(in_container(C.SAVED), facts(), None)
    assert isinstance(view, MessageView)
    assert (view.title, view.letter) == ("Jar W is kept.", "W")
