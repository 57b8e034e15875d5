"""Learning: each kind of line from a load put on and taken off, and read back; what is refused."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.dialects.lines import Lines
from drivers.events import ReadingReceived
from drivers.learning.findings import Learned, Refusal
from drivers.learning.learner import learn
from drivers.line_shape import LineShape, Place, Terminator, shape_from_json, shape_to_json
from drivers.packet import Packet
from drivers.reading import Reading
from drivers.simulated.profile import MotionFlag
from drivers.units import to_grams
from tests.helpers.line_styles import KINDS, Kind, Stream, kind, taught

LATER_LOADS = (7.3, 412.66, 0.57, 99.99)
SIGNED = [name for name, k in KINDS.items() if "{sign" in k.style.layout and name != "sign behind"]
MARKED = [name for name, k in KINDS.items() if k.stable != k.moving]


def learned(packets: list[Packet]) -> Learned:
    found = learn(packets, "it", "9600-8N1")
    assert isinstance(found, Learned), found
    return found


SHAPES: dict[str, Learned] = {}


def taught_once(name: str) -> Learned:
    if name not in SHAPES:
        SHAPES[name] = learned(taught(KINDS[name]))
    return SHAPES[name]


def readings(shape: LineShape, packets: list[Packet]) -> list[Reading]:
    dialect = Lines("pan", shape)
    events = [event for packet in packets for event in dialect.feed(packet)]
    return [event.reading for event in events if isinstance(event, ReadingReceived)]


@pytest.mark.parametrize("name", KINDS)
def test_every_rested_mass_is_read_by_the_learned_shape(name: str) -> None:
    chosen = KINDS[name]
    shape = taught_once(name).shape
    stream = Stream(chosen, seed=23)
    stream.run(0.5)
    for load in LATER_LOADS:
        stream.put(load)
        shown = stream.run(3.0)
        last = readings(shape, stream.packets)[-1]
        assert (last.value, last.unit) == (shown, chosen.unit)
        assert last.grams == to_grams(shown, chosen.unit)
        assert last.reason is None


@pytest.mark.parametrize("name", SIGNED)
def test_a_mass_below_zero_keeps_its_sign(name: str) -> None:
    stream = Stream(KINDS[name], seed=23)
    stream.run(0.5)
    stream.put(-34.5)
    shown = stream.run(3.0)
    last = readings(taught_once(name).shape, stream.packets)[-1]
    assert shown < 0
    assert last.value == shown


def test_a_minus_where_none_was_ever_seen_gives_no_mass() -> None:
    stream = Stream(KINDS["sign behind"], seed=23)
    stream.put(-34.5)
    stream.run(3.0)
    last = readings(taught_once("sign behind").shape, stream.packets)[-1]
    assert (last.grams, last.reason) == (
        None,
        "it cannot be told whether the number has a minus sign",
    )


def test_a_sign_that_was_seen_behind_the_number_is_read_there() -> None:
    shape = learned(taught(KINDS["sign behind"], -52.18)).shape
    stream = Stream(KINDS["sign behind"], seed=23)
    stream.put(-34.5)
    assert shape.sign is Place.AFTER
    assert stream.run(3.0) == readings(shape, stream.packets)[-1].value


@pytest.mark.parametrize("name", KINDS)
def test_the_marks_of_rest_and_motion_are_found(name: str) -> None:
    chosen, shape = KINDS[name], taught_once(name).shape
    expected = [None if mark is None else mark.strip() for mark in (chosen.stable, chosen.moving)]
    if chosen.style.brackets:
        expected = [None, "["]
    if name == "always stable":
        expected = ["ST", None]
    assert [None if m is None else m.text for m in (shape.stable, shape.moving)] == expected
    assert shape.unit_lacks_while_moving is chosen.style.unit_lacks


@pytest.mark.parametrize("name", MARKED)
def test_the_marks_are_understood(name: str) -> None:
    stream = Stream(KINDS[name], seed=23)
    stream.run(0.5)
    stream.put(99.99)
    stream.run(0.3)
    shape = taught_once(name).shape
    assert readings(shape, stream.packets)[-1].stable is False
    stream.run(3.0)
    assert readings(shape, stream.packets)[-1].stable is True


@pytest.mark.parametrize("name", KINDS)
def test_readability_unit_and_line_end_are_found(name: str) -> None:
    chosen, shape = KINDS[name], taught_once(name).shape
    step = chosen.knobs.get("readability", Decimal("0.01"))
    assert shape.readability is not None
    assert to_grams(shape.readability, shape.unit) == step
    assert shape.unit == chosen.unit
    ends = {b"\r\n": Terminator.CRLF, b"\r": Terminator.CR, b"\n": Terminator.LF}
    wrapped = chosen.style.wrapped
    assert shape.terminator is (Terminator.STX_ETX if wrapped else ends[chosen.style.end])


@pytest.mark.parametrize("name", KINDS)
def test_a_shape_survives_being_kept(name: str) -> None:
    found = taught_once(name)
    assert shape_from_json(shape_to_json(found.shape)) == found.shape
    assert found.shape.port_settings == "9600-8N1"
    assert 0.85 <= found.confidence < 1


@pytest.mark.parametrize("flag", [MotionFlag.FLICKER, MotionFlag.EARLY])
@pytest.mark.parametrize("seed", range(4))
def test_marks_that_are_often_wrong_are_never_mixed_up(flag: MotionFlag, seed: int) -> None:
    found = learned(taught(KINDS["header, zeros"], motion_flag=flag, seed=seed))
    texts = [m and m.text for m in (found.shape.stable, found.shape.moving)]
    assert texts in (["ST", "US"], ["ST", None], [None, "US"], [None, None])
    honest = taught_once("header, zeros").confidence
    assert found.confidence < honest or flag is MotionFlag.EARLY


def test_a_mark_that_says_moving_too_long_is_found_all_the_same() -> None:
    quick = [(t / 10, 50.0 if 20 <= t < 50 else 0.0, t % 30 in range(20, 26)) for t in range(80)]
    data = [
        Packet(at, f"{'US' if moving else 'ST'} {value:8.2f} g\r\n".encode())
        for at, value, moving in quick
    ]
    shape = learned(data).shape
    assert (shape.stable and shape.stable.text, shape.moving and shape.moving.text) == ("ST", "US")


@pytest.mark.parametrize("name", ["header, zeros", "unpadded", "two headers", "unit first"])
def test_when_the_unit_key_is_pressed_the_new_unit_counts(name: str) -> None:
    stream = Stream(KINDS[name], seed=23)
    stream.put(99.99)
    stream.run(3.0)
    stream.device.press_unit(stream.now)  # kilograms
    stream.device.press_unit(stream.now)
    shown = stream.run(1.0)
    last = readings(taught_once(name).shape, stream.packets)[-1]
    assert (last.value, last.unit, last.reason) == (shown, "oz", None)


@pytest.mark.parametrize(
    "line", ["{t} {v:7.2f} g\r\n", "9:{s:02d} {v:7.2f} g\r\n", "{v:.2f} g {t}\r\n"]
)
def test_numbers_that_may_get_longer_leave_the_length_open(line: str) -> None:
    assert learned(written(line)).shape.lengths == ()


# Refused


def written(line: str, values: list[float] | None = None) -> list[Packet]:
    """Ten lines a second: a load after two seconds, gone after five; unless values are given."""
    loads = values if values is not None else [52.18 if 20 <= t < 50 else 0.0 for t in range(80)]
    return [
        Packet(
            t / 10,
            line.format(
                v=value, half=value / 2, ounces=value / 28.35, t=t, s=t // 10, pieces=int(value * 3)
            ).encode("ascii"),
        )
        for t, value in enumerate(loads)
    ]


@pytest.mark.parametrize(
    ("line", "refusal"),
    [
        ("ST,{v:8.2f}\r\n", Refusal.NO_UNIT),
        ("ST,{v:8.2f} pcs\r\n", Refusal.NO_UNIT),
        ("{v:8.2f} g {half:8.2f} g\r\n", Refusal.TWO_FIELDS),
        ("G {v:8.2f} g N {v:8.2f} g\r\n", Refusal.TWO_FIELDS),
        ("{v:8.2f} g {ounces:8.3f} oz\r\n", Refusal.TWO_FIELDS),
        ("{v:8.2f} g {pieces:6d}\r\n", Refusal.TWO_FIELDS),
        ("{pieces:05d},{pieces:05d} g\r\n", Refusal.TWO_FIELDS),
        ("09:15:{s:02d} ST 0.00 g\r\n", Refusal.NEVER_CHANGED),
        ("{t:04d},ST,0.00,g\r\n", Refusal.NEVER_CHANGED),
        ("READY\r\n", Refusal.NEVER_CHANGED),
        ("{v:8.2f} g ", Refusal.NO_LINES),
        ("", Refusal.SILENT),
    ],
)
def test_what_cannot_be_learned_is_refused(line: str, refusal: Refusal) -> None:
    assert learn(written(line), "it") is refusal


def test_a_load_that_is_only_put_on_is_not_enough() -> None:
    values = [0.0] * 30 + [52.18] * 40
    assert learn(written("{v:8.2f} g\r\n", values), "it") is Refusal.NOT_RETURNED


def test_a_display_that_flickers_by_its_coarse_step_carries_no_load() -> None:
    values = [0.5 * (t % 7 > 2) for t in range(100)]
    assert learn(written("{v:8.2f} g\r\n", values), "it") is Refusal.NEVER_CHANGED


def test_a_few_lines_are_none() -> None:
    assert learn(written("{v:8.2f} g\r\n", [0.0] * 5), "it") is Refusal.NO_LINES


def test_lines_of_many_kinds_are_unclear() -> None:
    packets = written("{v:8.2f} g\r\n")
    others = [Packet(packet.at, b"ST 12.3 E\r\n") for packet in packets[::2]]
    mixed = [both for pair in zip(packets[::2], others, strict=True) for both in pair]
    assert isinstance(learn(mixed, "it"), Refusal)


@given(
    st.lists(
        st.sampled_from([b"ST, 12.3 g\r\n", b"ST,  0.0 g\r\n", b"07,1 g\r", b"[", b"\x02", b"\x03"])
        | st.binary(max_size=20),
        max_size=60,
    ),
    st.floats(0.01, 2.0),
)
@settings(max_examples=80, deadline=None)
def test_arbitrary_bytes_never_raise(chunks: list[bytes], pace: float) -> None:
    packets = [Packet(at * pace, chunk) for at, chunk in enumerate(chunks)]
    assert isinstance(learn(packets, "it"), Learned | Refusal)


# A number that is not one


@pytest.mark.parametrize(
    ("line", "number"),
    [
        ("09:15:{s:02d} {v:.2f} g\r\n", 3),
        ("{t:04d},{v:.2f},g\r\n", 1),
        ("42 {v:.2f} g 0.00 g\r\n", 1),
        ("2026-03-14;{v:.2f};g\r\n", 3),
    ],
)
def test_clocks_counters_and_constants_are_passed_over(line: str, number: int) -> None:
    assert learned(written(line)).shape.number == number


def test_check_characters_of_an_unknown_kind_are_no_second_mass() -> None:
    stream = [(t, Decimal(min(t, 60 - t, 20)) * Decimal("2.07")) for t in range(10, 50)]
    values = [Decimal(0)] * 15 + [value for _, value in stream] + [Decimal(0)] * 15
    values[35:35] = [values[35]] * 20
    packets = [
        Packet(t / 10, f"{v:8.2f} g {int(v * 7919) * 31 % 97:02d}\r\n".encode())
        for t, v in enumerate([v - values[0] if v else v for v in values])
    ]
    assert learned(packets).shape.number == 0


def test_a_kind_can_be_told_by_words_of_its_own() -> None:
    chosen: Kind = kind("ID 042 {mark} {signed} {unit}", "STAB", "UNST", width=9)
    shape = learned(taught(chosen)).shape
    assert (shape.number, shape.words) == (1, ("ID", "STAB"))
