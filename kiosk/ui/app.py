"""The app: one kiosk in one window, with the keys and the buttons that a window brings along."""

from __future__ import annotations

from collections.abc import Callable

from kivy.app import App
from kivy.core.window import Window

from kiosk.settings import KioskSettings
from kiosk.ui.kiosk import Kiosk
from kiosk.ui.screens.frame import Frame
from kiosk.ui.theme import theme

ESCAPE = 27


class KioskApp(App):
    """Opens the kiosk that `make` gives."""

    title = "Gramstand"

    def __init__(self, make: Callable[[], Kiosk], settings: KioskSettings) -> None:
        super().__init__()
        self._make = make
        self._settings = settings
        self._kiosk: Kiosk | None = None

    def build(self) -> Frame:
        """The frame; everything that may take time waits until it stands."""
        width, height = Window.size
        theme.fit(width, height, self._settings.pixels_per_mm)
        Window.bind(on_resize=self._resized, on_keyboard=self._key)
        self._kiosk = self._make()
        return self._kiosk.frame

    def on_start(self) -> None:
        """Open the records and the balance."""
        if self._kiosk is not None:
            self._kiosk.start()

    def on_stop(self) -> None:
        """What was captured is written down already; the rest is let go."""
        if self._kiosk is not None:
            self._kiosk.stop()

    def open_settings(self, *_args: object) -> bool:
        """Kivy's own settings panel (F1) is not for children."""
        return False

    def _resized(self, _window: object, width: int, height: int) -> None:
        theme.fit(width, height, self._settings.pixels_per_mm)

    def _key(self, _window: object, key: int, *_args: object) -> bool:
        """Escape is the Home button: it asks before it leaves anything."""
        if key == ESCAPE and self._kiosk is not None:
            self._kiosk.home()
            return True
        return False
