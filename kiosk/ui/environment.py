"""Everything Kivy must be told before it is imported; importing this module imports no Kivy.

Kivy reads its environment variables and its ``Config`` once, at import. So ``prepare`` comes
first in every way into the kiosk: the window, the tour, the tests.
"""

from __future__ import annotations

import logging
import os
import sys

_ALWAYS = {
    "KIVY_NO_ARGS": "1",  # the command line is ours
    "KIVY_NO_CONFIG": "1",  # nobody's ~/.kivy/config.ini leaks in, and none is written
    "KIVY_NO_ENV_CONFIG": "1",
    "KIVY_LOG_MODE": "PYTHON",  # leaves the root logger and sys.stderr alone
    "KIVY_NO_FILELOG": "1",
    "KIVY_METRICS_DENSITY": "1",  # one sp is one pixel; the theme does the scaling
    "KIVY_METRICS_FONTSCALE": "1",
    "KIVY_DPI": "96",
    "KIVY_WINDOW": "sdl2",
    "KIVY_TEXT": "sdl2",
    "SDL_TOUCH_MOUSE_EVENTS": "0",  # a finger is a finger, not a second time a mouse
}


def prepare(*, width: int, height: int, full_screen: bool = False, offscreen: bool = False) -> None:
    """Set the environment and Kivy's ``Config`` for one window of ``width`` x ``height`` pixels.

    ``offscreen`` draws without any display and makes no sound (pictures, tests). Raises
    RuntimeError when Kivy has been imported already, because it would not listen any more.
    """
    if "kivy" in sys.modules:
        raise RuntimeError("Kivy is already imported: call prepare() before anything that needs it")
    os.environ.update(_ALWAYS)
    if offscreen:
        os.environ["SDL_VIDEODRIVER"] = "offscreen"
        os.environ["SDL_AUDIODRIVER"] = "dummy"
    _configure(width, height, full_screen)


def _configure(width: int, height: int, full_screen: bool) -> None:
    # Without a file Kivy upgrades its empty configuration and warns about it.
    log = logging.getLogger("kivy")
    log.setLevel(logging.ERROR)
    log.addFilter(_worth_saying)
    from kivy.config import Config

    Config.set("kivy", "log_level", "warning")
    Config.set("kivy", "exit_on_escape", "0")
    graphics = {
        "width": width,
        "height": height,
        "fullscreen": "auto" if full_screen else "0",
        "borderless": int(full_screen),
        "show_cursor": int(not full_screen),
        "allow_screensaver": "0",
        "multisamples": "0",  # shapes carry their own soft edge, the same on every board
    }
    for name, value in graphics.items():
        Config.set("graphics", name, str(value))
    # One provider only, or a tap counts twice; no dots of the simulated second finger.
    Config.remove_section("input")
    Config.add_section("input")
    Config.set("input", "mouse", "mouse,disable_multitouch")


def _worth_saying(record: logging.LogRecord) -> bool:
    """Kivy tries every input library; that one which we never use is missing troubles nobody."""
    return "MTDev" not in record.getMessage()
