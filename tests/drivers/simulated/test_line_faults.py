from __future__ import annotations

from drivers.simulated.line_faults import LineFaults

FRAME = b"\n 1G       12.34g  \r"


def test_a_clean_line_changes_nothing() -> None:
    assert LineFaults(1).apply(FRAME) == FRAME


def test_faults_come_in_the_order_asked_and_are_used_up() -> None:
    faults = LineFaults(1)
    faults.repeat()
    faults.tear(2)

    assert faults.apply(FRAME) == FRAME + FRAME
    assert all(len(faults.apply(FRAME)) < len(FRAME) for _ in range(2))
    assert faults.apply(FRAME) == FRAME


def test_a_torn_frame_is_the_frame_with_one_stretch_missing() -> None:
    faults = LineFaults(1)
    faults.tear(200)

    for torn in (faults.apply(FRAME) for _ in range(200)):
        gap = len(FRAME) - len(torn)
        assert any(FRAME[:k] + FRAME[k + gap :] == torn for k in range(len(torn) + 1))


def test_a_garbled_frame_has_one_to_three_bytes_of_no_text() -> None:
    faults = LineFaults(1)
    faults.garble(200)

    for garbled in (faults.apply(FRAME) for _ in range(200)):
        wrong = [byte for byte, right in zip(garbled, FRAME, strict=True) if byte != right]
        assert 1 <= len(wrong) <= 3
        assert all(byte >= 0x80 for byte in wrong)


def test_short_replies_survive_being_spoiled() -> None:
    faults = LineFaults(1)
    faults.garble(50)

    assert all(len(faults.apply(b"?")) == 1 for _ in range(50))


def test_even_parity_read_as_eight_bits_sets_the_high_bit_of_odd_bytes() -> None:
    faults = LineFaults(1)
    faults.other_parity = True
    assert faults.apply(b"12 g\r\n") == b"\xb1\xb2\xa0\xe7\x8d\x0a"
    faults.other_parity = False
    assert faults.apply(b"12 g\r\n") == b"12 g\r\n"
