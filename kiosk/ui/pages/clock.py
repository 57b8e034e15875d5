"""The clock of a sitting: started when nothing is missing, paused for a reason, shown large."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.clock import Clock, Going, begun_sittings, clock
from kiosk.rounds.contents import ClockNote, ClockTurn, CupTurn
from kiosk.rounds.readiness import Found, KeyFacts, doubts
from kiosk.rounds.state import RoundState
from kiosk.texts import plural, say
from kiosk.ui.pages.common import AskPage, RowsPage, TextPage
from kiosk.ui.pages.day import DayPage
from kiosk.ui.pages.keys import sentence
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Each, Section, sittings_row
from kiosk.ui.pages.usable_keys import Usable, facts_of, usable_keys
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, SheetView, button
from kiosk.ui.presenters.wall_views import time_left, wall_view


def stands(state: RoundState) -> str:
    """Which sittings were begun."""
    begun = [sitting for sitting in state.sittings if state.begun(sitting)]
    return say("clock.begun", sitting=begun[-1]) if begun else say("clock.none_begun")


# What a clock must be doing for each turn; it may have done otherwise while a reason was typed.
MAY_TURN = {
    ClockTurn.START: (Going.NOT_STARTED,),
    ClockTurn.PAUSE: (Going.RUNNING, Going.PAUSED),  # when it pauses, its reason may follow
    ClockTurn.GO_ON: (Going.PAUSED,),
    ClockTurn.STOP: (Going.RUNNING, Going.PAUSED),
}


class SittingsPage(RowsPage):
    """The sittings with their clocks."""

    columns = 2

    def title(self) -> str:
        """The question."""
        return say("clock.title")

    def body(self) -> str:
        """What is missing where there is none."""
        return "" if self._sittings else say("keys.doubt.no_teams")

    def rows(self) -> Sequence[RowView]:
        """One for each sitting."""
        return Each(self._sittings, self._row)

    def numbers(self) -> Sequence[int]:
        """The sittings themselves."""
        return self._sittings

    @property
    def _sittings(self) -> list[int]:
        state = self.room.state
        return sorted({*state.sittings, *begun_sittings(state)})

    def section(self, section: Section) -> RowView:
        """Several of them, and whether they are all over."""
        state, now = self.room.state, self.room.now_utc()
        over = all(
            clock(state, sitting, now).all_over
            for sitting in self._sittings
            if section[0] <= sitting <= section[1]
        )
        return replace(sittings_row(section), look="done" if over else "plain")

    def _row(self, sitting: int) -> RowView:
        found = clock(self.room.state, sitting, self.room.now_utc())
        return RowView(
            text=say("clock.sitting", sitting=sitting),
            note=say(f"clock.going.{found.going.name.lower()}"),
            value=time_left(found.left),
            says=PersonEvent(Person.CHOOSE, sitting),
        )

    def press(self, event: PersonEvent) -> None:
        """The clock of a sitting."""
        if event.kind is Person.CHOOSE:
            self.room.open(ClockPage(self.room, event.value))
        else:
            super().press(event)


class ClockPage(RowsPage):
    """One sitting's clock and what can be done with it."""

    def __init__(self, room: Room, sitting: int) -> None:
        super().__init__(room)
        self._sitting = sitting
        self._facts: KeyFacts | None = None  # None until the keys are read
        self._day = DayPage(room)

    def opened(self) -> None:
        """See what is missing."""
        simulated = self.room.state.simulated

        def done(keys: list[Usable]) -> None:
            self._facts = facts_of(keys)

        self.room.look_up(lambda store: usable_keys(store, simulated), done)
        self._day.opened()

    @property
    def _to_do(self) -> int:
        return sum(row.sign != "fine" for row in self._day.rows())

    @property
    def _doubts(self) -> list[Found]:
        return [] if self._facts is None else doubts(self.room.state, self._sitting, self._facts)

    @property
    def _stopped(self) -> bool:
        return self._facts is None or any(one.stops for one in self._doubts)

    @property
    def _clock(self) -> Clock:
        return clock(self.room.state, self._sitting, self.room.now_utc())

    def title(self) -> str:
        """Which sitting."""
        return say("clock.sitting", sitting=self._sitting)

    def corner(self) -> str:
        """What is left."""
        return time_left(self._clock.left)

    def body(self) -> str:
        """What the clock does, and why."""
        found = self._clock
        told = say(f"clock.going.{found.going.name.lower()}")
        return say("clock.because", told=told, reason=found.reason) if found.reason else told

    def rows(self) -> Sequence[RowView]:
        """Before the start what is doubtful; later who has more time."""
        found = self._clock
        if found.going is Going.NOT_STARTED:
            doubtful = [
                RowView(text=sentence(one), sign="not fine" if one.stops else "cannot tell")
                for one in self._doubts
            ]
            if self._to_do:
                words = plural("clock.day_list", self._to_do)
                doubtful.append(RowView(text=words, sign="cannot tell"))
            return doubtful or [RowView(text=say("clock.all_well"), sign="fine")]
        return [
            RowView(text=team.label, note=say("clock.extra"), value=time_left(remains))
            for team, remains in found.behind
        ]

    def beside_home(self) -> ButtonView | None:
        """Stop for everybody before the time is over."""
        going = self._clock.going in (Going.RUNNING, Going.PAUSED)
        return button(say("clock.stop"), Person.STOP) if going else None

    def second(self) -> ButtonView:
        """The large clock."""
        return button(say("clock.large"), Person.KEEP)

    def main(self) -> ButtonView | None:
        """Start, pause, go on."""
        match self._clock.going:
            case Going.NOT_STARTED:
                state = "off" if self._stopped else "ready"
                return button(say("clock.start"), Person.GO_ON, sign="arrow", state=state)
            case Going.RUNNING:
                return button(say("clock.pause"), Person.STAY, sign="wait")
            case Going.PAUSED:
                return button(say("clock.go_on"), Person.GO_ON, sign="arrow")
        return None

    def press(self, event: PersonEvent) -> None:
        """Turn the clock."""
        match event.kind:
            case Person.GO_ON:
                self._go_on()
            case Person.STAY:
                self._pause()
            case Person.STOP:
                self._ask_reason(ClockTurn.STOP, "stop")
            case Person.KEEP:
                self.room.open(WallPage(self.room, self._sitting))
            case _:
                super().press(event)

    def _turn(self, turn: ClockTurn, reason: str = "") -> None:
        if self._clock.going in MAY_TURN[turn]:
            self.room.say(ClockNote(sitting=self._sitting, turn=turn, reason=reason))

    def _pause(self) -> None:
        """At once; why, is asked while nobody loses time by it."""
        self._turn(ClockTurn.PAUSE)
        if self._clock.going is Going.PAUSED:
            self._ask_reason(ClockTurn.PAUSE, "pause")

    def _go_on(self) -> None:
        if self._clock.going is Going.PAUSED:
            self._turn(ClockTurn.GO_ON)
        elif not self._stopped:
            self._start()

    def _start(self) -> None:
        def begin() -> None:
            # A start waits for no server: asked for now, it would begin in the past, and freezes
            # what may be another one there.
            last = self.room.state.last
            self.room.look_up(lambda store: store.round_notes(self.room.state.id, last), start)

        def start(_there: object) -> None:
            if not self._stopped:  # by what another kiosk noted meanwhile
                self._turn(ClockTurn.START)
                self.room.open(WallPage(self.room, self._sitting))

        many = len(self._doubts)
        self.room.open(
            AskPage(
                self.room,
                title=say("clock.start.title"),
                body=say("clock.start.doubts" if many else "clock.start.body"),
                yes=say("clock.start"),
                no=say("clock.start.no"),
                done=begin,
            )
        )

    def _ask_reason(self, turn: ClockTurn, what: str) -> None:
        self.room.open(
            TextPage(
                self.room,
                title=say(f"clock.{what}.title"),
                label=say("teams.reason"),
                offers=say(f"clock.{what}.offers").split("|"),
                done=lambda reason: self._turn(turn, reason),
            )
        )


class WallPage(Page):
    """The clock for the class; a touch leads back to the coach's page, behind the code."""

    role = Role.EVERYBODY

    def __init__(self, room: Room, sitting: int) -> None:
        super().__init__(room)
        self._sitting = sitting

    def view(self) -> SheetView:
        """The large clock."""
        state = self.room.state
        teams = state.teams_of(sitting=self._sitting)
        handed_in = sum(
            any(note.turn is CupTurn.FILLED for _, note in state.cup_notes(team.team))
            for team in teams
        )
        return wall_view(
            clock(state, self._sitting, self.room.now_utc()),
            minutes=state.rules.minutes,
            round_name=say("wall.corner", name=state.plan.name, sitting=self._sitting),
            cups_in=handed_in,
            cups=len(teams),
        )
