"""The whole picture: strip, pan at the left, sheet at the right, the bench panel over it.

The pan stands once, always in the same place; only what lies on the sheet changes.
"""

from __future__ import annotations

from typing import Any

from kivy.animation import Animation
from kivy.clock import Clock
from kivy.input import MotionEvent
from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from kiosk.ui import kv_files
from kiosk.ui.presenters.bench import BenchView
from kiosk.ui.presenters.views import ButtonView, GuessView, PanView, SheetView, StripView
from kiosk.ui.screens.answer import AnswerSheet
from kiosk.ui.screens.balance_check import CheckedSheet, CheckSheet
from kiosk.ui.screens.bench_panel import ThingsPanel
from kiosk.ui.screens.choices import ChoicesSheet
from kiosk.ui.screens.code import CodeSheet
from kiosk.ui.screens.compact import CompactSheet
from kiosk.ui.screens.guess import GuessSheet
from kiosk.ui.screens.hand_in import HandInSheet
from kiosk.ui.screens.home import HomeSheet
from kiosk.ui.screens.key import KeySheet
from kiosk.ui.screens.leave import LeaveSheet
from kiosk.ui.screens.measure import ContainerPlace, MeasureSheet
from kiosk.ui.screens.message import MessageSheet
from kiosk.ui.screens.paper import PaperSheet
from kiosk.ui.screens.parts import SheetContent
from kiosk.ui.screens.pour import PourSheet
from kiosk.ui.screens.put_on import PutOnSheet
from kiosk.ui.screens.question import QuestionSheet
from kiosk.ui.screens.queue import QueueSheet
from kiosk.ui.screens.results import ResultsSheet, ResultsWallSheet
from kiosk.ui.screens.rows import RowsSheet
from kiosk.ui.screens.samples import SamplesSheet
from kiosk.ui.screens.scale import ScaleSheet
from kiosk.ui.screens.score import ScoreSheet
from kiosk.ui.screens.take_cup import TakeCupSheet
from kiosk.ui.screens.teach import TeachSheet
from kiosk.ui.screens.team_results import TeamResultsSheet
from kiosk.ui.screens.text import TextSheet
from kiosk.ui.screens.trouble import TroubleSheet
from kiosk.ui.screens.typing_pad import TypingPad
from kiosk.ui.screens.wall import WallSheet
from kiosk.ui.theme import theme
from kiosk.ui.widgets.sheet import Bench

kv_files.load(__file__)

SHEETS: dict[str, type[SheetContent]] = {
    "home": HomeSheet,
    "choices": ChoicesSheet,
    "put on": PutOnSheet,
    "take cup": TakeCupSheet,
    "hand in": HandInSheet,
    "score": ScoreSheet,
    "leave": LeaveSheet,
    "question": QuestionSheet,
    "trouble": TroubleSheet,
    "samples": SamplesSheet,
    "pour": PourSheet,
    "key": KeySheet,
    "message": MessageSheet,
    "scale": ScaleSheet,
    "teach": TeachSheet,
    "code": CodeSheet,
    "guess": GuessSheet,
    "measure": MeasureSheet,
    "answer": AnswerSheet,
    "check": CheckSheet,
    "checked": CheckedSheet,
    "rows": RowsSheet,
    "paper": PaperSheet,
    "text": TextSheet,
    "queue": QueueSheet,
    "wall": WallSheet,
    "results": ResultsSheet,
    "results wall": ResultsWallSheet,
    "team results": TeamResultsSheet,
}
FOR_THE_WALL = ("wall", "results wall")  # without the strip
WIDE = (  # without the pan
    "home", "choices", "answer", "rows", "text", "paper", "results", "team results", *FOR_THE_WALL,
)  # fmt: skip
SLIDE_S, SLIDE_UNITS = 0.18, 40
HOLDOVER_S = 0.25  # children touch again where the last target was, after the screen has changed


class Frame(Bench):
    """Shows views; what is pressed goes to the desk and to the bench."""

    desk = ObjectProperty(None, allownone=True)
    bench = ObjectProperty(None, allownone=True)
    strip_view = ObjectProperty(StripView(), rebind=True)
    pan_view = ObjectProperty(PanView(), rebind=True)
    pad_view = ObjectProperty(None, allownone=True, rebind=True)
    bench_view = ObjectProperty(BenchView(), rebind=True)
    home_button = ObjectProperty(None, allownone=True, rebind=True)
    beside_button = ObjectProperty(None, allownone=True, rebind=True)
    spread = BooleanProperty(True)
    for_the_wall = BooleanProperty(False)  # without the strip
    container = ObjectProperty(None, allownone=True, rebind=True)  # in the pan's place
    guessed = StringProperty("")  # letter or number of what stands in the pan's place
    guessed_kind = StringProperty("jar")
    things_out = BooleanProperty(False)

    def __init__(self, **kwargs: Any) -> None:
        self._sheets: dict[str, SheetContent] = {}
        self._compact: SheetContent | None = None
        self._shown: SheetContent | None = None
        self._changed_at = float("-inf")
        self._panel: ThingsPanel | None = None
        self._pad: TypingPad | None = None
        self._container: ContainerPlace | None = None
        super().__init__(**kwargs)

    def show(self, view: SheetView) -> None:
        """Bring the sheet of this view to the front and let it follow the view."""
        compact = self.things_out and view.screen not in WIDE
        sheet = self._compact_sheet() if compact else self._sheet(view.screen)
        self.spread = view.screen in WIDE
        self.for_the_wall = view.screen in FOR_THE_WALL
        self.guessed = view.letter if isinstance(view, GuessView) else ""
        self.guessed_kind = view.kind if isinstance(view, GuessView) else "jar"
        self.container = view.container
        self.home_button = None if self.spread else view.home
        self.beside_button = None if self.spread else view.beside_home
        sheet.view = view
        if sheet is not self._shown:
            self._bring(sheet)

    def _sheet(self, screen: str) -> SheetContent:
        if screen not in self._sheets:
            self._sheets[screen] = SHEETS[screen](desk=self.desk)
        return self._sheets[screen]

    def _compact_sheet(self) -> SheetContent:
        if self._compact is None:
            self._compact = CompactSheet(desk=self.desk)
        return self._compact

    def _bring(self, sheet: SheetContent) -> None:
        holder = self.ids.wide_holder if self.spread else self.ids.sheet_holder
        for place in (self.ids.wide_holder, self.ids.sheet_holder):
            place.clear_widgets()
        holder.add_widget(sheet)
        self._shown = sheet
        self._changed_at = Clock.get_time()
        holder.slide = theme.px(SLIDE_UNITS) if theme.time(SLIDE_S) else 0
        Animation.cancel_all(holder, "slide")
        if holder.slide:
            Animation(slide=0, duration=SLIDE_S, transition="out_quad").start(holder)

    def on_bench(self, *_: Any) -> None:
        """Make the panel with the things once there is a bench."""
        if self.bench is not None and self._panel is None:
            self._panel = ThingsPanel(bench=self.bench, pos_hint={"x": 0, "y": 0})
            self.fbind("bench_view", self._show_bench)

    def _show_bench(self, *_: Any) -> None:
        assert self._panel is not None
        self._panel.view = self.bench_view

    def on_pad_view(self, *_: Any) -> None:
        """Lay the keypad in the pan's place, or take it away."""
        place = self.ids.pad_holder
        if self.pad_view is None:
            place.clear_widgets()
            return
        if self._pad is None:
            self._pad = TypingPad(desk=self.desk, pos_hint={"x": 0, "y": 0})
        self._pad.view = self.pad_view
        if self._pad.parent is None:
            place.add_widget(self._pad)

    def on_container(self, *_: Any) -> None:
        """Stand the container in the pan's place, or take it away."""
        place = self.ids.container_holder
        if self.container is None:
            place.clear_widgets()
            return
        if self._container is None:
            self._container = ContainerPlace(pos_hint={"x": 0, "y": 0})
        self._container.view = self.container
        if self._container.parent is None:
            place.add_widget(self._container)

    def on_things_out(self, *_: Any) -> None:
        """Lay the panel over the sheet, or put it away."""
        place = self.ids.panel_holder
        place.clear_widgets()
        if self.things_out and self._panel is not None:
            self._panel.view = self.bench_view
            place.add_widget(self._panel)

    def press(self, button: ButtonView | None) -> None:
        """One of the two buttons under the pan was pressed."""
        if button is not None and button.says is not None:
            self.desk.press(button.says)

    def on_touch_down(self, touch: MotionEvent) -> bool:
        """Swallow a touch that was meant for what stood here a moment ago."""
        if Clock.get_time() - self._changed_at < HOLDOVER_S:
            return True
        return bool(super().on_touch_down(touch))
