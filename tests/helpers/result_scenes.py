"""Results as scenes: twenty teams of long names, ties, unsafe medals, a correction, a team."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from functools import cache

from kiosk.rounds.contents import Answer, Stage, Typing
from kiosk.rounds.results import Results, as_it_was
from kiosk.rounds.standing import results_now, widest_key
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules, Task
from kiosk.ui.presenters.result_views import (
    ResultsView,
    kept_list_view,
    results_view,
    wall_results_view,
)
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.presenters.team_result_views import TeamResultsView, team_results_view
from kiosk.ui.presenters.views import PanView, SheetView, StripView
from tests.helpers.result_rounds import played
from tests.helpers.round_notes import DIVISION, said

LONG = "Great Crested Grebes of Larch Hill Middle School"
NAMES = (
    "Wren", "Curlew", "Heron", "Siskin", "Plover", "Dunlin", "Redstart", "Lapwing", "Avocet",
    "Goldcrest", "Teal", "Swift", "Pipit", "Linnet", "Robin", f"{LONG} 1", f"{LONG} 2",
    "Hummingbirds", "Yellowhammers", "Bee-eaters",
)  # fmt: skip
SHARES = (
    0.97, 1.031, 0.966, 0.966, 1.05, 0.93, 0.91, 1.1, 0.88, 1.13, 0.84, 1.2, 0.75, 1.3, 0.7,
    0.965, 1.036, 1.9, 2.2, 0.4,
)  # fmt: skip
LEFT = timedelta(minutes=12, seconds=40)
PRACTISE = (
    "Best: Jar K, 97.0 points. Do that again.",
    "Box 3: blank, or 0. Even a rough answer earns points.",
    "Jar C: count how many pieces lie on the bottom, and how many layers there are. Multiply, "
    "then compare with a jar that you have counted.",
    "5 of your 7 answers were under. Dare to say more than you think at first.",
)


@cache
def released(percent: str = "3") -> RoundState:
    """Twenty teams, provisional, with one answer corrected and one blank."""
    birds = tuple(name.replace(" ", "_") for name in NAMES)
    state = played(
        birds, Rules(), percent=percent, shares=SHARES, steps=(Stage.LOCKED, Stage.RELEASED)
    )
    teams = [
        team.model_copy(update={"label": team.label.replace("_", " ")}) for team in state.teams
    ]
    judged = [
        Answer(
            team=team, task=task, typing=Typing.JUDGE, by="coach", reason="the sheet says so",
            estimate=value,
        )
        for team, task, value in (
            ("heron", Task.COUNT_LOW, Decimal(412)), ("plover", Task.VOLUME_3, None),
        )
    ]  # fmt: skip
    return said(state, *teams, *judged, seconds=60)


@cache
def found(draws: int = 400) -> Results:
    """Its results."""
    return results_now(released(), DIVISION, draws=draws)


def table(*, tents: bool = False, turned: int = 0) -> ResultsView:
    """The coach's table."""
    state = released()
    return results_view(
        state, found(), left=LEFT, turned=turned, tents=tents, widest=widest_key(state, DIVISION)
    )


def few() -> ResultsView:
    """Three teams, not drawn yet, not released."""
    state = played(NAMES[:3], shares=SHARES, steps=(Stage.LOCKED,))
    results = results_now(state, DIVISION, draws=0)
    return results_view(
        state, results, left=timedelta(0), turned=0, tents=False, widest=Task.COUNT_LOW
    )


def team_page(name: str = "Plover") -> TeamResultsView:
    """One team's own."""
    (row,) = [row for row in found().rows if row.team.label == name]
    return team_results_view(released(), found(), row, PRACTISE)


def earlier() -> ResultsView:
    """A list as it was."""
    kept = as_it_was(found(), f"{LONG} 1, box 3: the sheet says so, as both judges could read")
    return kept_list_view(released(), kept, title="As it was at 14:05", turned=0)


def shown(sheet: SheetView, *, simulated: bool = True) -> Scene:
    """With a strip."""
    strip = StripView(words=("Round",), simulated=simulated, plate="SIMULATED SCALE")
    return Scene(sheet=sheet, pan=PanView(), strip=strip)


def wall(turned: int = 0) -> ResultsView:
    """For everybody."""
    return wall_results_view(released(), found(), left=LEFT, turned=turned)


def scenes() -> dict[str, Callable[[], Scene]]:
    """By name, made when they are wanted."""
    return {
        "results": lambda: shown(table()),
        "results, second page": lambda: shown(table(turned=1)),
        "results, tents": lambda: shown(table(tents=True)),
        "results, few": lambda: shown(few()),
        "results, earlier": lambda: shown(earlier()),
        "results wall": lambda: shown(wall(), simulated=False),
        "results wall, second page": lambda: shown(wall(1)),
        "team results": lambda: shown(team_page()),
        "team results, long name": lambda: shown(team_page(f"{LONG} 2")),
        "team results, all good": lambda: shown(replace(team_page("Heron"), practise=())),
    }
