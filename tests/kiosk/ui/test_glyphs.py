"""Kivy draws a box for a glyph that its font lacks, so no text may hold such a character."""

from __future__ import annotations

from pathlib import Path

import kivy

from kiosk.texts.catalogue import ENGLISH
from kiosk.texts.numbers import MINUS, THIN_SPACE
from kiosk.ui.theme import theme
from tests.helpers.cmap import characters

FONTS = Path(kivy.kivy_data_dir) / "fonts"
REGULAR, BOLD = (characters(FONTS / f"Roboto-{cut}.ttf") for cut in ("Regular", "Bold"))
LAID_OUT = {"\n"}  # breaks a line, is never drawn


def test_every_character_has_a_glyph() -> None:
    drawn = (REGULAR & BOLD) | LAID_OUT
    lacking = {key: set("".join(entry)) - drawn for key, entry in ENGLISH.items()}
    assert {key: signs for key, signs in lacking.items() if signs} == {}


def test_the_signs_of_numbers_have_glyphs() -> None:
    assert {MINUS, THIN_SPACE} <= REGULAR & BOLD


def test_the_reader_knows_what_is_missing() -> None:
    """Roboto has no tick and no arrow: that is why signs are drawn."""
    assert not {"\u2713", "\u2192", "\u25b2"} & (REGULAR | BOLD)


def test_the_fonts_of_the_theme_exist() -> None:
    assert Path(theme.bold).is_file()
    assert Path(theme.mono).is_file()
