"""Whether bytes are lines of text, as at the right port settings, or the garbage of wrong ones."""

from __future__ import annotations

from drivers.line_framing import CR, ETX, LF, STX, LineFramer

_GOOD = frozenset(range(0x20, 0x7F)) | {0x09, CR, LF, STX, ETX}
ENOUGH = 32  # bytes: fewer may be what is left of a character at whose middle the port was opened
LEAST_GOOD = 0.8  # of the bytes: a check byte in each short line may be anything
LEAST_LINES = 3
LEAST_CLEAN = 0.9  # of the lines
MOST_WITHOUT_LINES = 300


def is_clean(data: bytes) -> bool | None:
    """True for lines of text with digits in, False for garbage, None while that is not plain.

    With a wrong speed, parity or number of bits most characters are none that print.
    """
    recent = data[-2 * ENOUGH :]
    if len(data) >= ENOUGH and sum(byte in _GOOD for byte in recent) < LEAST_GOOD * len(recent):
        return False
    texts = [line.text for line in LineFramer().feed(data) if line.whole]
    clean = [text for text in texts if text is not None and any(c.isdigit() for c in text)]
    if len(clean) >= LEAST_LINES and len(clean) >= LEAST_CLEAN * len(texts):
        return True
    return False if len(data) >= MOST_WITHOUT_LINES else None


class Hearing:
    """What is heard at one choice of settings, judged chunk by chunk until it is plain."""

    def __init__(self, *, sure: bool) -> None:
        self.sure = sure  # settings that are known, or at which clean text came, are not doubted
        self._data = bytearray()

    def take(self, chunk: bytes) -> bool:
        """Take the next bytes; False if all so far is garbage."""
        if self.sure:
            return True
        self._data += chunk
        clean = is_clean(bytes(self._data))
        self.sure = clean is True
        return clean is not False
