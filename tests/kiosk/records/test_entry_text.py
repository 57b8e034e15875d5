from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

import pytest

from kiosk.records.entries import (
    AnswerShown,
    Entry,
    GuessMade,
    KeyChanged,
    KeyDropped,
    MassRole,
    MassVoided,
    TryThrownAway,
    new_id,
)
from kiosk.records.entry_text import entries_of, text_of
from kiosk.records.jar_entries import JarWeighed
from kiosk.records.keeping import kinds_of_entries
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote
from kiosk.records.volume_entries import (
    Shape,
    SizeRead,
    SizeVoided,
    VolumeDropped,
    VolumeMade,
    VolumeStarted,
)
from kiosk.records.water_entries import WaterRole, WaterVoided, WaterWeighed
from tests.helpers.recorded import (
    AT,
    balance_checked,
    check_mass,
    cup_taken,
    handed_in,
    key_made,
    key_mass,
    key_started,
    weighing,
)

CUP = cup_taken(team="Größe „42“", empty="-0.30")
KEY = key_started()
OF_EACH_KIND: list[Entry] = [
    CUP,
    handed_in(CUP),
    TryThrownAway(try_id="t", reason="spilled", at=AT),
    KEY,
    key_mass(KEY, MassRole.TRAY, "8.10"),
    MassVoided(mass_id="m", reason="undone", at=AT),
    KeyChanged(key_id="k", pieces=50, back_in=False, at=AT),
    key_made(KEY),
    KeyDropped(key_id="k", reason="started over", at=AT),
    GuessMade(key_id="k", team="", guess=Decimal("2400"), at=AT),
    AnswerShown(key_id="k", at=AT),
    JarWeighed(key_id="k", role="closed", weighing=weighing("700.0", raw=bytes(range(256))), at=AT),
    VolumeStarted(shape=Shape.TAPERED_BOX, at=AT),
    SizeRead(key_id="v", edge="length", typed="12.0", unit="cm", at=AT),
    SizeVoided(size_id="s", reason="undone", at=AT),
    VolumeMade(
        key_id="v", number=3, cm3=Decimal("2504.70"), low=Decimal(2453), high=Decimal("2.5E+3"),
        score_effect=Decimal("1.1"), at=AT,
    ),
    VolumeDropped(key_id="v", reason="started over", at=AT),
    WaterWeighed(
        key_id="v", role=WaterRole.FILLED, celsius=Decimal("21.50"), weighing=weighing("812"), at=AT
    ),
    WaterVoided(water_id="w", reason="undone", at=AT),
    check_mass("c" * 32),
    balance_checked("c" * 32),
    RoundNote(
        round_id="r", simulated=False, kind=NoteKind.CUP, about="cup 1", after=FIRST,
        content='{"outcome": "weighed"}', weighing=weighing("112.5"), zero=None, at=AT,
    ),
]  # fmt: skip


@pytest.mark.parametrize("entry", OF_EACH_KIND, ids=lambda entry: type(entry).__name__)
def test_every_entry_comes_back_as_it_was(entry: Entry) -> None:
    (back,) = entries_of(text_of([entry]))
    assert (type(back), back) == (type(entry), entry)


def test_there_is_one_of_each_kind() -> None:
    assert {type(entry) for entry in OF_EACH_KIND} == set(kinds_of_entries())


def test_digits_are_kept() -> None:
    (back,) = entries_of(text_of([CUP]))
    assert str(back.empty.grams) == "-0.30"  # type: ignore[attr-defined]  # a cup came back


def test_entries_saved_together_stay_together() -> None:
    assert entries_of(text_of(OF_EACH_KIND)) == tuple(OF_EACH_KIND)


def test_what_has_no_form_is_refused() -> None:
    @dataclass(frozen=True, kw_only=True)
    class Strange(Entry):
        share: float

    with pytest.raises(TypeError, match="cannot wait as text"):
        text_of([Strange(id=new_id(), at=AT, share=0.5)])


@pytest.mark.parametrize("text", ["", "[{}]", '[{"is a": "Spell"}]', '[{"is a": "CupTaken"}]'])
def test_a_text_that_is_none_of_ours_is_refused(text: str) -> None:
    with pytest.raises((KeyError, TypeError, ValueError)):
        entries_of(text)
