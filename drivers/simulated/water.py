"""Water on the simulated pan: what the water in a vessel weighs by its temperature.

Not the formulas of the kiosk, so that a volume found with them can be checked against this one.
"""

from __future__ import annotations

AIR = 1.2  # kg/m³, by convention (OIML R 111-1, from memory, not verified)
WEIGHTS = 8000.0  # kg/m³, by which the balance was adjusted


def water_density(celsius: float) -> float:
    """Tap water that has stood in the air, in kg/m³, 5 to 40 °C.

    Jones and Harris, J. Res. NIST 97 (1992) 335-340; coefficients from memory, not verified, but
    within 4 in a million of Tanaka's.
    """
    t = celsius
    terms = (999.85308, 6.32693e-2, -8.523829e-3, 6.943248e-5, -3.821216e-7)
    return sum(term * t**power for power, term in enumerate(terms))


def grams_shown(cm3: float, celsius: float) -> float:
    """What a perfect balance shows for so much water, which the air carries in part."""
    return cm3 / 1000 * (water_density(celsius) - AIR) / (1 - AIR / WEIGHTS)
