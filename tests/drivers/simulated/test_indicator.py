from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.simulated.indicator import Indicator, State
from drivers.simulated.profile import MotionFlag, Profile
from drivers.simulated.weighing_pan import WeighingPan
from tests.helpers.simulated_desk import quiet_profile


class Weighed:
    """An indicator with something on its pan."""

    def __init__(self, grams: float, profile: Profile | None = None) -> None:
        self.pan = WeighingPan(profile or quiet_profile())
        self.indicator = Indicator(self.pan)
        self.now = 0.0
        self.load(grams)

    def load(self, grams: float) -> None:
        self.pan.load(grams, self.now)
        self.wait(4.0)

    def wait(self, seconds: float) -> list[bool]:
        self.now += seconds
        return [self.indicator.moving for _ in self.indicator.advance(self.now)]


@pytest.mark.parametrize(
    ("readability", "shown"),
    [
        ("0.001", "12.346"),
        ("0.002", "12.346"),
        ("0.005", "12.345"),
        ("0.01", "12.35"),
        ("0.05", "12.35"),
        ("0.1", "12.3"),
        ("0.2", "12.4"),
        ("0.5", "12.5"),
        ("1", "12"),
        ("2", "12"),
        ("5", "10"),
    ],
)
def test_shows_whole_steps_of_the_readability(readability: str, shown: str) -> None:
    value = Weighed(12.3459, quiet_profile(readability)).indicator.shown().value

    assert str(value) == shown


@pytest.mark.parametrize(("grams", "shown"), [(2.49, "2"), (2.51, "3"), (3.49, "3")])
def test_rounds_to_the_nearest(grams: float, shown: str) -> None:
    assert str(Weighed(grams, quiet_profile("1")).indicator.shown().value) == shown


@pytest.mark.parametrize(
    ("grams", "state"),
    [
        (0.02, State.CENTRE_OF_ZERO),
        (0.04, State.IN_RANGE),
        (2000.85, State.IN_RANGE),
        (2000.95, State.OVER),
        (-0.3, State.UNDER),
    ],
)
def test_knows_its_range(grams: float, state: State) -> None:
    assert Weighed(grams).indicator.shown().state is state


@pytest.mark.parametrize(("grams", "done"), [(79.0, True), (81.0, False)])
def test_zero_reaches_four_percent_of_the_capacity(grams: float, done: bool) -> None:
    weighed = Weighed(grams)

    assert weighed.indicator.set_zero() is done
    assert weighed.indicator.shown().value == Decimal("0.0" if done else "81.0")


def test_zero_cannot_creep_away_from_the_zero_of_switch_on() -> None:
    weighed = Weighed(60.0)
    assert weighed.indicator.set_zero()
    weighed.load(120.0)

    assert not weighed.indicator.set_zero()
    assert weighed.indicator.shown().value == Decimal("60.0")


@pytest.mark.parametrize(
    ("grams", "state"), [(390.0, State.CENTRE_OF_ZERO), (410.0, State.NOT_ZEROED)]
)
def test_switching_on_zeroes_up_to_a_fifth_of_the_capacity(grams: float, state: State) -> None:
    weighed = Weighed(grams)
    weighed.indicator.switch_on()

    assert weighed.indicator.shown().state is state


def test_what_could_not_be_zeroed_at_switch_on_is_zeroed_once_unloaded() -> None:
    weighed = Weighed(410.0)
    weighed.indicator.switch_on()
    weighed.load(0.0)

    assert weighed.indicator.set_zero()
    assert weighed.indicator.shown().state is State.CENTRE_OF_ZERO


@pytest.mark.parametrize("key", [Indicator.set_zero, Indicator.set_tare])
def test_keys_are_refused_in_motion(key: object) -> None:
    weighed = Weighed(50.0)
    weighed.pan.load(60.0, weighed.now)
    weighed.wait(0.1)

    assert callable(key)
    assert key(weighed.indicator) is False


def test_tare_shows_net_and_an_empty_pan_clears_it() -> None:
    weighed = Weighed(12.34)
    assert weighed.indicator.set_tare()
    tared = weighed.indicator.shown()
    weighed.load(0.0)
    lifted = weighed.indicator.shown()
    assert weighed.indicator.set_tare()

    assert (str(tared.value), tared.net) == ("0.0", True)
    assert (str(lifted.value), lifted.net) == ("-12.3", True)
    assert (str(weighed.indicator.shown().value), weighed.indicator.shown().net) == ("0.0", False)


def test_tare_is_refused_below_zero() -> None:
    assert not Weighed(-5.0).indicator.set_tare()


@pytest.mark.parametrize(
    ("unit", "shown"), [("g", "100.0"), ("kg", "0.1000"), ("oz", "3.525"), ("lb", "0.2205")]
)
def test_shows_every_unit_at_its_own_step(unit: str, shown: str) -> None:
    weighed = Weighed(100.0)
    while weighed.indicator.unit != unit:
        weighed.indicator.next_unit()

    assert str(weighed.indicator.shown().value) == shown


def test_honest_flag_is_still_only_where_the_display_is_at_rest() -> None:
    weighed = Weighed(0.0)
    weighed.pan.load(100.0, weighed.now)
    moving = weighed.wait(4.0)
    turn = moving.index(False)

    assert 3 <= turn <= 20
    assert moving == [True] * turn + [False] * (len(moving) - turn)


def test_honest_flag_moves_in_a_slow_pour() -> None:
    weighed = Weighed(0.0)
    weighed.pan.pour_to(10.0, 0.2, weighed.now)

    assert all(weighed.wait(20.0))


def test_early_flag_comes_before_rest() -> None:
    turns = []
    for flag in (MotionFlag.EARLY, MotionFlag.HONEST):
        weighed = Weighed(0.0, quiet_profile(motion_flag=flag))
        weighed.pan.load(100.0, weighed.now)
        turns.append(weighed.wait(4.0).index(False))

    assert turns[0] < turns[1]


def test_early_flag_is_fooled_by_a_leaning_hand() -> None:
    weighed = Weighed(0.0, quiet_profile(motion_flag=MotionFlag.EARLY))
    weighed.pan.lean(60.0, 8.0, weighed.now)
    weighed.wait(1.0)

    assert False in weighed.wait(5.0)


@pytest.mark.parametrize(
    ("flag", "moving"), [(MotionFlag.ALWAYS_STABLE, False), (MotionFlag.NEVER, True)]
)
def test_a_stuck_flag_stays(flag: MotionFlag, moving: bool) -> None:
    weighed = Weighed(0.0, quiet_profile(motion_flag=flag))
    weighed.pan.load(100.0, weighed.now)

    assert set(weighed.wait(4.0)) == {moving}


def test_flickering_flag_is_wrong_now_and_then() -> None:
    weighed = Weighed(100.0, quiet_profile(motion_flag=MotionFlag.FLICKER))
    at_rest = weighed.wait(50.0)

    assert 0.3 < sum(at_rest) / len(at_rest) < 0.5
