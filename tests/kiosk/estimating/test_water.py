from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

import pytest

from kiosk.estimating.volume import Readings, Volume
from kiosk.estimating.water import air_density, by_water, water_density, z_factor

# ISO 8655-6, table of Z in mL/g at 101.3 kPa, as reprinted in manufacturers' manuals; the half
# steps also as copied into public programs
Z_FACTORS = {
    15.0: 1.0020, 15.5: 1.0020, 16.0: 1.0021, 16.5: 1.0022, 17.0: 1.0023, 17.5: 1.0024,
    18.0: 1.0025, 18.5: 1.0026, 19.0: 1.0027, 19.5: 1.0028, 20.0: 1.0029, 20.5: 1.0030,
    21.0: 1.0031, 21.5: 1.0032, 22.0: 1.0033, 22.5: 1.0034, 23.0: 1.0035, 23.5: 1.0036,
    24.0: 1.0038, 24.5: 1.0039, 25.0: 1.0040, 25.5: 1.0041, 26.0: 1.0043, 26.5: 1.0044,
    27.0: 1.0045, 27.5: 1.0047, 28.0: 1.0048, 28.5: 1.0050, 29.0: 1.0051, 29.5: 1.0052,
    30.0: 1.0054,
}  # fmt: skip


def water(*grams: str, celsius: str = "20", step: str | None = None) -> Volume:
    readings = Readings(tuple(map(Decimal, grams)))
    return by_water(readings, Decimal(celsius), None if step is None else Decimal(step))


def reach(volume: Volume) -> float:
    return float(volume.high - volume.low) / 2


class TestAgainstTheOutside:
    @pytest.mark.parametrize(
        ("celsius", "density"),
        [
            # Tanaka's formula as printed by a hydrology tutorial, and in a public test suite
            (20, 998.2067455596167),
            (25, 997.0470),
            # The density of water has its maximum at 3.983035 °C: Tanaka's own constants
            (3.983035, 999.974950),
        ],
    )
    def test_density_of_water(self, celsius: float, density: float) -> None:
        assert water_density(celsius) == pytest.approx(density, abs=5e-5)

    @pytest.mark.parametrize(("celsius", "published"), Z_FACTORS.items())
    def test_z_factors(self, celsius: float, published: float) -> None:
        # Two entries lie on the edge between two last digits (1.00375, 1.00495)
        assert z_factor(celsius) == pytest.approx(published, abs=5.1e-5)

    @pytest.mark.parametrize(("pressure", "published"), [(800, 1.0026), (1067, 1.0029)])
    def test_z_factors_at_other_pressures(self, pressure: float, published: float) -> None:
        # ISO 8655-6 at 20 °C, as reprinted in a manufacturer's manual
        assert round(z_factor(20, pressure), 4) == published

    def test_air_weighs_a_little_more_than_a_gram_a_litre(self) -> None:
        # 1.2 kg/m³ at 20 °C is the reference of OIML R 111-1 (from memory, not verified)
        assert air_density(20, 1013.25) == pytest.approx(1.2, abs=0.002)


class TestAContainer:
    def test_a_hundred_grams_take_more_than_a_hundred_millilitres(self) -> None:
        found = water("100.00")
        assert float(found.cm3) == pytest.approx(100.285, abs=0.0005)
        assert found.low < found.cm3 < found.high

    def test_warm_water_takes_more_room(self) -> None:
        assert water("100.00", celsius="30").cm3 > water("100.00").cm3

    def test_two_readings_are_rounded(self) -> None:
        # 1.96 x 1 g x sqrt(2/12) of a net mass; all the rest is small at steps of 1 g
        assert reach(water("100", step="1")) == pytest.approx(1.96 * 1.00285 / 6**0.5, rel=0.01)

    def test_the_digits_tell_the_readability(self) -> None:
        assert water("500.0") == water("500.0", step="0.1")

    def test_a_thermometer_and_the_height_above_the_sea_are_doubted(self) -> None:
        # at 800 hPa Z(20) is 1.0026 instead of 1.0029: 0.3 mL of a litre
        found = water("1000.000", step="0.001")
        assert 0.2 < reach(found) < 0.7
        assert float(found.low) < 1000 * z_factor(20, 800) < float(found.high)

    def test_fillings_that_differ_make_it_wider(self) -> None:
        one, three = water("500.0"), water("498.0", "500.0", "502.0")
        assert three.cm3 == pytest.approx(one.cm3, abs=Decimal("0.001"))
        assert reach(three) > 5 * reach(one)


class TestBadInput:
    @pytest.mark.parametrize("celsius", ["-0.1", "40.1", "nan", "inf"])
    def test_only_between_freezing_and_forty(self, celsius: str) -> None:
        with pytest.raises(ValueError, match=r"between 0 and 40|not a number"):
            water("100", celsius=celsius)

    @pytest.mark.parametrize("celsius", ["0", "40"])
    def test_both_ends_are_in(self, celsius: str) -> None:
        assert water("100", celsius=celsius).cm3 > 100

    @pytest.mark.parametrize(("grams", "step"), [(("0",), None), (("100",), "0"), (("100",), "-1")])
    def test_nothing_weighs_nothing(self, grams: Sequence[str], step: str | None) -> None:
        with pytest.raises(ValueError, match="above zero"):
            water(*grams, step=step)
