from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal
from math import pi, sqrt
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from kiosk.estimating.volume import Readings, Volume, box, cylinder, tapered, tapered_box
from kiosk.settings import Rules

INCH = Decimal("2.54")  # centimetres, exact
CUBIC_INCH = Decimal("16.387064")  # cm³, exact
FINE = Decimal("0.001")


def cm(*shown: str | Decimal) -> Readings:
    return Readings(tuple(map(Decimal, shown)))


def inches(*shown: str) -> Readings:
    return Readings(tuple(Decimal(size) * INCH for size in shown))


def reach(volume: Volume) -> float:
    return float(volume.high - volume.low) / 2


class TestAgainstTheOutside:
    @pytest.mark.parametrize(
        ("sizes", "cm3"), [(("12", "9", "23"), 2484), (("13", "13", "23"), 3887)]
    )  # common practice, no source: boxes of the event
    def test_boxes_of_the_event(self, sizes: Sequence[str], cm3: int) -> None:
        measured = box(*map(cm, sizes))
        assert measured.cm3 == cm3
        assert measured.high < Rules().volume_limit_cm3

    def test_winchester_bushel(self) -> None:
        # 2150.42 cubic inches (trade table of units); 18.5 in across and 8 in deep: from memory,
        # not verified
        bushel = cylinder(inches("18.5"), inches("8"), FINE)
        assert float(bushel.cm3 / CUBIC_INCH) == pytest.approx(2150.42, abs=0.005)

    def test_wine_gallon_tells_a_wrong_pi(self) -> None:
        # 7 in across and 6 in deep are 231 cubic inches only with pi = 22/7 (the gallon's
        # definition: from memory, not verified)
        gallon = float(cylinder(inches("7"), inches("6"), FINE).cm3 / CUBIC_INCH)
        assert gallon * (22 / 7) / pi == pytest.approx(231, abs=1e-4)
        assert gallon == pytest.approx(230.907, abs=0.0005)

    def test_the_truncated_pyramid_of_the_moscow_papyrus(self) -> None:
        # Problem 14: square ends of 4 and 2, height 6, volume 56 (from memory, not verified)
        ends = (cm("2"), cm("2")), (cm("4"), cm("4"))
        assert tapered_box(*ends, cm("6")).cm3 == 56

    def test_a_tapered_round_container_of_one_width_is_a_cylinder(self) -> None:
        assert tapered(cm("8"), cm("8"), cm("10")).cm3 == cylinder(cm("8"), cm("10")).cm3

    def test_a_tapered_round_container_ends_as_a_cone(self) -> None:
        cone = tapered(cm("8"), cm("1e-9"), cm("10"))
        assert float(cone.cm3) == pytest.approx(pi / 3 * 16 * 10, rel=1e-6)

    def test_the_cylinder_of_the_mean_radius_is_too_small(self) -> None:
        # by pi h (R - r)^2 / 12: identity
        true = tapered(cm("8"), cm("6"), cm("10"), FINE)
        mean = cylinder(cm("7"), cm("10"), FINE)
        assert float(true.cm3 - mean.cm3) == pytest.approx(pi * 10 / 12, abs=1e-4)

    def test_a_tapered_box_of_one_width_is_a_box(self) -> None:
        ends = (cm("9"), cm("12")), (cm("9"), cm("12"))
        assert tapered_box(*ends, cm("23")).cm3 == 2484

    def test_similar_ends_give_the_frustum_of_a_pyramid(self) -> None:
        # h/3 (A + a + sqrt(A a)): identity
        found = tapered_box((cm("12"), cm("9")), (cm("8"), cm("6")), cm("15"))
        assert float(found.cm3) == pytest.approx(15 / 3 * (108 + 48 + sqrt(108 * 48)))

    def test_ends_that_are_not_similar_give_a_prismatoid(self) -> None:
        # h/6 (A + 4 middle + a), with the middle section's sides halfway: identity
        found = tapered_box((cm("12"), cm("4")), (cm("5"), cm("9")), cm("15"))
        assert float(found.cm3) == pytest.approx(15 / 6 * (48 + 4 * 8.5 * 6.5 + 45))


def as_box(a: Any, b: Any, c: Any) -> Any:
    return a * b * c


def as_cylinder(d: Any, h: Any) -> Any:
    return pi / 4 * d * d * h


def as_tapered(a: Any, b: Any, h: Any) -> Any:
    return pi / 12 * h * (a * a + a * b + b * b)


def tapered_box_of_five(*sizes: Readings, ruler: Decimal) -> Volume:
    a, b, c, d, h = sizes
    return tapered_box((a, b), (c, d), h, ruler)


def as_tapered_box(a: Any, b: Any, c: Any, d: Any, h: Any) -> Any:
    # The integral of the section's sides, both linear in the height
    return h / 6 * (2 * a * b + 2 * c * d + a * d + c * b)


SHAPES = [
    (box, as_box, ("12.0", "9.0", "23.0")),
    (cylinder, as_cylinder, ("8.0", "15.0")),
    (tapered, as_tapered, ("9.5", "6.0", "12.0")),
    (tapered_box_of_five, as_tapered_box, ("12.0", "9.0", "8.0", "7.0", "15.0")),
]


class TestTheInterval:
    @pytest.mark.parametrize(("shape", "formula", "sizes"), SHAPES)
    def test_sizes_propagate_as_by_uncertainties(
        self, shape: Callable[..., Volume], formula: Callable[..., Any], sizes: Sequence[str]
    ) -> None:
        ruler = Decimal("0.2")
        true = formula(*(ufloat(float(size), float(ruler) / sqrt(12)) for size in sizes))
        found = shape(*map(cm, sizes), ruler=ruler)
        assert float(found.cm3) == pytest.approx(true.nominal_value, rel=1e-6)
        assert reach(found) == pytest.approx(1.96 * true.std_dev, rel=0.01)

    @pytest.mark.parametrize(("shape", "formula", "sizes"), SHAPES)
    def test_it_covers_the_true_volume(
        self, shape: Callable[..., Volume], formula: Callable[..., Any], sizes: Sequence[str]
    ) -> None:
        # True sizes anywhere within half a step of the ruler
        rng = np.random.default_rng(1)
        found = shape(*map(cm, sizes), ruler=Decimal("0.5"))
        true = formula(*(float(size) + rng.uniform(-0.25, 0.25, 20_000) for size in sizes))
        inside = (float(found.low) <= true) & (true <= float(found.high))
        assert inside.mean() > 0.945

    def test_places_that_differ_make_it_wider(self) -> None:
        sides = cm("9.0"), cm("23.0")
        once, bulging = box(cm("12.2"), *sides), box(cm("12.0", "12.2", "12.4"), *sides)
        assert bulging.cm3 == once.cm3
        assert reach(bulging) > 2 * reach(once)

    def test_places_that_agree_do_not(self) -> None:
        sides = cm("9.0"), cm("23.0")
        assert box(cm("12.0", "12.0"), *sides) == box(cm("12.0"), *sides)

    def test_a_wall_that_bulges_is_in_it(self) -> None:
        # An edge of 12 cm whose middle stands out by b, as a parabola: 2/3 of b on the average
        found = box(cm("12.0", "12.6"), cm("9.0"), cm("23.0"))
        assert found.low < Decimal("12.4") * 9 * 23 < found.high

    def test_a_finer_ruler_makes_it_narrower(self) -> None:
        sides = cm("12"), cm("9"), cm("23")
        assert reach(box(*sides, FINE)) == pytest.approx(reach(box(*sides)) / 100, rel=0.03)

    def test_it_never_begins_below_nothing(self) -> None:
        tiny = box(cm("0.1"), cm("0.1"), cm("0.1"), Decimal(1))
        assert tiny.low == 0 < tiny.cm3 < tiny.high

    @given(
        st.lists(st.integers(1, 10**6), min_size=3, max_size=3),
        st.integers(1, 10**4),
        st.integers(-6, 0),
    )
    def test_it_is_rounded_outward_and_little(
        self, sizes: list[int], ruler: int, exponent: int
    ) -> None:
        unit = Decimal(1).scaleb(exponent)
        a, b, c = (size * unit for size in sizes)
        found = box(cm(a), cm(b), cm(c), ruler * unit)
        exactly = float(a) * float(b) * float(c)
        parts = sqrt(sum(float(ruler * unit / size) ** 2 for size in (a, b, c)) / 12)
        half = 1.959964 * exactly * parts
        assert half * (1 - 1e-9) <= float(found.high) - exactly <= half * 1.011
        assert float(found.low) <= max(0.0, exactly - half * (1 - 1e-9))
        assert found.low <= found.cm3 <= found.high

    def test_a_person_reads_the_volume_with_the_digits_of_its_bounds(self) -> None:
        # 387.46309 between 382.54 and 392.39
        assert tapered(cm("8"), cm("6"), cm("10")).rounded == Decimal("387.46")


class TestBadInput:
    @pytest.mark.parametrize("shown", [(), ("0",), ("-1",), ("12", "-12"), ("nan",), ("inf",)])
    def test_readings_are_above_zero(self, shown: Sequence[str]) -> None:
        with pytest.raises(ValueError, match=r"."):
            cm(*shown)

    @pytest.mark.parametrize("ruler", ["0", "-0.1", "nan"])
    def test_a_ruler_has_a_step(self, ruler: str) -> None:
        with pytest.raises(ValueError, match=r"."):
            box(cm("1"), cm("1"), cm("1"), Decimal(ruler))
