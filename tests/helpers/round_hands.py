"""What hands do with a round at a kiosk without a window: prepare it, weigh cups, type sheets."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person
from kiosk.procedures.queue_steps import QueueState
from kiosk.records.store import Store
from kiosk.rounds.contents import CupTurn, Team, Typing
from kiosk.rounds.cups import Pass
from kiosk.rounds.sheets import sheet_rows
from kiosk.rounds.typed_answers import next_typing, typist
from kiosk.settings import Task
from tests.helpers.kept_keys import keep_box, keep_jar
from tests.helpers.queue_hands import CLEAN, off, on
from tests.helpers.whole_kiosk import WholeKiosk

ROUND = "Autumn round"
SITTING = 1
ACTUAL = dict(zip(list(Task)[1:], (400, 4000, 15000, 900, 2000, 3500), strict=True))
_TASKS = (
    ("Jar in the hundreds", "jar A"), ("Jar in the thousands", "jar B"),
    ("Jar of the high count", "jar C"), ("First box", "box 1"), ("Second box", "box 2"),
    ("Third box", "box 3"),
)  # fmt: skip
_EMPTY_G = Decimal("12.3")


def keep_keys(store: Store) -> None:
    """Three jars and three boxes that have a key."""
    for letter, actual in zip("ABC", ACTUAL.values(), strict=False):
        keep_jar(store, letter, actual)
    for number, actual in enumerate(list(ACTUAL.values())[3:], 1):
        keep_box(store, number, str(actual))


def prepare(kiosk: WholeKiosk, labels: Iterable[str]) -> None:
    """The coach opens a round, enters its teams, binds its keys; the hub lies in front then."""
    kiosk.enter(ROUND, new=True)
    kiosk.tap("Teams")
    for label in labels:
        kiosk.press(Person.KEEP)
        kiosk.words(label)
        kiosk.back()
    kiosk.back()
    kiosk.tap("Jars and boxes")
    for task, key in _TASKS:
        kiosk.tap(task)
        kiosk.tap(key)
    kiosk.back()


def start_and_stop(kiosk: WholeKiosk) -> None:
    """The clock of the sitting runs, and is stopped since all are done."""
    kiosk.tap("Clock")
    kiosk.tap("Sitting 1")
    kiosk.press(Person.GO_ON)
    kiosk.press(Person.YES)
    kiosk.back()  # from the large clock
    kiosk.press(Person.STOP)
    kiosk.words("all teams are done")
    kiosk.back(2)


class CupHands:
    """Hands at the cup table of the sitting; the page of cups has to lie in front."""

    def __init__(self, kiosk: WholeKiosk, pass_: Pass, seconds: float) -> None:
        self._kiosk, self._pass, self._seconds = kiosk, pass_, seconds
        if pass_ is Pass.FILLED:
            kiosk.until(lambda: kiosk.round.begun(SITTING), "the start of the clock")
        kiosk.press(Person.CHOOSE, (SITTING, pass_))
        kiosk.pan(CLEAN)

    @property
    def _queue(self) -> CupQueue:
        procedure = self._kiosk.desk.procedure
        assert isinstance(procedure, CupQueue)
        return procedure

    def weigh(self, number: int) -> None:
        """That cup, called up by its number if it is not its turn."""
        self._call(number)
        team = self._queue.cup
        assert team is not None
        self._kiosk.pan(*on(str(mass(team.team, self._pass))))
        assert self._queue.state is QueueState.RECORDED, self._queue.state
        self._kiosk.pan(*off())
        self._kiosk.rest(self._seconds)

    def note(self, number: int, turn: CupTurn) -> None:
        """That happened to that cup."""
        self._call(number)
        self._kiosk.at_table(Person.CHOOSE, turn)

    def leave(self) -> None:
        """Back to the page."""
        self._kiosk.at_table(Person.HOME)
        self._kiosk.until(lambda: self._kiosk.desk.in_room, "the page of the cups")

    def _call(self, number: int) -> None:
        current = self._queue.list.current
        if current is None or current.team.cup != number:
            self._kiosk.at_table(Person.MORE)
            self._kiosk.at_table(Person.CHOOSE, number)


def mass(team: Team, pass_: Pass) -> Decimal:
    """What a team's cup weighs in that pass, in grams; every team fills in something else."""
    empty = _EMPTY_G + Decimal(team.cup) / 10
    return empty if pass_ is Pass.EMPTY else empty + net(team)


def net(team: Team) -> Decimal:
    """What a team fills in, in grams."""
    return 100 + Decimal(team.cup - 10) * Decimal("1.7")


def estimate(team: Team, task: Task) -> int:
    """What stands on a team's paper: the farther off, the higher the number on its cup."""
    off = 0.005 * team.cup + 0.002 * list(Task).index(task)
    return round(ACTUAL[task] * (1 - off if team.cup % 2 else 1 + off))


def type_sheets(
    kiosk: WholeKiosk, teams: Iterable[Team], by: str, seconds: float
) -> Mapping[str, Typing]:
    """Type the sheets of these teams once, as ``by``; which typing it was for each.

    The page of all sheets has to lie in front.
    """
    done: dict[str, Typing] = {}
    for team in teams:
        typing = next_typing(kiosk.round, team.team)
        asks_who = kiosk.desk.room.page.beside_home() is None  # type: ignore[attr-defined]
        kiosk.press(Person.CHOOSE, team.team)
        if asks_who:
            kiosk.words(by)
        if typing is Typing.SECOND:
            assert typist(kiosk.round, team.team, Typing.FIRST) != by
        done[team.team] = typing
        for row in sheet_rows(kiosk.round, team):
            for digit in str(estimate(team, row.task)):
                kiosk.press(Person.TYPE, digit)
            kiosk.press(Person.ENTER)
            kiosk.rest(seconds)
    return done
