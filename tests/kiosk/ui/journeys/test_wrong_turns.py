"""Every wrong turn has its own sentence on the screen, keeps nothing, and has its way back."""

from __future__ import annotations

import pytest

from tests.helpers.journey import Journey

EMPTY_G, FILLED_G = 12.3, 105.7
OTHER_G = 95.0  # a solid cup
REST_S = 3.0


@pytest.fixture
def with_cup(journey: Journey) -> Journey:
    """Cup 1, of 12.3 g, is out."""
    journey.take_cup(grams=EMPTY_G)
    return journey


@pytest.fixture
def chosen(with_cup: Journey) -> Journey:
    """Cup 1 is out, and its number was tapped."""
    with_cup.tap("1")
    return with_cup


def lift_early(journey: Journey, grams: float) -> None:
    journey.put(grams)
    journey.until(lambda: journey.desk.memory.loaded, "the load")
    journey.bench.lift()


# The empty cup -------------------------------------------------------------------------------


def test_with_cups_out_a_load_from_before_must_go_first(with_cup: Journey) -> None:
    with_cup.tap("Fill a cup")
    with_cup.put(FILLED_G)
    with_cup.tap("Wren")
    with_cup.until_title("Take everything off the pan.")
    with_cup.wait(REST_S)
    assert with_cup.rows("cups_taken") == 1


def test_with_no_cup_out_an_early_cup_is_this_pairs(journey: Journey) -> None:
    journey.tap("Fill a cup")
    journey.put(EMPTY_G)
    journey.wait(REST_S)
    journey.tap("Heron")
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_an_empty_cup_lifted_too_early(journey: Journey) -> None:
    journey.ask_for_cup()
    lift_early(journey, EMPTY_G)
    journey.until_title("Too soon. Put the cup back on.")
    assert journey.rows("cups_taken") == 0


def test_put_back_on_it_is_weighed(journey: Journey) -> None:
    journey.ask_for_cup()
    lift_early(journey, EMPTY_G)
    journey.until_title("Too soon. Put the cup back on.")
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_too_light_for_a_cup(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(1.2)
    journey.until_title("That is too light for a cup.")
    assert journey.rows("cups_taken") == 0


def test_after_crumbs_were_brushed_off_the_cup_is_weighed(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(1.2)
    journey.until_title("That is too light for a cup.")
    journey.clear()
    journey.put(EMPTY_G)
    journey.until_title("Cup 1 weighs 12.3 g.")


def test_heavy_for_an_empty_cup(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(180.0)
    journey.until_title("Is this cup empty?")
    assert journey.rows("cups_taken") == 0


def test_a_heavy_empty_cup_is_kept_when_the_pair_says_so(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(180.0)
    journey.until_title("Is this cup empty?")
    journey.tap("Yes, it is empty")
    journey.until_title("Cup 1 weighs 180.0 g.")


def test_a_full_cup_is_taken_off_when_the_pair_says_no(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(180.0)
    journey.until_title("Is this cup empty?")
    journey.tap("No")
    journey.until_title("Take everything off the pan.")
    journey.clear()
    journey.until_title("We weigh the empty cup first.")


def test_the_weighed_cup_is_not_weighed_twice(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    journey.bench.lean()
    journey.wait(1.0)
    journey.bench.let_go()
    journey.wait(REST_S)
    assert journey.rows("cups_taken") == 1


# The filled cup ------------------------------------------------------------------------------


def test_a_cup_that_nobody_chose_is_asked_about(with_cup: Journey) -> None:
    with_cup.put(FILLED_G)
    with_cup.until_title("Whose cup is on the pan?")
    with_cup.wait(REST_S)
    assert with_cup.rows("cups_handed_in") == 0


def test_a_cup_that_nobody_chose_is_scored_once_it_is_named(with_cup: Journey) -> None:
    with_cup.put(FILLED_G)
    with_cup.until_title("Whose cup is on the pan?")
    with_cup.tap("1")
    with_cup.until_screen("score")


def test_a_filled_cup_lifted_too_early(chosen: Journey) -> None:
    lift_early(chosen, FILLED_G)
    chosen.until_title("Too soon. Put cup 1 back.")
    assert chosen.rows("cups_handed_in") == 0


def test_lighter_than_the_cup_was_empty(chosen: Journey) -> None:
    chosen.put(8.0)
    chosen.until_title("Lighter than cup 1 was empty.")
    assert chosen.rows("cups_handed_in") == 0


def test_nothing_in_the_cup(chosen: Journey) -> None:
    chosen.put(EMPTY_G)
    chosen.until_title("Nothing is in cup 1 yet.")
    assert chosen.rows("cups_handed_in") == 0


def test_filled_on_the_pan_it_is_scored(chosen: Journey) -> None:
    chosen.put(EMPTY_G)
    chosen.until_title("Nothing is in cup 1 yet.")
    chosen.put(95.0)
    chosen.until_screen("score")
    assert chosen.score.points == "95.0"


def test_hardly_anything_in_the_cup_is_asked_about(chosen: Journey) -> None:
    chosen.put(EMPTY_G + 5)
    chosen.until_title("Is this really cup 1?")
    assert chosen.rows("cups_handed_in") == 0


def two_cups_out_and_the_first_chosen(with_cup: Journey) -> None:
    with_cup.take_cup("Wren", OTHER_G)
    with_cup.tap("1")
    with_cup.until_title("Put cup 1 on the pan.")
    with_cup.put(OTHER_G + 98)


def test_probably_another_cup(with_cup: Journey) -> None:
    two_cups_out_and_the_first_chosen(with_cup)
    with_cup.until_title("Is this really cup 1?")
    assert with_cup.rows("cups_handed_in") == 0


def test_another_cup_is_scored_as_itself_when_its_number_is_tapped(with_cup: Journey) -> None:
    two_cups_out_and_the_first_chosen(with_cup)
    with_cup.until_title("Is this really cup 1?")
    with_cup.tap("No")
    with_cup.until_title("Whose cup is on the pan?")
    with_cup.tap("2")
    with_cup.until_screen("score")
    assert with_cup.kept("SELECT net, confirmed FROM cups_handed_in") == [("98.0", 0)]


def test_the_same_cup_is_scored_when_the_pair_says_so_and_that_is_kept(with_cup: Journey) -> None:
    two_cups_out_and_the_first_chosen(with_cup)
    with_cup.until_title("Is this really cup 1?")
    with_cup.tap("Yes, cup 1")
    with_cup.until_screen("score")
    assert with_cup.kept("SELECT net, confirmed FROM cups_handed_in") == [("180.7", 1)]


def test_more_than_double_is_no_points_and_says_so(chosen: Journey) -> None:
    chosen.put(EMPTY_G + 205)
    chosen.until_screen("score")
    assert (chosen.score.points, chosen.score.side_text) == ("0.0", "double or more")
    assert chosen.kept("SELECT points FROM cups_handed_in") == [("0.0",)]


def test_a_scored_cup_must_go_before_the_next_one_comes(with_cup: Journey) -> None:
    with_cup.take_cup("Wren", 14.1)
    with_cup.tap("1")
    with_cup.put(FILLED_G)
    with_cup.until_screen("score")
    with_cup.tap("Home")
    with_cup.tap("2")
    with_cup.until_title("Take everything off the pan.")
    with_cup.wait(REST_S)
    assert with_cup.rows("cups_handed_in") == 1


def test_another_number_can_be_tapped_before_the_cup_is_on(with_cup: Journey) -> None:
    with_cup.take_cup("Wren", 14.1)
    with_cup.tap("1")
    with_cup.until_title("Put cup 1 on the pan.")
    with_cup.tap("2")
    with_cup.until_title("Put cup 2 on the pan.")


def test_the_next_cup_put_on_while_one_is_taken_is_asked_about(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")
    journey.put(90.0)
    journey.until_title("Whose cup is on the pan?")


def test_the_next_cup_put_on_after_a_score_is_asked_about(with_cup: Journey) -> None:
    with_cup.take_cup("Wren", 14.1)
    with_cup.tap("1")
    with_cup.put(FILLED_G)
    with_cup.until_screen("score")
    with_cup.clear()
    with_cup.put(110.0)
    with_cup.until_title("Whose cup is on the pan?")


def test_with_no_cup_out_a_load_at_home_is_nobodys(journey: Journey) -> None:
    journey.put(90.0)
    journey.wait(REST_S)
    assert journey.screen == "home"


# A pan that does not rest --------------------------------------------------------------------


def test_a_pan_that_does_not_rest_gets_its_causes_named(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.bench.draught(40)
    journey.put(EMPTY_G)
    journey.until_title("The scale does not come to rest.")
    assert "Hands off the table?" in journey.seen


def test_the_causes_are_not_named_before_six_seconds(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.bench.draught(40)
    journey.put(EMPTY_G)
    journey.wait(5.0)
    assert journey.screen == "put on"


def test_once_it_rests_the_cup_is_weighed(journey: Journey) -> None:
    journey.ask_for_cup()
    journey.bench.draught(40)
    journey.put(EMPTY_G)
    journey.until_title("The scale does not come to rest.")
    journey.bench.draught(0)
    journey.until_title("Cup 1 weighs 12.")


def test_a_hand_on_the_pan_is_not_weighed(chosen: Journey) -> None:
    chosen.put(FILLED_G)
    chosen.bench.lean()
    chosen.wait(5.0)
    assert chosen.rows("cups_handed_in") == 0
    chosen.bench.let_go()
    chosen.until_screen("score")
    assert chosen.kept("SELECT net FROM cups_handed_in") == [("93.4",)]


def test_a_number_tapped_while_the_cup_lies_there_is_the_one_scored(with_cup: Journey) -> None:
    with_cup.take_cup("Wren", 14.1)
    with_cup.tap("1")
    with_cup.wait(0.5)
    with_cup.put(14.1 + 97)
    with_cup.until_title("Cup 1 is being weighed.")
    with_cup.touch(*with_cup.middle_of("2"))
    with_cup.until_screen("score")
    assert with_cup.kept("SELECT net FROM cups_handed_in") == [("97.0",)]


@pytest.mark.parametrize(("grams", "title"), [(8.0, "Lighter than"), (17.3, "Is this really")])
def test_a_wrong_cup_is_taken_off_without_a_word_of_too_soon(
    usual: Journey, grams: float, title: str
) -> None:
    number = usual.take_cup()
    usual.tap(str(number))
    usual.put(grams)
    usual.until_title(title)
    usual.bench.lift()
    titles = set()
    for _ in range(30):
        usual.step()
        titles.add(" ".join(usual.title.split()))
    assert not [said for said in titles if "Too soon" in said]
    usual.until_title(f"Put cup {number} on the pan.")
