"""The drawer of the scale: which one is in use, which others are there, how one speaks.

Nothing is sent to a port before somebody chose it; then it is listened to first.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol

from drivers.errors import BadAddress, BadShape
from drivers.events import Back, BalanceEvent, Identified, Lost
from drivers.speaking import Speaking, trials
from drivers.transports.addresses import is_url
from drivers.transports.hid_addresses import is_hid
from kiosk.ui.connection import SIMULATED, TYPED, ScaleChoice
from kiosk.ui.presenters.scale_facts import FoundScale, ScaleFacts, ScaleKind
from kiosk.ui.teaching import Teaching

_TAUGHT = (ScaleKind.SERIAL, ScaleKind.NETWORK)  # whoever else is heard sends no lines


class ScaleUser(Protocol):
    """Whoever weighs on the scale that is chosen here."""

    def use_scale(self, choice: ScaleChoice) -> None:
        """Weigh on that one from now on. Raises BadAddress, BadShape."""
        ...

    def teach_scale(self, where: str) -> Teaching:
        """Let go of the one in use, and listen to that one. Raises BadAddress."""
        ...


class ScaleDrawer:
    """`look` finds what is plugged in and may add why it could not look everywhere.

    `kept` gives the names of the shapes that were learned, `remember` keeps a choice for the
    next start, `changed` is called when there may be something new to show.
    """

    def __init__(
        self,
        *,
        facts: ScaleFacts,
        user: ScaleUser,
        look: Callable[[], tuple[list[FoundScale], str]],
        kept: Callable[[], Sequence[str]],
        remember: Callable[[str], None],
        changed: Callable[[], None],
    ) -> None:
        self.facts = facts
        self._user = user
        self._look = look
        self._kept = kept
        self._remember = remember
        self._changed = changed
        self._speaking: Speaking | None = None
        self._open_port = False
        self.teaching: Teaching | None = None

    def in_use(self, choice: ScaleChoice) -> None:
        """Note what is in use since the start."""
        self.facts.chosen = _found_as(choice.where, self.facts.found)
        self.facts.dialect = choice.dialect or ""

    def look_around(self) -> None:
        """Find what is plugged in; nothing is opened."""
        found, self.facts.problem = self._look()
        always = (
            FoundScale(where=TYPED, kind=ScaleKind.TYPED),
            FoundScale(where=SIMULATED, kind=ScaleKind.SIMULATED),
        )
        self.facts.found = (*found, *always)
        self._changed()

    def by_itself(self, last: ScaleChoice | None) -> bool:
        """Use the scale that was chosen last, or the only one that is heard without asking.

        False when a person has to say which one.
        """
        self.look_around()
        real = [each for each in self.facts.found if each.kind in (ScaleKind.HID, ScaleKind.SERIAL)]
        if last is not None and any(each.where == last.where for each in self.facts.found):
            self.use(last)
            return not self.facts.problem
        if len(real) == 1 and real[0].kind is ScaleKind.HID:
            self.choose(real[0].where)
            return not self.facts.problem
        return False

    def choose(self, where: str) -> None:
        """A person chose that scale: find out how it speaks, listening first."""
        self._speaking = None
        serial = _kind_of(where) is ScaleKind.SERIAL
        self.facts.silent = True
        if serial:
            self._speaking = Speaking(trials(self._kept()))
        dialect = self._speaking.present if self._speaking else None
        self._take(ScaleChoice(where=where, dialect=dialect))
        self.facts.trying = serial and not self.facts.problem
        if self.facts.problem:
            self._speaking = None  # the scale before stays, and it is not on trial
        if not serial and not self.facts.problem:
            self._remember(ScaleChoice(where=where).as_text())

    def use(self, choice: ScaleChoice) -> None:
        """Use a scale that is known to speak that way, and remember it."""
        self._speaking, self.facts.trying = None, False
        self._take(choice)
        if not self.facts.problem:
            self._remember(choice.as_text())

    def teach(self) -> None:
        """Learn how the lines of the chosen scale are written; nothing is sent to it."""
        chosen = self.facts.chosen
        if self.teaching is None and chosen is not None and chosen.kind in _TAUGHT:
            self._speaking, self.facts.trying = None, False
            self.teaching = self._user.teach_scale(chosen.where)

    def end_teaching(self) -> None:
        """Use the scale as it was learned, or as before if it was not; safe to call twice."""
        teaching, self.teaching = self.teaching, None
        if teaching is None or self.facts.chosen is None:
            return
        teaching.close()
        where = self.facts.chosen.where
        if teaching.learned is not None:
            self.use(ScaleChoice(where=where, dialect=teaching.learned.name))
        else:
            self._take(ScaleChoice(where=where, dialect=self.facts.dialect or None), tried=True)

    def heard(self, event: BalanceEvent) -> None:
        """Take in what the scale in use told."""
        match event:
            case Back():
                self._open_port = True
            case Lost():
                self._open_port = False
            case Identified(capacity=capacity):
                self.facts.capacity = capacity
        speaking = self._speaking
        if speaking is None:
            return
        speaking.heard(event)
        self.facts.silent = self.facts.silent and isinstance(event, Back | Lost)
        if speaking.understood and self.facts.chosen is not None:
            self._speaking, self.facts.trying = None, False
            choice = ScaleChoice(where=self.facts.chosen.where, dialect=speaking.present)
            self._remember(choice.as_text())

    def tick(self, now: float) -> None:
        """Let time pass: a way of speaking that brings nothing is given up for the next."""
        if self.teaching is not None:
            self.teaching.tick()
        speaking, chosen = self._speaking, self.facts.chosen
        if speaking is None or chosen is None:
            return
        if not speaking.tick(now, open_port=self._open_port):
            return
        if speaking.present is None:
            self._speaking, self.facts.trying, self.facts.understood = None, False, False
        dialect = speaking.present or trials(())[0]  # back to listening, which sends nothing
        self._take(ScaleChoice(where=chosen.where, dialect=dialect), tried=True)

    def _take(self, choice: ScaleChoice, *, tried: bool = False) -> None:
        facts = self.facts
        try:
            self._user.use_scale(choice)
        except (BadAddress, BadShape) as error:
            facts.problem = str(error)
            self._changed()
            return
        self._open_port = False
        facts.problem, facts.capacity = "", None
        facts.chosen, facts.dialect = _found_as(choice.where, facts.found), choice.dialect or ""
        if not tried:
            facts.understood = True
        self._changed()


def _found_as(where: str, found: Sequence[FoundScale]) -> FoundScale:
    same = (each for each in found if each.where == where)
    return next(same, FoundScale(where=where, kind=_kind_of(where)))


def _kind_of(where: str) -> ScaleKind:
    if where in (SIMULATED, TYPED):
        return ScaleKind(where)
    if is_hid(where):
        return ScaleKind.HID
    return ScaleKind.NETWORK if is_url(where) else ScaleKind.SERIAL
