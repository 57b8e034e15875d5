"""One kiosk walked by touch on records of its own, drawn only when a test looks at its pixels."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from decimal import Decimal
from pathlib import Path

from drivers.simulated.bench import Bench
from drivers.simulated.line_style import LineStyle
from drivers.simulated.profile import Profile
from drivers.simulated.table import SimulatedTable, simulated_table
from drivers.simulated.things import Cup, Thing
from kiosk.commands.shapes import ShapeFiles
from kiosk.settings import KioskSettings
from kiosk.ui.connection import SIMULATED, TYPED
from kiosk.ui.desk import Desk
from kiosk.ui.kiosk import Kiosk
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.presenters.views import ScoreView
from kiosk.ui.walk import STEP_S, ManualTime, Walker, open_window
from tests.helpers.offscreen import pixels, unseen_frames
from tests.helpers.spared import paint

SMALL, LARGE = (800, 480), (1280, 800)
SEED = 7
EMPTY_S = 2.0  # long enough for the pan to be seen empty
BETWEEN_READINGS_S = 0.1  # the time that one step takes: a walk for the eye takes smaller ones
QUIET = KioskSettings(less_motion=True)
STEADY = Profile(noise=0.0, damping=0.7, filter_seconds=0.05)  # whose digits are known
USUAL = Profile()


class Journey(Walker):
    """A kiosk on the simulated balance, on the records file `records` or on those of a `server`.

    With `real` the kiosk takes the same balance for a real one, found by its port's address;
    with `typed` there is no balance at all, and hands type on the kiosk's keypad. With a `style`
    the balance sends lines, `at_key` only when its print key is pressed; `where` makes the
    kiosk's address of a balance of the table's address.
    """

    def __init__(
        self,
        records: Path,
        *,
        size: tuple[int, int] = SMALL,
        settings: KioskSettings = QUIET,
        profile: Profile = STEADY,
        real: bool = False,
        typed: bool = False,
        style: LineStyle | None = None,
        at_key: bool = False,
        dialect: str | None = None,
        where: Callable[[str], str] | None = None,
        new_code: bool = False,
        server: str | None = None,
    ) -> None:
        self.records = records
        clock = ManualTime()
        window = open_window(*size)
        table = simulated_table(clock=clock, profile=profile, seed=SEED, style=style, at_key=at_key)
        kiosk = Kiosk(
            scale=where(table.address)
            if where
            else (TYPED if typed else table.address if real else SIMULATED),
            dialect=dialect or (None if style is None else "lines"),
            settings=settings,
            shapes=ShapeFiles(records.parent / "balances"),
            records=server or str(records),
            clock=clock,
            table=table,
            new_code=new_code,
        )
        self._closed = False
        super().__init__(kiosk, window, clock)
        self.desk.lock.open_now(clock.now)  # no code: the drawers stay open

    def _frame(self) -> None:
        self._clock.pass_by(BETWEEN_READINGS_S - STEP_S)
        unseen_frames()

    def close(self) -> None:
        """Let go of the kiosk, once."""
        if not self._closed:
            self._closed = True
            super().close()

    # What is to be seen ----------------------------------------------------------------------

    @property
    def desk(self) -> Desk:
        return self.kiosk.station.desk

    @property
    def scene(self) -> Scene:
        return self.kiosk.station.scene()

    @property
    def score(self) -> ScoreView:
        """The sheet of a score, which must be shown."""
        sheet = self.scene.sheet
        assert isinstance(sheet, ScoreView), sheet
        return sheet

    @property
    def seen(self) -> str:
        """All texts in the window in one line, with ordinary spaces."""
        return " | ".join(" ".join(text.split()) for text in self.texts())

    def pixels(self) -> bytes:
        """The window as drawn now."""
        self._frame()
        paint(self.kiosk.frame)
        return pixels(self.window)

    def type(self, text: str) -> None:
        """Type what a display shows on the keypad."""
        for sign in text:
            self.tap(sign)

    def type_mass(self, text: str) -> None:
        """Type what a display shows, and say that it is it."""
        self.type(text)
        self.tap("That is it")

    # Hands at the table ----------------------------------------------------------------------

    @property
    def table(self) -> SimulatedTable:
        assert self.kiosk.table is not None
        return self.kiosk.table

    @property
    def bench(self) -> Bench:
        return self.table.bench

    def put(self, grams: float) -> Thing:
        """Put something of so many grams on the pan, beside what lies there."""
        thing = Cup(grams)
        self.bench.put(thing)
        return thing

    def swap(self, grams: float) -> Thing:
        """Something else on the pan instead of what lies there, with a pause for the hands."""
        self.clear()
        return self.put(grams)

    def clear(self) -> None:
        """Take everything off the pan and wait until it rests."""
        self.bench.lift()
        self.wait(EMPTY_S)

    def tap_thing(self, tile: str) -> None:
        """Tap a tile of the bench, laying it out first."""
        if not self.kiosk.controls.things_out:
            self.tap("Things")
        self.tap(tile)

    def middle_of(self, name: str) -> tuple[float, float]:
        """Where the thing with that text, number or letter is to be touched, in pixels."""
        thing = self.find(name)
        left, bottom, width, height = thing.target()
        x, y = thing.parent.to_window(left + width / 2, bottom + height / 2)
        return float(x), float(y)

    def until_screen(self, screen: str) -> None:
        self.until(lambda: self.screen == screen, f"the screen {screen!r}")

    def until_title(self, words: str) -> None:
        self.until(lambda: words in " ".join(self.title.split()), f"the title {words!r}")

    # Stretches of the way --------------------------------------------------------------------

    def ask_for_cup(self, team: str = "Heron") -> None:
        """From home to the instruction for an empty cup."""
        self.tap("Fill a cup")
        self.tap(team)
        self.until_screen("put on")

    def take_cup(self, team: str = "Heron", grams: float = 12.3) -> int:
        """From home through the weighing of an empty cup, home again; its number."""
        self.ask_for_cup(team)
        self.put(grams)
        self.until(self._weighed, "the weighed cup")
        self.bench.lift()
        self.until_screen("take cup")
        number = max(cup.number for cup in self.desk.facts.cups)
        self.tap("Home")
        self.tap("Leave")
        self.until_screen("home")
        return number

    def _weighed(self) -> bool:
        return "weighs" in self.title or "This is cup" in self.title

    # What is kept ----------------------------------------------------------------------------

    def rows(self, table: str) -> int:
        """How many rows of that table are in the records file."""
        return len(self.kept(f"SELECT 1 FROM {table}"))

    def kept(self, question: str) -> list[tuple[object, ...]]:
        """The answer of the records file to a question in SQL."""
        with closing(sqlite3.connect(self.records)) as file:
            return file.execute(question).fetchall()


def mass(grams: object) -> Decimal:
    """A kept mass, which the file holds as text."""
    return Decimal(str(grams))
