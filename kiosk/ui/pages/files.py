"""Records by file, where there is no network: written to a stick, taken in from one."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.round_notes import NoteKind
from kiosk.rounds.conflicts import given_twice, in_words
from kiosk.rounds.contents import readable
from kiosk.rounds.state import RoundState
from kiosk.texts import plural, say
from kiosk.ui.pages.common import RowsPage
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, SheetView, button
from kiosk.ui.sticks import exported_folders, places

if TYPE_CHECKING:
    from kiosk.records.exchange import Exported  # brings SQLAlchemy along, as these do
    from kiosk.records.importing import Conflict, TakenIn
    from kiosk.records.store import Store

_T = TypeVar("_T")
_NOTES = "round_notes"  # the table of rounds


def stands(_state: RoundState) -> str:
    """What it is for."""
    return say("files.what_for")


class FilesPage(RowsPage):
    """What was done last, and the two things to do."""

    def __init__(self, room: Room, look: Callable[[], Sequence[Path]] | None = None) -> None:
        super().__init__(room)
        self._look = look or places
        self._told: tuple[RowView, ...] = ()
        self._job: Callable[[], None] | None = None  # begins with the next tick

    def title(self) -> str:
        """The question."""
        return say("files.title")

    def body(self) -> str:
        """How it goes."""
        return say("files.working" if self._job else "files.how")

    def rows(self) -> Sequence[RowView]:
        """What came of it, and what is there twice by now."""
        twice = given_twice(self.room.state) if self.room.is_open else ""
        if not self._told or not twice:
            return self._told
        return (*self._told, RowView(text=twice, sign="not fine"))

    def second(self) -> ButtonView:
        """Take something in."""
        return button(say("files.take_in"), Person.CHOOSE)

    def main(self) -> ButtonView:
        """Write everything."""
        return button(say("files.write"), Person.KEEP, sign="arrow")

    def view(self) -> SheetView:
        """Without buttons while it is being done."""
        view = super().view()
        return view if self._job is None else _busy(view)

    def press(self, event: PersonEvent) -> None:
        """Where to, where from."""
        match event.kind:
            case Person.KEEP:
                self._pick(say("files.write.where"), list(self._look()), self._write)
            case Person.CHOOSE:
                found = [folder for place in self._look() for folder in exported_folders(place)]
                self._pick(say("files.take_in.where"), found, self._take_in)
            case _:
                super().press(event)

    def tick(self, now: float) -> None:
        """Begin what was asked for, now that the screen says so."""
        job, self._job = self._job, None
        if job is not None:
            job()

    def _pick(self, title: str, folders: list[Path], done: Callable[[Path], None]) -> None:
        def chosen(value: object) -> None:
            assert isinstance(value, Path)
            done(value)

        self.room.open(
            PickPage(
                self.room,
                title=title,
                body="" if folders else say("files.nothing"),
                options=[(folder.name, str(folder.parent), folder) for folder in folders],
                done=chosen,
            )
        )

    def _write(self, place: Path) -> None:
        folder = place / say("files.folder", at=f"{self.room.now_utc().astimezone():%Y-%m-%d %H%M}")

        def done(found: list[Exported]) -> None:
            rows = sum(one.rows for one in found)
            self._told = (
                RowView(text=plural("files.written", rows), note=str(folder), sign="fine"),
            )

        self._begin(lambda store: store.export(folder), done)

    def _take_in(self, folder: Path) -> None:
        def done(found: list[TakenIn]) -> None:
            new = sum(one.new for one in found)
            conflicts = [each for one in found for each in one.conflicts]
            self._told = (
                RowView(text=plural("files.taken_in", new), note=str(folder), sign="fine"),
                *(self._conflict(each) for each in conflicts),
            )
            self.room.read_again()

        self._begin(lambda store: store.take_in(folder, readable), done)

    def _begin(self, query: Callable[[Store], _T], done: Callable[[_T], None]) -> None:
        self._job = lambda: self.room.look_up(query, done)

    def _conflict(self, conflict: Conflict) -> RowView:
        theirs = conflict.theirs
        words, note = "", say("files.conflict.stands")
        if conflict.table == _NOTES:
            kind, about, content = theirs["kind"], theirs["about"], theirs["content"]
            if not readable(kind, about, content):
                words, note = say("files.conflict.newer"), say("files.conflict.newer.left")
            elif self.room.is_open and theirs["round_id"] == self.room.state.id:
                words = in_words(self.room.state, kind, about, content)
                note = say("files.conflict.step.stands") if kind == NoteKind.STEP else note
        text = words or say("files.conflict.other", table=conflict.table)
        return RowView(text=text, note=note, sign="not fine")


def _busy(view: SheetView) -> SheetView:
    return replace(view, main=None, second=None, home=None)
