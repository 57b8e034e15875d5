"""What lies in cups, trays and jars: pieces that each have their own mass.

The values are invented, within ranges that are published or common practice: rice 11 to 30 mg a
grain (Roy et al. 1996, abstract); lentils under 40 to over 50 g a thousand (Saskatchewan Pulse
Growers); dry beans 170 to 600 g a thousand (from memory, not verified); the rest common
practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
import numpy.typing as npt


class Scatter(StrEnum):
    """The distribution of the mass of single pieces."""

    GAMMA = "gamma"
    LOGNORMAL = "lognormal"


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """Pieces with a mean mass in grams and a coefficient of variation (0.12 is 12 %)."""

    name: str
    piece_mass: float
    cv: float
    scatter: Scatter

    def draw(self, rng: np.random.Generator, pieces: int) -> npt.NDArray[np.float64]:
        """The masses of new pieces, in grams."""
        if self.scatter is Scatter.GAMMA:
            return rng.gamma(1 / self.cv**2, self.piece_mass * self.cv**2, pieces)
        variance = math.log1p(self.cv**2)
        return rng.lognormal(math.log(self.piece_mass) - variance / 2, math.sqrt(variance), pieces)

    def draw_about(self, rng: np.random.Generator, grams: float) -> npt.NDArray[np.float64]:
        """New whole pieces whose sum is as near to ``grams`` as the last piece allows."""
        sums = np.zeros(1)
        while sums[-1] < grams:
            more = self.draw(rng, math.ceil((grams - sums[-1]) / self.piece_mass) + 10)
            sums = np.append(sums, sums[-1] + np.cumsum(more))
        nearest = int(np.argmin(np.abs(sums - grams)))
        return np.diff(sums[: nearest + 1])


RICE = Material(name="rice", piece_mass=0.0225, cv=0.12, scatter=Scatter.GAMMA)
LENTILS = Material(name="lentils", piece_mass=0.052, cv=0.16, scatter=Scatter.GAMMA)
BEANS = Material(name="beans", piece_mass=0.42, cv=0.17, scatter=Scatter.LOGNORMAL)
BEADS = Material(name="beads", piece_mass=0.27, cv=0.03, scatter=Scatter.GAMMA)
PASTA = Material(name="pasta", piece_mass=0.5, cv=0.06, scatter=Scatter.GAMMA)
HEX_NUTS = Material(name="hex nuts", piece_mass=4.9, cv=0.015, scatter=Scatter.LOGNORMAL)

MATERIALS = {material.name: material for material in (RICE, LENTILS, BEANS, BEADS, PASTA, HEX_NUTS)}
