from __future__ import annotations

import numpy as np
import pytest

from drivers.simulated.materials import HEX_NUTS, MATERIALS, RICE, Material, Scatter


@pytest.mark.parametrize("material", MATERIALS.values(), ids=MATERIALS)
def test_pieces_have_the_stated_mean_and_scatter(material: Material) -> None:
    masses = material.draw(np.random.default_rng(1), 40_000)

    assert masses.min() > 0
    assert masses.mean() == pytest.approx(material.piece_mass, rel=4 * material.cv / 200)
    assert masses.std() / masses.mean() == pytest.approx(material.cv, rel=0.03)


@pytest.mark.parametrize("scatter", Scatter)
def test_distributions_lean_to_the_heavy_side(scatter: Scatter) -> None:
    material = Material(name="gravel", piece_mass=1.0, cv=0.4, scatter=scatter)
    masses = material.draw(np.random.default_rng(1), 40_000)
    skewness = float(((masses - masses.mean()) ** 3).mean() / masses.std() ** 3)
    expected = {Scatter.GAMMA: 2 * 0.4, Scatter.LOGNORMAL: 3 * 0.4 + 0.4**3}[scatter]

    assert skewness == pytest.approx(expected, rel=0.15)


@pytest.mark.parametrize(("material", "grams"), [(RICE, 100.0), (HEX_NUTS, 88.0), (RICE, 0.001)])
def test_whole_pieces_come_as_near_as_half_a_piece(material: Material, grams: float) -> None:
    masses = material.draw_about(np.random.default_rng(1), grams)

    assert abs(masses.sum() - grams) <= material.piece_mass * (1 + 4 * material.cv) / 2
    assert len(masses) == pytest.approx(grams / material.piece_mass, abs=len(masses) * 0.05 + 1)
