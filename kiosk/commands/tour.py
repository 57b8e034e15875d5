"""``gramstand tour``: walks the kiosk by touch on the simulated balance and saves its pictures."""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from kiosk.commands.console import complain, emit, tell
from kiosk.commands.open_kiosk import prepare_window, window_size
from kiosk.commands.shapes import ShapeFiles
from kiosk.settings import KioskSettings
from kiosk.texts import plural, say

if TYPE_CHECKING:
    from kiosk.ui.walk import Walker

HELP: str = say("tour.help")
SEED = 7
DEFAULT_SIZE = (1024, 600)


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("--pictures", required=True, metavar="FOLDER", type=Path,
                        help=say("tour.pictures"))  # fmt: skip
    parser.add_argument("--size", type=window_size, default=DEFAULT_SIZE, metavar="WxH",
                        help=say("tour.size"))  # fmt: skip
    parser.add_argument("--records", metavar="WHERE", help=say("tour.records"))


def run(options: argparse.Namespace) -> int:
    """Walk and save; 0, or 1 with a sentence when a picture cannot be had."""
    folder: Path = options.pictures
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        complain(say("tour.folder", folder=folder, why=error.strerror or error))
        return 1
    width, height = options.size
    if not prepare_window(width, height, full_screen=False, offscreen=True):
        return 1
    saved = 0
    from kiosk.ui.tour import STATIONS
    from kiosk.ui.walk import StuckError

    try:
        with _walker(width, height, options.records) as walker:
            for name, go_there in STATIONS:
                go_there(walker)
                path = folder / f"{name}.png"
                walker.picture(path)
                saved += 1
                if options.json:
                    emit({"picture": str(path), "screen": walker.screen, "title": walker.title})
    except OSError as error:
        complain(say("tour.folder", folder=folder, why=error.strerror or error))
        return 1
    except StuckError as error:
        complain(say("tour.stuck", why=error))
        return 1
    if not options.json:
        tell(plural("tour.saved", saved, folder=folder))
    return 0


@contextmanager
def _walker(width: int, height: int, records: str | None) -> Iterator[Walker]:
    from drivers.simulated.table import simulated_table
    from kiosk.ui.connection import SIMULATED
    from kiosk.ui.kiosk import Kiosk
    from kiosk.ui.walk import ManualTime, Walker, open_window

    clock = ManualTime()
    window = open_window(width, height)
    with tempfile.TemporaryDirectory() as folder:
        kiosk = Kiosk(
            scale=SIMULATED,
            settings=KioskSettings(less_motion=True),
            shapes=ShapeFiles(Path(folder)),
            records=records or str(Path(folder) / "tour.sqlite"),
            clock=clock,
            table=simulated_table(clock=clock, seed=SEED),
        )
        walker = Walker(kiosk, window, clock)
        try:
            yield walker
        finally:
            walker.close()
