"""Counted samples: one tray, no sample twice, each undone by itself."""

from __future__ import annotations

from decimal import Decimal

from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person, WeighAgain
from kiosk.records.entries import KeyChanged, KeyDropped, KeyMass, KeyStarted, MassVoided
from tests.helpers.pan import (
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    feed,
    memory,
    press,
    settled,
    surroundings,
)

S = SamplesState
LENTILS = ("lentils", "pulses and grains", Decimal(20))
UNKNOWN = ("something else", "don't know", None)


def started(material: tuple[str, str, Decimal | None] = LENTILS) -> CountSamples:
    """A procedure with its tray of 21.4 g weighed."""
    procedure = CountSamples(surroundings(), pan=PanMemory())
    feed(procedure, press(Person.CHOOSE, material), press(Person.NO), PLACED, settled("21.4"))
    return procedure


def sample(procedure: CountSamples, gross: str) -> None:
    """In the emptied tray."""
    feed(procedure, settled("21.4"), PLACED, settled(gross), press(Person.KEEP))


def sampled(*nets: str) -> CountSamples:
    procedure = started()
    for net in nets:
        sample(procedure, str(Decimal("21.4") + Decimal(net)))
    return procedure


def test_the_material_starts_a_key_with_its_class() -> None:
    procedure = CountSamples(surroundings(), pan=PanMemory())
    begun, bits = feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.NO))
    assert isinstance(begun, KeyStarted)
    assert (begun.material, begun.piece_cv_percent, begun.pieces) == ("lentils", 20, 100)
    assert isinstance(bits, KeyChanged)
    assert (bits.key_id, bits.bits) == (begun.id, False)
    assert procedure.state is S.TRAY_ON


def test_a_loaded_pan_is_cleared_before_the_tray() -> None:
    procedure = CountSamples(surroundings(), pan=memory(PLACED, settled("3.0")))
    feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.NO))
    assert procedure.state is S.TRAY_CLEAR
    assert feed(procedure, settled("3.0")) == []
    feed(procedure, EMPTY)
    assert procedure.state is S.TRAY_ON


def test_the_tray_is_kept_by_itself() -> None:
    procedure = CountSamples(surroundings(), pan=PanMemory())
    feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.NO))
    (tray,) = feed(procedure, PLACED, settled("21.4"))
    assert isinstance(tray, KeyMass)
    assert tray.role == "tray"
    assert procedure.state is S.COUNT


def test_a_sample_is_kept_on_a_key_only_and_is_net_of_the_tray() -> None:
    procedure = started()
    assert feed(procedure, PLACED, settled("24.9")) == []
    assert procedure.state is S.READY
    assert procedure.on_tray == Decimal("3.5")
    (kept,) = feed(procedure, press(Person.KEEP))
    assert isinstance(kept, KeyMass)
    assert kept.weighing.grams == Decimal("24.9")
    assert procedure.kept.sample_nets == (Decimal("3.5"),)


def test_no_sample_is_taken_twice() -> None:
    procedure = started()
    sample(procedure, "24.9")
    assert procedure.state is S.ADD
    feed(procedure, DISTURBED, settled("24.9"))
    assert procedure.state is S.ADD
    assert not procedure.offers(Person.KEEP)


def test_the_emptied_tray_may_stay_on_the_pan() -> None:
    procedure = started()
    sample(procedure, "24.9")
    feed(procedure, settled("21.5"))
    assert procedure.state is S.COUNT


def test_three_samples_show_the_spread() -> None:
    procedure = sampled("3.5", "3.6", "3.5")
    assert procedure.state is S.SPREAD
    feed(procedure, press(Person.GO_ON))
    assert procedure.state is S.SAMPLED


def test_one_more_sample_can_follow_up_to_ten() -> None:
    procedure = sampled("3.5", "3.6", "3.5")
    for _ in range(7):
        feed(procedure, press(Person.MORE))
        sample(procedure, "24.9")
    assert len(procedure.kept.samples) == 10
    assert not procedure.offers(Person.MORE)


def test_each_sample_has_its_own_undo() -> None:
    procedure = sampled("3.5", "4.9", "3.4")
    voided, again = feed(procedure, press(Person.UNDO, 1))
    assert isinstance(voided, MassVoided)
    assert again == WeighAgain()
    assert procedure.kept.sample_nets == (Decimal("3.5"), Decimal("3.4"))
    assert procedure.state is S.ADD


def test_moving_takes_the_key_to_keep_away() -> None:
    procedure = started()
    feed(procedure, PLACED, settled("24.9"), DISTURBED)
    assert procedure.state is S.COUNT
    assert not procedure.offers(Person.KEEP)


def test_a_sample_under_twenty_divisions_is_not_kept() -> None:
    procedure = started()
    feed(procedure, PLACED, settled("23.3"))
    assert procedure.state is S.TOO_FEW
    assert not procedure.offers(Person.KEEP)


def test_lighter_than_the_tray_is_another_tray() -> None:
    procedure = started()
    feed(procedure, PLACED, settled("19.0"))
    assert procedure.state is S.LIGHT_TRAY


def test_more_pieces_at_once_voids_what_was_kept_with_fewer() -> None:
    procedure = sampled("3.5", "3.6")
    effects = feed(procedure, press(Person.PIECES, 300))
    kinds = [type(effect) for effect in effects]
    assert kinds == [MassVoided, MassVoided, KeyChanged, WeighAgain]
    assert procedure.kept.pieces == 300
    assert procedure.kept.samples == ()


def test_other_pieces_before_the_first_sample_need_no_emptying() -> None:
    procedure = CountSamples(surroundings(), pan=PanMemory())
    feed(procedure, press(Person.CHOOSE, LENTILS), press(Person.NO), PLACED, settled("21.4"))
    feed(procedure, press(Person.PIECES, 200), settled("21.4"))
    assert procedure.state is S.COUNT


def test_without_knowledge_one_sample_is_not_enough() -> None:
    procedure = started(UNKNOWN)
    sample(procedure, "24.9")
    assert not procedure.offers(Person.GO_ON)
    sample(procedure, "25.0")
    assert procedure.offers(Person.GO_ON)


def test_with_a_class_one_sample_is_enough() -> None:
    procedure = started()
    sample(procedure, "24.9")
    feed(procedure, press(Person.GO_ON))
    assert procedure.state is S.SPREAD


def test_a_lost_balance_takes_the_key_to_keep_away() -> None:
    procedure = started()
    feed(procedure, PLACED, settled("24.9"), LOST)
    assert procedure.state is S.COUNT
    assert not procedure.offers(Person.KEEP)


def test_leaving_is_asked_about_and_staying_looks_at_the_pan_afresh() -> None:
    procedure = started()
    feed(procedure, PLACED, settled("24.9"), press(Person.HOME))
    assert procedure.state is S.LEAVING
    assert feed(procedure, press(Person.STAY)) == [WeighAgain()]
    assert procedure.state is S.COUNT


def left_half_made() -> KeyDraft:
    procedure = sampled("3.5", "3.6")
    return procedure.kept


def test_a_draft_goes_on_where_it_was_left() -> None:
    procedure = CountSamples(surroundings(), pan=PanMemory(), draft=left_half_made())
    assert procedure.state is S.RESUME
    feed(procedure, press(Person.YES))
    assert procedure.state is S.COUNT
    assert len(procedure.kept.samples) == 2


def test_starting_over_drops_the_draft_with_a_reason() -> None:
    procedure = CountSamples(surroundings(), pan=PanMemory(), draft=left_half_made())
    (dropped,) = feed(procedure, press(Person.NO))
    assert isinstance(dropped, KeyDropped)
    assert procedure.state is S.MATERIAL
