"""What counts of a cup that was weighed more than once, protested against or judged. Invented."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.rounds.contents import Answer, CupNote, CupTurn, Protest, Stage, Typing
from kiosk.rounds.corrections import corrections
from kiosk.rounds.counted import counted
from kiosk.rounds.cups import cup_of
from kiosk.rounds.results import corrected
from kiosk.rounds.standing import results_now, settled
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task, Weighed
from tests.helpers.result_rounds import played
from tests.helpers.round_notes import DIVISION, said, weighed_again
from tests.helpers.weighings import weighed

PROTEST = Protest(protest="p", team="wren", task=Task.MASS)  # its cup was handed in with 97.0 g


def protested(rules: Rules | None = None) -> RoundState:
    """Released; the cup of a protest was weighed again, with 2 g more than before."""
    state = played(rules=rules, steps=(Stage.LOCKED, Stage.RELEASED))
    return weighed_again(said(state, PROTEST), "wren", "111.0")


def decided(state: RoundState, *, accepted: bool, protest: Protest = PROTEST) -> RoundState:
    return said(state, protest.model_copy(update={"accepted": accepted}))


def judged(state: RoundState, grams: str | None) -> RoundState:
    estimate = None if grams is None else Decimal(grams)
    answer = Answer(
        team="wren", task=Task.MASS, typing=Typing.JUDGE, estimate=estimate, reason="a slip"
    )
    return said(state, answer)


def mass(state: RoundState) -> str:
    return str(settled(state, DIVISION)["wren"].get(Task.MASS))


@pytest.mark.parametrize(
    ("counts", "undecided", "accepted", "refused"),
    [(Weighed.LAST, "97.0", "99.0", "97.0"), (Weighed.FIRST, "97.0", "97.0", "97.0")],
)
def test_a_mass_of_a_protest_counts_only_once_it_is_accepted(
    counts: Weighed, undecided: str, accepted: str, refused: str
) -> None:
    state = protested(Rules(weighed_again=counts))
    found = [state, decided(state, accepted=True), decided(state, accepted=False)]
    assert [mass(each) for each in found] == [undecided, accepted, refused]


def test_what_was_weighed_after_the_decision_does_not_count() -> None:
    state = decided(protested(), accepted=True)
    assert mass(weighed_again(state, "wren", "112.0")) == "99.0"


def test_of_two_masses_in_one_protest_the_later_counts() -> None:
    state = weighed_again(protested(), "wren", "110.5")
    assert mass(decided(state, accepted=True)) == "98.5"


def test_only_a_protest_that_is_accepted_corrects_a_cup() -> None:
    state = protested()
    assert corrected(state, state.team("wren")) == frozenset()
    assert corrections(state, results_now(state, DIVISION, draws=0)) == []
    state = decided(state, accepted=True)
    assert corrected(state, state.team("wren")) == {Task.MASS}
    (change,) = corrections(state, results_now(state, DIVISION, draws=0))
    assert (change.before, change.after) == (Decimal("97.0"), Decimal("99.0"))
    assert change.reason == "weighed again"


def test_a_cup_that_is_weighed_after_the_judge_decided_counts() -> None:
    state = judged(played(), None)
    assert mass(state) == "None"
    assert mass(said(state, _filled(), weighing=weighed("112.0"))) == "100.0"


def test_what_the_judge_decides_after_a_weighing_counts() -> None:
    state = judged(said(played(), _filled(), weighing=weighed("112.0")), "80")
    assert mass(state) == "80"


def _filled() -> CupNote:
    return CupNote(team="wren", turn=CupTurn.FILLED)


def test_a_protest_that_is_accepted_after_the_judge_decided_counts() -> None:
    state = judged(protested(), "80")
    assert mass(state) == "80"
    accepted = decided(state, accepted=True)
    assert mass(accepted) == "99.0"
    assert mass(judged(accepted, "81")) == "81"


def test_what_counts_names_the_weighing() -> None:
    state = decided(protested(), accepted=True)
    cup = counted(state, state.team("wren"))
    assert cup is not None
    assert cup.filling == cup_of(state, state.team("wren")).fillings[1]
