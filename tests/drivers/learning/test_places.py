"""Which characters of a line a learned shape takes for what."""

from __future__ import annotations

import pytest

from drivers.learning.findings import Learned, Study
from drivers.learning.learner import learn, study
from drivers.learning.places import Part, parts_of
from drivers.line_shape import LineShape
from tests.helpers.line_styles import KINDS, Stream, taught


def shape_of(name: str) -> LineShape:
    found = learn(taught(KINDS[name]), "it")
    assert isinstance(found, Learned)
    return found.shape


def picked(line: str, shape: LineShape) -> dict[Part, str]:
    """The characters of each part."""
    found: dict[Part, str] = {}
    for char, part in zip(line, parts_of(line, shape), strict=True):
        if part is not None:
            found[part] = found.get(part, "") + char
    return found


@pytest.mark.parametrize(
    ("name", "line", "number", "unit", "mark"),
    [
        ("header, zeros", "ST,+00052.18  g", "+00052.18", "g", (Part.STILL, "ST")),
        ("echo, then state", "S D      52.18 g", "52.18", "g", (Part.MOVING, "D")),
        ("clock before", "09:00:07 US +   52.18 g", "+   52.18", "g", (Part.MOVING, "US")),
        ("suffix while moving", "   52.18 g M", "52.18", "g", (Part.MOVING, "M")),
        ("unit first", "g ST     52.18", "52.18", "g", (Part.STILL, "ST")),
        ("brackets alone", "+    52.1[8] g  ", "+    52.18", "g", (Part.MOVING, "[]")),
    ],
)
def test_each_part_is_found_where_it_stands(
    name: str, line: str, number: str, unit: str, mark: tuple[Part, str]
) -> None:
    wanted = {Part.NUMBER: number, Part.UNIT: unit, mark[0]: mark[1]}
    assert picked(line, shape_of(name)) == wanted


def test_a_line_without_the_number_has_no_parts() -> None:
    assert picked("PRACTICE PAN READY", shape_of("header, zeros")) == {}


def studied(stream: Stream) -> Study:
    return study(stream.packets, "it")


def test_loads_are_counted_as_they_come_and_go() -> None:
    stream = Stream(KINDS["clock before"])
    seen = []
    for load in (0.0, 52.18, 0.0, 30.5, 0.0, 80.0):
        stream.put(load)
        stream.run(3.0)
        found = studied(stream)
        seen.append((found.loads, found.loaded))
    assert seen == [(0, False), (0, True), (1, False), (1, True), (2, False), (2, True)]


def test_a_hand_on_the_pan_at_the_start_counts_as_no_load() -> None:
    stream = Stream(KINDS["clock before"])
    for load in (20.0, 0.0, 52.18, 0.0, 52.18, 0.0):
        stream.put(load)
        stream.run(2.0)
    assert studied(stream).loads == 2
