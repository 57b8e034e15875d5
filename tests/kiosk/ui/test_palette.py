"""Every pair of text and ground that a widget uses can be read, and marks can be told apart."""

from __future__ import annotations

import pytest

from kiosk.ui.palette import Palette, rgba
from tests.helpers.contrast import contrast

TEXT_ON_GROUND = [
    ("ink", "bench"), ("ink", "sheet"), ("ink", "card"), ("ink", "kraft"), ("ink", "drawer"),
    ("ink", "lamp"), ("ink", "lamp_t"), ("ink", "passed"), ("ink", "hazard"), ("ink", "steel"),
    ("ink", "hair"), ("ink", "act_t"), ("ink", "under_t"), ("ink", "over_t"),
    ("soft", "sheet"), ("soft", "card"), ("soft", "kraft"), ("soft", "bench"),
    ("act", "sheet"), ("act", "card"), ("act", "kraft"), ("act", "act_t"),
    ("card", "act"), ("card", "act_d"),
    ("under_x", "sheet"), ("under_x", "card"), ("over_x", "sheet"), ("over_x", "card"),
    ("on_x", "sheet"), ("on_x", "card"),
    ("sheet", "strip"), ("sheet", "lid"),
]  # fmt: skip
MARKS_ON_GROUND = [
    ("under", "card"), ("over", "card"), ("on", "card"), ("under", "sheet"), ("over", "sheet"),
    ("on", "sheet"), ("line", "sheet"), ("line", "card"), ("act", "sheet"), ("ink", "lamp"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "ground"), TEXT_ON_GROUND)
def test_text_can_be_read(text: str, ground: str) -> None:
    """At least 4.5: WCAG 2.2, success criterion 1.4.3."""
    assert contrast(getattr(Palette, text), getattr(Palette, ground)) >= 4.5


@pytest.mark.parametrize(("mark", "ground"), MARKS_ON_GROUND)
def test_marks_stand_out(mark: str, ground: str) -> None:
    """At least 3: WCAG 2.2, success criterion 1.4.11."""
    assert contrast(getattr(Palette, mark), getattr(Palette, ground)) >= 3


def test_the_formula_against_its_ends() -> None:
    """Black on white is 21:1 by the definition."""
    assert contrast(rgba("#000000"), rgba("#FFFFFF")) == pytest.approx(21)


def test_the_data_colours_are_those_of_okabe_and_ito() -> None:
    """Okabe and Ito, Color Universal Design, 2002: blue, vermillion, bluish green, yellow."""
    names = ("under", "over", "on", "hazard")
    codes = ("#0072B2", "#D55E00", "#009E73", "#F0E442")
    assert [getattr(Palette, name) for name in names] == [rgba(code) for code in codes]
