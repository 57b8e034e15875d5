"""Reading off: what an adult types on the keypad beside the display of a balance, key by key."""

from __future__ import annotations

from collections.abc import Callable

from kiosk.weighing.pan_events import PanEvent
from kiosk.weighing.typed_pan import NotTakenError, TypedPan, UnlikelyError

POINT, RUB_OUT = ".", "rub out"  # as the keys of a number pad say
MOST_SIGNS = 9  # 99999.999
_DIGITS = "0123456789"
# Key codes as Kivy gives them: the row above the letters, the block at the right, what rubs out.
KEYBOARD = {
    **{ord(digit): digit for digit in _DIGITS},
    **{256 + int(digit): digit for digit in _DIGITS},
    **dict.fromkeys((ord("."), ord(","), 266), POINT),
    **dict.fromkeys((8, 127), RUB_OUT),
}
ENTER = (13, 271)


class ReadingOff:
    """The number being typed, and why the last one was not taken.

    `happened` gets what came of a number that was taken. `asking` while a number that looks like
    a slip waits: the next press of the same key takes it, any other key goes on typing.
    """

    def __init__(
        self, happened: Callable[[list[PanEvent]], None], clock: Callable[[], float]
    ) -> None:
        self.pan = TypedPan()
        self.text = ""
        self.note = ""
        self.asking = False
        self._happened = happened
        self._clock = clock

    def key(self, says: str) -> None:
        """A digit, POINT or RUB_OUT; what can be no part of a number changes nothing."""
        self.note, self.asking = "", False
        if says == RUB_OUT:
            self.text = self.text[:-1]
        elif says == POINT:
            self._point()
        elif says in _DIGITS and len(self.text) < MOST_SIGNS:
            self.text = says if self.text == "0" else self.text + says

    def keyboard(self, code: int) -> bool:
        """A key of a keyboard that is plugged in; False if it means nothing here.

        What looks like a slip is never taken by Enter: a key that is held down repeats itself.
        """
        if code in ENTER and not self.asking:
            self.done()
        elif code in KEYBOARD:
            self.key(KEYBOARD[code])
        return code in ENTER or code in KEYBOARD

    def _point(self) -> None:
        if POINT not in self.text and len(self.text) < MOST_SIGNS:
            self.text = (self.text or "0") + POINT

    def done(self) -> None:
        """That is what the display shows."""
        self._take(lambda at, sure: self.pan.typed(self.text, at, sure=sure))

    def pan_empty(self) -> None:
        """Nothing is on the pan; what was typed, if anything, is what it shows."""
        if not self.text:
            self._take(lambda at, _sure: self.pan.pan_empty(at))
        else:
            self._take(lambda at, sure: self.pan.typed(self.text, at, sure=sure, empty=True))

    def clear(self) -> None:
        """Nothing is asked for: what was begun is dropped, so that nobody reads it."""
        self.text, self.note, self.asking = "", "", False

    def _take(self, take: Callable[[float, bool], list[PanEvent]]) -> None:
        try:
            events = take(self._clock(), self.asking)
        except NotTakenError as refusal:
            self.note = str(refusal)
            self.asking = isinstance(refusal, UnlikelyError)
            return
        self.clear()
        self._happened(events)
