"""The container, the pour, the key."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

from kiosk.estimating.count_key import CountKey, Refused
from kiosk.estimating.pour_goal import AS_IT_COMES
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Person, WeighAgain
from kiosk.records.entries import KeyChanged, KeyMade, KeyMass, MassVoided, new_id
from tests.helpers.pan import (
    DISTURBED,
    EMPTY,
    LOST,
    PLACED,
    STARTED,
    feed,
    memory,
    press,
    settled,
    surroundings,
)
from tests.helpers.weighings import weighed

S = ContainerState
KEY_ID = new_id()


def mass(role: str, grams: str) -> KeyMass:
    return KeyMass(id=new_id(), key_id=KEY_ID, role=role, weighing=weighed(grams), at=STARTED)


def draft(**changes: object) -> KeyDraft:
    """Lentils, three samples of 100: 5.2, 5.3 and 5.1 g in a tray of 20.0 g."""
    made = KeyDraft(
        id=KEY_ID,
        material="lentils",
        scatter_class="pulses and grains",
        piece_cv_percent=Decimal(20),
        pieces=100,
        tray=mass("tray", "20.0"),
        samples=(mass("sample", "25.2"), mass("sample", "25.3"), mass("sample", "25.1")),
    )
    return replace(made, **changes)  # type: ignore[arg-type]


def at_the_pour() -> FillContainer:
    procedure = FillContainer(surroundings(), pan=PanMemory(), draft=draft())
    feed(procedure, press(Person.YES), press(Person.CHOOSE, AS_IT_COMES), PLACED, settled("90.0"))
    return procedure


def test_the_answer_is_written_down() -> None:
    procedure = FillContainer(surroundings(), pan=PanMemory(), draft=draft())
    (changed,) = feed(procedure, press(Person.NO))
    assert isinstance(changed, KeyChanged)
    assert changed.back_in is False
    assert procedure.state is S.GOAL


def test_the_tray_leaves_the_pan_first() -> None:
    pan = memory(PLACED, settled("25.1"))
    procedure = FillContainer(surroundings(), pan=pan, draft=draft())
    feed(procedure, press(Person.YES), press(Person.CHOOSE, AS_IT_COMES))
    assert procedure.state is S.PAN_CLEAR
    assert feed(procedure, settled("25.1")) == []
    feed(procedure, EMPTY)
    assert procedure.state is S.EMPTY_ON


def test_the_empty_container_is_kept_by_itself() -> None:
    procedure = at_the_pour()
    assert procedure.state is S.POUR
    assert procedure.kept.empty is not None
    assert procedure.kept.empty.weighing.grams == 90


def test_the_live_count_comes_with_its_interval() -> None:
    live = at_the_pour().kept.live(Decimal("194.0"))
    assert live is not None
    assert live.count == 2000
    assert live.low < 2000 < live.high


def test_stopping_at_rest_keeps_what_lies_there_and_makes_the_key() -> None:
    procedure = at_the_pour()
    (filled,) = feed(procedure, PLACED, settled("194.0"), press(Person.STOP))
    assert isinstance(filled, KeyMass)
    assert filled.role == "filled"
    assert isinstance(procedure.key, CountKey)
    assert procedure.key.count == 2000
    assert procedure.state is S.KEY


def test_stopping_in_motion_waits_for_fresh_rest() -> None:
    procedure = at_the_pour()
    assert feed(procedure, PLACED, press(Person.STOP)) == [WeighAgain()]
    assert procedure.state is S.STOPPING
    feed(procedure, settled("194.0"))
    assert procedure.state is S.KEY


def test_pouring_on_after_rest_takes_the_mass_back() -> None:
    procedure = at_the_pour()
    feed(procedure, PLACED, settled("150.0"), DISTURBED)
    assert procedure.state is S.POUR


def test_a_lost_balance_while_pouring_captures_nothing() -> None:
    procedure = at_the_pour()
    assert feed(procedure, PLACED, press(Person.STOP), LOST) == [WeighAgain()]
    assert procedure.state is S.POUR


def test_a_fill_under_twenty_divisions_is_refused_with_what_helps() -> None:
    procedure = at_the_pour()
    feed(procedure, PLACED, settled("91.5"), press(Person.STOP))
    assert procedure.state is S.REFUSED
    assert isinstance(procedure.key, Refused)
    assert procedure.key.sentence


def test_pouring_on_from_the_key_voids_the_full_mass() -> None:
    procedure = at_the_pour()
    feed(procedure, PLACED, settled("194.0"), press(Person.STOP))
    (voided,) = feed(procedure, press(Person.UNDO))
    assert isinstance(voided, MassVoided)
    assert procedure.kept.filled is None
    assert procedure.state is S.POUR


def test_the_key_is_saved_under_its_letter() -> None:
    procedure = at_the_pour()
    feed(procedure, PLACED, settled("194.0"), press(Person.STOP))
    (made,) = feed(procedure, press(Person.KEEP, "C"))
    assert isinstance(made, KeyMade)
    assert (made.letter, made.count, made.from_container) == ("C", 2000, True)
    assert procedure.state is S.SAVED


def test_more_samples_go_back_with_the_container_voided() -> None:
    procedure = at_the_pour()
    feed(procedure, PLACED, settled("194.0"), press(Person.STOP))
    effects = feed(procedure, press(Person.MORE))
    assert [type(effect) for effect in effects] == [MassVoided, MassVoided]
    assert procedure.state is S.SAMPLES
    assert procedure.kept.wanted == 4


def test_a_draft_with_a_weighed_container_goes_on_at_the_pour() -> None:
    left = draft(back_in=False, empty=mass("empty", "90.0"))
    assert FillContainer(surroundings(), pan=PanMemory(), draft=left).state is S.POUR


def test_a_draft_with_everything_weighed_shows_its_key() -> None:
    left = draft(back_in=False, empty=mass("empty", "90.0"), filled=mass("filled", "194.0"))
    assert FillContainer(surroundings(), pan=PanMemory(), draft=left).state is S.KEY


def full_of_bags(**changes: object) -> FillContainer:
    """A fill of 510 g."""
    left = draft(back_in=True, goal=AS_IT_COMES, empty=mass("empty", "90.0"), **changes)
    procedure = FillContainer(surroundings(), pan=PanMemory(), draft=left)
    feed(procedure, PLACED, settled("600.0"), press(Person.STOP))
    return procedure


def test_more_than_a_bag_holds_is_asked_about() -> None:
    procedure = full_of_bags()
    assert procedure.state is S.BAGS
    assert feed(procedure, press(Person.YES)) == []
    assert procedure.state is S.KEY


def test_a_bag_that_was_not_sampled_has_everything_counted_anew() -> None:
    procedure = full_of_bags()
    voided = feed(procedure, press(Person.NO))
    assert [type(effect) for effect in voided] == 5 * [MassVoided]
    assert procedure.state is S.SAMPLES
    again = CountSamples(surroundings(), pan=PanMemory(), draft=procedure.kept, go_on=True)
    assert (again.state, again.kept.samples) == (SamplesState.COUNT, ())


def test_counted_anew_goes_on_there_after_it_was_left() -> None:
    left = replace(draft(back_in=True), samples=())  # as the records have it
    later = CountSamples(surroundings(), pan=PanMemory(), draft=left, go_on=True)
    assert (later.state, later.kept.back_in) == (SamplesState.COUNT, None)


def test_samples_of_another_day_were_asked_about_before() -> None:
    used_again = tuple(replace(each, at=STARTED + timedelta(days=1)) for each in draft().samples)
    assert full_of_bags(samples=used_again).state is S.KEY


def test_the_key_does_not_stand_on_a_voided_letterless_draft() -> None:
    procedure = at_the_pour()
    feed(procedure, PLACED, settled("194.0"), press(Person.STOP), press(Person.HOME))
    assert procedure.state is S.LEAVING
    feed(procedure, press(Person.STAY))
    assert procedure.state is S.KEY
