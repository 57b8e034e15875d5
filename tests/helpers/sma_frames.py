"""Frames of SMA SCP-0499 as public sources quote them, in hexadecimal.

Published with the standard's own text: 1 to 6. From the log of an open-source laboratory balance:
9. Test values of a public simulator: 7, 8 and 10. Made up: 11.
"""

FRAMES = {
    "gross pounds": "0A 20 31 47 20 20 20 20 20 20 20 35 2E 30 32 35 6C 62 20 0D",
    "net without a point": "0A 20 31 4E 20 20 20 20 20 20 31 30 30 30 30 30 6C 62 20 0D",
    "pounds and ounces": "0A 20 32 47 4D 20 20 20 20 20 38 3A 30 38 2E 35 6C 2F 6F 0D",
    "high resolution": "0A 20 31 67 20 20 20 20 20 20 35 2E 30 30 32 35 6C 62 20 0D",
    "centre of zero": "0A 5A 31 47 20 20 20 20 20 20 20 30 2E 30 30 30 6C 62 20 0D",
    "moving": "0A 20 31 47 4D 20 20 20 20 20 20 37 2E 36 35 30 6B 67 20 0D",
    "below zero": "0A 55 31 47 20 20 20 20 20 20 2D 30 2E 31 30 30 6B 67 20 0D",
    "tare refused": "0A 54 31 47 4D 20 2D 2D 2D 2D 2D 2D 2D 2D 2D 2D 6B 67 20 0D",
    "unit at the right": "0A 20 31 47 20 20 20 31 30 30 2E 30 35 37 30 36 20 20 67 0D",
    "underscore": "0A 20 31 47 20 20 20 20 20 20 20 31 2E 32 35 30 6B 67 5F 0D",
    "plain": "0A 20 31 47 20 20 20 20 20 20 31 32 33 2E 34 35 67 20 20 0D",
}


def frame(name: str) -> bytes:
    """The 20 bytes of a named frame."""
    return bytes.fromhex(FRAMES[name])


def weight(
    digits: str = "123.45",
    unit: str = "g",
    *,
    status: str = " ",
    scale_range: str = "1",
    kind: str = "G",
    motion: str = " ",
) -> bytes:
    """A standard reply with these fields, each in its place."""
    text = f"\n{status}{scale_range}{kind}{motion} {digits:>10}{unit:<3}\r"
    assert len(text) == 20, text
    return text.encode("latin-1")
