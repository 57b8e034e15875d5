"""The coach's card of a box: its volume with its interval, and what the ruler showed."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from kiosk.evidence import Source
from kiosk.records.kept import StoredVolume, VolumeDraft
from kiosk.records.volume_entries import Shape, SizeRead, VolumeMade
from kiosk.records.water_entries import WaterRole, WaterWeighed
from kiosk.reports.card import STRIP
from kiosk.reports.key_papers import save_volume_papers
from kiosk.reports.volume_card import volume_card
from kiosk.settings import Paper
from tests.helpers.pan import STARTED
from tests.helpers.papers import KEY_ID, baselines, pages, words_on
from tests.helpers.weighings import weighed

BOX = (("long", "12.05"), ("wide", "9.0"), ("tall", "23.1"), ("long", "12.15"))


def measured(
    sizes: tuple[tuple[str, str], ...] = BOX, shape: Shape = Shape.BOX, unit: str = "cm"
) -> StoredVolume:
    read = tuple(
        SizeRead(key_id=KEY_ID, edge=edge, typed=typed, unit=unit, at=STARTED)
        for edge, typed in sizes
    )
    made = VolumeMade(
        key_id=KEY_ID,
        number=3,
        cm3=Decimal("2515.59"),
        low=Decimal("2480.71"),
        high=Decimal("2550.21"),
        score_effect=Decimal("1.24"),
        at=STARTED,
    )
    draft = VolumeDraft(id=KEY_ID, shape=shape.value, since=STARTED, sizes=read)
    return StoredVolume(draft=draft, made=made)


def test_the_volume_stands_with_its_interval_rounded_outward() -> None:
    words = words_on(volume_card(measured(), Paper.A4))
    assert "2 516 cm³" in words
    assert "95 % sure: between 2 480 and 2 551 cm³ (± 1.4 %)" in words
    assert "may be up to 1.3 points off" in words


def test_each_edge_is_listed_with_all_its_places_as_read() -> None:
    words = words_on(volume_card(measured(), Paper.A4))
    when = "2026-03-02 09:00 UTC"
    assert f"long 12.05 cm {when} long 12.15 cm {when} wide 9.0 cm {when}" in words


def by_water(source: Source) -> StoredVolume:
    def mass(role: WaterRole, grams: str, warm: Decimal | None) -> WaterWeighed:
        weighing = weighed(grams, "0.1", source)
        return WaterWeighed(key_id=KEY_ID, role=role, celsius=warm, weighing=weighing, at=STARTED)

    waters = (mass(WaterRole.EMPTY, "112.3", None), mass(WaterRole.FILLED, "2621.0", Decimal(21)))
    draft = VolumeDraft(id=KEY_ID, shape="water", since=STARTED, waters=waters)
    return StoredVolume(draft=draft, made=measured().made)


def test_a_container_with_water_lists_its_masses_as_shown() -> None:
    words = words_on(volume_card(by_water(Source.BALANCE), Paper.A4))
    assert "what it holds up to the brim" in words
    assert "empty 112.3 g" in words
    assert "full, 21 °C 2621.0 g" in words
    assert "SIMULATED" not in words


def test_a_simulated_one_says_so_on_every_paper(tmp_path: Path) -> None:
    papers = save_volume_papers(by_water(Source.SIMULATED), tmp_path, Paper.A4)
    for paper in papers:
        assert "(simulated)" in paper.name
        assert "SIMULATED" in words_on(paper.read_bytes()).upper()


@pytest.mark.parametrize("shape", Shape)
def test_every_shape_has_its_word(shape: Shape) -> None:
    words = words_on(volume_card(measured(shape=shape), Paper.A4))
    assert ("tapered" in words) is ("tapered" in shape.value)


@pytest.mark.parametrize("paper", Paper)
def test_nothing_of_the_volume_is_seen_from_outside(paper: Paper) -> None:
    (page,) = pages(volume_card(measured(), paper))
    line = float(page.mediabox.height) - STRIP
    outside = " ".join(text for text, _, y in baselines(page) if y > line)
    assert "Key card: box 3" in outside
    assert not any(digits in outside for digits in ("2\u2009516", "12.", "cm"))


def test_a_box_gets_labels_with_its_number_and_nothing_else(tmp_path: Path) -> None:
    label, card = save_volume_papers(measured(), tmp_path, Paper.A4)
    assert (label.name, card.name) == ("Box 3 label.pdf", "Box 3 key card.pdf")
    assert words_on(label.read_bytes()) == "3 3"
