"""A window without a screen for tests and pictures: frames by hand, touches, pixels."""

from __future__ import annotations

import os
import sys
from typing import Any

from kiosk.ui import environment

WIDTH, HEIGHT = 1024, 600
LARGEST = (1280, 800)  # an offscreen surface never grows: what lies beyond its first size is noise


def prepare_once() -> None:
    """Set Kivy up for drawing offscreen unless an earlier test has done so."""
    if "kivy" not in sys.modules:
        environment.prepare(width=LARGEST[0], height=LARGEST[1], offscreen=True)
        _hurry()
    elif os.environ.get("SDL_VIDEODRIVER") != "offscreen":
        raise RuntimeError("something imported Kivy before it was set up for drawing offscreen")


def _hurry() -> None:
    """Frames follow each other without waiting for a screen that nobody looks at."""
    from kivy.config import Config

    Config.set("graphics", "maxfps", "0")
    Config.set("graphics", "vsync", "0")


def open_window(width: int = WIDTH, height: int = HEIGHT) -> Any:
    """The one window of this process, emptied, in the wanted size, the theme fitted to it."""
    from kiosk.ui import walk

    window = walk.open_window(width, height)
    frames(2)
    return window


def frames(count: int = 1) -> None:
    """Let ``count`` frames pass."""
    from kivy.base import EventLoop

    for _ in range(count):
        EventLoop.idle()


def unseen_frames(count: int = 1) -> None:
    """As ``frames``, without drawing: nobody looks."""
    from kiosk.ui.walk import unseen_frame

    for _ in range(count):
        unseen_frame()


def touch_at(x: float, y: float) -> Any:
    """A finger over ``x``, ``y``: ``touch_down()`` and ``touch_up()`` are its doings."""
    from kivy.tests.common import UnitTestTouch

    return UnitTestTouch(x, y)


def tap_at(x: float, y: float) -> None:
    """A finger comes down and goes up again."""
    touch = touch_at(x, y)
    touch.touch_down()
    touch.touch_up()


def pixels(window: Any) -> bytes:
    """The window as drawn now, RGBA, from the lowest row up."""
    from kivy.graphics.opengl import GL_RGBA, GL_UNSIGNED_BYTE, glReadPixels

    window.dispatch("on_draw")
    width, height = (int(side) for side in window.size)
    picture: bytes = glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE)
    return picture


def colour_in(picture: bytes, window: Any, x: float, y: float) -> tuple[float, ...]:
    """Red, green and blue from 0 to 1 at a place of a picture of the window."""
    start = 4 * (int(y) * int(window.width) + int(x))
    return tuple(byte / 255 for byte in picture[start : start + 3])


def pixel(window: Any, x: float, y: float) -> tuple[float, ...]:
    """The colour at a place of the window as drawn now."""
    return colour_in(pixels(window), window, x, y)


def save_picture(window: Any, path: str) -> None:
    """Write the window as drawn now to a PNG file."""
    from kivy.graphics.texture import Texture

    size = tuple(int(side) for side in window.size)
    texture = Texture.create(size=size, colorfmt="rgba")
    texture.blit_buffer(pixels(window), colorfmt="rgba", bufferfmt="ubyte")
    texture.save(path, flipped=True)
