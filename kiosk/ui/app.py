"""The app: one kiosk in one window, with the keys and the buttons that a window brings along."""

from __future__ import annotations

import logging
import traceback
from collections.abc import Callable

from kivy.app import App
from kivy.base import ExceptionHandler, ExceptionManager
from kivy.core.window import Window

from kiosk.settings import KioskSettings
from kiosk.ui.kiosk import Kiosk
from kiosk.ui.screens.frame import Frame
from kiosk.ui.theme import theme

ESCAPE = 27

_log = logging.getLogger(__name__)


class StayOpen(ExceptionHandler):
    """Keeps the kiosk open through a fault of ours in one picture or one press.

    What was captured is written down before it is shown, so going on loses nothing, while a
    closed window in the middle of an event would. Each fault goes to the log once. `go_on` is
    called after each: Kivy forgets what it was to call again when it fails.
    """

    def __init__(self, go_on: Callable[[], None]) -> None:
        super().__init__()
        self._go_on = go_on
        self._told: set[str] = set()

    def handle_exception(self, exception: BaseException) -> int:
        """Log it, the first time, and go on; what is no fault, such as Ctrl-C, ends the kiosk."""
        if not isinstance(exception, Exception):
            return int(ExceptionManager.RAISE)
        where = "".join(traceback.format_tb(exception.__traceback__)[-1:])
        if where not in self._told:
            self._told.add(where)
            _log.error("the kiosk goes on after a fault", exc_info=exception)
        self._go_on()
        return int(ExceptionManager.PASS)


class KioskApp(App):
    """Opens the kiosk that `make` gives."""

    title = "Gramstand"

    def __init__(self, make: Callable[[], Kiosk], settings: KioskSettings) -> None:
        super().__init__()
        self._make = make
        self._settings = settings
        self._kiosk: Kiosk | None = None
        self._stay_open = StayOpen(self._go_on)

    def build(self) -> Frame:
        """The frame; everything that may take time waits until it stands."""
        width, height = Window.size
        theme.fit(width, height, self._settings.pixels_per_mm)
        Window.bind(on_resize=self._resized, on_keyboard=self._key, on_textinput=self._text)
        self._kiosk = self._make()
        return self._kiosk.frame

    def on_start(self) -> None:
        """Open the records and the balance."""
        ExceptionManager.add_handler(self._stay_open)
        if self._kiosk is not None:
            self._kiosk.start()

    def on_stop(self) -> None:
        """What was captured is written down already; the rest is let go."""
        ExceptionManager.remove_handler(self._stay_open)
        if self._kiosk is not None:
            self._kiosk.stop()

    def _go_on(self) -> None:
        if self._kiosk is not None:
            self._kiosk.go_on()

    def open_settings(self, *_args: object) -> bool:
        """Kivy's own settings panel (F1) is not for children."""
        return False

    def _resized(self, _window: object, width: int, height: int) -> None:
        theme.fit(width, height, self._settings.pixels_per_mm)

    def _key(self, _window: object, key: int, *_args: object) -> bool:
        """Escape is the Home button: it asks before it leaves anything. Digits may be typed."""
        if self._kiosk is None:
            return False
        if key == ESCAPE:
            self._kiosk.home()
            return True
        return self._kiosk.keyboard(key)

    def _text(self, _window: object, text: str) -> None:
        """Words may be typed too, with whatever letters the keyboard has."""
        if self._kiosk is not None:
            self._kiosk.text(text)
