"""The balance in use, and the change to another one while the kiosk runs."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import asdict, dataclass
from functools import partial
from typing import Self

from drivers.balance import Balance, open_balance
from drivers.events import BalanceEvent
from drivers.port import PATIENCE
from drivers.recorder import Recorder, open_recorded

SIMULATED, TYPED, AUTO = "simulated", "typed", "auto"
CLOSE_S = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleChoice:
    """Which balance: its address, or one of SIMULATED and TYPED, and how it speaks.

    Without a dialect it is the usual one of the address.
    """

    where: str
    dialect: str | None = None
    port_settings: str | None = None

    def as_text(self) -> str:
        """For the records."""
        return json.dumps(asdict(self))

    @classmethod
    def from_text(cls, text: str | None) -> Self | None:
        """What `as_text` made; None for anything else."""
        try:
            return cls(**json.loads(text or ""))
        except (ValueError, TypeError):
            return None


class Connection:
    """Holds one balance at a time; `heard` gets what it tells, in the screen's thread.

    `later` brings a call over into that thread. What a balance told before it was let go is
    dropped: it would stand for another load on another pan. With `stepped` nothing runs by
    itself: `pump` does. A `recorder` writes down what the first balance says.
    """

    def __init__(
        self,
        *,
        heard: Callable[[BalanceEvent], None],
        later: Callable[[Callable[[], None]], None],
        clock: Callable[[], float],
        stepped: bool,
        recorder: Recorder | None = None,
    ) -> None:
        self._heard = heard
        self._later = later
        self._clock = clock
        self._stepped = stepped
        self._recorder = recorder
        self._balance: Balance | None = None
        self._turn = 0
        self._started = False

    def use(self, choice: ScaleChoice, address: str | None = None) -> None:
        """Let go of the present balance and take that one, which is at `address` if given.

        Raises BadAddress, and BadShape, with the present one kept.
        """
        turn = self._turn + 2  # letting go takes one
        made = self._opener(choice)(
            address or choice.where,
            dialect=choice.dialect,
            port_settings=choice.port_settings,
            name=choice.where,
            publish=partial(self._published, turn),
            clock=self._clock,
            wait=_no_wait if self._stepped else None,
            patience=0.0 if self._stepped else PATIENCE,
        )
        self.let_go()
        self._turn, self._balance = turn, made
        if self._started and not self._stepped:
            made.start()

    def _opener(self, choice: ScaleChoice) -> Callable[..., Balance]:
        if self._recorder is None:
            return open_balance
        return partial(open_recorded, self._recorder, synthetic=choice.where == SIMULATED)

    def start(self) -> None:
        """Begin to read, now and after each change."""
        self._started = True
        if self._balance is not None and not self._stepped:
            self._balance.start()

    def pump(self) -> None:
        """One turn of the balance, in the caller's time."""
        if self._balance is not None:
            self._balance.pump()

    def let_go(self) -> None:
        """Close the port; nothing that comes through it any more is heard."""
        balance, self._balance = self._balance, None
        self._turn += 1
        if balance is not None:
            balance.close(CLOSE_S)

    def _published(self, turn: int, event: BalanceEvent) -> None:
        self._later(partial(self._deliver, turn, event))

    def _deliver(self, turn: int, event: BalanceEvent) -> None:
        if turn == self._turn:
            self._heard(event)


def _no_wait(_seconds: float) -> None:
    """In stepped time nobody waits."""
