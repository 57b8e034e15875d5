"""Factors against published exact values: NIST Handbook 44, Appendix C (2023), and SP 811, B.8."""

from decimal import Decimal

import pytest

from drivers.units import GRAMS_PER, pounds_and_ounces, to_grams

PUBLISHED = {
    "mg": "0.001",
    "g": "1",
    "kg": "1000",
    "t": "1000000",
    "ct": "0.2",
    "gn": "0.06479891",
    "dwt": "1.55517384",
    "ozt": "31.1034768",
    "oz": "28.349523125",
    "lb": "453.59237",
    "ton": "907184.74",
}


@pytest.mark.parametrize(("unit", "grams"), PUBLISHED.items())
def test_one_unit_in_grams_is_exact(unit: str, grams: str) -> None:
    assert to_grams(Decimal(1), unit) == Decimal(grams)


def test_no_unit_lacks_a_published_value() -> None:
    assert GRAMS_PER.keys() == PUBLISHED.keys()


@pytest.mark.parametrize(
    ("many", "small", "one", "large"),
    [
        (7000, "gn", 1, "lb"),
        (5760, "gn", 12, "ozt"),
        (24, "gn", 1, "dwt"),
        (20, "dwt", 1, "ozt"),
        (16, "oz", 1, "lb"),
        (2000, "lb", 1, "ton"),
        (5, "ct", 1, "g"),
    ],
)
def test_units_fit_each_other(many: int, small: str, one: int, large: str) -> None:
    assert to_grams(Decimal(many), small) == to_grams(Decimal(one), large)


@pytest.mark.parametrize(
    ("value", "unit", "grams"),
    [("-0.100", "kg", "-100.000"), ("123.45", "g", "123.45"), ("0.000", "lb", "0.00000000")],
)
def test_digits_survive(value: str, unit: str, grams: str) -> None:
    assert format(to_grams(Decimal(value), unit), "f") == grams


def test_the_longest_weight_is_not_rounded() -> None:
    grams = to_grams(Decimal("12345678.9"), "oz")
    assert int(grams.scaleb(10)) == 123456789 * 28349523125


def test_an_unknown_unit_has_no_grams() -> None:
    with pytest.raises(KeyError):
        to_grams(Decimal(1), "stone")


def test_pounds_and_ounces_become_ounces() -> None:
    assert pounds_and_ounces(Decimal(8), Decimal("8.5")) == Decimal("136.5")
