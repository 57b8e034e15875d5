"""A tile of the bench as a finished view."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TileView:
    """One thing, or one thing to do with it."""

    key: str
    text: str
    art: str = "none"
    on_pan: bool = False
    off: bool = False
