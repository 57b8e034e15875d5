"""One of a few to pick, or of many: those stand in sections by their names."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.texts import say
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.page import Role
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.sections import MOST_PAGES, Each, Section, in_order
from kiosk.ui.presenters.page_views import ROWS_A_PAGE, RowView

Option = tuple[str, str, object]  # text, note, value
NOTHING = object()  # is the value of no option


class PickPage(RowsPage):
    """One of a few; `done` is given the value that was tapped, and the page is gone by then.

    Of many `sort`ed options those that are called alike stand in one section.
    """

    asks = True

    def __init__(
        self,
        room: Room,
        *,
        title: str,
        options: Sequence[Option],
        done: Callable[[object], None],
        now: object = NOTHING,
        body: str = "",
        role: Role = Role.COACH,
        columns: int = 2,
        sort: bool = False,
    ) -> None:
        super().__init__(room)
        self.role = role
        self.columns = columns
        many = sort and len(options) > MOST_PAGES * ROWS_A_PAGE * columns
        self._options = (
            sorted(options, key=lambda option: in_order(option[0])) if many else tuple(options)
        )
        self._sections = range(len(options)) if many else range(0)
        self._title, self._body = title, body
        self._done, self._now = done, now

    def title(self) -> str:
        """The question."""
        return self._title

    def body(self) -> str:
        """What it means."""
        return self._body

    def rows(self) -> Sequence[RowView]:
        """One for each option; the present one is marked."""
        return Each(self._options, self._row)

    def _row(self, option: Option) -> RowView:
        text, note, value = option
        return RowView(
            text=text,
            note=note,
            look="now" if value == self._now else "plain",
            says=PersonEvent(Person.CHOOSE, value),
        )

    def numbers(self) -> Sequence[int]:
        """As many as fit on a page are one section."""
        a_page = ROWS_A_PAGE * self.columns
        return [1 + place // a_page for place in self._sections]

    def section(self, section: Section) -> RowView:
        """From which to which."""
        a_page = ROWS_A_PAGE * self.columns
        first, last = (section[0] - 1) * a_page, min(section[1] * a_page, len(self._options)) - 1
        words = say("rows.from_to", first=self._options[first][0], last=self._options[last][0])
        return RowView(text=words)

    def press(self, event: PersonEvent) -> None:
        """Take the one that was tapped."""
        if event.kind is Person.CHOOSE:
            self.room.back()
            self._done(event.value)
        else:
            super().press(event)
