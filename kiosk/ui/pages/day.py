"""The day list on the screen: points to tick, and what the kiosk sees by itself."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from kiosk.evidence import Weighing
from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.check_jars import CheckJars, change_between
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.jar_entries import ClosedJar
from kiosk.records.kinds import BOX, JAR
from kiosk.reports.day_points import DayList, Point, groups
from kiosk.rounds.readiness import BOUND
from kiosk.rounds.state import RoundState
from kiosk.texts import say
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.usable_keys import Usable, usable_keys
from kiosk.ui.presenters.last_check import last_check_text
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.surroundings import material_name

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may

CHECKED, SAME_JAR = "checked", "same_jar"  # the points that the kiosk can tell

Ticks = frozenset[str]
Found = tuple[list[Usable], list[ClosedJar], str | None]


def stands(_state: RoundState) -> str:
    """What it is for."""
    return say("day.what_for")


def bound_keys(state: RoundState, keys: Sequence[Usable]) -> list[Usable]:
    """The keys that this round uses."""
    bound = {
        key.key_id
        for division in state.divisions
        for task in BOUND
        if (key := state.key(division, task))
    }
    return [key for key in keys if key.key_id in bound]


def day_list_of(
    state: RoundState, keys: Sequence[Usable], *, place: str, day: str, poured: str
) -> DayList:
    """What is to be seen to; `keys` are those of the records, `poured` is for the cups."""
    bound = bound_keys(state, keys)
    jars = [key for key in bound if key.kind == JAR]
    materials = [*(key.name for key in jars), *([material_name(poured)] if poured else [])]
    return DayList(
        round_name=state.plan.name,
        place=place,
        day=day,
        cups=len(state.teams),
        jars=tuple(key.letter for key in jars),
        boxes=tuple(key.letter for key in bound if key.kind == BOX),
        materials=tuple(dict.fromkeys(materials)),
    )


def today(room: Room) -> str:
    """The date where the kiosk stands."""
    return f"{_local(room.now_utc()):%Y-%m-%d}"


class DayPage(RowsPage):
    """What is ticked is kept for this round and this day."""

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self._ticked: Ticks = frozenset()
        self._keys: list[Usable] = []
        self._jars: list[ClosedJar] = []

    def opened(self) -> None:
        """See what was ticked, which jars there are and what they weighed."""
        simulated, name = self.room.state.simulated, self._choice

        def read(store: Store) -> Found:
            return usable_keys(store, simulated), store.closed_jars(simulated), store.recall(name)

        def done(found: Found) -> None:
            self._keys, jars, kept = found
            bound = {key.key_id for key in bound_keys(self.room.state, self._keys)}
            self._jars = [jar for jar in jars if jar.key_id in bound]
            self._ticked = _read(kept, self._day.day)

        self.room.look_up(read, done)

    @property
    def _choice(self) -> str:
        return f"day list {self.room.state.id}"

    @property
    def _day(self) -> DayList:
        facts = self.room.desk.facts
        return day_list_of(
            self.room.state,
            self._keys,
            place=facts.settings.place,
            day=today(self.room),
            poured=facts.material,
        )

    def title(self) -> str:
        """As on paper."""
        return say("paper.day.head")

    def body(self) -> str:
        """How to use it."""
        return say("day.how")

    def corner(self) -> str:
        """How much is seen to."""
        rows = self.rows()
        return say("day.done", done=sum(row.sign == "fine" for row in rows), of=len(rows))

    def rows(self) -> Sequence[RowView]:
        """One for each point, or for each thing that a point is about."""
        return [
            row for _, points in groups(self._day) for point in points for row in self._rows(point)
        ]

    def _rows(self, point: Point) -> list[RowView]:
        if point.name == CHECKED:
            return [self._scale(point)]
        if point.name == SAME_JAR:
            return [self._jar(jar, point) for jar in self._jars]
        if not point.parts:
            return [self._row(point.name, point.text)]
        note = point.text.rstrip(":")  # on paper the parts come after it
        return [self._row(f"{point.name} {label}", words, note) for label, words in point.parts]

    def _row(self, name: str, text: str, note: str = "") -> RowView:
        return _told(name, text, note, "fine" if name in self._ticked else "to come")

    def _scale(self, point: Point) -> RowView:
        last, now = self.room.desk.facts.last_check, self.room.now_utc()
        if last is None or _local(last.at).date() != _local(now).date():
            sign = "to come"
        else:
            sign = last.verdict
        return _told(CHECKED, point.text, last_check_text(last, now), sign)

    def _jar(self, jar: ClosedJar, point: Point) -> RowView:
        now = self.room.now_utc()
        text = say("paper.thing.jar", label=jar.letter)
        if _on(jar.checked, now) and jar.closed is not None and jar.checked is not None:
            same = change_between(jar, jar.closed, jar.checked).same
            note = say("day.jar.same" if same else "day.jar.other")
            return _told(SAME_JAR, text, note, "fine" if same else "not fine")
        if _on(jar.closed, now):
            return _told(SAME_JAR, text, say("day.jar.closed_today"), "fine")
        return _told(SAME_JAR, text, point.text, "to come")

    def press(self, event: PersonEvent) -> None:
        """Tick a point or take the tick away, or begin what shows how it stands."""
        if event.kind is not Person.CHOOSE:
            super().press(event)
        elif event.value == CHECKED:
            desk = self.room.desk
            desk.run(BalanceCheck(desk.world, pan=desk.memory))
        elif event.value == SAME_JAR:
            desk = self.room.desk
            desk.run(CheckJars(desk.world, jars=self._jars, pan=desk.memory))
        else:
            self._ticked ^= {event.value}
            text = json.dumps({"day": self._day.day, "ticked": sorted(self._ticked)})
            self.room.desk.notebook.remember(self._choice, text)


def _told(name: str, text: str, note: str, sign: str) -> RowView:
    return RowView(
        text=text,
        note=note,
        sign=sign,
        look="done" if sign == "fine" else "plain",
        says=PersonEvent(Person.CHOOSE, name),
    )


def _read(kept: str | None, day: str) -> Ticks:
    """What was ticked that day; the ticks of another day count no more."""
    found = json.loads(kept) if kept else {}
    return frozenset(found["ticked"]) if found.get("day") == day else frozenset()


def _on(weighing: Weighing | None, now: datetime) -> bool:
    return weighing is not None and _local(weighing.at).date() == _local(now).date()


def _local(at: datetime) -> datetime:
    return at.astimezone()
