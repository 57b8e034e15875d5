"""What is guessed, in words and as one small picture each, whatever its size."""

from __future__ import annotations

from enum import StrEnum

from kiosk.reports.page import Page
from kiosk.texts import say

LINE = 1.2
TILT = 0.5  # rise of a box's edges, for a run of 1


class Thing(StrEnum):
    """What a score is for."""

    CUP = "cup"
    JAR = "jar"
    BOX = "box"

    @property
    def unit(self) -> str:
        """The unit of its answers."""
        return say(f"paper.unit.{self}")

    def named(self, label: str) -> str:
        """What it is and what stands on it: "Jar K", "Box 2"; "Cup" without a label."""
        return say(f"paper.thing.{self}", label=label).strip()


def picture(page: Page, thing: Thing, x: float, y: float, size: float) -> None:
    """The thing in a square whose lower left corner is (x, y)."""
    {Thing.CUP: _cup, Thing.JAR: _jar, Thing.BOX: _box}[thing](page, x, y, size)


def _cup(page: Page, x: float, y: float, size: float) -> None:
    left, right, foot = x + 0.02 * size, x + 0.98 * size, 0.12 * size
    page.stroke(
        (left, y + size), (x + foot, y), (x + size - foot, y), (right, y + size), thick=LINE
    )
    page.stroke((x - 0.05 * size, y + size), (x + 1.05 * size, y + size), thick=3 * LINE)


def _jar(page: Page, x: float, y: float, size: float) -> None:
    left, right, neck = x + 0.18 * size, x + 0.82 * size, y + 0.76 * size
    page.stroke((left, neck), (left, y), (right, y), (right, neck), (left, neck), thick=LINE)
    page.bar(x + 0.24 * size, y + 0.8 * size, 0.52 * size, 0.2 * size)


def _box(page: Page, x: float, y: float, size: float) -> None:
    middle, rise = x + size / 2, TILT * size / 2
    left, right, high = x + 0.04 * size, x + 0.96 * size, size - 2 * rise
    low = y + rise
    page.stroke(
        (middle, y), (right, low), (right, low + high), (middle, y + size), (left, low + high),
        (left, low), (middle, y), (middle, y + high), (left, low + high), thick=LINE,
    )  # fmt: skip
    page.stroke((middle, y + high), (right, low + high), thick=LINE)
