"""Keeps Python's search for unused cycles away from the notes of a large round.

The search goes through everything that lives; with tens of thousands of notes it takes a few
tenths of a second in the middle of a press. Notes form no cycles: there is nothing to be found.
"""

from __future__ import annotations

import gc

MANY = 5000  # notes; below that nobody feels it


def set_aside(notes: int) -> None:
    """After so many notes were read: no later search looks at what lives by now."""
    if notes >= MANY:
        gc.collect()  # what is unused by now would never be found again
        gc.freeze()
