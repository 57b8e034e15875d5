from collections.abc import Iterable, Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.framing import LONGEST, Frame, Framer, Noise

FIRST = b"\n 1G      123.45g  \r"
SECOND = b"\n?\r"
BYTES = st.binary(max_size=300) | st.lists(
    st.sampled_from([b"\n", b"\r", FIRST, SECOND, FIRST[:9], FIRST[9:], b"x" * 70])
).map(b"".join)


def pieces(chunks: Iterable[bytes]) -> list[Frame | Noise]:
    framer = Framer()
    return [piece for chunk in chunks for piece in framer.feed(chunk)]


def byte_by_byte(data: bytes) -> Iterator[bytes]:
    return (data[at : at + 1] for at in range(len(data)))


@pytest.mark.parametrize("cut", [lambda data: [data], byte_by_byte], ids=["whole", "by the byte"])
def test_frames_come_out_in_order(cut) -> None:
    assert pieces(cut(FIRST + SECOND)) == [Frame(FIRST), Frame(SECOND)]


def test_a_frame_with_bytes_to_spare_leaves_them_for_later() -> None:
    framer = Framer()
    assert list(framer.feed(FIRST + SECOND[:2])) == [Frame(FIRST)]
    assert list(framer.feed(SECOND[2:])) == [Frame(SECOND)]


def test_the_body_stands_between_the_two_ends() -> None:
    assert Frame(SECOND).body == b"?"


def test_a_second_line_feed_drops_the_torn_frame() -> None:
    assert pieces([FIRST[:12] + SECOND]) == [Noise(FIRST[:12]), Frame(SECOND)]


def test_text_outside_frames_is_noise() -> None:
    assert pieces([b"HELLO\rok" + SECOND]) == [Noise(b"HELLO\r"), Noise(b"ok"), Frame(SECOND)]


def test_the_end_of_a_frame_alone_is_noise() -> None:
    assert pieces([FIRST[8:] + SECOND]) == [Noise(FIRST[8:]), Frame(SECOND)]


def test_the_longest_frame_passes_and_a_longer_one_does_not() -> None:
    longest = b"\n" + b"a" * (LONGEST - 2) + b"\r"
    longer = b"\n" + b"a" * (LONGEST - 1) + b"\r"
    assert pieces([longest]) == [Frame(longest)]
    assert all(isinstance(piece, Noise) for piece in pieces([longer]))


def test_what_was_begun_can_be_forgotten() -> None:
    framer = Framer()
    list(framer.feed(FIRST[:12]))
    framer.clear()
    assert list(framer.feed(SECOND)) == [Frame(SECOND)]


@settings(deadline=None)
@given(BYTES)
def test_every_byte_comes_out_once_and_in_order(data: bytes) -> None:
    framer = Framer()
    out = b"".join(piece.raw for piece in framer.feed(data + b"\r"))
    assert out == data + b"\r"


@settings(deadline=None)
@given(BYTES)
def test_what_is_held_back_is_bounded(data: bytes) -> None:
    framer = Framer()
    out = sum(len(piece.raw) for piece in framer.feed(data))
    assert len(data) - out < LONGEST


@settings(deadline=None)
@given(BYTES, st.lists(st.integers(0, 300)))
def test_where_the_stream_is_cut_makes_no_difference(data: bytes, cuts: list[int]) -> None:
    ends = [*sorted(cuts), len(data)]
    chunks = [data[start:end] for start, end in zip([0, *ends], ends, strict=False)]
    assert pieces(chunks) == pieces([data])


@settings(deadline=None)
@given(BYTES)
def test_no_frame_reaches_over_another_beginning(data: bytes) -> None:
    for piece in pieces([data]):
        if isinstance(piece, Frame):
            assert b"\n" not in piece.body
            assert b"\r" not in piece.body
