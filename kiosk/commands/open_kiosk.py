"""``gramstand`` without a command: opens the kiosk."""

from __future__ import annotations

import argparse
import os
import re
import sys
from pathlib import Path

from drivers.balance import open_balance
from drivers.errors import BadAddress
from drivers.recorder import Recorder
from kiosk.commands.console import BadInputError, complain
from kiosk.commands.recording import recording_into
from kiosk.commands.settings_file import read_settings
from kiosk.commands.shapes import ShapeFiles, use_kept_shapes
from kiosk.settings import KioskSettings
from kiosk.texts import say

HELP: str = say("kiosk.help")
# As kiosk.ui.connection calls them, which brings ports along.
SIMULATED, TYPED, AUTO = "simulated", "typed", "auto"
DEFAULT_SIZE = (1024, 600)
SMALLEST = (640, 384)


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of the kiosk."""
    parser.add_argument("--scale", default=SIMULATED, metavar="WHERE", help=say("kiosk.scale"))
    parser.add_argument("--dialect", metavar="NAME", help=say("listen.dialect"))
    parser.add_argument("--port-settings", metavar="9600-8N1", help=say("listen.port_settings"))
    parser.add_argument("--records", metavar="WHERE", help=say("kiosk.records"))
    parser.add_argument("--record", type=Path, metavar="FILE", help=say("recording.option"))
    parser.add_argument("--new-code", action="store_true", help=say("kiosk.new_code"))
    shape = parser.add_mutually_exclusive_group()
    shape.add_argument("--window", type=window_size, metavar="WxH", help=say("kiosk.window"))
    shape.add_argument("--full-screen", action="store_true", help=say("kiosk.full_screen"))


def window_size(text: str) -> tuple[int, int]:
    """``800x480`` as numbers; ArgumentTypeError, with one sentence, for anything else."""
    match = re.fullmatch(r"([0-9]{3,5})[xX×]([0-9]{3,5})", text)
    if match is None:
        raise argparse.ArgumentTypeError(say("kiosk.bad_window", text=repr(text)))
    width, height = int(match[1]), int(match[2])
    if width < SMALLEST[0] or height < SMALLEST[1]:
        raise argparse.ArgumentTypeError(
            say("kiosk.small_window", width=SMALLEST[0], height=SMALLEST[1])
        )
    return width, height


def run(options: argparse.Namespace) -> int:
    """Open the kiosk; 0 when it was closed, 1 when no window can be opened."""
    settings = read_settings()
    use_kept_shapes()
    if options.scale not in (AUTO, TYPED):
        check_scale(options.scale, options.dialect, options.port_settings)
    with recording_into(options.record) as recorder:
        return _opened(options, settings, recorder)


def _opened(options: argparse.Namespace, settings: KioskSettings, recorder: Recorder | None) -> int:
    unseen = not has_display()
    if unseen:
        complain(say("kiosk.unseen"))
    width, height = options.window or DEFAULT_SIZE
    if not prepare_window(width, height, full_screen=options.full_screen, offscreen=unseen):
        return 1
    from kiosk.ui.app import KioskApp
    from kiosk.ui.kiosk import Kiosk

    def make() -> Kiosk:
        return Kiosk(
            scale=options.scale,
            settings=settings,
            shapes=ShapeFiles(),
            dialect=options.dialect,
            port_settings=options.port_settings,
            records=options.records,
            new_code=options.new_code,
            recorder=recorder,
        )

    KioskApp(make, settings).run()
    return 0


def check_scale(where: str, dialect: str | None, port_settings: str | None) -> None:
    """Raise BadInputError for words that name no balance, before any window stands."""
    try:
        open_balance(
            where, dialect=dialect, port_settings=port_settings, publish=lambda _event: None
        ).close()
    except BadAddress as error:
        raise BadInputError(str(error)) from error


def has_display() -> bool:
    """Whether there is a screen to draw on; off Linux there always is."""
    if not sys.platform.startswith("linux") or os.environ.get("SDL_VIDEODRIVER"):
        return True
    return bool(
        os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY") or os.path.exists("/dev/dri")
    )


def prepare_window(width: int, height: int, *, full_screen: bool, offscreen: bool) -> bool:
    """Make Kivy ready and its window; False, with a sentence, when the system lacks something."""
    from kiosk.ui.environment import prepare

    prepare(width=width, height=height, full_screen=full_screen, offscreen=offscreen)
    try:
        from kivy.core.window import Window
    except (ImportError, SystemExit) as error:
        complain(say("kiosk.no_window", why=error))
        return False
    if Window is None:
        complain(say("kiosk.no_window", why=say("kiosk.no_graphics")))
        return False
    return True
