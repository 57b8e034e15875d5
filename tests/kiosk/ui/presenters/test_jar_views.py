"""What is told of closed jars: the same, lighter by so many pieces, and which one comes next."""

from __future__ import annotations

from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.jar_views import jars_view
from kiosk.ui.presenters.views import ChoicesView, MessageView
from tests.helpers.jar_scenes import checking_jars, closed_jar, in_check_jars, sealing
from tests.helpers.pan import EMPTY, PLACED, feed, press, settled
from tests.helpers.scenes import facts

JARS = (closed_jar("A", "700.0", "710.0"), closed_jar("C", "722.0", "732.1"))


def shown(procedure: CheckJars) -> MessageView:
    view = jars_view(procedure, facts())
    assert isinstance(view, MessageView)
    return view


def weighed_c(grams: str) -> CheckJars:
    procedure = checking_jars(JARS)
    feed(procedure, press(Person.CHOOSE, "C"), PLACED, settled(grams))
    return procedure


def test_a_lost_handful_is_told_in_grams_and_pieces_with_their_bounds() -> None:
    view = shown(weighed_c("728.9"))
    assert view.title == "Jar C is 3.2\u00a0g lighter."
    assert view.lines[0] == "About 90 pieces: 74 to 106."


def test_the_same_jar_says_what_would_not_be_seen() -> None:
    view = shown(weighed_c("732.1"))
    assert view.title == "Jar C is the same."
    assert view.lines == ("Fewer than 16 pieces would not be seen.",)


def test_a_heavier_jar_is_asked_about() -> None:
    view = shown(weighed_c("742.1"))
    assert "heavier" in view.title
    assert view.lines[-1] == "Is it this jar, with its own lid?"


def test_a_jar_that_weighs_like_another_is_named_instead() -> None:
    assert shown(weighed_c("710.0")).lines[-1] == "Jar A weighs as much as this one."


def test_the_next_jar_is_named_on_the_button() -> None:
    main = shown(weighed_c("732.1")).main
    assert main is not None
    assert main.text == "Next: jar A"


def test_after_the_last_jar_all_are_shown_with_what_was_found() -> None:
    procedure = weighed_c("728.9")
    feed(procedure, press(Person.MORE), EMPTY, PLACED, settled("710.0"), EMPTY)
    view = jars_view(procedure, facts())
    assert isinstance(view, ChoicesView)
    assert [card.note for card in view.choices] == ["the same", "3.2 g lighter"]


def test_many_jars_have_it_on_one_line() -> None:
    view = jars_view(in_check_jars(JarState.CHOOSE), facts())
    assert isinstance(view, ChoicesView)
    assert view.choices[1].text == "B: the same"


def test_without_a_key_there_is_nothing_to_check() -> None:
    view = jars_view(checking_jars(()), facts())
    assert isinstance(view, ChoicesView)
    assert view.note == "No jar has a key yet."


def test_the_end_of_a_new_key_leads_home_not_to_other_jars() -> None:
    procedure = sealing()
    view = jars_view(procedure, facts())
    assert view.home is not None
    assert view.home.text == "Home"
    feed(procedure, EMPTY, PLACED, settled("1740.0"))
    main = shown(procedure).main
    assert main is not None
    assert main.text == "Done"
