"""One sheet of answers, typed from paper once or once more, or by the team itself."""

from __future__ import annotations

from decimal import Decimal

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Answer, Stage, Typing
from kiosk.rounds.sheets import sheet_rows
from kiosk.rounds.typed_answers import Stand, Typed, is_a_slip, typed
from kiosk.texts import say
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.sheet_views import MOST_DIGITS, over_limit, paper_view, value_of
from kiosk.ui.presenters.views import SheetView


class SheetPage(Page):
    """One sheet in one typing; each row is noted as soon as it is typed."""

    role = Role.HELPER
    types_on = True

    def __init__(self, room: Room, team: str, typing: Typing, by: str) -> None:
        super().__init__(room)
        self._id, self._typing, self._by = team, typing, by
        self._rows = sheet_rows(room.state, room.state.team(team))
        self._digits, self._hint, self._asked = "", "", ""
        self._old = False  # the digits are those of before: the first new one replaces them
        self._elsewhere = False  # the present row was typed there while it lay open here
        self._saying = False
        self._seen: set[str] = set()  # notes of the rows that came up here, by their ids
        self._present = next(iter(self._due()), 0)
        self._looked_at()

    def _found(self, place: int) -> Typed:
        return typed(self.room.state, self._id, self._rows[place].task)

    def _mine(self, place: int) -> Answer | None:
        found = self._found(place)
        if self._typing is Typing.TEAM:
            return self.room.state.answer(self._id, found.task, Typing.TEAM)
        return found.second if self._typing is Typing.SECOND else found.first

    def _typed_at(self, place: int) -> bool:
        differs = self._found(place).stand is Stand.MISMATCH and self._typing is Typing.SECOND
        return self._mine(place) is not None and not differs

    def view(self) -> SheetView:
        """The six rows."""
        state = self.room.state
        return paper_view(
            state, state.team(self._id), self._typing,
            present=self._present, typed_now=self._digits, kept=self._old,
            hint=say("paper_typing.closed") if self._locked else self._hint,
        )  # fmt: skip

    def strip(self) -> tuple[str, ...]:
        """Whose sheet it is, and that it comes from paper."""
        return (*super().strip(), self.room.state.team(self._id).label, say("paper_typing.strip"))

    def press(self, event: PersonEvent) -> None:
        """A digit, a row, or the end of one."""
        match event.kind:
            case Person.HOME:
                super().press(event)
            case _ if self._locked:
                return
            case Person.TYPE if self._elsewhere:
                return  # the rest of a number that was begun before: no number by itself
            case Person.TYPE:
                before = "" if self._old else self._digits
                whole = (before + event.value).lstrip("0") or "0"
                self._digits, self._hint, self._old = whole[:MOST_DIGITS], "", False
            case Person.RUB_OUT:
                self._digits = "" if self._old else self._digits[:-1]
                self._hint, self._old = "", False
                self._elsewhere = False
            case Person.CHOOSE:
                self._go_to(event.value)
            case Person.NO:
                self._note(unreadable=True)
                self._next()
            case Person.UNDO:
                self._first_was_wrong()
            case Person.ENTER:
                self._enter()
            case _:
                super().press(event)

    @property
    def _locked(self) -> bool:
        """Whether nothing may be typed any more: from the lock on the coach corrects."""
        state = self.room.state
        return state.stage(state.team(self._id).division) is not Stage.OPEN

    def changed(self) -> None:
        """Somebody else may have typed the present row; nothing else takes digits away.

        The row stays in front and is left as it is till it is tapped or rubbed out.
        """
        if self._saying or self._seen.issuperset(self._chain()[-1:]):
            return
        self._looked_at()
        mine = self._mine(self._present)
        known = mine is not None and mine.estimate is not None
        self._digits = str(mine.estimate) if known and mine is not None else ""
        self._old, self._elsewhere = True, True
        self._hint = say("paper_typing.elsewhere")

    def _chain(self) -> list[str]:
        """The ids of the notes of the present row in this typing."""
        task = self._rows[self._present].task
        return [
            said.note.id
            for said in self.room.state.history(f"answer {self._id} {task} {self._typing}")
        ]

    def _looked_at(self) -> None:
        """What the present row holds now is known here."""
        self._seen.update(self._chain())

    def _due(self, *, after: int = -1, again: bool = True) -> list[int]:
        """The rows to type, after that one first; never typed ones stand before disputed ones.

        Without `again`, of the disputed ones only those after it.
        """
        places = range(len(self._rows))
        missing = [place for place in places if self._mine(place) is None]
        disputed = [
            place
            for place in places
            if place not in missing and not self._typed_at(place) and (again or place > after)
        ]
        return [
            *(place for place in missing if place > after),
            *(place for place in missing if place < after),
            *(place for place in disputed if place != after),
        ]

    def _go_to(self, place: int) -> None:
        mine = self._mine(place)
        known = mine is not None and mine.estimate is not None and self._typed_at(place)
        self._present, self._hint, self._old, self._elsewhere = place, "", known, False
        self._digits = str(mine.estimate) if known and mine is not None else ""
        self._looked_at()

    def _enter(self) -> None:
        if self._old:  # it stays as it was
            self._next()
            return
        row = self._rows[self._present]
        differs = self._found(self._present).stand is Stand.MISMATCH
        if not self._digits and differs and self._typing is Typing.SECOND:
            self._next(skip=True)  # it stays for the judge
            return
        estimate = Decimal(self._digits) if self._digits else None
        asked = f"{row.task} {self._digits}"
        if is_a_slip(row.task, estimate, self.room.state.rules) and self._asked != asked:
            self._asked, self._hint = asked, over_limit(self.room.state, row)
            return
        self._note(estimate=estimate)
        if self._typing is Typing.SECOND and self._found(self._present).stand is Stand.MISMATCH:
            self._digits, self._hint = "", say("paper_typing.differ")
        else:
            self._next()

    def _note(self, *, estimate: Decimal | None = None, unreadable: bool = False) -> None:
        self._saying = True
        self.room.say(
            Answer(
                team=self._id, task=self._rows[self._present].task, typing=self._typing,
                estimate=estimate, unreadable=unreadable, by=self._by,
            )
        )  # fmt: skip
        self._saying = False
        self._looked_at()

    def _first_was_wrong(self) -> None:
        found = self._found(self._present)
        if found.second is not None and found.stand is Stand.MISMATCH:
            reason = say(
                "paper_typing.looked",
                first=value_of(found.first), second=value_of(found.second),
            )  # fmt: skip
            changed = {"typing": Typing.FIRST, "by": self._by, "reason": reason}
            self._saying = True
            self.room.say(found.second.model_copy(update=changed))
            self._saying = False
            self._next()

    def _next(self, *, skip: bool = False) -> None:
        self._digits, self._hint, self._old, self._elsewhere = "", "", False, False
        due = self._due(after=self._present, again=not skip)
        if due:
            self._present = due[0]
            self._looked_at()
        else:
            self.room.back()
