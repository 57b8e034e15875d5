"""A page of paper on which words, lines and tables are put; all lengths in points.

The same words always make the same bytes: nothing of the moment of printing goes into the file.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from io import BytesIO
from itertools import pairwise

from reportlab.lib.pagesizes import A4, LETTER
from reportlab.pdfgen.canvas import Canvas

from kiosk.reports.fonts import dressed, typeface, width
from kiosk.settings import Paper
from kiosk.texts import say

SIZES = {Paper.A4: A4, Paper.LETTER: LETTER}
MARGIN = 45.0  # what office printers cannot reach, and a thumb
LEADING = 1.3  # from one line to the next, in sizes of the type
ACROSS_GREY = 0.6
ACROSS_LENGTH = 0.9  # in heights of the page
FOOT = 8.5  # size of the words at the foot
LEAST = 8.0  # a smaller name is set in two lines


class Page:
    """A document that is written from the top of its first page; y counts from the bottom.

    The words ``across`` stand behind everything, over the whole page. ``foot`` stands below every
    page, and which of how many it is when ``of`` is not 0; see ``numbered``.
    """

    def __init__(
        self, paper: Paper, *, title: str, across: str = "", foot: str = "", of: int = 0
    ) -> None:
        self.width, self.height = SIZES[paper]
        self._bytes = BytesIO()
        self._canvas = Canvas(
            self._bytes,
            pagesize=SIZES[paper],
            invariant=1,
            initialFontName=typeface("Roboto-Regular").fontName,  # type: ignore[arg-type]  # a name
        )
        self._canvas.setTitle(title)
        self._canvas.setAuthor("Gramstand")
        self._canvas.setCreator("Gramstand")
        self._across, self._foot, self._of = across, foot, of
        self.count = 0
        self._begin()

    @property
    def right(self) -> float:
        """Where the right margin begins."""
        return self.width - MARGIN

    @property
    def top(self) -> float:
        """Where the top margin begins."""
        return self.height - MARGIN

    def finish(self) -> bytes:
        """The whole document."""
        self._canvas.showPage()
        self._canvas.save()
        return self._bytes.getvalue()

    def turn(self) -> None:
        """Go on with the next page."""
        self._canvas.showPage()
        self._begin()

    def words(
        self,
        x: float,
        y: float,
        text: str,
        size: float,
        *,
        bold: bool = False,
        at: float = 0,
        white: bool = False,
    ) -> None:
        """One line of text on the baseline ``y``; ``at``: 0 begins, 0.5 centres, 1 ends at x."""
        x -= at * width(text, size, bold=bold)
        font, drawn = dressed(text, bold=bold)
        self._canvas.setFont(font.fontName, size)
        self._canvas.setFillGray(1 if white else 0)
        self._canvas.drawString(x, y, drawn)
        self._canvas.setFillGray(0)

    def name(
        self, x: float, y: float, text: str, size: float, wide: float, *, bold: bool = False
    ) -> None:
        """A name whole in ``wide`` points: smaller if it is long, in two lines if it is longer."""
        size, lines = _fitted(text, size, wide, bold=bold)
        y += (len(lines) - 1) * LEADING * size / 2
        for line in lines:
            self.words(x, y, line, size, bold=bold)
            y -= LEADING * size

    def prose(
        self, y: float, text: str, size: float, *, bold: bool = False, indent: float = 0
    ) -> float:
        """Text from margin to margin in as many lines as it needs; the baseline after it."""
        left = MARGIN + indent
        for line in self.lines(text, size, bold=bold, indent=indent):
            self.words(left, y, line, size, bold=bold)
            y -= LEADING * size
        return y

    def lines(
        self, text: str, size: float, *, bold: bool = False, indent: float = 0
    ) -> tuple[str, ...]:
        """The lines of ``prose``."""
        return tuple(_lines(text, self.right - MARGIN - indent, size, bold=bold))

    def room(self, text: str, size: float, wide: float, *, bold: bool = False) -> float:
        """The size, up to ``size``, at which ``text`` is not wider than ``wide``."""
        one = width(text, 1, bold=bold)
        return min(size, wide / one) if one else size

    def rule(self, y: float, *, dashed: bool = False) -> None:
        """A thin line from edge to edge."""
        self._dash(dashed=dashed)
        self._canvas.line(0, y, self.width, y)

    def dashed_box(self, x: float, y: float, wide: float, high: float) -> None:
        """Where to cut."""
        self._dash(dashed=True)
        self._canvas.rect(x, y, wide, high)

    def box(self, x: float, y: float, wide: float, high: float) -> None:
        """An empty box to write in."""
        self._dash(dashed=False)
        self._canvas.rect(x, y, wide, high)

    def stroke(self, *places: tuple[float, float], thick: float = 0.7) -> None:
        """A line through ``places``."""
        self._dash(dashed=False)
        self._canvas.setLineWidth(thick)
        for (x1, y1), (x2, y2) in pairwise(places):
            self._canvas.line(x1, y1, x2, y2)

    def filled(self, *corners: tuple[float, float]) -> None:
        """A black shape."""
        path = self._canvas.beginPath()
        path.moveTo(*corners[0])
        for corner in corners[1:]:
            path.lineTo(*corner)
        path.close()
        self._canvas.drawPath(path, stroke=0, fill=1)

    def disc(self, x: float, y: float, radius: float) -> None:
        """A black disc around a place."""
        self._canvas.circle(x, y, radius, stroke=0, fill=1)

    def bar(self, x: float, y: float, wide: float, high: float) -> None:
        """A black bar."""
        self._canvas.rect(x, y, wide, high, stroke=0, fill=1)

    def _dash(self, *, dashed: bool) -> None:
        self._canvas.setDash([4, 3] if dashed else [])
        self._canvas.setLineWidth(0.7)

    def _begin(self) -> None:
        self.count += 1
        if self._across:
            self._behind(self._across)
        y = MARGIN - 2 * FOOT
        if self._of:
            pages = say("paper.page", page=self.count, pages=self._of)
            self.words(self.right, y, pages, FOOT, at=1)
        if self._foot:
            self.name(MARGIN, y, self._foot, FOOT, 0.8 * (self.right - MARGIN))

    def _behind(self, text: str) -> None:
        canvas, length = self._canvas, ACROSS_LENGTH * self.height
        size = length / width(text, 1, bold=True)
        canvas.saveState()
        canvas.translate(self.width / 2, self.height / 2)
        canvas.rotate(55)
        # Hollow letters stay visible on any printer and hide nothing of what stands over them.
        canvas.setStrokeGray(ACROSS_GREY)
        font, drawn = dressed(text, bold=True)
        canvas.setFont(font.fontName, size)
        canvas.drawString(-length / 2, -size / 3, drawn, mode=1)
        canvas.restoreState()


def numbered(write: Callable[[int], Page]) -> bytes:
    """A document whose pages say of how many they are; ``write`` writes it for a number of them."""
    page = write(1)
    return (page if page.count == 1 else write(page.count)).finish()


def _fitted(text: str, size: float, wide: float, *, bold: bool) -> tuple[float, list[str]]:
    """The size of a name and its one or two lines."""
    one = width(text, 1, bold=bold)
    if one * LEAST <= wide:
        return min(size, wide / (one or 1)), [text]
    size = LEAST
    while len(lines := list(_lines(text, wide, size, bold=bold))) > 2:
        size *= 0.95
    return size, lines


def _lines(text: str, room: float, size: float, *, bold: bool) -> Iterator[str]:
    line = ""
    for word in text.split(" "):
        longer = f"{line} {word}" if line else word
        if width(longer, size, bold=bold) <= room:
            line = longer
            continue
        if line:
            yield line
        *whole, line = _cut(word, room, size, bold=bold)
        yield from whole
    yield line


def _cut(word: str, room: float, size: float, *, bold: bool) -> list[str]:
    """A word in as many parts as it needs to fit, each as long as can be."""
    parts = [""]
    for character in word:
        if parts[-1] and width(parts[-1] + character, size, bold=bold) > room:
            parts.append("")
        parts[-1] += character
    return parts
