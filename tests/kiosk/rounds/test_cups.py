"""What a team's cup comes to after all that was noted about it, and who is next at the table."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.rounds.contents import CupNote, CupTurn
from kiosk.rounds.cups import CupStand, Pass, TeamCup, cup_of, cups, net_mass, queue, seems_filled
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Weighed
from tests.helpers.round_notes import said, team, with_teams
from tests.helpers.weighings import weighed

T = CupTurn
WREN = team("Wren", cup=1)


def noted(
    state: RoundState, turn: CupTurn, grams: str = "", *, zero: str = "", label: str = "wren"
) -> RoundState:
    return said(
        state,
        CupNote(team=label, turn=turn),
        weighing=weighed(grams) if grams else None,
        zero=weighed(zero) if zero else None,
    )


def wren(*turns: tuple[str, ...], rules: Rules | None = None) -> RoundState:
    """A round in which these happened to the cup of the team Wren."""
    state = with_teams(["Wren"], rules)
    for turn, *masses in turns:
        grams, zero = [*masses, "", ""][:2]
        state = noted(state, CupTurn(turn), grams, zero=zero)
    return state


def cup(*turns: tuple[str, ...]) -> TeamCup:
    return cup_of(wren(*turns), WREN)


@pytest.mark.parametrize(
    ("turns", "stand"),
    [
        ((), CupStand.NOT_WEIGHED),
        ((("empty", "12.3"),), CupStand.OUT),
        ((("empty", "12.3"), ("filled", "110.0")), CupStand.IN),
        ((("empty", "12.3"), ("spilled before",)), CupStand.OUT),
        ((("empty", "12.3"), ("spilled after",)), CupStand.NO_MASS),
        ((("empty", "12.3"), ("filled", "110.0"), ("spilled after",)), CupStand.IN),
        ((("empty", "12.3"), ("late",)), CupStand.NO_MASS),
        ((("empty", "12.3"), ("not handed in",)), CupStand.NO_MASS),
        ((("empty", "12.3"), ("set aside",)), CupStand.OUT),
        ((("empty", "12.3"), ("cracked",)), CupStand.NOT_WEIGHED),
        ((("empty", "12.3"), ("cracked",), ("empty", "9.9")), CupStand.OUT),
        ((("empty", "12.3"), ("filled", "110.0"), ("undone",)), CupStand.OUT),
        ((("filled", "110.0"),), CupStand.NOT_WEIGHED),
    ],
)
def test_where_a_cup_is(turns: tuple[tuple[str, ...], ...], stand: CupStand) -> None:
    assert cup(*turns).stand is stand


@pytest.mark.parametrize(
    ("empty_zero", "filled_zero", "net"),
    [
        ("", "", "97.7"),
        ("0.0", "0.2", "97.5"),
        ("0.1", "0.0", "97.8"),
        ("0.0", "-0.2", "97.7"),
        ("0.0", "0.3", "97.7"),
    ],
)
def test_what_lay_on_the_pan_before_is_no_part_of_the_cup(
    empty_zero: str, filled_zero: str, net: str
) -> None:
    state = wren(("empty", "12.3", empty_zero), ("filled", "110.0", filled_zero))
    assert net_mass(state, WREN) == Decimal(net)


@pytest.mark.parametrize(("which", "net"), [(Weighed.LAST, "98.7"), (Weighed.FIRST, "97.7")])
def test_a_cup_that_was_weighed_again_keeps_both_masses(which: Weighed, net: str) -> None:
    rules = Rules(weighed_again=which)
    state = wren(("empty", "12.3"), ("filled", "110.0"), ("filled", "111.0"), rules=rules)
    assert [str(each.net) for each in cup_of(state, WREN).fillings] == ["97.7", "98.7"]
    assert net_mass(state, WREN) == Decimal(net)


def test_a_cracked_cup_is_followed_by_one_with_an_empty_mass_of_its_own() -> None:
    state = wren(("empty", "12.3"), ("cracked",), ("empty", "9.9"), ("filled", "110.0"))
    assert net_mass(state, WREN) == Decimal("100.1")
    assert cup_of(state, WREN).had(T.CRACKED)


def test_a_cup_lighter_than_it_was_empty_held_nothing() -> None:
    assert net_mass(wren(("empty", "12.3"), ("filled", "11.0")), WREN) == 0


def test_a_cup_without_a_mass_counts_as_none() -> None:
    assert net_mass(wren(("empty", "12.3"), ("late",)), WREN) is None


def numbers(state: RoundState, pass_: Pass) -> list[tuple[int, int]]:
    return [(each.team.sitting, each.team.cup) for each in queue(cups(state), pass_)]


def test_the_queue_goes_by_sitting_and_number() -> None:
    state = with_teams([])
    teams = [("Teal", 1, 2), ("Robin", 2, 1), ("Heron", 1, 1)]
    state = said(state, *(team(name, sitting=at, cup=number) for name, at, number in teams))
    assert numbers(state, Pass.EMPTY) == [(1, 1), (1, 2), (2, 1)]


@pytest.mark.parametrize("turn", [T.SET_ASIDE, T.SPILLED_BEFORE])
def test_a_cup_for_later_comes_at_the_end(turn: CupTurn) -> None:
    state = with_teams(["Wren", "Heron", "Teal"])
    assert numbers(noted(state, turn), Pass.FILLED) == [(1, 2), (1, 3), (1, 1)]


def test_a_cup_is_due_empty_once_and_filled_once() -> None:
    state = noted(with_teams(["Wren", "Heron"]), T.EMPTY, "12.3")
    assert numbers(state, Pass.EMPTY) == [(1, 2)]
    assert numbers(state, Pass.FILLED) == [(1, 1), (1, 2)]
    assert numbers(noted(state, T.FILLED, "110.0"), Pass.FILLED) == [(1, 2)]


def test_a_cup_that_was_set_aside_is_no_longer_once_it_is_weighed() -> None:
    state = noted(noted(with_teams(["Wren"]), T.SET_ASIDE), T.EMPTY, "12.3")
    assert cup_of(state, WREN).later is None


@pytest.mark.parametrize(
    ("grams", "others", "filled"),
    [("110", ["12", "14"], True), ("62", ["12", "14"], False), ("110", [], False),
     ("118", ["72", "90"], False)],
)  # fmt: skip
def test_an_empty_cup_is_compared_with_the_others(
    grams: str, others: list[str], filled: bool
) -> None:
    assert seems_filled(Decimal(grams), map(Decimal, others), Rules()) is filled
