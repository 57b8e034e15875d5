"""What the printed list and the team pages are given."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.records.store import Store
from kiosk.reports.things import Thing
from kiosk.rounds.contents import Answer, Stage, Step, Typing
from kiosk.rounds.results import protest_ends
from kiosk.rounds.standing import results_now
from kiosk.rounds.state import RoundState
from kiosk.settings import Paper, Task
from kiosk.ui.result_printing import list_of, page_of, result_list, team_pages
from tests.helpers.pan import STARTED
from tests.helpers.papers import words_on
from tests.helpers.result_rounds import played
from tests.helpers.round_notes import DIVISION, said

PLACE = "Larch Hill Middle School"


@pytest.fixture(scope="module")
def state() -> RoundState:
    """Provisional, with one answer taken away for a reason."""
    blank = Answer(
        team="teal", task=Task.VOLUME_1, typing=Typing.JUDGE, by="coach", reason="not on the sheet"
    )
    return said(played(steps=(Stage.LOCKED, Stage.RELEASED)), blank, seconds=60)


def test_the_list_tells_corrections_and_when_protests_end(state: RoundState) -> None:
    found = list_of(state, results_now(state, DIVISION, draws=0), PLACE, STARTED)
    (change,) = found.corrections
    assert (change.team, found.tasks[change.task], change.before, change.after) == (
        "Teal", "box 1", Decimal("80.0"), Decimal("0.0"),
    )  # fmt: skip
    assert found.rows[-1].scores[change.task] is None
    assert found.protests_until == protest_ends(state, DIVISION)
    assert (found.final, found.simulated) == (False, True)
    assert found.at.utcoffset() is not None


def test_a_list_before_the_release_says_so_and_one_after_it_who_left() -> None:
    locked = played(steps=[Stage.LOCKED])
    wren = locked.team("wren").model_copy(update={"gone": "ill", "reason": "ill"})
    left = said(locked, wren, seconds=60)
    listed = list_of(left, results_now(left, DIVISION, draws=0), "", STARTED)
    assert (listed.state, listed.left) == ("not released", ("Wren takes no part: ill",))
    earlier = said(played(), wren)
    earlier = said(earlier, Step(division=DIVISION, stage=Stage.LOCKED))
    assert list_of(earlier, results_now(earlier, DIVISION, draws=0), "", STARTED).left == ()


def test_a_team_page_names_cup_jars_and_boxes(state: RoundState) -> None:
    results = results_now(state, DIVISION, draws=0)
    page = page_of(state, results, results.rows[-1], PLACE)
    named = [(each.thing, each.label) for each in page.answers]
    assert named[:2] + named[4:5] == [(Thing.CUP, "3"), (Thing.JAR, "A"), (Thing.BOX, "1")]
    assert (page.team, page.standing, page.teams) == ("Teal", 4, 4)


def test_both_are_saved(state: RoundState, tmp_path: Path) -> None:
    results = results_now(state, DIVISION, draws=0)
    store = Store(str(tmp_path / "records"))
    listed = result_list(state, results, PLACE, STARTED)(store, tmp_path, Paper.A4)
    pages = team_pages(state, results, PLACE)(store, tmp_path, Paper.A4)
    assert "not on the sheet" in words_on(listed.read_bytes())
    assert "Swift" in words_on(pages.read_bytes())
