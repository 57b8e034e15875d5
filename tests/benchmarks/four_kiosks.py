"""Plays one round at four kiosks on one PostgreSQL, one of them cut off for a while.

    python -m tests.benchmarks.four_kiosks [--teams 20] [--hands 0.05]

The coach's kiosk has teams, keys, clock and results; two tables weigh the cups of one sitting from
both ends; sheets are typed at the second table and at a fourth kiosk. In the middle the second
table is cut off from the server: it goes on weighing and typing. Meanwhile the first table weighs
one of its cups, and notes another one as not handed in; the fourth kiosk types one of its sheets.
Then the line is mended, every sheet is typed again, and results are locked, released, made final.

Each kiosk is a real desk, writer, journal and watcher in this process, without a window; masses
are handed to the desk as a resting pan would. Needs PostgreSQL. Ends with 1 if anything was lost or
is there twice, if a refusal was not told, or if two kiosks have other results.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from kiosk.ui.environment import prepare
from tests.helpers.postgres import Postgres, unavailable


def main() -> None:
    """Play it, print what was seen."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--teams", type=int, default=20, help="8 to 20")
    parser.add_argument("--hands", type=float, default=0.05, help="seconds from note to note")
    options = parser.parse_args()
    why = unavailable()
    if why or not 8 <= options.teams <= 20:
        sys.exit(why or "Between 8 and 20 teams.")
    with TemporaryDirectory(prefix="gramstand-") as folder:
        Path(folder).chmod(0o755)
        prepare(width=1024, height=600, offscreen=True)  # the desk brings Kivy along
        from tests.helpers.round_at_four import RoundAtFour

        server = Postgres(Path(folder) / "server")
        try:
            wrong = list(RoundAtFour(Path(folder), server, options.teams, options.hands).play())
        finally:
            server.stop("immediate")
    for each in wrong:
        print("WRONG:", each)
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
