"""The cups of a round: which pass of which sitting, and the typed reading as last resort."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from decimal import Decimal

from kiosk.evidence import Source, Weighing
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import CupNote, CupTurn
from kiosk.rounds.cups import CupStand, Pass, TeamCup, cup_of, cups, ended, queue
from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from kiosk.texts import say
from kiosk.ui.pages.codes import CodePage
from kiosk.ui.pages.common import AskPage, RowsPage, TextPage
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Each, Section, sittings_row
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.queue_views import ended_words
from kiosk.ui.presenters.views import ButtonView, button

TYPED = "typed"  # in the place of a balance's name
_GRAMS = re.compile(r"(0|[1-9][0-9]{0,4})(?:[.,]([0-9]{1,3}))?", re.ASCII)


@once
def stands(state: RoundState) -> str:
    """How many cups are handed in."""
    found = cups(state)
    there = sum(cup.stand is CupStand.IN for cup in found)
    return say("cups.stands", there=there, wanted=len(found)) if found else say("cups.none")


@once
def cups_in(state: RoundState, first: int, last: int) -> tuple[int, int]:
    """How many cups of these sittings do not have to come any more, and of how many."""
    found = [cup for cup in cups(state) if first <= cup.team.sitting <= last]
    return len(found) - len(queue(found, Pass.FILLED)), len(found)


class CupsPage(RowsPage):
    """Two rows a sitting: its cups empty, its cups filled."""

    role = Role.HELPER
    columns = 2

    def title(self) -> str:
        """The question."""
        return say("cups.title")

    def rows(self) -> Sequence[RowView]:
        """The passes in their order."""
        sittings = self.room.state.sittings
        passes = [(sitting, pass_) for sitting in sittings for pass_ in Pass]
        return Each(passes, lambda each: self._row(*each))

    def numbers(self) -> Sequence[int]:
        """Their sittings."""
        return [sitting for sitting in self.room.state.sittings for _ in Pass]

    def section(self, section: Section) -> RowView:
        """Sittings, and how many of their cups are in."""
        first, last = section
        there, wanted = cups_in(self.room.state, first, last)
        value = say("cups.progress", there=there, wanted=wanted)
        return replace(
            sittings_row(section), value=value, look="plain" if there < wanted else "done"
        )

    def _row(self, sitting: int, pass_: Pass) -> RowView:
        state = self.room.state
        found = cups(state, sitting)
        left = len(queue(found, pass_))
        several = len(state.sittings) > 1
        words = f"cups.pass.{pass_}.sitting" if several else f"cups.pass.{pass_}"
        return RowView(
            text=say(words, sitting=sitting),
            note=say(f"cups.pass.{pass_}.note"),
            value=say("cups.progress", there=len(found) - left, wanted=len(found)),
            look="plain" if left else "done",
            says=PersonEvent(Person.CHOOSE, (sitting, pass_)),
        )

    def beside_home(self) -> ButtonView | None:
        """The last resort, where a cup has to come, or can after all."""
        return button(say("cups.type"), Person.GO_ON) if to_type(self.room.state) else None

    def press(self, event: PersonEvent) -> None:
        """Go to the table, or type."""
        match event.kind:
            case Person.CHOOSE:
                self._ask_first(*event.value)
            case Person.GO_ON:
                as_coach(self.room, lambda: choose_cup(self.room))
            case _:
                super().press(event)

    def _ask_first(self, sitting: int, pass_: Pass) -> None:
        """Nobody fills a cup before the clock runs: perhaps it was only forgotten."""
        if pass_ is Pass.EMPTY or self.room.state.begun(sitting):
            self._go_to_table(sitting, pass_)
            return
        self.room.open(
            AskPage(
                self.room,
                title=say("cups.early", sitting=sitting),
                body=say("cups.early.body"),
                yes=say("cups.early.yes"),
                no=say("cups.early.no"),
                done=lambda: self._go_to_table(sitting, pass_),
                role=Role.HELPER,
            )
        )

    def _go_to_table(self, sitting: int, pass_: Pass) -> None:
        desk = self.room.desk
        desk.run(
            CupQueue(
                desk.world,
                state=self.room.state,
                sitting=sitting,
                pass_=pass_,
                pan=desk.memory,
            )
        )

    def changed(self) -> None:
        """Let the table know what others noted."""
        procedure = self.room.desk.procedure
        if isinstance(procedure, CupQueue):
            procedure.see(self.room.state)


def to_type(state: RoundState) -> list[TeamCup]:
    """The cups whose mass can be typed: those that have to come, then those that ended without."""
    found = cups(state)
    return [*queue(found, Pass.FILLED), *ended(found)]


def as_coach(room: Room, then: Callable[[], None]) -> None:
    """Go on at once on the coach's side, after the coach's code on a helper's."""
    lock = room.desk.lock
    if not lock.digest or (lock.open and not room.helper):
        then()
    else:
        room.open(CodePage(room, digest=lock.digest, whose="coach", done=lambda _: then()))


def choose_cup(room: Room) -> None:
    """Ask which cup it is that the balance shows, but the kiosk does not hear."""
    found = to_type(room.state)
    sittings = sorted({cup.team.sitting for cup in found})
    if len(found) <= room.state.rules.teams_a_sitting or len(sittings) < 2:
        _choose_among(room, found)
        return
    room.open(
        PickPage(
            room,
            title=say("clock.title"),
            options=[(say("clock.sitting", sitting=sitting), "", sitting) for sitting in sittings],
            sort=True,
            done=lambda sitting: _choose_among(
                room, [cup for cup in found if cup.team.sitting == sitting]
            ),
            role=Role.HELPER,
        )
    )


def _choose_among(room: Room, found: Sequence[TeamCup]) -> None:
    state = room.state
    room.open(
        PickPage(
            room,
            title=say("cups.type.which"),
            options=[_option(cup) for cup in found],
            done=lambda team: type_mass(room, cup_of(state, state.team(str(team)))),
            role=Role.HELPER,
        )
    )


def _option(cup: TeamCup) -> tuple[str, str, object]:
    which = "cups.type.filled" if cup.empty else "cups.type.empty"
    name = say("cups.type.cup", number=cup.team.cup)
    note = say(which, team=cup.team.label)
    if cup.ended:
        note = say("cups.type.ended", outcome=ended_words(cup), note=note)
    return name, note, cup.team.team


def type_mass(room: Room, cup: TeamCup) -> None:
    """Let the judge type what the balance shows; the cup's note says that it was typed."""
    asked: set[str] = set()

    def refuses(words: str) -> str:
        if not _GRAMS.fullmatch(words) or not _grams(words):
            return say("cups.type.no_number")
        if cup.empty and _grams(words) < cup.empty.grams and words not in asked:
            asked.add(words)
            return say("cups.type.unlikely")
        return ""

    def done(words: str) -> None:
        turn = CupTurn.FILLED if cup.empty else CupTurn.EMPTY
        note = CupNote(team=cup.team.team, turn=turn, typed=True)
        room.say(note, weighing=_typed(room, words))

    room.open(
        TextPage(
            room,
            title=say("cups.type.title"),
            label=say("cups.type.label", number=cup.team.cup),
            done=done,
            refuses=refuses,
            role=Role.HELPER,
        )
    )


def _grams(words: str) -> Decimal:
    return Decimal(words.replace(",", "."))


def _typed(room: Room, words: str) -> Weighing:
    grams = _grams(words)
    return Weighing(
        id=room.desk.world.new_id(),
        grams=grams,
        value=grams,
        unit="g",
        raw=words.encode(),
        readability=Decimal(1).scaleb(int(grams.as_tuple().exponent)),
        at=room.now_utc(),
        balance=TYPED,
        source=Source.SIMULATED if room.state.simulated else Source.TYPED,
    )
