"""A cup that is weighed once more in a protest is weighed on the coach's side."""

from __future__ import annotations

import pytest

from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.presenters.scene import scene_of
from kiosk.weighing.pan_watch import PanState
from tests.helpers.queue_hands import table, weighed_empty
from tests.helpers.result_rounds import played
from tests.helpers.scenes import desk, facts


def at_table(*, again: str) -> Desk:
    state = played() if again else weighed_empty("12.3")
    made = desk(facts(), table(state, again=again, protest="p" if again else ""))
    made.place = Place.ROUND
    return made


def who(made: Desk) -> str:
    return scene_of(made, PanState(), connected=True, shown=None).strip.lock_text


@pytest.mark.parametrize(("again", "coach"), [("", False), ("wren", True)])
def test_only_the_table_of_a_protest_is_the_coachs(*, again: str, coach: bool) -> None:
    made = at_table(again=again)
    assert made.coach_side is coach
    assert (who(made) == "coach") is coach


def test_it_locks_itself_while_nobody_comes() -> None:
    made = at_table(again="wren")
    made.lock.digest = "a code"
    wait = made.lock.closes_after
    made.lock.open_now(made.world.now())
    made.tick(made.world.now() + wait * 2)
    assert made.locked
