"""A kiosk that tells what it shows the moment it shows it, until somebody kills it.

python -m tests.helpers.killed_kiosk RECORDS WORDS: an empty cup of 12.3 g is weighed, taken and
handed in with 93.4 g inside. Each sheet that is called WORDS, or has them in its title, is told.
"""

from __future__ import annotations

import sys
from pathlib import Path

from kiosk.ui.presenters.views import ScoreView, SheetView
from tests.helpers.offscreen import prepare_once

EMPTY_G, FILLED_G = 12.3, 105.7


def told(view: SheetView) -> str:
    """What a person reads first on that sheet."""
    return view.points if isinstance(view, ScoreView) else view.title


def main(records: Path, words: str) -> None:
    """Walk, and tell; never ends."""
    prepare_once()
    from tests.helpers.journey import Journey

    journey = Journey(records)
    frame = journey.kiosk.frame
    show = frame.show

    def show_and_tell(view: SheetView) -> None:
        show(view)
        if words in view.title or words == view.screen:
            print(told(view), flush=True)

    frame.show = show_and_tell
    journey.ask_for_cup()
    journey.put(EMPTY_G)
    journey.until_title("weighs")
    journey.bench.lift()
    journey.until_screen("take cup")
    journey.tap("Home")
    journey.tap("Leave")
    journey.tap("1")
    journey.put(FILLED_G)
    while True:
        journey.step()


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2])
