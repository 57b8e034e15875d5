"""Protests: what stands behind a score, what is done about it, and what was decided."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Protest, Team
from kiosk.rounds.cups import CupStand, Pass, cup_of
from kiosk.rounds.standing import protests_of
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.correcting import Wanted, correct_one
from kiosk.ui.pages.kept_list import list_before
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.reckoning import Reckoning
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.evidence_rows import evidence_rows
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_words import task_short
from kiosk.ui.presenters.views import ButtonView, button

SIGNS = {None: "cannot tell", True: "fine", False: "not fine"}


def how(protest: Protest) -> str:
    """What was decided, in a word."""
    if protest.accepted is None:
        return say("protests.open")
    return say("protests.accepted" if protest.accepted else "protests.refused")


class ProtestsPage(RowsPage):
    """The protests of a division, and a new one."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division

    def title(self) -> str:
        """The heading."""
        return say("protests.heading")

    def body(self) -> str:
        """What a tap does."""
        found = protests_of(self.room.state, self._division)
        return say("protests.body" if found else "protests.none")

    def rows(self) -> Sequence[RowView]:
        """One for each, newest first."""
        found = protests_of(self.room.state, self._division)
        return [self._row(protest) for protest in reversed(found)]

    def _row(self, protest: Protest) -> RowView:
        team = self.room.state.team(protest.team)
        what = task_short(self.room.state, team.division, protest.task)
        return RowView(
            text=say("protests.row", team=team.label, what=what),
            note=protest.text,
            value=how(protest),
            sign=SIGNS[protest.accepted],
            says=PersonEvent(Person.CHOOSE, protest.protest),
        )

    def main(self) -> ButtonView:
        """A new one."""
        return button(say("protests.new"), Person.GO_ON, sign="arrow")

    def press(self, event: PersonEvent) -> None:
        """Look into one, or take one down."""
        match event.kind:
            case Person.CHOOSE:
                self.room.open(EvidencePage(self.room, event.value))
            case Person.GO_ON:
                self._whose()
            case _:
                super().press(event)

    def _whose(self) -> None:
        teams = self.room.state.teams_of(division=self._division)
        self.room.open(
            PickPage(
                self.room,
                title=say("results.which_team"),
                options=[(team.label, "", team.team) for team in teams],
                sort=True,
                done=lambda team: self._against(self.room.state.team(str(team))),
            )
        )

    def _against(self, team: Team) -> None:
        def done(task: object) -> None:
            assert isinstance(task, Task)
            self._take_down(team, task)

        self.room.open(
            PickPage(
                self.room,
                title=say("protests.what", team=team.label),
                options=[
                    (task_short(self.room.state, team.division, task), "", task) for task in Task
                ],
                done=done,
            )
        )

    def _take_down(self, team: Team, task: Task) -> None:
        def done(words: str) -> None:
            protest = Protest(
                protest=self.room.desk.world.new_id(), team=team.team, task=task, text=words
            )
            self.room.say(protest)
            self.room.open(EvidencePage(self.room, protest.protest))

        self.room.open(
            TextPage(
                self.room,
                title=say("protests.text", team=team.label),
                label=say("protests.text.label"),
                offers=say("protests.text.offers").split("|"),
                done=done,
            )
        )


class EvidencePage(RowsPage):
    """All that stands behind the score of one protest."""

    def __init__(self, room: Room, protest: str) -> None:
        super().__init__(room)
        self._id = protest
        self._reckoning = Reckoning(room, self._team.division)

    @property
    def _protest(self) -> Protest:
        found = self.room.state.latest(Protest, f"protest {self._id}")
        assert found is not None
        return found

    @property
    def _team(self) -> Team:
        return self.room.state.team(self._protest.team)

    def title(self) -> str:
        """Whose score."""
        what = task_short(self.room.state, self._team.division, self._protest.task)
        return say("protests.row", team=self._team.label, what=what)

    def corner(self) -> str:
        """What it is now."""
        rows = [row for row in self._reckoning.quick.rows if row.team.team == self._team.team]
        place = list(Task).index(self._protest.task)
        points = [number(row.scores[place], self.room.state.rules.decimals) for row in rows]
        return say("protests.score", points=points[0]) if points else ""

    def body(self) -> str:
        """What the team says, or what was decided."""
        protest = self._protest
        if protest.accepted is None:
            return protest.text
        return say("protests.decided", how=how(protest), reason=protest.reason)

    def rows(self) -> Sequence[RowView]:
        """What was weighed or typed, and the key."""
        return evidence_rows(self.room.state, self._team, self._protest.task)

    def beside_home(self) -> ButtonView | None:
        """Weigh a cup again that is still there."""
        handed_in = cup_of(self.room.state, self._team).stand is CupStand.IN
        if self._protest.task is not Task.MASS or not handed_in:
            return None
        return button(say("protests.weigh"), Person.STAY)

    def second(self) -> ButtonView:
        """Say what counts instead."""
        return button(say("protests.correct"), Person.KEEP)

    def main(self) -> ButtonView | None:
        """Decide, once."""
        if self._protest.accepted is not None:
            return None
        return button(say("protests.decide"), Person.GO_ON, sign="tick")

    def press(self, event: PersonEvent) -> None:
        """Weigh again, correct, decide."""
        match event.kind:
            case Person.STAY:
                self._weigh_again()
            case Person.KEEP:
                correct_one(self.room, Wanted(team=self._team, task=self._protest.task))
            case Person.GO_ON:
                self._decide()
            case _:
                super().press(event)

    def _weigh_again(self) -> None:
        desk, room, team = self.room.desk, self.room, self._team
        why = say("protests.weigh.why", team=team.label)
        room.say(*list_before(room, team.division, why))
        desk.run(
            CupQueue(
                desk.world,
                state=room.state,
                sitting=team.sitting,
                pass_=Pass.FILLED,
                pan=desk.memory,
                again=team.team,
                protest=self._id,
            )
        )

    def changed(self) -> None:
        """Let the table know what others noted."""
        procedure = self.room.desk.procedure
        if isinstance(procedure, CupQueue):
            procedure.see(self.room.state)

    def _decide(self) -> None:
        options: list[tuple[str, str, object]] = [
            (say("protests.accepted"), "", True),
            (say("protests.refused"), "", False),
        ]
        self.room.open(
            PickPage(
                self.room,
                title=say("protests.decide.title"),
                options=options,
                done=lambda accepted: self._why(accepted=bool(accepted)),
            )
        )

    def _why(self, *, accepted: bool) -> None:
        def done(reason: str) -> None:
            self.room.say(self._protest.model_copy(update={"accepted": accepted, "reason": reason}))

        self.room.open(
            TextPage(
                self.room,
                title=say("protests.decide.reason"),
                label=say("protests.decide.label"),
                offers=say("protests.decide.offers").split("|"),
                done=done,
            )
        )
