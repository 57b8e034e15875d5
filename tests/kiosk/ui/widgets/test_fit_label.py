"""Text fits its box: it wraps first and is set smaller only then."""

from __future__ import annotations

from typing import Any

from kiosk.ui.theme import theme
from kiosk.ui.widgets.fit_label import FitLabel
from tests.helpers.offscreen import frames


def laid_out(text: str, width: float, height: float, **look: Any) -> FitLabel:
    label = FitLabel(text=text, size_hint=(None, None), size=(width, height))
    label.type_size = look.pop("type_size", 36)
    for name, value in look.items():
        setattr(label, name, value)
    frames(2)
    return label


def test_what_fits_keeps_its_size(window: Any) -> None:
    assert laid_out("Put cup 7 on the pan.", 542, 48).font_size == 36


def test_a_long_line_wraps_without_shrinking(window: Any) -> None:
    label = laid_out("We weigh the empty cup first.", 300, 100)
    assert label.font_size == 36
    assert label.texture_size[1] > 60


def test_what_does_not_fit_wrapped_is_set_smaller(window: Any) -> None:
    label = laid_out("We weigh the empty cup first.", 300, 50)
    assert label.font_size < 36
    assert label.texture_size[1] <= 51


def test_a_word_too_wide_is_set_smaller_instead_of_broken(window: Any) -> None:
    label = laid_out("Oystercatcher", 150, 90)
    assert label.font_size < 36
    assert label.texture_size[1] < 2 * label.font_size


def test_it_never_falls_under_the_smallest_legible_size(window: Any) -> None:
    assert laid_out("far too much to say here " * 10, 100, 30).font_size == theme.text_floor


def test_it_grows_back_when_there_is_room(window: Any) -> None:
    label = laid_out("We weigh the empty cup first.", 300, 50)
    label.size = (600, 60)
    frames(2)
    assert label.font_size == 36


def test_marks_of_bold_are_no_words(window: Any) -> None:
    marked = laid_out("[b]12.3[/b]", 90, 60, markup=True)
    assert marked.font_size == 36
