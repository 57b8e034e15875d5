"""Which jar or box is which task of a division: bound before it begins, frozen from then on."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.kinds import BOX, JAR
from kiosk.rounds.contents import BoundKey, Stage
from kiosk.rounds.once import once
from kiosk.rounds.readiness import BOUND, COUNTS, VOLUMES, Doubt, Found, doubts, effect
from kiosk.rounds.state import RoundState
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number, percent
from kiosk.ui.pages.codes import with_two_codes
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.kept_list import list_before
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.usable_keys import Usable, facts_of, usable_keys
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button

WORST = (Doubt.NO_KEY, Doubt.GONE, Doubt.TWICE, Doubt.LIMIT, Doubt.BAND, Doubt.OPEN, Doubt.UNSURE)


@once
def stands(state: RoundState) -> str:
    """How many tasks have a key, of how many."""
    wanted = len(BOUND) * len(state.divisions)
    there = sum(
        state.key(division, task) is not None for division in state.divisions for task in BOUND
    )
    return say("keys.stands", there=there, wanted=wanted) if wanted else say("keys.after_teams")


def task_name(task: Task) -> str:
    """How a task is called on the coach's side."""
    return say(f"task.{task.replace(' ', '_')}")


def sentence(found: Found) -> str:
    """What is doubtful, in words."""
    thing = ""
    if found.task:
        kind = "jar" if found.task in COUNTS else "box"
        thing = say(f"paper.thing.{kind}", label=found.letter)
    return say(
        f"keys.doubt.{found.doubt}",
        division=found.division,
        task=task_name(found.task) if found.task else "",
        letter=found.letter,
        thing=thing,
        points="" if found.points is None else number(found.points),
    )


class KeysPage(RowsPage):
    """The six keys of one division, with what is doubtful about each: jars left, boxes right."""

    columns = 2

    def __init__(self, room: Room, division: str = "") -> None:
        super().__init__(room)
        state = room.state
        divisions = state.divisions or list(state.rules.divisions) or [""]
        self._division = division or divisions[0]
        self._divisions = divisions
        self._keys: list[Usable] = []

    def opened(self) -> None:
        """Read the keys: others may have been made meanwhile."""
        simulated = self.room.state.simulated

        def done(found: list[Usable]) -> None:
            self._keys = found

        self.room.look_up(lambda store: usable_keys(store, simulated), done)

    def title(self) -> str:
        """The question."""
        return say("keys.title")

    def corner(self) -> str:
        """The division."""
        return self._division

    def body(self) -> str:
        """Whether they are frozen."""
        if self._final:
            return say("keys.final")
        return say("keys.frozen") if self._frozen else ""

    def rows(self) -> Sequence[RowView]:
        """One for each task."""
        return [self._row(task) for pair in zip(COUNTS, VOLUMES, strict=True) for task in pair]

    def beside_home(self) -> ButtonView | None:
        """The next division's keys."""
        if len(self._divisions) < 2:
            return None
        return button(say("keys.other_division"), Person.UNDO)

    @property
    def _final(self) -> bool:
        return self.room.state.stage(self._division) is Stage.FINAL

    @property
    def _frozen(self) -> bool:
        return self.room.state.division_begun(self._division)

    def _row(self, task: Task) -> RowView:
        key = self.room.state.key(self._division, task)
        doubt = self._doubt(task)
        says = None if self._final else PersonEvent(Person.CHOOSE, task)
        if key is None:
            return RowView(text=task_name(task), note=say("keys.none"), sign="to come", says=says)
        return RowView(
            text=task_name(task),
            note=say(f"keys.short.{doubt.doubt}", points=number(effect(key)))
            if doubt
            else say("keys.good", points=number(effect(key))),
            value=say("keys.value", letter=key.letter, value=number(key.actual, 0)),
            sign="fine" if doubt is None else "not fine" if doubt.stops else "cannot tell",
            says=says,
        )

    def _doubt(self, task: Task) -> Found | None:
        state = self.room.state
        facts = facts_of(self._keys)
        sittings = [team.sitting for team in state.teams_of(division=self._division)]
        found = [
            one
            for sitting in sittings[:1]
            for one in doubts(state, sitting, facts)
            if one.task is task and one.division == self._division
        ]
        return min(found, key=lambda one: WORST.index(one.doubt), default=None)

    def press(self, event: PersonEvent) -> None:
        """A task, or another division."""
        match event.kind:
            case Person.CHOOSE:
                self._pick(event.value)
            case Person.UNDO:
                turned = self._divisions.index(self._division) + 1
                self._division = self._divisions[turned % len(self._divisions)]
            case _:
                super().press(event)

    def _pick(self, task: Task) -> None:
        wanted = JAR if task in COUNTS else BOX
        now = self.room.state.key(self._division, task)
        options: list[tuple[str, str, object]] = [
            (
                say("keys.jar" if wanted == JAR else "keys.box", letter=key.letter),
                _described(key),
                key.key_id,
            )
            for key in self._keys
            if key.kind == wanted
        ]

        def done(key_id: object) -> None:
            (key,) = [one for one in self._keys if one.key_id == key_id]
            self._bind(task, key)

        self.room.open(
            PickPage(
                self.room,
                title=say("keys.pick", task=task_name(task)),
                body="" if options else say(f"keys.pick.none.{wanted}"),
                options=options,
                done=done,
                now=now.key_id if now else None,
                columns=1,
            )
        )

    def _bind(self, task: Task, key: Usable) -> None:
        def said(reason: str = "") -> None:
            why = say("keys.changed", task=task_name(task), reason=reason)
            self.room.say(
                *list_before(self.room, self._division, why),
                BoundKey(
                    division=self._division,
                    task=task,
                    key_id=key.key_id,
                    letter=key.letter,
                    actual=key.actual,
                    half_width_percent=key.half_width_percent,
                    reason=reason,
                ),
            )

        if self._frozen:
            self._with_reason(said)
        else:
            said()

    def _with_reason(self, said: Callable[[str], None]) -> None:
        self.room.open(
            TextPage(
                self.room,
                title=say("keys.change.title"),
                label=say("keys.change.label"),
                offers=say("keys.change.offers").split("|"),
                done=lambda reason: with_two_codes(self.room, lambda: said(reason)),
            )
        )


def _described(key: Usable) -> str:
    unit = say("keys.pieces") if key.kind == JAR else say("keys.cm3")
    sure = key.advice or say("keys.sure", percent=percent(key.half_width_percent))
    value = number(key.actual, 0)
    return say("keys.described", name=key.name, value=value, unit=unit, sure=sure)
