"""A code on a page: asked for before something that needs it, or chosen anew."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.ui.lock import CODE, HELPER_CODE, Lock
from kiosk.ui.pages.page import Page, Role
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.code_views import COACH, code_view
from kiosk.ui.presenters.views import SheetView


class CodePage(Page):
    """Asks for one code, or for a new one where `digest` is ""; `done` is given its digest.

    The page is gone by then.
    """

    role = Role.HELPER  # no key stands here
    asks = True

    def __init__(self, room: Room, *, digest: str, whose: str, done: Callable[[str], None]) -> None:
        super().__init__(room)
        lock, coachs = room.desk.lock, whose == COACH
        self._lock = Lock(
            closes_after=0,
            digest=digest,
            others_digest=lock.helper_digest if coachs else lock.digest,
            forgives=coachs,
            tries=lock.tries,
        )
        self._lock.ask()
        self._whose, self._done = whose, done

    def view(self) -> SheetView:
        """The pad, with a title that says whose code is meant."""
        now = self.room.desk.world.now()
        return replace(code_view(self._lock, self._whose, now, self._whose), second=None)

    def press(self, event: PersonEvent) -> None:
        """A digit, or the end of them."""
        now = self.room.desk.world.now()
        match event.kind:
            case Person.TYPE:
                self._lock.type(event.value, now)
            case Person.RUB_OUT:
                self._lock.rub_out()
            case Person.ENTER:
                if self._lock.enter(now):
                    self.room.back()
                    self._done(self._lock.digest)
            case _:
                super().press(event)


def with_two_codes(room: Room, then: Callable[[], None]) -> None:
    """Let the coach and a second adult, who has the helpers' code, type their codes, then go on.

    A code that nobody chose yet is chosen on the way.
    """
    lock = room.desk.lock

    def coach(digest: str) -> None:
        if digest != lock.digest:
            lock.digest = digest
            room.desk.notebook.remember(CODE, digest)
        room.open(CodePage(room, digest=lock.helper_digest, whose="helper", done=second))

    def second(digest: str) -> None:
        keep_helper_code(room, digest)
        then()

    room.open(CodePage(room, digest=lock.digest, whose="coach", done=coach))


def keep_helper_code(room: Room, digest: str) -> None:
    """Remember what was chosen for the helpers, if it is another one."""
    if digest != room.desk.lock.helper_digest:
        room.desk.lock.helper_digest = digest
        room.desk.notebook.remember(HELPER_CODE, digest)
