"""Words on paper: any name prints, stays on the page, and the fonts travel with the file."""

from __future__ import annotations

from itertools import pairwise
from unicodedata import normalize

import pytest

from kiosk.reports.fonts import UNKNOWN, dressed, width
from kiosk.reports.page import MARGIN, Page, numbered
from kiosk.settings import Paper
from tests.helpers.paper_boxes import touching
from tests.helpers.papers import baselines, fonts, pages, words_on

POINTS_PER_MM = 72 / 25.4
SIZE = 12.0


def printed(*texts: str, across: str = "") -> bytes:
    page = Page(Paper.A4, title="A test", across=across)
    y = 700.0
    for text in texts:
        y = page.prose(y, text, SIZE)
    return page.finish()


@pytest.mark.parametrize(
    ("paper", "size_mm"), [(Paper.A4, (210, 297)), (Paper.LETTER, (215.9, 279.4))]
)
def test_a_page_has_the_size_of_its_paper(paper: Paper, size_mm: tuple[float, float]) -> None:
    """ISO 216 and ANSI/ASME Y14.1."""
    (page,) = pages(Page(paper, title="A test").finish())
    size = (float(page.mediabox.width), float(page.mediabox.height))
    assert size == pytest.approx([side * POINTS_PER_MM for side in size_mm], abs=0.1)


@pytest.mark.parametrize(
    "name",
    [
        "Łódź & Çeşme",
        "Ðorđe Ŋǣß",
        "Nguyễn Thị Ước",
        "Ā̀ ȳ ẅ ṩ",
        "Ɓala Ƙofa",
        "</b><font size=99>",
        "Wren) Tj ET (\\",
        "Жаворонок",
    ],
)
def test_a_name_in_letters_that_need_no_joining_is_printed_as_it_is(name: str) -> None:
    assert normalize("NFC", name) in words_on(printed(name))


def test_an_accent_typed_apart_becomes_one_character() -> None:
    assert "Zoë" in words_on(printed("Zoe\u0308"))


def test_controls_and_line_breaks_become_spaces() -> None:
    assert "a b c d" in words_on(printed("a\nb\x07c\u2028d"))


def test_what_no_font_has_is_marked_and_not_left_out() -> None:
    _, drawn = dressed("Teal \U0001f986!", bold=False)
    assert drawn == f"Teal {UNKNOWN}!"


def test_words_stand_in_one_typeface() -> None:
    font, _ = dressed("Ɓala", bold=True)
    assert font.fontName == "DejaVuSans"


def test_a_lone_surrogate_stops_nothing() -> None:
    assert UNKNOWN in words_on(printed("\ud800"))


def test_every_font_is_in_the_file() -> None:
    data = printed("Wren", "Wren Ɓ", across="ACROSS")
    assert fonts(data) == {"Roboto-Regular": True, "Roboto-Bold": True, "DejaVuSans": True}


def test_the_word_across_is_on_every_page() -> None:
    page = Page(Paper.A4, title="A test", across="ACROSS")
    page.turn()
    assert ["ACROSS" in each.extract_text() for each in pages(page.finish())] == [True, True]


def test_long_words_and_long_texts_stay_between_the_margins() -> None:
    text = "short " + 200 * "W" + " " + 40 * "words and " + "end"
    lines = baselines(pages(printed(text))[0])
    room = Page(Paper.A4, title="A test").right - MARGIN
    assert max(width(line, SIZE) for line, _, _ in lines) <= room
    assert {x for _, x, _ in lines} == {MARGIN}
    assert all(upper > lower for (_, _, upper), (_, _, lower) in pairwise(lines))
    assert "".join(line for line, _, _ in lines).replace(" ", "") == text.replace(" ", "")


def test_the_same_words_make_the_same_bytes() -> None:
    assert printed("Wren") == printed("Wren")


def test_each_page_says_which_of_how_many_it_is() -> None:
    def write(of: int) -> Page:
        page = Page(Paper.A4, title="A test", foot="The round", of=of)
        page.turn()
        page.turn()
        return page

    texts = [page.extract_text().strip().split("\n") for page in pages(numbered(write))]
    assert [sorted(text) for text in texts] == [
        ["The round", f"page {place} of 3"] for place in (1, 2, 3)
    ]


@pytest.mark.parametrize(("name", "lines"), [("Wren", 1), (12 * "Wren ", 1), (40 * "Wren ", 2)])
def test_a_name_is_smaller_before_it_is_broken(name: str, lines: int) -> None:
    page = Page(Paper.A4, title="A test")
    page.name(MARGIN, 700, name.strip(), 20, 300)
    spots = baselines(pages(page.finish())[0])
    assert len(spots) == lines
    assert " ".join(text for text, _, _ in spots) == name.strip()


def test_words_that_lie_over_one_another_are_found() -> None:
    page = Page(Paper.A4, title="A test")
    for x, y, text in ((100, 700, "Wren"), (120, 705, "Teal"), (100, 680, "Robin")):
        page.words(x, y, text, 12)
    assert touching(pages(page.finish())[0]) == [("Wren", "Teal")]
