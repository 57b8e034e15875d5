"""Teams type their own answers: blank between teams, open by a team's code till time is up.

Paper stays the record: what a team typed stands for the first typing of its sheet where the rules
say so, and somebody types the sheet once more.
"""

from __future__ import annotations

from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.clock import Going, clock
from kiosk.rounds.contents import Stage, Team, Typing
from kiosk.rounds.sheets import CODE_DIGITS, teams_with_code
from kiosk.texts import say
from kiosk.ui.pages.codes import CodePage
from kiosk.ui.pages.one_sheet import SheetPage
from kiosk.ui.pages.page import Page, Role, back_button
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.code_views import wait_button
from kiosk.ui.presenters.views import CodeView, SheetView, button


class OwnAnswersPage(Page):
    """Asks for a team's code; the way back is behind a code of the helpers or the coach."""

    role = Role.EVERYBODY

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self._typed, self._note = "", ""
        # A right code forgives nothing: between two of one's own the others' could be tried.
        self._tries = room.desk.lock.team_tries

    def view(self) -> SheetView:
        """The pad, and nothing of any team."""
        waits = self._tries.waits(self.room.desk.world.now())
        ready = len(self._typed) == CODE_DIGITS
        return CodeView(
            title=say("own.title"),
            typed=len(self._typed),
            digits=CODE_DIGITS,
            typed_text=say("code.typed", typed=len(self._typed), digits=CODE_DIGITS),
            note=self._note,
            main=wait_button(waits)
            if waits
            else button(say("own.open"), Person.ENTER, sign="arrow")
            if ready
            else button(say("own.open"), sign="off", state="off"),
            home=back_button(),
        )

    def press(self, event: PersonEvent) -> None:
        """A digit, the end of them, or an adult who goes back."""
        match event.kind:
            case Person.TYPE | Person.ENTER if self._tries.waits(self.room.desk.world.now()):
                return
            case Person.TYPE if len(self._typed) < CODE_DIGITS:
                self._typed, self._note = self._typed + event.value, ""
            case Person.RUB_OUT:
                self._typed = self._typed[:-1]
            case Person.ENTER if len(self._typed) == CODE_DIGITS:
                self._enter()
            case Person.HOME:
                self._go_back()

    def opened(self) -> None:
        """Blank for the next team."""
        self._typed = ""

    def _enter(self) -> None:
        found, self._typed = teams_with_code(self.room.state, self._typed), ""
        if not found:
            self._note = say("own.unknown")
            self._tries.missed(self.room.desk.world.now())
        elif len(found) == 1:
            self._open(found[0])
        else:
            self.room.open(
                PickPage(
                    self.room,
                    title=say("own.which"),
                    options=[(team.label, "", team.team) for team in found],
                    done=lambda team: self._open(self.room.state.team(str(team))),
                    role=Role.EVERYBODY,
                )
            )

    def _open(self, team: Team) -> None:
        closed = why_closed(self.room, team)
        if closed:
            self._note = closed
        else:
            self.room.open(OwnSheetPage(self.room, team.team, Typing.TEAM, team.label))

    def _go_back(self) -> None:
        lock = self.room.desk.lock
        digest = lock.helper_digest or lock.digest
        if not digest:
            self.room.back()
            return
        whose = "helper" if lock.helper_digest else "coach"
        self.room.open(
            CodePage(self.room, digest=digest, whose=whose, done=lambda _: self.room.back())
        )


def why_closed(room: Room, team: Team) -> str:
    """Why a team cannot type now, "" if it can: its sitting has to run, results to be open."""
    state = room.state
    if state.stage(team.division) is not Stage.OPEN:
        return say("own.over")
    found = clock(state, team.sitting, room.now_utc())
    if found.going is Going.NOT_STARTED:
        return say("own.not_started")
    behind = any(each.team == team.team for each, _ in found.behind)
    return say("own.over") if found.going is Going.OVER and not behind else ""


class OwnSheetPage(SheetPage):
    """A team's own sheet; it may be changed until the time is up, then it closes by itself."""

    role = Role.EVERYBODY

    def view(self) -> SheetView:
        """The sheet without what only helpers do."""
        return replace(super().view(), title=say("own.sheet"), second=None)

    def strip(self) -> tuple[str, ...]:
        """Whose it is."""
        return (self.room.state.team(self._id).label,)

    def tick(self, now: float) -> None:
        """Close when the time is up."""
        if why_closed(self.room, self.room.state.team(self._id)):
            self.room.back()
