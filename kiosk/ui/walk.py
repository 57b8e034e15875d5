"""Walks a kiosk by touch in its own time: for the tour's pictures, and for tests.

Nothing waits: the balance, the pan and Kivy's clock are all moved on by hand, so that a minute at
the table takes a second. Fingers are real touches, sent where a thing is to be seen.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from io import BytesIO
from itertools import count
from pathlib import Path
from typing import Any

from kivy.base import EventLoop, runTouchApp
from kivy.clock import Clock
from kivy.graphics.opengl import GL_RGBA, GL_UNSIGNED_BYTE, glReadPixels
from kivy.graphics.texture import Texture
from kivy.input.motionevent import MotionEvent
from kivy.lang import Builder
from kivy.uix.widget import Widget

from kiosk.ui.kiosk import Kiosk
from kiosk.ui.theme import theme
from kiosk.ui.widgets.tappable import Tappable

STEP_S = 0.03
FRAME_S = 0.02
PATIENCE_S = 30.0  # at the table; after that the walk is stuck
WRITING_S = 10.0  # of real time, for the disk


class StuckError(Exception):
    """What was waited for did not come."""


class ManualTime:
    """A clock that only `pass_by` moves. Kivy's own clock never goes back, so it starts there."""

    def __init__(self) -> None:
        self.now: float = Clock.time()

    def __call__(self) -> float:
        """The time now, in seconds."""
        return self.now

    def pass_by(self, seconds: float) -> None:
        """Let time pass."""
        self.now += seconds


class Finger(MotionEvent):
    """One touch of the glass."""

    _ids = count(1)

    def __init__(self, x: float, y: float, width: float, height: float) -> None:
        super().__init__("finger", next(self._ids), {"x": x / width, "y": y / height})
        self.is_touch = True
        self.type_id = "touch"

    def depack(self, args: dict[str, float]) -> None:
        """Take the place of the touch, as shares of the window."""
        self.sx, self.sy = args["x"], args["y"]
        self.profile = ["pos"]
        super().depack(args)


def open_window(width: int, height: int) -> Any:
    """The one window of this process, emptied and in the wanted size, with its loop not running."""
    EventLoop.ensure_window()
    window = EventLoop.window
    if EventLoop.status != "started":
        runTouchApp(embedded=True)
    for child in list(window.children):
        window.remove_widget(child)
    window.size = (width, height)
    theme.fit(width, height)
    return window


def unseen_frame() -> None:
    """Let a frame pass as Kivy's loop does, without drawing: nobody looks between two pictures."""
    Clock.tick()
    EventLoop.dispatch_input()
    Builder.sync()
    Clock.tick_draw()
    Builder.sync()


class Walker:
    """One kiosk in one window, moved on by hand."""

    def __init__(self, kiosk: Kiosk, window: Any, clock: ManualTime) -> None:
        self.kiosk = kiosk
        self.window = window
        self._clock = clock
        Clock.time = clock
        window.add_widget(kiosk.frame)
        kiosk.start()
        self.until(lambda: kiosk.station.desk.ready, "the records")

    # Time ------------------------------------------------------------------------------------

    def step(self) -> None:
        """A twentieth of a second: balance, pan, whatever is being written down, screen."""
        self._clock.pass_by(STEP_S)
        self.kiosk.step()
        self._let_write()
        self._frame()

    def _frame(self) -> None:
        # Kivy waits for the next frame by this clock: it must not stand still.
        self._clock.pass_by(FRAME_S)
        unseen_frame()

    def _let_write(self) -> None:
        give_up = time.monotonic() + WRITING_S
        while not self.kiosk.station.desk.settled_for_showing:
            if time.monotonic() > give_up:
                raise StuckError("what was captured was not written down")
            time.sleep(0.001)
            self.kiosk.drain()

    def wait(self, seconds: float) -> None:
        """Let so many seconds pass at the table."""
        end = self._clock.now + seconds
        while self._clock.now < end:
            self.step()

    def until(self, happened: Callable[[], bool], what: str, patience: float = PATIENCE_S) -> None:
        """Wait until something has happened. StuckError, naming it, if it does not."""
        end = self._clock.now + patience
        while not happened():
            if self._clock.now > end:
                raise StuckError(f"waited for {what} on the screen {self.screen!r}: {self.texts()}")
            self.step()

    # What is to be seen ----------------------------------------------------------------------

    @property
    def screen(self) -> str:
        """The name of the sheet that is shown."""
        return self.kiosk.station.scene().sheet.screen

    @property
    def title(self) -> str:
        """The instruction that is shown."""
        return self.kiosk.station.scene().sheet.title

    def _seen(self) -> Iterator[Widget]:
        for widget in self.kiosk.frame.walk(restrict=True):
            if widget.opacity and widget.get_parent_window():
                yield widget

    def texts(self) -> list[str]:
        """Every text that widgets in the window show."""
        return [widget.text for widget in self._seen() if getattr(widget, "text", "")]

    def find(self, name: str) -> Tappable:
        """The thing to tap with that text, number or letter. StuckError if there is none."""
        wanted = _plain(name)
        for widget in self._seen():
            if isinstance(widget, Tappable) and widget.tappable and wanted in _names(widget):
                return widget
        raise StuckError(f"nothing called {name!r} on the screen {self.screen!r}: {self.texts()}")

    # Fingers ---------------------------------------------------------------------------------

    def tap(self, name: str) -> None:
        """Tap the middle of the thing with that text, number or letter."""
        self.wait(0.5)  # as long as a hand takes, and as touches after a change are ignored
        left, bottom, width, height = self.find(name).target()
        self.touch(*self.find(name).parent.to_window(left + width / 2, bottom + height / 2))

    def touch(self, x: float, y: float) -> None:
        """Put a finger on the glass at these pixels, and lift it."""
        finger = Finger(x, y, *self.window.size)
        EventLoop.post_dispatch_input("begin", finger)
        self._frame()
        EventLoop.post_dispatch_input("end", finger)
        self.step()

    # Pictures --------------------------------------------------------------------------------

    def picture(self, path: Path) -> None:
        """Save what is shown now as a PNG file. OSError if it cannot be."""
        self._frame()
        self.window.dispatch("on_draw")
        width, height = (int(side) for side in self.window.size)
        pixels = glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE)
        texture = Texture.create(size=(width, height), colorfmt="rgba")
        texture.blit_buffer(pixels, colorfmt="rgba", bufferfmt="ubyte")
        png = BytesIO()
        texture.save(png, flipped=True, fmt="png")
        path.write_bytes(png.getvalue())  # where Kivy itself writes it fails without a word

    def close(self) -> None:
        """Let go of the kiosk; Kivy's time runs on from here by itself."""
        self.kiosk.stop()
        self.window.remove_widget(self.kiosk.frame)
        ahead = self._clock.now - time.perf_counter()
        Clock.time = lambda: time.perf_counter() + ahead


def _plain(text: str) -> str:
    """``text`` with ordinary spaces, on one line."""
    return " ".join(text.split())


def _names(widget: Tappable) -> set[str]:
    names = {_plain(str(getattr(widget, "text", "")))}
    for attribute in ("number", "letter"):
        value = getattr(widget, attribute, None)
        if value:
            names.add(str(int(value)) if attribute == "number" else str(value))
    return names
