"""The newest lines as they came: one a second, with bytes that do not print as their digits."""

from __future__ import annotations

from drivers.learning.places import Part
from drivers.line_shape import LineShape, Terminator
from drivers.packet import Packet
from kiosk.ui.raw_tail import ROWS, RawTail

SHAPE = LineShape(name="it")


def tail(*lines: tuple[float, bytes]) -> RawTail:
    """A tail that saw the end of an earlier line first."""
    made = RawTail()
    made.feed(Packet(0.0, b"\r\n"))
    for at, data in lines:
        made.feed(Packet(at, data))
    return made


def texts(made: RawTail) -> list[str]:
    return [row.text for row in made.rows(None)]


def test_of_each_second_the_last_line_stays() -> None:
    made = tail((1.1, b"a\r\n"), (1.9, b"b\r\n"), (2.1, b"c\r\n"), (3.0, b"d\r\n"))
    assert texts(made) == ["b", "c", "d"]


def test_only_the_newest_lines_are_remembered() -> None:
    made = tail(*[(float(second), b"%d\r\n" % second) for second in range(1, 12)])
    assert texts(made) == [str(second) for second in range(12 - ROWS, 12)]


def test_the_newest_line_stands_long_enough_to_be_read() -> None:
    made = tail((1.0, b"a\r\n"))
    assert texts(made) == ["a"]
    made.feed(Packet(1.1, b"b\r\n"))
    assert texts(made) == ["a"]
    made.feed(Packet(1.25, b"c\r\n"))
    assert texts(made) == ["c"]


def test_a_byte_that_does_not_print_stands_as_its_digits() -> None:
    (row,) = tail((1.0, b"a\x07\xffb\r\n")).rows(None)
    assert row.text == "a07FFb"
    assert row.hidden == (False, True, True, True, True, False)


def test_what_wraps_a_line_is_shown() -> None:
    shape = SHAPE.model_copy(update={"terminator": Terminator.STX_ETX})
    (row,) = tail((1.0, b"\x0212.3 g\x03")).rows(shape)
    assert row.text == "0212.3 g03"
    assert row.parts == (None, None, *[Part.NUMBER] * 4, None, Part.UNIT, None, None)


def test_a_tab_moves_no_part() -> None:
    (row,) = tail((1.0, b"x\t1.5\tg\r\n")).rows(SHAPE)
    assert row.text == "x091.509g"
    assert row.parts == (None, None, None, *[Part.NUMBER] * 3, None, None, Part.UNIT)


def test_a_long_stretch_without_an_end_is_shown_too() -> None:
    made = tail((1.0, bytes(range(128, 256))))
    assert texts(made)[0].startswith("808182")
