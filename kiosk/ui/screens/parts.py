"""What the sheets share: the trail above, the instruction, the row of buttons below."""

from __future__ import annotations

from typing import Any

from kivy.properties import ObjectProperty
from kivy.uix.boxlayout import BoxLayout
from kivy.uix.floatlayout import FloatLayout
from kivy.uix.label import Label
from kivy.uix.widget import Widget

from kiosk.ui import kv_files
from kiosk.ui.presenters.views import SheetView

kv_files.load(__file__)


class Title(Label):
    """The one instruction, as high as its words need."""


class Prose(Label):
    """A line of running text, as high as its words need."""


class ButtonRow(BoxLayout):
    """The main button and, at its left, a second one; either may be missing.

    Dispatches ``on_press`` with what the pressed button says.
    """

    main = ObjectProperty(None, allownone=True)
    second = ObjectProperty(None, allownone=True)

    def __init__(self, **kwargs: Any) -> None:
        self.register_event_type("on_press")
        self._buttons: dict[str, Widget] = {}
        super().__init__(**kwargs)

    def on_kv_post(self, *_: Any) -> None:
        """Take hold of the buttons that the rule made."""
        # A button out of the tree is held here only; ids would let it go.
        self._buttons = {name: self.ids[name].__self__ for name in ("second", "main")}
        self._show()

    def on_press(self, says: object) -> None:
        """Nothing by itself."""

    def on_main(self, *_: Any) -> None:
        """Follow the view."""
        self._show()

    def on_second(self, *_: Any) -> None:
        """Follow the view."""
        self._show()

    def _show(self) -> None:
        if not self._buttons:
            return
        second, main = self._buttons["second"], self._buttons["main"]
        if self.second is not None:
            second.text = self.second.text
            second.sign = self.second.sign or None
            second.disabled = self.second.state == "off"
        if self.main is not None:
            main.text = self.main.text
            main.sign = self.main.sign or "arrow"
            main.state_name = self.main.state
        shown = {second: self.second, main: self.main}
        wanted = [widget for widget, view in shown.items() if view is not None]
        if list(reversed(self.children)) != wanted:
            self.clear_widgets()
            for widget in wanted:
                self.add_widget(widget)

    def pressed(self, which: str) -> None:
        """Say what the button says, if it says anything."""
        button = getattr(self, which)
        if button is not None and button.says is not None:
            self.dispatch("on_press", button.says)


class SheetContent(FloatLayout):
    """What lies on a sheet: follows ``view``, tells the ``desk`` what was pressed."""

    view = ObjectProperty(SheetView(screen=""), rebind=True)
    desk = ObjectProperty(None, allownone=True)


class StepSheet(SheetContent):
    """A sheet with the trail at its top; what a rule adds stands below in one column."""

    column = ObjectProperty(None, allownone=True)

    def add_widget(self, widget: Widget, *args: Any, **kwargs: Any) -> None:
        """Put what comes after the trail into the column."""
        if self.column is None:
            super().add_widget(widget, *args, **kwargs)
        else:
            self.column.add_widget(widget, *args, **kwargs)
