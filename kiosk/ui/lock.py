"""The lock of the coach's drawers: a code of six digits, kept only as a salted digest.

A simple lock against curious children, not against somebody who can copy the records: six digits
are soon tried through by a program. Pure but for the randomness of the salt; time is passed in.
"""

from __future__ import annotations

import hmac
import secrets
from dataclasses import dataclass, field
from enum import StrEnum
from hashlib import pbkdf2_hmac
from math import ceil

DIGITS = 6
CODE, HELPER_CODE = "coach_code", "helper_code"  # under which their digests are remembered
TRIES = 5
WAIT_S = 30.0  # after so many wrong codes, before the next may be typed
ROUNDS = 20_000  # a tenth of a second on a small board
_SEPARATOR = "$"
_KEYS = tuple("0123456789")


class Asking(StrEnum):
    """What the digits are for."""

    CODE = "code"
    NEW = "new"
    AGAIN = "again"  # the new one, a second time


def digest_of(code: str, salt: bytes | None = None) -> str:
    """What is kept of a code."""
    salt = salt if salt is not None else secrets.token_bytes(16)
    key = pbkdf2_hmac("sha256", code.encode(), salt, ROUNDS)
    return f"{salt.hex()}{_SEPARATOR}{key.hex()}"


def fits(code: str, digest: str) -> bool:
    """Whether a code is the one of that digest; False for a digest that is none."""
    salt, separator, _ = digest.partition(_SEPARATOR)
    try:
        made = digest_of(code, bytes.fromhex(salt))
    except ValueError:
        return False
    return bool(separator) and hmac.compare_digest(made, digest)


@dataclass(slots=True)
class Tries:
    """Wrong codes in a row; leaving the sheet that asks for one forgets none of them."""

    wrong: int = 0
    waits_until: float = float("-inf")

    def waits(self, now: float) -> int:
        """Whole seconds before the next code may be typed; 0 if it may."""
        left = self.waits_until - now
        return ceil(left) if left > 0 else 0

    def missed(self, now: float) -> None:
        """One more wrong code; after `TRIES` of them the next one has to wait."""
        self.wrong += 1
        if self.wrong >= TRIES:
            self.wrong, self.waits_until = 0, now + WAIT_S


@dataclass(slots=True)
class Lock:
    """`digest` is what is kept of the code, "" while there is none.

    `open` until `closes_after` seconds pass without a sign of the coach. Only the code of this lock
    itself is forgiven the wrong ones before it, and only if it `forgives`: with a code that others
    know the coach's could be tried without end.
    """

    closes_after: float
    digest: str = ""
    open: bool = False
    helper_digest: str = ""  # of the code that opens a round for a helper, and nothing else
    helper_welcome: bool = False  # whether that code means something where the digits are asked for
    helper_came: bool = False  # by which code it was opened last
    others_digest: str = ""  # of another's code, which a new one may not be either
    forgives: bool = True
    asking: Asking = Asking.CODE
    typed: str = ""
    wrong: bool = False  # what was typed last did not fit
    taken: bool = False  # what was typed last is somebody else's code
    tries: Tries = field(default_factory=Tries)
    team_tries: Tries = field(default_factory=Tries)  # of the codes of teams
    _first: str = ""
    _seen_at: float = float("-inf")

    def ask(self, *, helper_welcome: bool = False) -> None:
        """Begin anew: ask for the code, or for a new one where there is none."""
        self.helper_welcome, self.helper_came = helper_welcome, False
        self.asking = Asking.CODE if self.digest else Asking.NEW
        self.typed, self._first, self.wrong, self.taken = "", "", False, False

    def waits(self, now: float) -> int:
        """Whole seconds before the next code may be typed; 0 if it may."""
        return self.tries.waits(now)

    def type(self, digit: str, now: float) -> None:
        """One more digit."""
        if self.waits(now) or len(self.typed) >= DIGITS or digit not in _KEYS:
            return
        self.wrong, self.taken = False, False
        self.typed += digit

    def rub_out(self) -> None:
        """Take the last digit back."""
        self.typed = self.typed[:-1]

    @property
    def complete(self) -> bool:
        """Whether all digits are typed."""
        return len(self.typed) == DIGITS

    def enter(self, now: float) -> bool:
        """Take the typed digits; True when the lock has opened by them, or a helper may go on."""
        if not self.complete or self.waits(now):
            return False
        typed, self.typed = self.typed, ""
        if self.asking is Asking.NEW:
            self._begin(typed)
            return False
        if self.asking is Asking.AGAIN:
            if typed != self._first:
                self.ask(helper_welcome=self.helper_welcome)
                self.wrong = True
                return False
            self.digest = digest_of(typed)
        elif not fits(typed, self.digest):
            if self.helper_welcome and self.helper_digest and fits(typed, self.helper_digest):
                self.helper_came = True
                return True
            self.wrong = True
            self.tries.missed(now)
            return False
        if self.forgives:
            self.tries.wrong = 0
        self.open_now(now)
        return True

    def _begin(self, typed: str) -> None:
        """Take a new code for the first time, if nobody else has it."""
        others = (self.others_digest, self.helper_digest)
        self.taken = any(other and fits(typed, other) for other in others)
        if not self.taken:
            self._first, self.asking = typed, Asking.AGAIN

    def open_now(self, now: float) -> None:
        """Open, by the code or by the leave to go without one."""
        self.open = True
        self._seen_at = now

    def seen(self, now: float) -> None:
        """The coach did something, or something moved on the pan."""
        self._seen_at = max(self._seen_at, now)

    def close(self) -> None:
        """Lock the drawers; what opens them next is the coach's code alone."""
        self.open = False
        self.ask()

    def tick(self, now: float) -> bool:
        """Let time pass; True when the lock has closed by itself."""
        if not self.open or not self.digest or now - self._seen_at < self.closes_after:
            return False
        self.close()
        return True
