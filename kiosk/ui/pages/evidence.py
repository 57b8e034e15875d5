"""What stands behind a score that is protested against, what is done about it, the decision."""

from __future__ import annotations

from collections.abc import Sequence

from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Content, Protest, Stage, Team
from kiosk.rounds.counted import counted, if_accepted
from kiosk.rounds.cups import CupStand, Pass, cup_of
from kiosk.settings import Task
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.correcting import Wanted, correct_one
from kiosk.ui.pages.kept_list import list_before
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.reckoning import Reckoning
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.evidence_rows import decision_notes, evidence_rows
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_words import task_short
from kiosk.ui.presenters.views import ButtonView, button


def how(protest: Protest) -> str:
    """What was decided, in a word."""
    if protest.accepted is None:
        return say("protests.open")
    return say("protests.accepted" if protest.accepted else "protests.refused")


def is_final(room: Room, division: str) -> bool:
    """Whether nothing of a division is changed any more, unless it steps back."""
    return room.state.stage(division) is Stage.FINAL


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

    @property
    def _final(self) -> bool:
        return is_final(self.room, self._team.division)

    @property
    def _undecided(self) -> bool:
        return self._protest.accepted is None and not self._final

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
        words = protest.text
        if protest.accepted is not None:
            words = say("protests.decided", how=how(protest), reason=protest.reason)
        return f"{words}\n{say('protests.final')}" if self._final else words

    def rows(self) -> Sequence[RowView]:
        """What was weighed or typed, and the key."""
        return evidence_rows(self.room.state, self._team, self._protest.task)

    def beside_home(self) -> ButtonView | None:
        """Weigh a cup again that is still there, while nobody decided."""
        handed_in = cup_of(self.room.state, self._team).stand is CupStand.IN
        if self._protest.task is not Task.MASS or not handed_in or not self._undecided:
            return None
        return button(say("protests.weigh"), Person.STAY)

    def second(self) -> ButtonView | None:
        """Say what counts instead."""
        if self._final:
            return None
        return button(say("protests.correct"), Person.KEEP)

    def main(self) -> ButtonView | None:
        """Decide, once."""
        if not self._undecided:
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
        desk, team = self.room.desk, self._team
        desk.run(
            CupQueue(
                desk.world,
                state=self.room.state,
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
        accepted, refused = decision_notes(self.room.state, self._protest)
        options: list[tuple[str, str, object]] = [
            (say("protests.accepted"), accepted, True),
            (say("protests.refused"), refused, False),
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
            decided = self._protest.model_copy(update={"accepted": accepted, "reason": reason})
            self.room.say(*self._list_before(accepted=accepted), decided)

        self.room.open(
            TextPage(
                self.room,
                title=say("protests.decide.reason"),
                label=say("protests.decide.label"),
                offers=say("protests.decide.offers").split("|"),
                done=done,
            )
        )

    def _list_before(self, *, accepted: bool) -> tuple[Content, ...]:
        """The list as it is, where accepting the protest lets another mass count."""
        room, team, protest = self.room, self._team, self._protest
        if not accepted or protest.task is not Task.MASS:
            return ()
        now, then = counted(room.state, team), if_accepted(room.state, protest)
        if (now and now.grams) == (then and then.grams):
            return ()
        return list_before(room, team.division, say("protests.weigh.why", team=team.label))
