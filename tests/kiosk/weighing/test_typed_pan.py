"""What an adult types off a display becomes what happened on the pan."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kiosk.evidence import Source
from kiosk.weighing.pan_events import PanEvent, PanKind
from kiosk.weighing.pan_watch import PanPhase
from kiosk.weighing.typed_pan import NotTakenError, TypedPan, UnlikelyError

PLACED, SETTLED, DISTURBED = PanKind.LOAD_PLACED, PanKind.SETTLED, PanKind.DISTURBED
REMOVED, EMPTY = PanKind.LOAD_REMOVED, PanKind.PAN_EMPTY


def kinds(events: list[PanEvent]) -> list[PanKind]:
    return [event.kind for event in events]


@pytest.fixture
def pan() -> TypedPan:
    """A pan that showed 0.0."""
    pan = TypedPan()
    pan.typed("0.0", 1.0)
    return pan


def test_the_zero_comes_first() -> None:
    pan = TypedPan()
    assert pan.state.must_empty
    with pytest.raises(NotTakenError, match="Not zero"):
        pan.typed("12.3", 1.0)
    with pytest.raises(NotTakenError, match="First type the zero"):
        pan.pan_empty(1.0)
    assert pan.state.must_empty


@pytest.mark.parametrize(
    ("zero", "step"), [("0", "1"), ("0.0", "0.1"), ("0,00", "0.01"), ("0.000", "0.001")]
)
def test_the_digits_of_the_zero_tell_the_step(zero: str, step: str) -> None:
    pan = TypedPan()
    events = pan.typed(zero, 1.0)
    assert kinds(events) == [EMPTY]
    assert events[0].readability == Decimal(step)
    assert pan.state.readability == Decimal(step)
    assert pan.state.phase is PanPhase.EMPTY
    assert not pan.state.must_empty


def test_a_mass_is_placed_and_settled_with_what_was_typed(pan: TypedPan) -> None:
    placed, settled = pan.typed("12,3", 2.5)
    assert (placed.kind, settled.kind) == (PLACED, SETTLED)
    assert settled.grams == Decimal("12.3")
    assert settled.source is Source.TYPED
    assert settled.readability == Decimal("0.1")
    reading = settled.reading
    assert reading is not None
    assert (reading.raw, reading.unit, reading.stable) == (b"12,3", "g", None)
    assert (reading.at, reading.balance) == (2.5, "typed")
    assert pan.state.phase is PanPhase.STABLE


def test_a_last_zero_counts_as_typed(pan: TypedPan) -> None:
    (_, settled) = pan.typed("12.0", 2.0)
    assert str(settled.grams) == "12.0"


@pytest.mark.parametrize("zero", ["0.0", "0", "0,0"])
def test_a_zero_is_an_empty_pan(pan: TypedPan, zero: str) -> None:
    pan.typed("12.3", 2.0)
    assert kinds(pan.typed(zero, 3.0)) == [REMOVED, EMPTY]
    assert pan.state.readability == Decimal("0.1")
    assert not pan.state.loaded


def test_the_pan_is_said_to_be_empty(pan: TypedPan) -> None:
    pan.typed("12.3", 2.0)
    removed, empty = pan.pan_empty(3.0)
    assert (removed.kind, empty.kind) == (REMOVED, EMPTY)
    assert empty.source is Source.TYPED
    assert empty.reading is None  # nobody typed what it shows


def test_an_empty_pan_may_be_off_zero_by_a_few_steps(pan: TypedPan) -> None:
    pan.typed("12.3", 2.0)
    (_, empty) = pan.typed("0.2", 3.0, empty=True)
    assert empty.kind is EMPTY
    assert empty.reading is not None
    assert empty.reading.grams == Decimal("0.2")
    with pytest.raises(NotTakenError, match="Not zero"):
        pan.typed("0.4", 4.0, empty=True)


def test_a_light_thing_is_no_empty_pan_by_itself(pan: TypedPan) -> None:
    assert kinds(pan.typed("0.2", 3.0)) == [PLACED, SETTLED]


@pytest.mark.parametrize(("then", "came"), [("14.0", PLACED), ("3.1", DISTURBED)])
def test_another_mass_without_an_empty_pan_is_more_or_less(
    pan: TypedPan, then: str, came: PanKind
) -> None:
    pan.typed("12.3", 2.0)
    assert kinds(pan.typed(then, 3.0)) == [came, SETTLED]


@pytest.mark.parametrize("slip", ["123", "12", "12.34"])
def test_other_digits_than_before_are_asked_about(pan: TypedPan, slip: str) -> None:
    pan.typed("12.3", 2.0)
    with pytest.raises(UnlikelyError, match="1 digit after the point"):
        pan.typed(slip, 3.0)
    assert pan.state.grams == Decimal("12.3")


def test_when_it_is_so_the_step_follows_the_digits(pan: TypedPan) -> None:
    (_, settled) = pan.typed("1234", 3.0, sure=True)
    assert settled.readability == Decimal(1)
    pan.typed("1235", 4.0)  # and nobody asks again
    with pytest.raises(UnlikelyError, match="0 digits"):
        pan.typed("12.3", 5.0)


def test_a_balance_that_counts_by_fives_gives_itself_away() -> None:
    pan = TypedPan()
    pan.typed("0", 0.0)
    for place in range(1, 12):
        (_, settled) = pan.typed(str(5 * place), float(place))
    assert settled.readability == Decimal(5)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "Type the number"), ("   ", "Type the number"), ("-0.3", "Below zero"),
        ("\u22123", "Below zero"), ("12.", "missing after the point"), (".5", "no number"),
        ("1.2.3", "no number"), ("1e3", "no number"), ("1_0", "no number"), ("nan", "no number"),
        ("012.3", "no number"), ("\u0661\u0662", "no number"), ("12.3 g", "no number"),
        ("123456.7", "Too long"), ("1.2345", "Too long"),
    ],
)  # fmt: skip
def test_what_no_display_shows_is_refused(pan: TypedPan, text: str, why: str) -> None:
    for sure in (False, True):
        with pytest.raises(NotTakenError, match=why):
            pan.typed(text, 2.0, sure=sure)
    assert pan.state.phase is PanPhase.EMPTY


def test_to_be_read_again_it_is_typed_again(pan: TypedPan) -> None:
    pan.typed("12.3", 2.0)
    pan.weigh_again(3.0)
    assert pan.state.phase is PanPhase.MOVING
    assert pan.tick(9.0) == []
    assert SETTLED in kinds(pan.typed("12.3", 10.0))


def test_nothing_settles_twice_by_itself(pan: TypedPan) -> None:
    pan.typed("12.3", 2.0)
    assert pan.tick(100.0) == []
