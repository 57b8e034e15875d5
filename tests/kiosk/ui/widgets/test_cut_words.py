"""Names that are too long for their place keep their beginning and their end."""

from __future__ import annotations

from kiosk.ui.theme import theme
from kiosk.ui.widgets.cut_words import cut_lines, cut_words
from kiosk.ui.widgets.pencil import text_width

LONG = "Great Crested Grebes of Larch Hill Middle School"


def test_what_fits_stays_as_it_is() -> None:
    assert cut_words("Wren", 20, 200) == "Wren"


def test_two_long_names_stay_two() -> None:
    one, other = (cut_words(f"{LONG} {number}", 20, 160) for number in (1, 2))
    assert one != other
    assert one.startswith("Great")
    assert text_width(one, 20, True) <= 160


def test_a_label_of_two_lines_takes_more() -> None:
    line = 1.3 * theme.text_floor
    one, two = (cut_lines(LONG, 200, lines * line) for lines in (1, 2))
    assert len(one) < len(two)
