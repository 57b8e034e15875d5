"""The letters on paper: the screen's own typeface, and a wider one for what it lacks.

Both lie in Kivy's folder of fonts. The folder is found without importing Kivy, which would open
its log and read its settings.
"""

from __future__ import annotations

from functools import cache
from importlib.util import find_spec
from pathlib import Path
from unicodedata import category, normalize

from reportlab.pdfbase.pdfmetrics import registerFont
from reportlab.pdfbase.ttfonts import TTFont

UNSEEN = ("Cc", "Cf", "Zl", "Zp")
UNKNOWN = "\ufffd"  # drawn for a character that neither typeface has


@cache
def typeface(name: str) -> TTFont:
    """The font in the file ``name``.ttf, known to reportlab by that name from then on."""
    spec = find_spec("kivy")
    if spec is None or spec.origin is None:
        raise FileNotFoundError("Kivy and its fonts are not installed")
    font = TTFont(name, str(Path(spec.origin).parent / "data" / "fonts" / f"{name}.ttf"))
    registerFont(font)
    return font


def dressed(words: str, *, bold: bool) -> tuple[TTFont, str]:
    """The typeface for ``words``, and what is drawn: controls and line breaks become spaces.

    Words of which our own typeface lacks a single letter stand in the wider one as a whole.
    """
    # Fonts have a letter and its accent in one character.
    plain = "".join(" " if category(c) in UNSEEN else c for c in normalize("NFC", words))
    main = typeface("Roboto-Bold" if bold else "Roboto-Regular")
    if all(ord(c) in main.face.charToGlyph for c in plain):
        return main, plain
    wider = typeface("DejaVuSans")
    return wider, "".join(c if ord(c) in wider.face.charToGlyph else UNKNOWN for c in plain)


def width(words: str, size: float, *, bold: bool = False) -> float:
    """How wide ``words`` stand, in points."""
    font, drawn = dressed(words, bold=bold)
    return float(font.stringWidth(drawn, size))
