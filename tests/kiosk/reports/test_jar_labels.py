"""Labels for jars carry a letter and nothing to guess by."""

from __future__ import annotations

import pytest

from kiosk.reports.jar_labels import jar_labels
from kiosk.reports.page import MARGIN
from kiosk.settings import Paper
from tests.helpers.papers import baselines, pages, words_on

BOTH = pytest.mark.parametrize("paper", Paper)


@BOTH
def test_a_label_shows_its_letter_and_nothing_else(paper: Paper) -> None:
    assert words_on(jar_labels("W", paper, simulated=False)) == "W"


@BOTH
def test_each_label_of_a_simulated_jar_says_so(paper: Paper) -> None:
    words = words_on(jar_labels("WW", paper, simulated=True)).split()
    assert sorted(words) == ["SIMULATED", "SIMULATED", "W", "W"]


@BOTH
def test_four_labels_go_on_a_page(paper: Paper) -> None:
    data = jar_labels("ABCDE", paper, simulated=False)
    assert [sorted(page.extract_text().split()) for page in pages(data)] == [
        ["A", "B", "C", "D"],
        ["E"],
    ]


def test_labels_stand_apart_on_the_page() -> None:
    (page,) = pages(jar_labels("ABCD", Paper.A4, simulated=False))
    places = {letter: (x, y) for letter, x, y in baselines(page)}
    assert places["A"][1] == places["B"][1] > places["C"][1] == places["D"][1]
    assert places["A"][0] < places["B"][0]


@pytest.mark.parametrize("label", ["W", "26"])
def test_a_label_is_as_wide_as_what_stands_on_it(label: str) -> None:
    (page,) = pages(jar_labels([label, label], Paper.A4, simulated=False))
    (_, first, _), (_, second, _) = baselines(page)
    assert first > MARGIN
    assert second - first == pytest.approx((float(page.mediabox.width) - 2 * MARGIN) / 2)
    assert first - MARGIN == pytest.approx(0.1 * (second - first))  # as much on either side
