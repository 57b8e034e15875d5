"""A page of paper on which words, lines and tables are put; all lengths in points.

The same words always make the same bytes: nothing of the moment of printing goes into the file.
"""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO

from reportlab.lib.pagesizes import A4, LETTER
from reportlab.pdfgen.canvas import Canvas

from kiosk.reports.fonts import dressed, typeface, width
from kiosk.settings import Paper

SIZES = {Paper.A4: A4, Paper.LETTER: LETTER}
MARGIN = 45.0  # what office printers cannot reach, and a thumb
LEADING = 1.3  # from one line to the next, in sizes of the type
ACROSS_GREY = 0.6
ACROSS_LENGTH = 0.9  # in heights of the page


class Page:
    """A document that is written from the top of its first page; y counts from the bottom.

    The words ``across`` stand behind everything, over the whole page.
    """

    def __init__(self, paper: Paper, *, title: str, across: str = "") -> None:
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
        self._across = across
        self._begin()

    @property
    def right(self) -> float:
        """Where the right margin begins."""
        return self.width - MARGIN

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
        self, x: float, y: float, text: str, size: float, *, bold: bool = False, at: float = 0
    ) -> None:
        """One line of text on the baseline ``y``; ``at``: 0 begins, 0.5 centres, 1 ends at x."""
        x -= at * width(text, size, bold=bold)
        font, drawn = dressed(text, bold=bold)
        self._canvas.setFont(font.fontName, size)
        self._canvas.drawString(x, y, drawn)

    def prose(self, y: float, text: str, size: float, *, bold: bool = False) -> float:
        """Text from margin to margin in as many lines as it needs; the baseline after it."""
        for line in _lines(text, self.right - MARGIN, size, bold=bold):
            self.words(MARGIN, y, line, size, bold=bold)
            y -= LEADING * size
        return y

    def rule(self, y: float, *, dashed: bool = False) -> None:
        """A thin line from edge to edge."""
        self._dash(dashed=dashed)
        self._canvas.line(0, y, self.width, y)

    def dashed_box(self, x: float, y: float, wide: float, high: float) -> None:
        """Where to cut."""
        self._dash(dashed=True)
        self._canvas.rect(x, y, wide, high)

    def bar(self, x: float, y: float, wide: float, high: float) -> None:
        """A black bar."""
        self._canvas.rect(x, y, wide, high, stroke=0, fill=1)

    def _dash(self, *, dashed: bool) -> None:
        self._canvas.setDash([4, 3] if dashed else [])
        self._canvas.setLineWidth(0.7)

    def _begin(self) -> None:
        if self._across:
            self._behind(self._across)

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


def _lines(text: str, room: float, size: float, *, bold: bool) -> Iterator[str]:
    line = ""
    for word in text.split(" "):
        longer = f"{line} {word}" if line else word
        if line and width(longer, size, bold=bold) > room:
            yield line
            longer = word
        *whole, line = _cut(longer, room, size, bold=bold)
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
