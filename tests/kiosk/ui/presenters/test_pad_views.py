"""The keypad for typed readings: there when a number is asked for, quiet else."""

from __future__ import annotations

from enum import Enum

import pytest

from kiosk.procedures.balance_check import CheckState
from kiosk.procedures.count_samples import SamplesState
from kiosk.procedures.fill_container import ContainerState
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Procedure
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.ui.presenters.pad_views import PadView, pad_view
from kiosk.ui.presenters.views import SheetView
from kiosk.ui.reading_off import ReadingOff
from tests.helpers import check_scenes
from tests.helpers.pan import surroundings
from tests.helpers.queue_scenes import in_queue
from tests.helpers.scenes import cups, in_container, in_samples, typing, weigh_empty

E, H, S, C = WeighEmptyState, HandInState, SamplesState, ContainerState


def pad(*keys: str, zero: bool = True) -> ReadingOff:
    made = ReadingOff(lambda _events: None, lambda: 1.0)
    if zero:
        made.pan.typed("0.0", 0.0)
    for sign in keys:
        made.key(sign)
    return made


def in_state(state: Enum) -> Procedure:
    """A procedure that stands there, however it came to."""
    match state:
        case SamplesState():
            return in_samples(state)
        case ContainerState():
            return in_container(state)
        case WeighEmptyState():
            made: Procedure = weigh_empty()
        case _:
            made = HandIn(surroundings(), cups=cups(2), number=99, pan=PanMemory())
    made.state = state
    return made


def shown(procedure: Procedure | None, typing: ReadingOff, *, scale_open: bool = False) -> PadView:
    view = pad_view(procedure, typing, scale_open=scale_open)
    assert view is not None
    return view


@pytest.mark.parametrize(
    "state",
    [E.PUT_ON, E.SETTLING, E.TOO_LIGHT, E.REALLY_EMPTY, H.PUT_ON, H.WEIGHING, H.LIGHTER,
     H.OTHER_CUP, S.TRAY_ON, S.COUNT, S.READY, S.EMPTY_TRAY, C.EMPTY_ON, C.POUR, C.STILL,
     C.STOPPING],
)  # fmt: skip
def test_where_a_mass_is_asked_for_digits_can_be_typed(state: Enum) -> None:
    view = shown(in_state(state), pad())
    assert view.digits
    assert view.ask == "Type what the scale shows."


@pytest.mark.parametrize("state", [E.CLEAR, E.WEIGHED, H.CLEAR, H.WHOSE, S.TRAY_CLEAR, C.PAN_CLEAR])
def test_where_the_pan_must_be_emptied_only_that_can_be_said(state: Enum) -> None:
    view = shown(in_state(state), pad())
    assert (view.digits, view.empty_on, view.empty_main) == (False, True, True)


@pytest.mark.parametrize(
    "state",
    [E.FILL, E.LEAVING, H.CHOOSE, H.SCORED, H.LIFTED, H.LEAVING, S.MATERIAL, S.SPREAD, C.BACK_IN,
     C.KEY, C.SAVED],
)  # fmt: skip
def test_elsewhere_the_pad_is_quiet(state: Enum) -> None:
    assert pad_view(in_state(state), pad(), scale_open=False) is None


def test_at_home_the_pad_is_quiet() -> None:
    assert pad_view(None, pad(zero=False), scale_open=False) is None


def test_in_the_drawer_of_the_scale_only_a_missing_zero_is_asked_for() -> None:
    assert pad_view(None, pad(), scale_open=True) is None
    assert "zero" in shown(None, pad(zero=False), scale_open=True).ask


def test_without_a_digit_nothing_is_done() -> None:
    assert not shown(in_state(E.PUT_ON), pad()).done_on
    assert shown(in_state(E.PUT_ON), pad("7")).done_on


def test_before_the_zero_only_a_number_helps() -> None:
    view = shown(in_state(E.CLEAR), pad(zero=False))
    assert (view.digits, view.empty_on) == (True, False)


def test_a_check_wants_to_know_what_the_empty_pan_shows() -> None:
    check = check_scenes.in_check(CheckState.CLEAR)
    assert not shown(check, pad()).empty_on
    view = shown(check, pad("0"))
    assert (view.empty_on, view.empty_main, view.done_on) == (True, True, False)


def test_why_a_number_was_not_taken_stands_instead_of_the_question() -> None:
    typing = pad("1", "2", ".")
    typing.done()
    view = shown(in_state(E.PUT_ON), typing)
    assert view.warns
    assert "after the point" in view.ask
    assert view.text == "12."


def test_a_slip_can_be_said_to_be_none() -> None:
    typing = pad("1", "2")
    assert shown(in_state(E.PUT_ON), typing).done_text == "That\nis it"
    typing.done()
    assert shown(in_state(E.PUT_ON), typing).done_text == "Yes"


def sheet(*, zero: str) -> SheetView:
    return typing(weigh_empty(), zero=zero).sheet


def test_before_anything_else_the_empty_pan_is_asked_for() -> None:
    first, then = sheet(zero=""), sheet(zero="0.0")
    assert first.title == "Is the pan empty?"
    assert then.title != first.title
    assert (first.step, first.steps, first.home) == (then.step, then.steps, then.home)


@pytest.mark.parametrize(
    ("state", "digits"), [(QueueState.PUT_ON, True), (QueueState.RECORDED, False)]
)
def test_over_a_recorded_cup_of_a_round_only_the_empty_pan_is_asked_for(
    state: QueueState, digits: bool
) -> None:
    view = shown(in_queue(state), pad())
    assert (view.digits, view.empty_on) == (digits, True)
