"""Frames against those published for SMA SCP-0499 (quotations of it in public firmware notes)."""

from __future__ import annotations

import pytest

from drivers.simulated.sma_frames import RequestReader, field, standard_reply


@pytest.mark.parametrize(
    ("text", "published"),
    [
        ((" ", "G", False, "5.025", "lb"), "20314720202020202020352E3032356C6220"),
        ((" ", "N", False, "100000", "lb"), "20314E2020202020203130303030306C6220"),
        ((" ", "g", False, "5.0025", "lb"), "203167202020202020352E303032356C6220"),
        (("Z", "G", False, "0.000", "lb"), "5A314720202020202020302E3030306C6220"),
        ((" ", "G", True, "7.650", "kg"), "2031474D202020202020372E3635306B6720"),
        (("T", "G", True, "-" * 10, "kg"), "5431474D202D2D2D2D2D2D2D2D2D2D6B6720"),
    ],
)
def test_published_frames(text: tuple[str, str, bool, str, str], published: str) -> None:
    assert standard_reply(*text) == b"\n" + bytes.fromhex(published) + b"\r"


@pytest.mark.parametrize(("mass", "unit"), [("12345678.90", "g"), ("1.0", "gram")])
def test_what_does_not_fit_is_refused(mass: str, unit: str) -> None:
    with pytest.raises(ValueError, match="20 bytes"):
        standard_reply(" ", "G", False, mass, unit)


def test_a_field_name_takes_three_places() -> None:
    assert field("SN", "17") == b"\nSN :17\r"


@pytest.mark.parametrize(
    ("sent", "requests"),
    [
        (b"\nW\r", [b"W"]),
        (b"\nW\r\nZ\r", [b"W", b"Z"]),
        (b"noise\rW\r\nW\r", [b"W"]),
        (b"\nP\nW\r", [b"W"]),
        (b"\n\r", []),
        (b"\nW\x1b\r\nZ\r", [b"\x1b", b"Z"]),
        (b"\nT     0.200\r", [b"T     0.200"]),
    ],
)
@pytest.mark.parametrize("whole", [True, False])
def test_requests_whole_and_byte_by_byte(sent: bytes, requests: list[bytes], whole: bool) -> None:
    reader = RequestReader()
    chunks = [sent] if whole else [bytes([byte]) for byte in sent]

    assert [request for chunk in chunks for request in reader.feed(chunk)] == requests


def test_an_endless_request_is_cut() -> None:
    reader = RequestReader()

    assert reader.feed(b"\nW" + b"x" * 100_000) == []
    (request,) = reader.feed(b"\r")
    assert len(request) < 20
