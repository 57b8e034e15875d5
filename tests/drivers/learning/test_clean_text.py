from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.learning.clean_text import is_clean

LINE = b"ST,+00123.45  g\r\n"


@pytest.mark.parametrize(
    ("data", "clean"),
    [
        (b"", None),
        (LINE * 2, None),
        (LINE * 4, True),
        (b"\x0212.3 g\x03\xf1" * 4, True),
        (b"READY\r\n" * 8, None),
        (b"\xff\x00" * 10, None),
        (b"\xff\x00" * 16, False),
        (b"\xff\x00\xa1" + LINE * 5, True),
        (LINE * 5 + b"\xff\x00" * 32, False),
        (b"12.3 g " * 50, False),
    ],
)
def test_lines_are_told_from_garbage(data: bytes, clean: bool | None) -> None:
    assert is_clean(data) is clean


@given(st.binary(max_size=400))
def test_no_bytes_are_too_much_for_it(data: bytes) -> None:
    assert is_clean(data) in (True, False, None)
