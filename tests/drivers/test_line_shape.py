from __future__ import annotations

import json
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.errors import BadShape
from drivers.line_shape import LineShape, Mark, Place, Terminator, shape_from_json, shape_to_json

FULL = LineShape(
    name="by the window",
    terminator=Terminator.STX_ETX,
    lengths=(14, 16),
    number=-1,
    follows_digits=True,
    point=",",
    decimals=2,
    sign=Place.APART,
    unit="kg",
    unit_place=Place.BEFORE,
    unit_lacks_while_moving=True,
    stable=Mark(text="S", place=Place.BEFORE, column=2),
    moving=Mark(text="[", place=Place.AFTER),
    words=("ID", "A3"),
    over_words=("HIGH",),
    readability=Decimal("0.0010"),
    port_settings="2400-7E1",
)


@pytest.mark.parametrize("shape", [FULL, LineShape(name="plain")])
def test_a_shape_comes_back_as_it_was_kept(shape: LineShape) -> None:
    assert shape_from_json(shape_to_json(shape)) == shape


def test_the_digits_of_the_readability_survive() -> None:
    assert json.loads(shape_to_json(FULL))["readability"] == "0.0010"


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"version": 2}, "version"),
        ({"unit": "pcs"}, "unit: 'pcs' is no unit of mass; known are mg, g"),
        ({"port_settings": "9600"}, "port_settings: '9600' are no port settings"),
        ({"point": ";"}, "point"),
        ({"readability": 0}, "readability"),
        ({"lengths": ["x"]}, "lengths.0"),
        ({"stable": {"text": "S", "place": "nowhere"}}, "stable.place"),
        ({"colour": "red"}, "colour"),
        ({"unit_place": "nowhere"}, "cannot lack while moving"),
        (
            {"stable": {"text": "S", "place": "after"}, "moving": {"text": "S", "place": "after"}},
            "the same mark",
        ),
    ],
)
def test_what_is_wrong_with_a_shape_is_said(change: dict[str, Any], why: str) -> None:
    text = json.dumps(json.loads(shape_to_json(FULL)) | change)
    with pytest.raises(BadShape, match=why) as caught:
        shape_from_json(text)
    assert "\n" not in str(caught.value)


@given(st.text(max_size=80) | st.binary(max_size=80))
def test_anything_else_is_refused_as_no_shape(text: str | bytes) -> None:
    with pytest.raises(BadShape):
        shape_from_json(text)
