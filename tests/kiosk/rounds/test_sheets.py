"""Sheets: the order by lot stays, and typings add up to what counts."""

from __future__ import annotations

from collections import Counter
from decimal import Decimal

import pytest

from kiosk.rounds.contents import Answer, BoundKey, Stage, Step, Typing
from kiosk.rounds.hints import Slip, hints
from kiosk.rounds.sheets import (
    BOXES,
    JARS,
    TASKS,
    lot,
    sheet_number,
    sheet_rows,
    team_code,
    teams_with_code,
)
from kiosk.rounds.state import RoundState
from kiosk.rounds.typed_answers import (
    Stand,
    blocking,
    for_the_judge,
    is_a_slip,
    next_typing,
    settled_answers,
    typed,
    typed_twice,
    typist,
)
from kiosk.settings import Rules, Task
from tests.helpers.round_notes import DIVISION, answer, said, with_teams

LOW = Task.COUNT_LOW


def test_each_sheet_has_all_six_jars_first(state: RoundState) -> None:
    rows = sheet_rows(state, state.team("wren"))
    assert {row.task for row in rows[:3]} == set(JARS)
    assert {row.task for row in rows[3:]} == set(BOXES)
    assert [row.label for row in rows] == ["1", "2", "3", "1", "2", "3"]


def test_all_orders_come_about_as_often() -> None:
    drawn = Counter(lot("round", f"team {number}", JARS) for number in range(600))
    assert len(drawn) == 6
    assert min(drawn.values()) > 60  # 100 each on the average, 4 standard deviations below


def test_the_order_is_fixed_for_ever() -> None:
    # as it came out when this was written: another order would mix up sheets that are printed
    drawn = (Task.COUNT_HIGH, Task.COUNT_LOW, Task.COUNT_MIDDLE)
    assert lot("round", "team 1", JARS) == lot("round", "team 1", JARS[::-1]) == drawn


def test_rows_carry_what_stands_on_the_jar(state: RoundState) -> None:
    bound = BoundKey(
        division=DIVISION, task=LOW, key_id="k", letter="Q",
        actual=Decimal(300), half_width_percent=Decimal(1),
    )  # fmt: skip
    rows = sheet_rows(said(state, bound), state.team("wren"))
    assert {row.label for row in rows if row.task is LOW} == {"Q"}


def test_sheets_are_numbered_in_order_of_entry(state: RoundState) -> None:
    assert [sheet_number(state, name) for name in ("wren", "heron")] == [1, 2]


def test_a_team_finds_its_sheet_by_its_code(state: RoundState) -> None:
    code = team_code(state.id, "wren")
    assert (len(code), code.isdigit()) == (4, True)
    assert "wren" in [team.team for team in teams_with_code(state, code)]


@pytest.fixture
def state() -> RoundState:
    return with_teams(["Wren", "Heron"])


def typings(*estimates: object) -> list[Answer]:
    kinds = (Typing.FIRST, Typing.SECOND, Typing.JUDGE)
    return [answer("Wren", LOW, each, kind) for each, kind in zip(estimates, kinds, strict=False)]


@pytest.mark.parametrize(
    ("estimates", "stand", "value"),
    [
        ((), Stand.MISSING, None),
        (("240",), Stand.ONCE, None),
        (("240", "240"), Stand.AGREED, Decimal(240)),
        (("240", "420"), Stand.MISMATCH, None),
        (("240", "420", "240"), Stand.DECIDED, Decimal(240)),
        ((None, None), Stand.AGREED, None),
        (("240", "420", None), Stand.DECIDED, None),
    ],
)
def test_two_typings_that_agree_count_and_else_the_judge(
    state: RoundState, estimates: tuple[object, ...], stand: Stand, value: Decimal | None
) -> None:
    found = typed(said(state, *typings(*estimates)), "wren", LOW)
    assert (found.stand, found.value) == (stand, value)


def test_what_nobody_can_read_waits_for_the_judge(state: RoundState) -> None:
    unread = Answer(team="wren", task=LOW, typing=Typing.FIRST, unreadable=True)
    state = said(state, unread)
    assert [each.task for each in for_the_judge(state)] == [LOW]
    assert settled_answers(state, "wren") == {}


def test_what_is_open_keeps_a_division_open(state: RoundState) -> None:
    assert len(blocking(state, DIVISION)) == 2 * len(TASKS)
    assert len(blocking(said(state, *typings("240", "240")), DIVISION)) == 2 * len(TASKS) - 1


def test_the_second_typing_comes_after_the_whole_first(state: RoundState) -> None:
    first = [answer("Wren", task, "5") for task in TASKS]
    assert next_typing(said(state, *first[:5]), "wren") is Typing.FIRST
    state = said(state, *first)
    assert next_typing(state, "wren") is Typing.SECOND
    assert typed_twice(state, state.teams) == (0, 2)
    state = said(state, *(answer("Wren", task, "5", Typing.SECOND) for task in TASKS))
    assert typed_twice(state, state.teams) == (1, 2)


def test_who_typed_first_is_known(state: RoundState) -> None:
    first = Answer(team="wren", task=LOW, typing=Typing.FIRST, by="KL")
    assert typist(said(state, first), "wren", Typing.FIRST) == "KL"
    assert typist(state, "wren", Typing.SECOND) == ""


def test_what_a_team_typed_counts_as_first_only_by_the_rules() -> None:
    own = answer("Wren", LOW, "240", Typing.TEAM)
    for teams_type, stand in ((False, Stand.MISSING), (True, Stand.ONCE)):
        state = said(with_teams(["Wren"], Rules(teams_type=teams_type)), own)
        assert typed(state, "wren", LOW).stand is stand


def test_a_slip_is_judged_by_the_public_limits_only() -> None:
    assert is_a_slip(LOW, Decimal(20_001), Rules())
    assert not is_a_slip(LOW, Decimal(20_000), Rules())
    assert is_a_slip(Task.VOLUME_1, Decimal(4_001), Rules())


def keyed(*estimates: tuple[Task, str]) -> RoundState:
    """Keys of 400 and 4 000, a locked division, and what Wren answered."""
    keys = [
        BoundKey(
            division=DIVISION, task=task, key_id=task, letter="A",
            actual=Decimal(actual), half_width_percent=Decimal(1),
        )
        for task, actual in ((LOW, 400), (Task.COUNT_MIDDLE, 4000))
    ]  # fmt: skip
    both = (Typing.FIRST, Typing.SECOND)
    answers = [answer("Wren", task, each, kind) for task, each in estimates for kind in both]
    state = said(with_teams(["Wren"]), *keys, *answers)
    return said(state, Step(division=DIVISION, stage=Stage.LOCKED))


def slips(state: RoundState) -> list[tuple[Task, Slip]]:
    return [(hint.task, hint.slip) for hint in hints(state)]


def test_ten_times_off_is_hinted_at_and_changes_nothing() -> None:
    state = keyed((LOW, "42"))
    assert slips(state) == [(LOW, Slip.A_TENTH)]
    assert settled_answers(state, "wren")[LOW] == 42


def test_answers_in_each_others_rows_are_hinted_at() -> None:
    state = keyed((LOW, "3900"), (Task.COUNT_MIDDLE, "410"))
    assert slips(state) == [(LOW, Slip.SWAPPED), (Task.COUNT_MIDDLE, Slip.SWAPPED)]


def test_an_honest_miss_is_no_slip() -> None:
    assert slips(keyed((LOW, "900"), (Task.COUNT_MIDDLE, "2500"))) == []


def test_before_the_lock_nobody_is_hinted_at() -> None:
    state = said(keyed((LOW, "42")), Step(division=DIVISION, stage=Stage.OPEN, reason="late sheet"))
    assert slips(state) == []
