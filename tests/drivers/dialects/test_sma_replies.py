"""Replies told apart; examples as public manuals quote SMA SCP-0499."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.dialects.sma_replies import (
    Diagnostics,
    Information,
    NotUnderstood,
    SayAgain,
    Weight,
    decode,
)
from tests.helpers.sma_frames import FRAMES, frame


def test_a_standard_reply_is_cut_at_its_positions() -> None:
    assert decode(frame("pounds and ounces")[1:-1]) == Weight(
        status=" ", scale_range="2", kind="G", motion="M", digits=b"    8:08.5", unit="l/o"
    )


@pytest.mark.parametrize("name", FRAMES)
def test_each_example_is_a_standard_reply(name: str) -> None:
    assert isinstance(decode(frame(name)[1:-1]), Weight)


def test_a_question_mark_and_an_exclamation_mark_are_no_weights() -> None:
    assert isinstance(decode(b"?"), NotUnderstood)
    assert isinstance(decode(b"!"), SayAgain)


@pytest.mark.parametrize(
    ("body", "tag", "text"),
    [
        (b"SMA:2/1.0", "SMA", "2/1.0"),
        (b"CAP:kg_:6000:1:0", "CAP", "kg_:6000:1:0"),
        (b"SN_:000123", "SN", "000123"),
        (b"SN :000123", "SN", "000123"),
        (b"OP1:printer", "OP1", "printer"),
        (b"END:", "END", ""),
    ],
)
def test_a_line_about_the_balance_has_tag_and_text(body: bytes, tag: str, text: str) -> None:
    assert decode(body) == Information(tag, text)


def test_a_line_of_eighteen_bytes_is_no_weight() -> None:
    body = b"CAP:g  :6000:0.1:1"
    assert len(body) == 18
    assert decode(body) == Information("CAP", "g  :6000:0.1:1")


def test_diagnostics_tell_what_is_broken() -> None:
    assert decode(b"    ") == Diagnostics(False, False, False, False)
    assert decode(b"R C ") == Diagnostics(True, False, True, False)


@pytest.mark.parametrize("body", [b"", b"W", b"SELF TEST OK", b"abcd", b"?!", b" 1G  123.45g"])
def test_anything_else_is_no_reply(body: bytes) -> None:
    assert decode(body) is None


@settings(deadline=None)
@given(st.binary(max_size=64))
def test_no_bytes_can_make_it_raise(body: bytes) -> None:
    reply = decode(body)
    assert not isinstance(reply, Weight) or len(body) == 18
