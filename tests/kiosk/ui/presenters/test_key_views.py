"""The samples of a count key, as finished views."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.estimating.scatter import CLASS_CV_PERCENT, ScatterClass
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.procedure import Person
from kiosk.ui.presenters.key_views import JAR_MATERIALS, jar_material, samples_view
from kiosk.ui.presenters.views import ChoicesView, QuestionView, SamplesView
from tests.helpers.pan import feed, press, settled
from tests.helpers.sampled import UNKNOWN, lay, sampled, started
from tests.helpers.scenes import facts, in_samples, remembering

S = SamplesState


def view_of(procedure: CountSamples) -> SamplesView:
    view = samples_view(procedure, facts())
    assert isinstance(view, SamplesView)
    return view


def with_samples(
    *nets: str, material: tuple[object, ...] = ("lentils", "grains", Decimal(20))
) -> CountSamples:
    procedure = started(material)
    for net in nets:
        feed(procedure, *lay(net), press(Person.KEEP), settled("21.4"))
    return procedure


# Materials -----------------------------------------------------------------------------------


def test_every_jar_material_brings_its_class_and_scatter_along() -> None:
    view = samples_view(in_samples(S.MATERIAL), facts())
    assert isinstance(view, ChoicesView)
    for choice, (name, scatter) in zip(view.choices, JAR_MATERIALS, strict=True):
        assert choice.value == (name, scatter.value, CLASS_CV_PERCENT[scatter])
        assert choice.text == jar_material(name)


def test_who_does_not_know_the_material_says_so() -> None:
    assert JAR_MATERIALS[-1] == ("something else", ScatterClass.UNKNOWN)


def test_a_key_that_was_left_is_offered_by_its_material() -> None:
    view = samples_view(in_samples(S.RESUME), facts())
    assert isinstance(view, QuestionView)
    assert view.title == "Go on with lentils?"


# Rows ----------------------------------------------------------------------------------------


def test_three_rows_wait_for_samples() -> None:
    rows = view_of(with_samples()).rows
    assert [(row.name, row.state, row.note) for row in rows] == [
        ("first", "to come", "to come"),
        ("second", "to come", "to come"),
        ("third", "to come", "to come"),
    ]


def test_a_kept_sample_is_bricks_of_one_step_each() -> None:
    view = view_of(with_samples("3.5"))
    assert (view.rows[0].state, view.rows[0].mass_text, view.rows[0].bricks) == (
        "kept",
        "3.5 g",
        35,
    )
    assert view.brick_text == "one brick = 0.1 g"


def test_many_steps_are_grouped_and_it_says_so() -> None:
    assert "steps of 0.1 g" in view_of(with_samples("50.0")).brick_text


def test_the_sample_on_the_pan_is_a_row_that_is_not_kept_yet() -> None:
    procedure = with_samples("3.5")
    feed(procedure, *lay("3.6"))
    rows = view_of(procedure).rows
    assert [(row.state, row.note) for row in rows[:2]] == [
        ("kept", ""),
        ("on the pan", "on the pan"),
    ]


def test_bricks_by_which_a_sample_exceeds_the_lightest_are_told() -> None:
    view = view_of(with_samples("3.5", "3.8"))
    assert [row.differing for row in view.rows[:2]] == [0, 3]
    assert view.differ_text == "they differ by 0.3 g"


def test_samples_without_a_difference_say_so() -> None:
    assert view_of(with_samples("3.5", "3.5")).differ_text == "no difference to be seen"


def test_one_sample_alone_differs_from_nothing() -> None:
    assert view_of(with_samples("3.5")).differ_text == ""


def test_rows_up_to_ten_have_names() -> None:
    assert [row.name for row in view_of(sampled(10)).rows][-1] == "tenth"


# Buttons -------------------------------------------------------------------------------------


def test_a_sample_at_rest_is_kept_by_a_button_with_its_mass() -> None:
    procedure = with_samples()
    feed(procedure, *lay("3.5"))
    main = view_of(procedure).main
    assert main is not None
    assert (main.text, main.says) == ("Keep 3.5\u00a0g", press(Person.KEEP))


@pytest.mark.parametrize(
    ("state", "words"),
    [
        (S.COUNT, "Waiting for a sample"),
        (S.TOO_FEW, "Waiting for a sample"),
        (S.LIGHT_TRAY, "Waiting for a sample"),
        (S.ADD, "Waiting for a sample"),
        (S.SAME, "Waiting for an empty tray"),
        (S.EMPTY_TRAY, "Waiting for an empty tray"),
    ],
)
def test_else_the_button_waits(state: SamplesState, words: str) -> None:
    main = view_of(in_samples(state)).main
    assert main is not None
    assert (main.text, main.state) == (words, "waiting")


def test_when_all_are_in_it_goes_on() -> None:
    view = view_of(in_samples(S.SPREAD))
    assert view.main is not None
    assert view.second is not None
    assert (view.main.says, view.second.says) == (press(Person.GO_ON), press(Person.MORE))


def test_after_ten_samples_nothing_more_is_offered() -> None:
    assert view_of(sampled(10)).second is None


def test_before_the_first_sample_the_advised_pieces_are_offered() -> None:
    view = view_of(with_samples())
    assert "of 300 to 1.6 %" in view.advice
    assert view.second is not None
    assert (view.second.text, view.second.says) == (
        "Count 300\nat once",
        press(Person.PIECES, 300),
    )


def test_where_no_other_number_is_advised_the_next_one_is_offered() -> None:
    second = view_of(with_samples(material=("beads", "beads and hardware", Decimal(5)))).second
    assert second is not None
    assert second.says == press(Person.PIECES, 200)


def test_after_the_most_pieces_come_the_fewest() -> None:
    procedure = with_samples()
    feed(procedure, press(Person.PIECES, 500))
    second = view_of(procedure).second
    assert second is not None
    assert second.says == press(Person.PIECES, 10)


def test_enough_samples_may_be_enough() -> None:
    second = view_of(sampled(2)).second
    assert second is not None
    assert second.says == press(Person.GO_ON)


# Advice --------------------------------------------------------------------------------------


def test_while_nothing_is_counted_it_says_what_to_expect() -> None:
    advised = "3 samples of 100 should be good to about 3.3 %, of 300 to 1.6 %."
    assert view_of(with_samples()).advice == advised


def test_the_advice_follows_the_pieces_that_were_chosen() -> None:
    procedure = with_samples()
    feed(procedure, press(Person.PIECES, 300))
    assert "3 samples of 300 should be good to about 1.6 %." in view_of(procedure).advice


def test_a_sample_on_the_pan_counts_for_the_advice() -> None:
    procedure = with_samples()
    feed(procedure, *lay("50.0"))
    assert view_of(procedure).advice.startswith("Good to ")


def test_between_two_samples_it_says_to_keep_the_pieces_aside() -> None:
    assert view_of(in_samples(S.EMPTY_TRAY)).advice.startswith("Keep the counted pieces aside")


def test_of_unknown_pieces_one_sample_tells_nothing_yet() -> None:
    assert view_of(with_samples("3.5", material=UNKNOWN)).advice.startswith("To see how good")


def test_old_samples_are_offered_with_their_day_and_what_has_changed_since() -> None:
    view = samples_view(remembering(days=12), facts())
    assert isinstance(view, QuestionView)
    assert view.title == "Use the samples of 2 March?"
    assert "0.0506 g a whole piece." in view.body
    assert "In 12 days damp or dry air may change that by 2.4 %." in view.body


def test_samples_of_today_are_offered_without_a_warning() -> None:
    view = samples_view(remembering(days=0), facts())
    assert isinstance(view, QuestionView)
    assert "%" not in view.body
