"""The volume of a container by the mass of the water that fills it.

A balance shows less than the water's mass, because air carries it more than the weights by which
the balance was adjusted (8000 kg/m³). Not in the interval: a balance out of adjustment, and how
exactly the container was filled, unless several fillings were weighed.
"""

from __future__ import annotations

from decimal import Decimal
from math import exp, sqrt

from kiosk.estimating.exact import exact
from kiosk.estimating.volume import Readings, Volume, bounded
from kiosk.texts import say

COLDEST, WARMEST = 0, 40  # °C, where the formula of the density holds
WEIGHTS = 8000.0  # kg/m³, by convention
USUAL_PRESSURE, LOWEST_PRESSURE = 1013.25, 800.0  # hPa; at the sea, and at about 2000 m
USUAL_HUMIDITY = 50.0  # per cent
THERMOMETER = 1.0  # °C, either way: common practice, no source


def by_water(net: Readings, celsius: Decimal, readability: Decimal | None = None) -> Volume:
    """The volume of a container that takes ``net`` grams of water; readability in grams.

    Readings of several fillings may be given. Without a readability it is the last digit of the
    masses. ValueError for a temperature outside 0 to 40 °C or a readability not above zero.
    """
    if not COLDEST <= exact(celsius) <= WARMEST:
        raise ValueError(say("volume.temperature", least=COLDEST, most=WARMEST, celsius=celsius))
    step = _last_digit(net) if readability is None else readability
    if exact(step) <= 0:
        raise ValueError("a readability is above zero")
    factor, mass = z_factor(float(celsius)), net.mean
    return bounded(
        factor * mass,
        (
            factor * float(step) / sqrt(6),  # the difference of two readings
            factor * net.spread,
            mass * _of_the_surroundings(float(celsius)),
        ),
    )


def z_factor(celsius: float, pressure: float = USUAL_PRESSURE) -> float:
    """Millilitres of water for a gram that the balance shows (ISO 8655-6); pressure in hPa."""
    air = air_density(celsius, pressure)
    return 1000 * (1 - air / WEIGHTS) / (water_density(celsius) - air)


def water_density(celsius: float) -> float:
    """The density of pure water without air in kg/m³, 0 to 40 °C.

    Tanaka and others, Metrologia 38 (2001) 301-309.
    """
    t = celsius
    fall = (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881))
    return 999.974950 * (1 - fall)


def air_density(celsius: float, pressure: float) -> float:
    """The density of air at half humidity in kg/m³; pressure in hPa.

    The approximation of OIML R 111-1, from memory, not verified in the document.
    """
    moisture = 0.009 * USUAL_HUMIDITY * exp(0.061 * celsius)
    return (0.34848 * pressure - moisture) / (273.15 + celsius)


def _of_the_surroundings(celsius: float) -> float:
    """The standard uncertainty of the factor: how warm, and how high above the sea, is a guess."""
    warm = abs(z_factor(celsius + THERMOMETER) - z_factor(celsius - THERMOMETER)) / 2
    high = z_factor(celsius) - z_factor(celsius, LOWEST_PRESSURE)
    return sqrt((warm**2 + high**2) / 3)


def _last_digit(net: Readings) -> Decimal:
    places = [int(mass.as_tuple().exponent) for mass in net.shown]
    return Decimal(1).scaleb(min(0, *places))
