"""The results of a division: what keeps it open, what there is to do, its way to the final list."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Stage, Step
from kiosk.rounds.hints import hints
from kiosk.rounds.standing import (
    Block,
    What,
    ahead,
    behind,
    blocks,
    open_protests,
    protest_left,
    protests_of,
)
from kiosk.texts import plural, say
from kiosk.ui.pages.common import AskPage, RowsPage, TextPage
from kiosk.ui.pages.correcting import HintsPage, correct, decide_cup, without_mass
from kiosk.ui.pages.kept_list import SHOWN, list_before
from kiosk.ui.pages.other_rounds import rounds_with_its_keys
from kiosk.ui.pages.protests import ProtestsPage
from kiosk.ui.pages.reckoning import Once
from kiosk.ui.pages.result_lists import EarlierPage, ResultPapersPage
from kiosk.ui.pages.result_table import ResultsWallPage, TablePage
from kiosk.ui.pages.room import Room
from kiosk.ui.pages.team_results import choose_team
from kiosk.ui.presenters.block_words import block_words, names_of
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_words import plate_note, plate_of
from kiosk.ui.presenters.views import ButtonView, SheetView, button

STEPS = {Stage.LOCKED: "lock", Stage.RELEASED: "release", Stage.FINAL: "final"}


class ResultsPage(RowsPage):
    """One division: before the lock what is missing, after it what there is to do."""

    def __init__(self, room: Room, division: str) -> None:
        super().__init__(room)
        self._division = division
        self._waits = Once(room, lambda state: blocks(state, division, room.now_utc()))
        self._slips = Once(
            room,
            lambda state: sum(hint.team.division == division for hint in hints(state)),
        )

    @property
    def _stage(self) -> Stage:
        return self.room.state.stage(self._division)

    @property
    def _blocks(self) -> list[Block]:
        return self._waits.now(self.room.now_utc().replace(microsecond=0))

    def title(self) -> str:
        """Which division."""
        return say("results.heading", division=self._division)

    def corner(self) -> str:
        """How far it is."""
        return plate_of(self._stage)

    def body(self) -> str:
        """What it waits for."""
        found = self._blocks
        if self._stage is Stage.OPEN:
            return "" if found else say("results.open.body")
        waits = [block for block in found if block.what is not What.TIME]
        if waits:
            return say("results.block.named", what=block_words(waits[0]), names=names_of(waits[0]))
        left = protest_left(self.room.state, self._division, self.room.now_utc())
        note = plate_note(self._stage, left)
        return "" if self._stage is Stage.FINAL else say(f"results.{self._stage}.body", note=note)

    def view(self) -> SheetView:
        """In two columns what there is to do, in one what is missing."""
        self.columns = 1 if self._stage is Stage.OPEN else 2
        return super().view()

    def rows(self) -> Sequence[RowView]:
        """What is missing, or what there is to do."""
        if self._stage is not Stage.OPEN:
            return [self._row(name) for name in self._offered()]
        return [
            RowView(
                text=block_words(block),
                note=names_of(block),
                value=str(block.count or ""),
                sign="not fine",
            )
            for block in self._blocks
        ] or [RowView(text=say("results.all_in"), sign="fine")]

    def _offered(self) -> list[str]:
        final = self._stage is Stage.FINAL
        names = ["table"] if final else ["table", "hints", "correct"]
        if self._stage in SHOWN and (not final or protests_of(self.room.state, self._division)):
            names.append("protests")
        if self._stage in SHOWN:
            names += ["team", "wall"]
        names.append("papers")
        if self.room.state.kept_lists(self._division):
            names.append("earlier")
        return names

    def _row(self, name: str) -> RowView:
        return RowView(
            text=say(f"results.do.{name}"),
            note=self._note(name),
            says=PersonEvent(Person.CHOOSE, name),
        )

    def _note(self, name: str) -> str:
        state = self.room.state
        match name:
            case "table":
                return plural("teams.count", len(state.teams_of(division=self._division)))
            case "hints":
                slips = self._slips.now()
                if not slips:
                    return say("results.do.hints.none")
                return plural("results.do.hints.some", slips)
            case "protests":
                every, undecided = (
                    len(some(state, self._division)) for some in (protests_of, open_protests)
                )
                if not every:
                    return say("results.do.protests.none")
                return say("results.do.protests.some", open=undecided, decided=every - undecided)
            case "earlier":
                return plural("results.do.earlier.note", len(state.kept_lists(self._division)))
        return say(f"results.do.{name}.note")

    def beside_home(self) -> ButtonView | None:
        """Back, for a reason."""
        if self._stage is Stage.OPEN:
            return None
        return button(say("results.step_back"), Person.UNDO)

    def second(self) -> ButtonView | None:
        """Before the lock, what a cup without a mass is worth."""
        if self._stage is not Stage.OPEN or not without_mass(self.room, self._division):
            return None
        return button(say("results.decide_cups"), Person.KEEP)

    def main(self) -> ButtonView | None:
        """The next step."""
        following = ahead(self._stage)
        if following is None:
            return None
        state = "off" if self._blocks else "ready"
        return button(say(f"results.{STEPS[following]}"), Person.GO_ON, sign="arrow", state=state)

    def press(self, event: PersonEvent) -> None:
        """Go on, back, or where something is done."""
        match event.kind:
            case Person.CHOOSE:
                self._go(event.value)
            case Person.GO_ON:
                self._ask_on()
            case Person.UNDO:
                self._ask_back()
            case Person.KEEP:
                decide_cup(self.room, self._division)
            case _:
                super().press(event)

    def _go(self, name: str) -> None:
        room, division = self.room, self._division
        doing: dict[str, Callable[[], None]] = {
            "table": lambda: room.open(TablePage(room, division)),
            "hints": lambda: room.open(HintsPage(room, division)),
            "correct": lambda: correct(room, division),
            "protests": lambda: room.open(ProtestsPage(room, division)),
            "team": lambda: choose_team(room, division),
            "wall": lambda: room.open(ResultsWallPage(room, division)),
            "papers": lambda: room.open(ResultPapersPage(room, division)),
            "earlier": lambda: room.open(EarlierPage(room, division)),
        }
        doing[name]()

    def _ask_on(self) -> None:
        following = ahead(self._stage)
        if following is None or self._blocks:
            return
        if following is not Stage.RELEASED:
            self._question(following, [])
            return
        state, division = self.room.state, self._division
        self.room.look_up(
            lambda store: rounds_with_its_keys(store, state, division),
            lambda others: self._question(following, self._before_release(others)),
        )

    def _before_release(self, others: Sequence[str]) -> list[str]:
        """What to think of: results tell everybody the real values."""
        told = [say("results.release.elsewhere", names=", ".join(others))] if others else []
        slips = self._slips.now()
        return [*told, plural("results.release.hints", slips)] if slips else told

    def _question(self, following: Stage, told: Sequence[str]) -> None:
        step = STEPS[following]
        body = say(f"results.{step}.body", minutes=self.room.state.rules.protest_minutes)
        self.room.open(
            AskPage(
                self.room,
                title=say(f"results.{step}.title"),
                body=" ".join([body, *told]),
                yes=say(f"results.{step}"),
                no=say("results.not_yet"),
                done=lambda: self._step(following),
            )
        )

    def _ask_back(self) -> None:
        before = behind(self._stage)
        if before is None:
            return
        self.room.open(
            TextPage(
                self.room,
                title=say("results.step_back.title"),
                label=say("results.step_back.label"),
                offers=say("results.step_back.offers").split("|"),
                done=lambda reason: self._step(before, reason),
            )
        )

    def _step(self, stage: Stage, reason: str = "") -> None:
        # Another kiosk may have gone on, or noted something, while the question was open.
        if stage is behind(self._stage):
            why = say("results.step_back.why", reason=reason)
            kept = list_before(self.room, self._division, why)
        elif stage is ahead(self._stage) and not self._blocks:
            kept = ()
        else:
            return
        self.room.say(*kept, Step(division=self._division, stage=stage, reason=reason))
