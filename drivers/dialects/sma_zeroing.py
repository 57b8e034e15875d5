"""One request for zero, ``Z`` of SMA SCP-0499, from the wish to its outcome.

The answer is a standard reply whose status tells the result. A balance that sends on its own may
have had a reply under way when it was asked, and one that waits for rest zeroes a little later:
so only a fault refuses at once, and anything else but a zero gets a second to become one.
"""

from __future__ import annotations

from decimal import Decimal

from drivers.dialects.sma_replies import Weight
from drivers.dialects.sma_weight import CENTRE_OF_ZERO, FAULTS
from drivers.events import CommandDone, CommandRefused

_PATIENCE = 1.0  # seconds
_MOST_TRIES = 3
_REFUSALS = ("E", "I")  # a tare fault (T) is an old story when zero was asked for

Outcome = CommandDone | CommandRefused


class Zeroing:
    """Whether zero is wanted, whether it was asked for, and how it ended."""

    def __init__(self) -> None:
        self._clear()

    def _clear(self) -> None:
        self._wanted = False
        self._sent_at: float | None = None
        self._answered = False
        self._tries = 0

    @property
    def wanted(self) -> bool:
        """True until the request may be sent."""
        return self._wanted

    @property
    def awaits_answer(self) -> bool:
        """True while the request is out and nothing came back."""
        return self._sent_at is not None and not self._answered

    def want(self) -> None:
        """Ask for zero; while a request is out a second one adds nothing."""
        self._wanted = self._sent_at is None

    def sent(self, now: float) -> None:
        """The request went out."""
        self._wanted, self._answered = False, False
        self._sent_at = now
        self._tries += 1

    def shown(self, weight: Weight, value: Decimal | None, now: float) -> Outcome | None:
        """A standard reply came; ``value`` is its number, None if it cannot be read."""
        if self._sent_at is None:
            return None
        self._answered = True
        if weight.status in _REFUSALS:
            return self._refused(FAULTS[weight.status], now)
        if weight.status == CENTRE_OF_ZERO or _shows_zero(weight, value):
            self._clear()
            return CommandDone(command="zero", at=now)
        return None

    def not_understood(self, now: float) -> Outcome:
        """``?`` came."""
        return self._refused("the balance does not know this request", now)

    def damaged(self, now: float) -> Outcome | None:
        """``!`` came: ask again, but not for ever."""
        if self._tries == _MOST_TRIES:
            return self._refused("the request does not get through to the balance", now)
        self._wanted, self._sent_at = True, None
        return None

    def late(self, now: float) -> Outcome | None:
        """Give up after a second."""
        if self._sent_at is None or now - self._sent_at < _PATIENCE:
            return None
        if self._answered:
            return self._refused("the balance did not go to zero", now)
        return self._refused("the balance did not answer", now)

    def _refused(self, reason: str, now: float) -> CommandRefused:
        self._clear()
        return CommandRefused(command="zero", reason=reason, at=now)


def _shows_zero(weight: Weight, value: Decimal | None) -> bool:
    """True for a resting gross zero; a net zero only says that the load equals the tare."""
    return value is not None and not value and weight.motion == " " and weight.kind in "Gg"
