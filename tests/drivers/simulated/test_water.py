"""Water on the simulated pan, against published densities and a vessel that is known."""

from __future__ import annotations

import pytest

from drivers.simulated.table import simulated_table
from drivers.simulated.water import grams_shown, water_density


@pytest.mark.parametrize(
    ("celsius", "density"), [(10, 999.70), (20, 998.20), (25, 997.05), (40, 992.22)]
)
def test_density_as_tables_have_it(celsius: float, density: float) -> None:
    """CRC Handbook, density of water (from memory, not verified)."""
    assert water_density(celsius) == pytest.approx(density, abs=0.01)


def test_a_litre_shows_about_three_grams_less_than_a_kilogram() -> None:
    """ISO 8655-6: 1.0028 ml for a gram that is shown, at 20 °C (from memory, not verified)."""
    assert 1000 / grams_shown(1000, 20) == pytest.approx(1.0028, abs=0.0001)


def test_a_vessel_is_filled_to_the_brim_whatever_was_in_it() -> None:
    with simulated_table(clock=lambda: 0.0, seed=7) as table:
        vessel = table.bench.new_vessel()
        for _ in range(2):
            table.bench.fill_with_water(vessel, 21)
        assert vessel.filling == pytest.approx(grams_shown(vessel.cm3, 21))
        table.bench.empty(vessel)
        assert vessel.grams == vessel.mass
