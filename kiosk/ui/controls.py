"""What fingers reach: the screens' one way to the desk and to the bench."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Any

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.texts import say
from kiosk.ui.desk_base import Place
from kiosk.ui.presenters.bench import BenchModel
from kiosk.ui.presenters.views import ButtonView, SheetView
from kiosk.ui.printing import print_key
from kiosk.ui.station import Station

# Sheets that need their whole width: there the bench panel goes away by itself.
FULL_SHEETS = (
    "home",
    "rows",
    "text",
    "wall",
    "results",
    "results wall",
    "team results",
    "choices",
    "score",
    "key",
    "message",
    "leave",
    "samples",
    "checked",
    "code",
    "guess",
    "hand in",
    "measure",
)


NO_THINGS = ("code", "rows", "text", "paper")  # nothing of the table is of use there


class Controls:
    """Forwards presses; knows of no state but whether the bench panel lies out."""

    def __init__(
        self, station: Station, bench: BenchModel | None, changed: Callable[[], None]
    ) -> None:
        self.desk = station.desk
        self._station = station
        self.bench = bench
        self._changed = changed
        self._screen = ""

    @property
    def things_out(self) -> bool:
        """Whether the panel with the simulated things lies over the sheet."""
        return self.bench is not None and self.bench.out

    def follow(self, sheet: SheetView) -> None:
        """Let the bench know what is being done, and put it away where it would be in the way."""
        if self.bench is None:
            return
        self.bench.procedure = self.desk.procedure
        self.bench.follow()
        if sheet.screen != self._screen and sheet.screen in FULL_SHEETS:
            self.bench.out = False
        self._screen = sheet.screen

    def dressed(self, sheet: SheetView) -> SheetView:
        """The sheet with the key for the bench beside Home, where that place is free."""
        taken = sheet.beside_home is not None or sheet.home is None
        if self.bench is None or taken or sheet.screen in NO_THINGS:
            return sheet
        words = say("button.bench_close" if self.bench.out else "button.bench")
        return replace(sheet, beside_home=ButtonView(text=words, says=PersonEvent(Person.THINGS)))

    def press(self, event: PersonEvent) -> None:
        """A button of a sheet, or under the pan."""
        if event.kind is Person.THINGS:
            assert self.bench is not None
            self.bench.pull_out()
        elif self.desk.failure is None and self.desk.locked:
            self.desk.code_press(event)
        elif self.desk.failure is None and self.desk.teaching is not None:
            self.desk.teach_press(event)
        elif self.desk.failure is None and self.desk.in_room:
            self.desk.room_press(event)
        elif self.desk.place is Place.ROUND_RUNS and event.kind is Person.GO_ON:
            self.desk.let_on()
        elif event.kind is Person.TEACH:
            self.desk.teach_scale()
        elif event.kind is Person.COVER:
            self.desk.cover()
        elif event.kind is Person.MATERIAL:
            self.desk.choose_material()
        elif event.kind is Person.ANSWERS:
            self.desk.as_coach("answer.open", self.desk.show_answers)
        elif event.kind is Person.PRINT:
            print_key(self.desk)
        elif event.kind is Person.CHECK:
            self.desk.check_scale()
        elif event.kind is Person.JARS:
            self.desk.check_jars()
        elif event.kind is Person.OTHER_SCALE:
            self.desk.other_scales()
        elif event.kind is Person.AGAIN:
            self.desk.try_again()
        elif event.kind is Person.HOME and (
            self.desk.procedure is None or self.desk.failure is not None
        ):
            self.desk.go_home()
        else:
            self.desk.press(event)

    def chosen(self, value: Any) -> None:
        """A card was chosen: a pair, a material, a cup."""
        if self.desk.procedure is not None:
            self.desk.press(PersonEvent(Person.CHOOSE, value))
        elif self.desk.place is Place.MATERIALS:
            self.desk.material_chosen(value)
        elif self.desk.place is Place.SCALES:
            self.desk.scale_chosen(value)
        elif self.desk.place is Place.TEAMS:
            self.desk.team_chosen(value)

    def leave_choice(self) -> None:
        """Home or Back on a sheet of cards."""
        if self.desk.procedure is not None:
            self.desk.press(PersonEvent(Person.HOME))
        elif self.desk.place is Place.MATERIALS:
            self.desk.fill_cup()
        elif self.desk.place is Place.SCALES:
            self.desk.open_scale()
        else:
            self.desk.go_home()

    def fill_cup(self) -> None:
        """The thing on the table was tapped."""
        self.desk.fill_cup()

    def guess(self, kind: str) -> None:
        """The jar or the box on the table was tapped."""
        self.desk.guess(kind)

    def hand_in(self, number: int | None) -> None:
        """A cup that is out was tapped."""
        self.desk.hand_in(number)

    def make_count_key(self) -> None:
        """A drawer was tapped."""
        self.desk.as_coach("home.count_key", self.desk.make_count_key)

    def measure_box(self) -> None:
        """A drawer was tapped."""
        self.desk.as_coach("home.measure", self.desk.measure_box)

    def open_scale(self) -> None:
        """A drawer was tapped."""
        self.desk.as_coach("home.scale", self.desk.open_scale)

    def run_round(self) -> None:
        """A drawer was tapped."""
        run = self.desk.run_round
        self.desk.as_coach("home.round", run, helper=partial(run, helper=True))

    def throw_away(self) -> None:
        """A drawer was tapped."""
        self.desk.as_coach("home.throw", self.desk.throw_away)

    def lock_now(self) -> None:
        """The open lock on the table was tapped."""
        self.desk.lock_now()

    def turn_page(self) -> None:
        """More pairs."""
        self.desk.turn_page()

    def pad_key(self, says: str) -> None:
        """A key of the keypad in the pan's place was tapped."""
        self._station.pad_key(says)

    def pad_done(self) -> None:
        """That is what the scale shows."""
        self._station.pad_done()

    def pad_empty(self) -> None:
        """The pan is empty."""
        self._station.pad_empty()

    def letter_chosen(self, letter: str) -> None:
        """A jar letter was tapped."""
        self.desk.letter_chosen(letter)
