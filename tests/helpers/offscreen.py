"""A window without a screen for tests and pictures: frames by hand, touches, pixels."""

from __future__ import annotations

import sys
from typing import Any

from kiosk.ui import environment

WIDTH, HEIGHT = 1024, 600


def prepare_once(width: int = WIDTH, height: int = HEIGHT) -> None:
    """Set Kivy up for drawing offscreen unless an earlier test has done so."""
    if "kivy" not in sys.modules:
        environment.prepare(width=width, height=height, offscreen=True)


def open_window(width: int = WIDTH, height: int = HEIGHT) -> Any:
    """The one window of this process, emptied, in the wanted size, the theme fitted to it."""
    from kivy.base import EventLoop, runTouchApp

    from kiosk.ui.theme import theme

    EventLoop.ensure_window()
    window = EventLoop.window
    if EventLoop.status != "started":
        # Started without its loop: frames come from frames().
        runTouchApp(embedded=True)
    for child in list(window.children):
        window.remove_widget(child)
    window.size = (width, height)
    theme.fit(width, height)
    frames(2)
    return window


def frames(count: int = 1) -> None:
    """Let ``count`` frames pass."""
    from kivy.base import EventLoop

    for _ in range(count):
        EventLoop.idle()


def pixels(window: Any) -> bytes:
    """The window as drawn now, RGBA, from the lowest row up."""
    from kivy.graphics.opengl import GL_RGBA, GL_UNSIGNED_BYTE, glReadPixels

    window.dispatch("on_draw")
    width, height = (int(side) for side in window.size)
    picture: bytes = glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE)
    return picture


def save_picture(window: Any, path: str) -> None:
    """Write the window as drawn now to a PNG file."""
    from kivy.graphics.texture import Texture

    size = tuple(int(side) for side in window.size)
    texture = Texture.create(size=size, colorfmt="rgba")
    texture.blit_buffer(pixels(window), colorfmt="rgba", bufferfmt="ubyte")
    texture.save(path, flipped=True)
