"""What counts of a round, what keeps a division where it is, and what was corrected."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal

import pytest

from kiosk.rounds.contents import Answer, BoundKey, CupNote, CupTurn, Protest, Stage, Step, Typing
from kiosk.rounds.corrections import corrections
from kiosk.rounds.standing import (
    What,
    ahead,
    balance_step,
    behind,
    blocks,
    open_protests,
    protest_left,
    results_now,
    settled,
    widest_key,
)
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task, Weighed
from tests.helpers.pan import STARTED
from tests.helpers.result_rounds import keys, over, played, with_cup, with_other_division
from tests.helpers.round_notes import DIVISION, answer, said, team, with_teams
from tests.helpers.weighings import weighed

NOW = STARTED + timedelta(minutes=5)


def found(state: RoundState) -> dict[str, tuple[int, tuple[str, ...]]]:
    return {block.what: (block.count, block.names) for block in blocks(state, DIVISION, NOW)}


def judged(team_id: str, task: Task, value: str | None, reason: str = "spilled") -> Answer:
    estimate = None if value is None else Decimal(value)
    return Answer(
        team=team_id, task=task, typing=Typing.JUDGE, estimate=estimate, reason=reason, by="coach"
    )


def test_cups_and_sheets_make_the_answers_that_count() -> None:
    counts = settled(played(), DIVISION)["wren"]
    assert counts[Task.MASS] == Decimal("97.0")
    assert counts[Task.COUNT_HIGH] == round(Decimal("15234") * Decimal("0.97"))
    assert set(counts) == set(Task)


def test_what_is_blank_or_without_a_mass_earns_nothing() -> None:
    state = said(with_teams(["Wren"]), *keys(), CupNote(team="wren", turn=CupTurn.SPILLED_AFTER))
    for typing in (Typing.FIRST, Typing.SECOND):
        state = said(state, *(answer("Wren", task, None, typing) for task in list(Task)[1:]))
    assert settled(state, DIVISION) == {"wren": {}}
    assert results_now(state, DIVISION).rows[0].total == 0


def test_the_judge_may_give_a_spilled_cup_its_grams() -> None:
    state = said(with_teams(["Wren"]), CupNote(team="wren", turn=CupTurn.SPILLED_AFTER))
    state = said(state, judged("wren", Task.MASS, "95"))
    assert settled(state, DIVISION)["wren"][Task.MASS] == 95


@pytest.mark.parametrize(("counts", "net"), [(Weighed.LAST, "99.0"), (Weighed.FIRST, "97.0")])
def test_the_rules_say_which_of_two_masses_counts(counts: Weighed, net: str) -> None:
    state = played(rules=Rules(weighed_again=counts))
    again = CupNote(team="wren", turn=CupTurn.FILLED)
    state = said(state, again, weighing=weighed("111.0"))
    assert settled(state, DIVISION)["wren"][Task.MASS] == Decimal(net)


def test_the_step_is_that_of_the_balance_of_the_cups() -> None:
    assert balance_step(with_teams(["Wren"]), DIVISION) is None
    assert balance_step(played(), DIVISION) == Decimal("0.1")


def test_the_widest_key_is_named() -> None:
    (key,) = [key for key in keys() if key.task is Task.COUNT_MIDDLE]
    wide = key.model_copy(update={"half_width_percent": Decimal(3)})
    assert widest_key(said(played(), wide), DIVISION) is Task.COUNT_MIDDLE


def test_nothing_blocks_a_division_that_is_all_in() -> None:
    assert blocks(played(), DIVISION, NOW) == []


def test_what_is_missing_is_named_with_its_count() -> None:
    state = said(with_teams(["Wren", "Heron"]), *keys()[1:], *over())
    state = with_cup(state, "wren", "98.0")
    unclear = answer("Heron", Task.VOLUME_1, None).model_copy(update={"unreadable": True})
    state = said(state, team("Swift", sitting=2), unclear)
    assert found(state) == {
        "sittings": (1, ("2",)),
        "keys": (1, (Task.COUNT_LOW,)),
        "cups": (2, ("Heron", "Swift")),
        "typed": (3, ("Wren", "Heron", "Swift")),
        "judge": (1, ("Heron",)),
    }


def test_a_division_without_teams_is_not_locked() -> None:
    assert found(with_teams([]))["teams"] == (0, ())


def test_results_wait_while_others_still_work_with_the_same_jars() -> None:
    state = with_other_division(played(steps=[Stage.LOCKED]))
    assert found(state) == {}
    shared = keys()[0].model_copy(update={"division": "Grades 7 to 8"})
    assert found(said(state, shared)) == {"shared": (1, ("Grades 7 to 8",))}


def test_results_become_final_after_the_protests() -> None:
    state = played(steps=[Stage.LOCKED, Stage.RELEASED], rules=Rules(protest_minutes=20))
    state = said(state, Protest(protest="1", team="teal", task=Task.MASS, text="too light"))
    assert found(state) == {"time": (1, ()), "protests": (1, ("Teal",))}
    assert protest_left(state, DIVISION, NOW) == timedelta(minutes=15, seconds=30)
    later = STARTED + timedelta(minutes=30)
    assert [block.what for block in blocks(state, DIVISION, later)] == ["protests"]
    (protest,) = open_protests(state, DIVISION)
    decided = protest.model_copy(update={"accepted": False, "reason": "weighed again, the same"})
    assert blocks(said(state, decided), DIVISION, later) == []


def test_stages_follow_each_other_both_ways() -> None:
    assert ahead(Stage.LOCKED) is Stage.RELEASED
    assert ahead(Stage.FINAL) is None
    assert behind(Stage.LOCKED) is Stage.OPEN
    assert behind(Stage.OPEN) is None


def test_a_quick_look_says_nothing_of_sure_places() -> None:
    state = played(percent="5", shares=(0.97, 1.031))
    quick, drawn = (results_now(state, DIVISION, draws=draws) for draws in (0, 4000))
    assert [row.total for row in quick.rows] == [row.total for row in drawn.rows]
    assert (quick.drawn, drawn.drawn) == (False, True)
    assert drawn.unsafe_medals


def test_a_correction_tells_before_after_and_why() -> None:
    state = played(steps=[Stage.LOCKED, Stage.RELEASED])
    state = said(state, judged("teal", Task.COUNT_LOW, "412", "read as 330"), seconds=60)
    (change,) = corrections(state, results_now(state, DIVISION, draws=0))
    assert change.team is not None
    assert (change.team.label, change.task, change.reason) == (
        "Teal", Task.COUNT_LOW, "read as 330",
    )  # fmt: skip
    assert (str(change.before), str(change.after)) == ("80.1", "100.0")


def test_a_correction_shows_whatever_the_clock_of_its_kiosk_says() -> None:
    state = played(steps=[Stage.LOCKED])
    state = said(state, judged("teal", Task.COUNT_LOW, "412", "read as 330"), seconds=-60)
    (change,) = corrections(state, results_now(state, DIVISION, draws=0))
    assert (str(change.before), str(change.after)) == ("80.1", "100.0")


def test_a_sitting_that_was_added_after_the_lock_holds_the_release_back() -> None:
    state = said(played(steps=[Stage.LOCKED]), team("Late", sitting=2, cup=1))
    found = blocks(state, DIVISION, STARTED + timedelta(minutes=1))
    assert [(block.what, block.names) for block in found] == [
        (What.SITTINGS, ("2",)), (What.CUPS, ("Late",)), (What.TYPED, ("Late",)),
    ]  # fmt: skip


def test_a_key_that_was_changed_counts_for_all() -> None:
    state = played(steps=[Stage.LOCKED])
    other = keys()[0].model_copy(update={"actual": Decimal(400), "reason": "counted again"})
    state = said(state, other, seconds=60)
    (change,) = corrections(state, results_now(state, DIVISION, draws=0))
    assert (change.team, change.task, change.reason) == (None, Task.COUNT_LOW, "counted again")
    assert isinstance(state.key(DIVISION, Task.COUNT_LOW), BoundKey)


def test_what_was_corrected_stays_so_when_results_are_released_anew() -> None:
    state = played(steps=[Stage.LOCKED, Stage.RELEASED])
    state = said(state, judged("teal", Task.COUNT_LOW, "412"), seconds=60)
    steps = [Step(division=DIVISION, stage=stage) for stage in (Stage.LOCKED, Stage.RELEASED)]
    state = said(state, *steps, seconds=70)
    assert len(corrections(state, results_now(state, DIVISION, draws=0))) == 1
    reopened = [Step(division=DIVISION, stage=stage) for stage in (Stage.OPEN, Stage.LOCKED)]
    state = said(state, *reopened, seconds=80)
    assert corrections(state, results_now(state, DIVISION, draws=0)) == []
