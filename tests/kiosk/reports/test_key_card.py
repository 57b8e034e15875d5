"""The coach's card: the value with its interval and its evidence, hidden when folded."""

from __future__ import annotations

import pytest

from kiosk.evidence import Source
from kiosk.reports.card import SMALL, STRIP
from kiosk.reports.fonts import width
from kiosk.reports.key_card import key_card
from kiosk.reports.page import MARGIN
from kiosk.settings import Paper
from kiosk.texts import say
from tests.helpers.papers import KEY_ID, baselines, kept_key, pages, words_on

BOTH = pytest.mark.parametrize("paper", Paper)
# As many as one key can have at a time.
EVERY_WARNING = [
    say("count.warning.differ.one", place=10, mass="1 031.2 g"),
    say("count.warning.two_samples"),
    say("count.warning.few_sample", steps="196", step="0.1 g", least=200),
    say("count.warning.one_tray", step="0.1 g"),
    say("count.warning.few_fill", steps="196", step="0.1 g", least=200),
    say("count.warning.readability", step="0.1 g"),
    say("count.warning.over_limit", limit="20 000"),
    say("count.warning.many_pieces", most=500),
    say("count.warning.bits"),
]


@BOTH
def test_the_value_stands_with_its_interval_and_what_it_does_to_a_score(paper: Paper) -> None:
    words = words_on(key_card(kept_key(), paper))
    assert "15 234 pieces" in words
    assert "95 % sure: between 14 987 and 15 482 (± 1.6 %)" in words
    assert "may be up to 1.5 points off" in words


def test_the_card_names_jar_and_material() -> None:
    words = words_on(key_card(kept_key(), Paper.A4))
    assert "Key card: jar W" in words
    assert "Material: rice" in words


@pytest.mark.parametrize(
    ("material", "word"), [("hex nuts", "hex nuts"), ("Müsli (żytnie)", "Müsli (żytnie)")]
)
def test_any_material_is_named(material: str, word: str) -> None:
    words = words_on(key_card(kept_key(material=material), Paper.A4))
    assert f"Material: {word}" in words


def test_the_evidence_is_listed_with_what_was_taken_off() -> None:
    words = words_on(key_card(kept_key(), Paper.A4))
    assert "empty tray 21.4 g 2026-03-02 09:00 UTC balance" in words
    assert "sample 2 500 31.1 g 9.7 g 2026-03-02 09:00 UTC balance" in words
    assert "full jar 1 204.9 g 954.6 g" in words
    assert "The balance steps by 0.1 g. Balance: test balance" in words
    assert f"Key made 2026-03-02 09:00 UTC, record {KEY_ID}" in words


def test_each_lot_has_its_own_container_taken_off() -> None:
    words = words_on(key_card(kept_key(lots=3), Paper.A4))
    assert "lot 1 350.3 g 100.0 g" in words
    assert "lot 3 350.5 g 100.0 g" in words
    assert "the container was emptied and weighed before each" in words
    assert "full jar" not in words


def test_lots_without_room_are_summed_up() -> None:
    words = words_on(key_card(kept_key(lots=24), Paper.A4))
    assert "lot 7 350.9 g 100.0 g" in words
    assert "lots 8 to 24 1 700.0 g" in words


@pytest.mark.parametrize(
    ("bits", "said"),
    [(True, "bits count too"), (False, "bits do not count"), (None, "95 % sure: between")],
)
def test_the_card_says_whether_bits_count_if_it_was_asked(bits: bool | None, said: str) -> None:
    words = words_on(key_card(kept_key(bits=bits), Paper.A4))
    assert said in words
    assert ("bits" in words) is (bits is not None)


@pytest.mark.parametrize(("from_container", "where"), [(True, "are in"), (False, "are not in")])
def test_it_says_where_the_counted_pieces_are(from_container: bool, where: str) -> None:
    key = kept_key(from_container=from_container)
    assert f"The counted pieces {where} the jar." in words_on(key_card(key, Paper.A4))


def test_warnings_are_printed() -> None:
    assert f"Mind: {EVERY_WARNING[3]}" in words_on(
        key_card(kept_key(warnings=EVERY_WARNING[3:4]), Paper.A4)
    )


@pytest.mark.parametrize(
    ("source", "said"), [(Source.SIMULATED, True), (Source.BALANCE, False), (Source.TYPED, False)]
)
def test_only_a_simulated_key_says_so_across_the_page(source: Source, said: bool) -> None:
    words = words_on(key_card(kept_key(source=source), Paper.A4))
    assert ("SIMULATED" in words) is said
    assert ("no real balance weighed this." in words) is said


def test_a_typed_mass_is_called_typed() -> None:
    words = words_on(key_card(kept_key(source=Source.TYPED), Paper.A4))
    assert "sample 1 500 31.0 g 9.6 g 2026-03-02 09:00 UTC typed" in words


@BOTH
def test_nothing_of_the_value_is_seen_from_outside(paper: Paper) -> None:
    (page,) = pages(key_card(kept_key(), paper))
    line = float(page.mediabox.height) - STRIP
    outside = " ".join(text for text, _, y in baselines(page) if y > line)
    assert "Key card: jar W" in outside
    assert not any(digits in outside for digits in ("15", "14 987", "rice", "1.6"))


@BOTH
@pytest.mark.parametrize("lots", [0, 24])
def test_the_fullest_card_fits_into_its_halves(paper: Paper, lots: int) -> None:
    key = kept_key(
        samples=10,
        warnings=EVERY_WARNING,
        balance=60 * "B",
        source=Source.SIMULATED,
        lots=lots,
    )
    (page,) = pages(key_card(key, paper))
    places = baselines(page)
    fold = (float(page.mediabox.height) - STRIP) / 2
    evidence = next(place for place, (text, _, _) in enumerate(places) if text == "Evidence")
    assert min(y for _, _, y in places[:evidence]) > fold > places[evidence][2]
    assert min(y for _, _, y in places) > MARGIN
    assert (
        max(x + width(text, SMALL) for text, x, _ in places[evidence + 1 :]) < page.mediabox.right
    )
