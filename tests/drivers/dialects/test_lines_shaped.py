from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from drivers.dialects.line_told import Told
from drivers.dialects.lines_shaped import read_shaped
from drivers.line_shape import LineShape, Mark, Place


def told(line: str, last_unit: str | None = None, /, **traits: Any) -> Told:
    found = read_shaped(line, LineShape(name="it", **traits), last_unit)
    assert found is not None
    return found


def mass(line: str, last_unit: str | None = None, /, **traits: Any) -> str:
    """The value and unit, or why there is no mass."""
    found = told(line, last_unit, **traits)
    if found.obstacle is not None:
        return found.obstacle.reason
    return f"{found.value} {found.unit}"


@pytest.mark.parametrize(
    ("line", "traits", "expected"),
    [
        ("14:23:05 +012.30 g", {"number": 3}, "12.30 g"),
        ("07,0012.50 g", {"number": -1, "follows_digits": True}, "12.50 g"),
        ("-  0,35 kg", {"point": ","}, "-0.35 kg"),
        ("001500", {"point": "", "decimals": 2, "unit_place": "nowhere"}, "15.00 g"),
        ("001500", {"point": "", "unit": "oz", "unit_place": "nowhere"}, "1500 oz"),
        ("  12.30- g", {"sign": "after"}, "-12.30 g"),
        ("  12.30  g", {"sign": "after"}, "12.30 g"),
        ("-;ST;  12.30 g", {"sign": "apart"}, "-12.30 g"),
        ("+;ST;  12.30 g", {"sign": "apart"}, "12.30 g"),
        ("kg ST  12.30", {"unit_place": "before"}, "12.30 kg"),
        ("12.30 S g", {"stable": Mark(text="S", place=Place.AFTER)}, "12.30 g"),
        ("ST 12.3 G", {}, "12.3 g"),
        ("12.3 g*5E", {}, "12.3 g"),
        ("12.3 g E5", {}, "12.3 g"),
        ("12.3 oz", {}, "12.3 oz"),
        ("E 12.3 g", {"words": ("E",)}, "12.3 g"),
        ("ID - 7; +12.3 g", {"number": 1, "words": ("-", "ID")}, "12.3 g"),
    ],
)  # fmt: skip
def test_the_mass_is_read_where_the_shape_says(
    line: str, traits: dict[str, Any], expected: str
) -> None:
    assert mass(line, **traits) == expected


@pytest.mark.parametrize(
    ("line", "traits", "reason"),
    [
        ("12.3", {}, "the number has no unit"),
        ("12.3 pcs", {}, "unknown unit 'pcs'"),
        ("12.3 pcs", {"unit_lacks_while_moving": True}, "unknown unit 'pcs'"),
        ("-;ST; 12.3 g", {}, "it cannot be told whether the number has a minus sign"),
        ("-12.3- g", {"sign": "after"}, "it cannot be told whether the number has a minus sign"),
        ("-;12.3- g", {"sign": "apart"}, "it cannot be told whether the number has a minus sign"),
        ("7,234.5 g", {"number": 1}, "the number cannot be read"),
        ("1234567890123456 g", {}, "the number cannot be read"),
        ("12.3 g", {"decimals": 2}, "the number has other decimals than this balance used to send"),
        ("ST,FULL", {"over_words": ("FULL",)},
         "there is more on the pan than the balance can weigh"),
        ("ST,LACK", {"under_words": ("LACK",)},
         "there is less on the pan than the balance can weigh"),
        ("OOPS 12.3 g", {"error_words": ("OOPS",)}, "the balance reports an error (OOPS)"),
        ("OL,+9999999E+19", {}, "there is more on the pan than the balance can weigh"),
        ("ST,------- g", {}, "the balance shows no number"),
    ],
)  # fmt: skip
def test_what_gives_no_mass_says_why(line: str, traits: dict[str, Any], reason: str) -> None:
    assert mass(line, **traits) == reason


@pytest.mark.parametrize(
    ("line", "traits"),
    [
        ("2.30 g", {"lengths": (7,)}),
        ("READY", {}),
        ("12.30 g", {"number": 1}),
    ],
)
def test_a_line_of_another_shape_is_none(line: str, traits: dict[str, Any]) -> None:
    assert read_shaped(line, LineShape(name="it", **traits), None) is None


@pytest.mark.parametrize("line", ["  12.30 g", "0.43386 oz", "  0.434 oz"])
def test_the_unit_key_may_change_length_and_decimals(line: str) -> None:
    assert told(line, lengths=(9,), decimals=2).obstacle is None


def test_while_moving_the_unit_is_the_one_that_was_sent_last() -> None:
    assert mass("12.3", "oz", unit_lacks_while_moving=True) == "12.3 oz"
    assert mass("12.3", None, unit_lacks_while_moving=True) == "the number has no unit"


S, D = (Mark(text=text, place=Place.BEFORE) for text in "SD")
ECHO_S = Mark(text="S", place=Place.BEFORE, column=2)
BEHIND = Mark(text="*", place=Place.AFTER, column=-1)
BRACKETS = Mark(text="[", place=Place.AFTER)


@pytest.mark.parametrize(
    ("line", "traits", "stable"),
    [
        ("S 12.3 g", {"stable": S, "moving": D}, True),
        ("D 12.3 g", {"stable": S, "moving": D}, False),
        ("  12.3 g", {"stable": S, "moving": D}, None),
        ("  12.3 g", {"stable": S}, False),
        ("  12.3 g", {"moving": D}, True),
        ("S D 12.3 g", {"stable": ECHO_S, "moving": D}, False),
        ("S S 12.3 g", {"stable": ECHO_S, "moving": D}, True),
        ("12.3 g *", {"stable": BEHIND}, True),
        ("12.3 g* ", {"stable": BEHIND}, False),
        ("12.3 g D", {"moving": D}, True),
        ("12.3[4] g", {"moving": BRACKETS}, False),
        ("12.34 g", {"moving": BRACKETS}, True),
        ("12.3 g", {"unit_lacks_while_moving": True}, True),
        ("12.3", {"unit_lacks_while_moving": True}, False),
        ("US 12.3 g", {}, False),
        ("12.3 g", {}, None),
    ],
)
def test_rest_is_told_by_the_marks_and_by_their_absence(
    line: str, traits: dict[str, Any], stable: bool | None
) -> None:
    assert told(line, "g", **traits).stable is stable


def test_decimals_that_are_not_sent_keep_their_zeros() -> None:
    found = told("001500", point="", decimals=2, unit_place="nowhere")
    assert found.value == Decimal("15.00")
    assert str(found.value) == "15.00"
