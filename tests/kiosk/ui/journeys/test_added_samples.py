"""Samples added to those on the tray, by touch."""

from __future__ import annotations

from kiosk.procedures.count_samples import SamplesState
from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands


def two_added(journey: Journey) -> KeyHands:
    """The first two samples, the second on top of the first."""
    hands = KeyHands(journey)
    hands.begin()
    hands.weigh_tray()
    for _ in range(2):
        hands.add()
        hands.keep()
    return hands


def test_three_samples_are_added_without_emptying(journey: Journey) -> None:
    hands = two_added(journey)
    assert journey.scene.pan.line1.startswith("tray and samples")
    hands.add()
    hands.keep()
    hands.until_state(SamplesState.SPREAD)
    added = "SELECT count(*) FROM key_masses WHERE role = 'sample' AND tare_id IS NOT NULL"
    assert journey.kept(added) == [(2,)]


def test_an_undone_sample_leaves_the_one_on_top_of_it(journey: Journey) -> None:
    hands = two_added(journey)
    journey.tap("Undo")  # the first
    hands.add()
    hands.keep()
    on_top = (
        "SELECT tare_id IS NOT NULL FROM key_masses WHERE role = 'sample' "
        "AND id NOT IN (SELECT mass_id FROM masses_voided)"
    )
    assert journey.kept(on_top) == [(True,), (True,)]


def test_the_same_pieces_put_back_are_no_new_sample(journey: Journey) -> None:
    hands = two_added(journey)
    hands.lift()
    journey.bench.put(hands.tray)
    hands.until_state(SamplesState.SAME)
    assert "As heavy as before: the same pieces?" in journey.seen
    assert journey.rows("key_masses") == 3
    hands.lay_sample()  # in the emptied tray
