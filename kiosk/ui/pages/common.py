"""Pages that many others use: rows over several pages, a few words to type, a question."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.texts import say
from kiosk.ui.pages.page import Page, Role, back_button
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import Path, Section, sections
from kiosk.ui.presenters.page_views import ROWS_A_PAGE, RowsView, RowView, TextView
from kiosk.ui.presenters.views import ButtonView, QuestionView, SheetView, button

MOST_LETTERS = 60


class RowsPage(Page):
    """Rows to tap; says which rows there are, and what a tapped one means."""

    columns: int = 1

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self.turned = 0  # how often the pages were turned
        self.path = Path()

    def title(self) -> str:
        """What stands above the rows."""
        raise NotImplementedError

    def rows(self) -> Sequence[RowView]:
        """All rows, on however many pages."""
        raise NotImplementedError

    def numbers(self) -> Sequence[int]:
        """In which section each row stands, rising, where many rows are divided; see `section`."""
        return ()

    def section(self, section: Section) -> RowView:
        """The row of a section, or of several: what a tap means is added to it."""
        raise NotImplementedError

    def body(self) -> str:
        """A line below the title."""
        return ""

    def corner(self) -> str:
        """What stands at the right of the title."""
        return ""

    def main(self) -> ButtonView | None:
        """The one thing to do here beside tapping a row."""
        return None

    def second(self) -> ButtonView | None:
        """Another thing to do."""
        return None

    def beside_home(self) -> ButtonView | None:
        """And another."""
        return None

    def view(self) -> SheetView:
        """The page of rows that the pages were turned to."""
        each = ROWS_A_PAGE * self.columns
        rows = self._divided(each)
        pages = max(1, -(-len(rows) // each))
        start = self.turned % pages * each
        return RowsView(
            title=self.title() if self.path.now is None else self.section(self.path.now).text,
            body=self.body(),
            corner=self.corner(),
            rows=tuple(rows[start : start + each]),
            columns=self.columns,
            home=back_button(),
            turn=button(say("rows.turn", page=start // each + 1, pages=pages), Person.MORE)
            if pages > 1
            else None,
            beside_home=self.beside_home(),
            second=self.second(),
            main=self.main(),
        )

    def _divided(self, a_page: int) -> Sequence[RowView]:
        """The rows of the open section, or the sections to choose from."""
        numbers, rows = self.numbers(), self.rows()
        inside = self.path.rows(numbers)
        found = sections(numbers[inside], a_page)
        if found:
            return [
                replace(self.section(each), says=PersonEvent(Person.MORE, each)) for each in found
            ]
        return rows[inside]

    def press(self, event: PersonEvent) -> None:
        """Turn the page, go into a section or out of it, or what every page does."""
        if event.kind is Person.MORE and event.value is not None:
            self.path.enter(event.value)
            self.turned = 0
        elif event.kind is Person.MORE:
            self.turned += 1
        elif event.kind is Person.HOME and self.path.now is not None:
            self.path.leave()
            self.turned = 0
        else:
            super().press(event)


class TextPage(Page):
    """A few words to type; `done` is given them, trimmed, and the page is gone by then.

    `refuses` names what is wrong with them, "" for nothing.
    """

    asks = True

    def __init__(
        self,
        room: Room,
        *,
        title: str,
        label: str,
        done: Callable[[str], None],
        typed: str = "",
        offers: Sequence[str] = (),
        refuses: Callable[[str], str] = lambda _: "",
        role: Role = Role.COACH,
    ) -> None:
        super().__init__(room)
        self.role = role
        self._title, self._label, self._offers = title, label, tuple(offers)
        self._typed, self._done, self._refuses = typed, done, refuses
        self._hint = ""

    def view(self) -> SheetView:
        """The words as typed so far."""
        return TextView(
            title=self._title,
            label=self._label,
            typed=self._typed,
            hint=self._hint,
            offers=self._offers,
            home=back_button(),
            main=button(
                say("text.done"), Person.ENTER, state="ready" if self._typed.strip() else "off"
            ),
        )

    def press(self, event: PersonEvent) -> None:
        """A letter, an offer, or the end of it."""
        match event.kind:
            case Person.TYPE:
                self._typed = (self._typed + event.value)[:MOST_LETTERS]
                self._hint = ""
            case Person.RUB_OUT:
                self._typed, self._hint = self._typed[:-1], ""
            case Person.CHOOSE:
                self._typed, self._hint = event.value, ""
            case Person.ENTER:
                self._end()
            case _:
                super().press(event)

    def _end(self) -> None:
        words = " ".join(self._typed.split())
        if not words:
            return
        self._hint = self._refuses(words)
        if not self._hint:
            self.room.back()
            self._done(words)


class AskPage(Page):
    """A question with two answers; whichever is given, the page is gone by then."""

    asks = True

    def __init__(
        self,
        room: Room,
        *,
        title: str,
        body: str,
        yes: str,
        no: str,
        done: Callable[[], None],
        otherwise: Callable[[], None] = lambda: None,
        role: Role = Role.COACH,
    ) -> None:
        super().__init__(room)
        self.role = role
        self._view = QuestionView(
            title=title,
            body=body,
            main=button(yes, Person.YES, sign="tick"),
            second=button(no, Person.NO),
            home=back_button(),
        )
        self._done, self._otherwise = done, otherwise

    def view(self) -> SheetView:
        """The question."""
        return self._view

    def press(self, event: PersonEvent) -> None:
        """An answer."""
        self.room.back()
        if event.kind is Person.YES:
            self._done()
        elif event.kind is Person.NO:
            self._otherwise()
