"""The coach's side of the desk: the code before it, and the drawer of the scale."""

from __future__ import annotations

from collections.abc import Callable

from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.procedure import (
    Person,
    PersonEvent,
)
from kiosk.records.entries import BalanceChecked
from kiosk.ui.desk_base import COACHS_PLACES, COACHS_PROCEDURES, DeskBase, Place
from kiosk.ui.lock import CODE, Asking
from kiosk.ui.pages.page import Role
from kiosk.ui.presenters.scale_views import LOOK_AGAIN
from kiosk.ui.teaching import Teaching


class CoachsDesk(DeskBase):
    """Locks the drawers, and opens that of the scale."""

    @property
    def coach_side(self) -> bool:
        """Whether what is shown, or hidden behind the code, is the coach's."""
        if isinstance(self.procedure, CupQueue):
            return bool(self.procedure.list.again)  # in a protest; the cup table is the helpers'
        if self.procedure is not None:
            return isinstance(self.procedure, COACHS_PROCEDURES)
        if self.place is Place.ROUND:
            return self.room.role is Role.COACH
        return self.place in COACHS_PLACES

    @property
    def locked(self) -> bool:
        """Whether the code is asked for."""
        return self.coach_side and not self.lock.open

    def as_coach(
        self, label: str, then: Callable[[], None], helper: Callable[[], None] | None = None
    ) -> None:
        """Open the drawer of that label, after the code if it is locked.

        `helper` is what a helper's code opens instead, if it opens anything.
        """
        if not self._free():
            return
        if self.lock.open:
            self.lock.seen(self.world.now())
            then()
            return
        self.lock.ask(helper_welcome=helper is not None)
        self.drawer_label, self._behind, self._behind_for_helper = label, then, helper
        self._go(Place.CODE)

    def lock_now(self) -> None:
        """Lock the drawers without waiting."""
        self.lock.close()
        self._changed()

    def code_press(self, event: PersonEvent) -> None:
        """A press on the sheet that asks for the code."""
        lock, now = self.lock, self.world.now()
        match event.kind:
            case Person.TYPE:
                lock.type(event.value, now)
            case Person.RUB_OUT:
                lock.rub_out()
            case Person.ENTER:
                chosen = lock.asking is not Asking.CODE
                if lock.enter(now):
                    if chosen:
                        self.notebook.remember(CODE, lock.digest)
                    self._unlocked()
            case Person.LATER if not lock.digest:
                lock.open_now(now)
                self._unlocked()
            case Person.HOME:
                self._leave_locked()
        self._changed()

    def _leave_locked(self) -> None:
        """Back to the table; what was kept is kept, and what a check found is judged."""
        if isinstance(self.procedure, BalanceCheck) and self.procedure.offers(Person.HOME):
            self._carry_out(self.procedure.step(PersonEvent(Person.HOME)))
        self.procedure, self._behind = None, None
        self.room.close()
        self.place = Place.HOME

    def _unlocked(self) -> None:
        behind = self._behind_for_helper if self.lock.helper_came else self._behind
        self._behind, self._behind_for_helper = None, None
        if self.place is Place.CODE:
            self.place = Place.HOME
        if behind is not None:
            behind()

    def cover(self) -> None:
        """Cover or show the big number of a key."""
        self.facts.covered = not self.facts.covered
        self._changed()

    def letter_chosen(self, letter: str) -> None:
        """The letter that the jar will get."""
        self.facts.letter = letter
        self._changed()

    def open_scale(self) -> None:
        """The coach opens the drawer of the scale."""
        self._go(Place.SCALE)

    def ask_for_scale(self) -> None:
        """Let the coach say which of the scales that were found is to be used."""
        self.as_coach("home.scale", lambda: self._go(Place.SCALES))

    def other_scales(self) -> None:
        """Show what else could be used."""
        if self._free() and self.drawer is not None:
            self.lock.seen(self.world.now())
            self.drawer.look_around()
            self._go(Place.SCALES)

    @property
    def teaching(self) -> Teaching | None:
        """The teaching of a scale, while its sheet lies out."""
        return self.drawer.teaching if self.drawer and self.place is Place.TEACH else None

    def teach_scale(self) -> None:
        """Learn how the scale speaks that was chosen."""
        if self.drawer is not None and self._free():
            self.drawer.teach()
            if self.drawer.teaching is not None:
                self._go(Place.TEACH)

    def teach_press(self, event: PersonEvent) -> None:
        """A press on the sheet of teaching; leaving it, the scale is used as it was learned."""
        if self.drawer is None or self.teaching is None:
            return
        if event.kind is Person.HOME:
            self.drawer.end_teaching()
            self.place = Place.SCALE
        else:
            self.teaching.press(event)
        self._changed()

    def check_scale(self) -> None:
        """See whether the scale is right, with what is at hand."""
        if self._free():
            self._start(BalanceCheck(self.world, pan=self.memory))

    def read_last_check(self, balance: str) -> None:
        """Look up how the last check of that scale went."""
        simulated = self.facts.simulated
        self.facts.last_check = None

        def done(found: BalanceChecked | None) -> None:
            self.facts.last_check = found

        self.notebook.look_up(lambda store: store.last_check(balance, simulated), done)

    def scale_chosen(self, where: str) -> None:
        """Weigh on that scale from now on; LOOK_AGAIN looks for others."""
        if self.drawer is None or not self._free():
            return
        self.lock.seen(self.world.now())
        if where == LOOK_AGAIN:
            self.drawer.look_around()
            return
        self.drawer.choose(where)
        if not self.facts.scale.problem:
            self.place = Place.SCALE
        self._changed()

    def scale_changed(self, *, simulated: bool) -> None:
        """Another scale is in use: nothing is known of its pan, and its records are others."""
        self.memory.forget()
        self.facts.readability = None
        if simulated is not self.facts.simulated:
            self.facts.simulated = simulated
            self.facts.team = None
            self.ready = False
            self.open()

    def tick(self, now: float) -> None:
        """Let time pass: the coach's side locks itself, but not in the middle of a lesson."""
        if self.teaching is not None:
            self.lock.seen(now)
        if self.lock.tick(now) and self.coach_side:
            self.drawer_label, self._behind = "", None
        if self.place is Place.ROUND and not self.locked:
            self.room.tick(now)
        if self.drawer is not None and self.place is not Place.TEACH:
            self.drawer.end_teaching()  # however its sheet was left
