from __future__ import annotations

import numpy as np
import pytest

from drivers.simulated.bench import Bench
from drivers.simulated.materials import BEADS, BEANS, HEX_NUTS, RICE
from drivers.simulated.things import Cup, Jar, Tray
from drivers.simulated.weighing_pan import WeighingPan
from tests.helpers.simulated_desk import ManualClock, quiet_profile


class Room:
    """A bench and its pan on a clock that a test moves."""

    def __init__(self, seed: int = 1, **knobs: float) -> None:
        self.clock = ManualClock()
        self.pan = WeighingPan(quiet_profile(**knobs), self.clock.now)
        self.bench = Bench(self.pan, self.clock, seed)

    def weigh(self, seconds: float = 6.0) -> float:
        self.clock.wait(seconds)
        return self.pan.advance(self.clock.now)[-1].grams


@pytest.fixture
def room() -> Room:
    return Room()


@pytest.mark.parametrize(("solid", "low", "high"), [(False, 8, 20), (True, 60, 120)])
def test_cups_differ_within_their_kind(room: Room, solid: bool, low: float, high: float) -> None:
    masses = [room.bench.new_cup(solid).mass for _ in range(50)]

    assert low <= min(masses) < max(masses) <= high
    assert len(set(masses)) == 50


def test_a_cup_can_be_made_again(room: Room) -> None:
    first = room.bench.new_cup(number=7)
    again = room.bench.cup(first.mass, 7)

    assert (again.mass, again.number, again.filling) == (first.mass, 7, 0.0)


def test_two_cups_of_one_mass_are_two_cups(room: Room) -> None:
    room.bench.put(Cup(10.0))
    room.bench.put(Cup(10.0))

    assert len(room.bench.on_pan) == 2


def test_filling_lands_near_the_scoop_but_not_on_it(room: Room) -> None:
    cup = Cup(12.0)
    room.bench.fill(cup, 88.0, HEX_NUTS)

    assert 0 < abs(cup.filling - 88.0) < 2.6
    assert cup.pieces == 18
    assert cup.grams == 12.0 + cup.filling


def test_filling_starts_anew_and_a_scoop_adds(room: Room) -> None:
    cup = Cup(12.0)
    room.bench.fill(cup, 88.0, RICE)
    room.bench.fill(cup, 50.0, RICE)
    room.bench.scoop(cup, 25.0, RICE)

    assert cup.filling == pytest.approx(75.0, abs=0.05)


def test_what_is_put_on_is_felt_and_lifted_again(room: Room) -> None:
    cup = Cup(12.34)
    room.bench.put(cup)

    assert room.bench.on_pan == (cup,)
    assert room.weigh() == pytest.approx(12.34, abs=1e-4)
    room.bench.lift()
    assert room.bench.on_pan == ()
    assert room.weigh() == pytest.approx(0, abs=1e-4)


def test_things_lie_beside_each_other(room: Room) -> None:
    cup, weight = Cup(12.0), room.bench.check_weight(100.0)
    room.bench.put(cup)
    room.bench.put(weight)

    assert room.weigh() == pytest.approx(112.0, abs=1e-4)
    room.bench.lift(cup)
    assert room.bench.on_pan == (weight,)
    assert room.weigh() == pytest.approx(100.0, abs=1e-4)


def test_one_thing_cannot_be_put_twice(room: Room) -> None:
    cup = Cup(12.0)
    room.bench.put(cup)

    with pytest.raises(ValueError, match="already"):
        room.bench.put(cup)


def test_filling_and_emptying_on_the_pan_is_felt(room: Room) -> None:
    cup = Cup(12.0)
    room.bench.put(cup)
    room.bench.fill(cup, 50.0, RICE)

    assert room.weigh() == pytest.approx(cup.grams, abs=1e-4)
    room.bench.empty(cup)
    assert room.weigh() == pytest.approx(12.0, abs=1e-4)


def test_a_change_by_hand_is_felt_when_told(room: Room) -> None:
    cup = Cup(12.0)
    room.bench.put(cup)
    cup.filling = 30.0
    room.bench.change(cup)

    assert room.weigh() == pytest.approx(42.0, abs=1e-4)


def test_what_stays_beside_the_pan_is_not_felt(room: Room) -> None:
    room.bench.fill(Cup(12.0), 50.0, RICE)

    assert room.weigh() == 0.0


def test_samples_of_100_spread_as_theory_says(room: Room) -> None:
    samples = []
    for _ in range(200):
        tray = Tray(20.0)
        room.bench.count_onto(tray, 100, BEANS)
        samples.append(tray.filling)
    sd = 10 * BEANS.cv * BEANS.piece_mass  # sqrt(100) pieces
    chi_square = float(np.var(samples, ddof=1)) * 199 / sd**2

    assert 162 < chi_square < 240  # 2.5 % and 97.5 % points of chi-square, 199 degrees of freedom
    assert np.mean(samples) == pytest.approx(100 * BEANS.piece_mass, abs=3 * sd / 200**0.5)


def test_three_samples_on_one_tray_really_differ(room: Room) -> None:
    tray = room.bench.new_tray()
    samples = []
    for _ in range(3):
        room.bench.count_onto(tray, 100, BEANS)
        samples.append(tray.filling)
        room.bench.clear(tray)

    assert len({round(sample, 1) for sample in samples}) == 3
    assert (tray.filling, tray.pieces) == (0.0, 0)


def test_counting_on_adds_up(room: Room) -> None:
    tray = room.bench.new_tray()
    room.bench.count_onto(tray, 60, BEADS)
    room.bench.count_onto(tray, 40, BEADS)

    assert tray.pieces == 100
    assert tray.filling == pytest.approx(100 * BEADS.piece_mass, rel=0.02)


def test_a_jar_beside_the_pan_is_full_at_once(room: Room) -> None:
    jar = room.bench.new_jar()
    room.bench.pour(jar, BEADS, pieces=2000)

    assert jar.pieces == 2000
    assert jar.filling == pytest.approx(2000 * BEADS.piece_mass, rel=0.01)
    assert not room.bench.pouring


def test_a_jar_on_the_pan_fills_at_the_pour_rate(room: Room) -> None:
    jar = Jar(100.0)
    room.bench.put(jar)
    room.weigh()
    room.bench.pour_rate = 50.0
    room.bench.pour(jar, BEADS, grams=400.0)

    half = room.weigh(4.0)
    assert room.bench.pouring
    assert jar.pieces == pytest.approx(200 / BEADS.piece_mass, abs=8)
    assert half == pytest.approx(300, abs=10)
    full = room.weigh(8.0)
    assert not room.bench.pouring
    assert full == pytest.approx(jar.grams, abs=1e-4)
    assert jar.filling == pytest.approx(400, abs=0.2)


@pytest.mark.parametrize("end", [Bench.stop_pouring, Bench.lift])
def test_an_interrupted_pour_keeps_whole_pieces(room: Room, end: object) -> None:
    jar = Jar(100.0)
    room.bench.put(jar)
    room.bench.pour(jar, HEX_NUTS, pieces=100)
    room.clock.wait(2.0)
    assert callable(end)
    end(room.bench)
    on_pan = bool(room.bench.on_pan)

    assert 20 <= jar.pieces <= 30
    assert jar.filling == pytest.approx(jar.pieces * HEX_NUTS.piece_mass, rel=0.02)
    assert room.weigh() == pytest.approx(jar.grams if on_pan else 0.0, abs=1e-4)


def test_a_second_pour_goes_on_from_the_first(room: Room) -> None:
    jar = Jar(100.0)
    room.bench.put(jar)
    room.bench.pour(jar, BEADS, pieces=100)
    room.clock.wait(0.1)
    room.bench.pour(jar, BEADS, pieces=50)
    room.clock.wait(5.0)

    assert not room.bench.pouring
    assert 65 <= jar.pieces <= 85


def test_pouring_nothing_is_done_at_once(room: Room) -> None:
    jar = Jar(100.0)
    room.bench.put(jar)
    room.bench.pour(jar, BEADS, grams=0.0)

    assert not room.bench.pouring
    assert jar.pieces == 0


@pytest.mark.parametrize("amount", [{}, {"grams": 5.0, "pieces": 5}])
def test_a_pour_needs_one_amount(room: Room, amount: dict[str, int]) -> None:
    with pytest.raises(ValueError, match="either grams or pieces"):
        room.bench.pour(Jar(100.0), BEADS, **amount)


def test_a_leaning_hand_and_a_fan_disturb(room: Room) -> None:
    room.bench.lean(60.0, 8.0)
    assert room.weigh() == pytest.approx(60, abs=4)
    room.bench.let_go()
    room.bench.draught(5.0)
    room.clock.wait(3.0)
    room.pan.advance(room.clock.now)
    room.clock.wait(20.0)
    fanned = [sample.grams for sample in room.pan.advance(room.clock.now)]
    room.bench.draught(0.0)

    assert 0.2 < np.std(fanned) < 1.0
    assert room.weigh(20.0) == pytest.approx(0, abs=1e-3)


@pytest.mark.parametrize("error", [0.01, -0.02])
def test_an_error_of_span_makes_every_load_wrong_by_its_share(error: float) -> None:
    room = Room(span_error=error)
    for grams in (50.0, 200.0):
        room.bench.lift()
        room.bench.put(room.bench.check_weight(grams))
        assert room.weigh() == pytest.approx(grams * (1 + error), abs=1e-3)


@pytest.mark.parametrize(("across", "shown"), [(-1.0, 202.0), (0.0, 200.0), (1.0, 198.0)])
def test_an_error_of_corner_shows_at_the_edges(across: float, shown: float) -> None:
    room = Room(corner_error=0.01)
    room.bench.put(room.bench.check_weight(200.0), across)
    assert room.weigh() == pytest.approx(shown, abs=1e-3)


def test_a_pour_on_a_balance_that_is_off_ends_where_its_jar_would_weigh() -> None:
    room = Room(span_error=0.01)
    jar = Jar(100.0)
    room.bench.put(jar)
    room.bench.pour(jar, BEADS, grams=50.0)
    shown = room.weigh(10.0)
    assert not room.bench.pouring
    assert shown == pytest.approx(1.01 * jar.grams, abs=1e-3)


@pytest.mark.parametrize("knob", ["span_error", "corner_error"])
def test_a_balance_is_not_off_by_the_whole_load(knob: str) -> None:
    with pytest.raises(ValueError, match="share of the load"):
        quiet_profile(**{knob: -1.0})


def test_coins_are_a_little_worn(room: Room) -> None:
    masses = [room.bench.coins(5.0, 20).mass for _ in range(200)]
    assert np.mean(masses) == pytest.approx(0.9957 * 100, abs=0.1)
    assert 0.1 < np.std(masses) < 0.4


def test_the_seed_decides_what_is_drawn() -> None:
    masses = [Room(seed).bench.new_cup().mass for seed in (4, 4, 5)]

    assert masses[0] == masses[1] != masses[2]
