"""Asking a balance about itself (SMA SCP-0499): one line a question, two series.

``I`` and then ``N`` again and again give its capacity and readability, ``A`` and then ``B`` its
maker and model. Many balances know only the second series, some neither: ``?`` or no answer ends
a series, not the conversation.
"""

from __future__ import annotations

import re
from decimal import Decimal

from drivers.dialects.sma_replies import Information, trimmed
from drivers.events import Identified
from drivers.units import GRAMS_PER, to_grams

_SERIES = ((b"I", b"N"), (b"A", b"B"))  # first question, every further one
_MOST_LINES = 20  # a balance that never says END is not asked for ever
_MOST_TRIES = 3
# unit : full capacity : step of the last digit, without a point : number of decimals
_CAPACITY = re.compile(r"([^:]{1,3}):([0-9]+(?:\.[0-9]+)?):([0-9]{1,4}):([0-6])")


class Introduction:
    """Knows the next question and gathers what was told."""

    def __init__(self) -> None:
        self._series = 0
        self._lines = 0
        self._tries = 0
        self._told: dict[str, str] = {}
        self._ranges: list[tuple[Decimal, Decimal]] = []

    @property
    def question(self) -> bytes | None:
        """The next request's letter; None when there is nothing more to ask."""
        if self._series == len(_SERIES):
            return None
        first, further = _SERIES[self._series]
        return first if self._lines == 0 else further

    def told(self, line: Information) -> None:
        """A line came. One question may bring several: a capacity for each weighing range."""
        if line.tag == "CAP":
            self._add_range(line.text)
        self._told.setdefault(line.tag, line.text)
        self._lines += 1
        self._tries = 0
        if line.tag == "END" or self._lines == _MOST_LINES:
            self.no_more()

    def no_more(self) -> None:
        """The balance does not know the question, or does not answer: on to the next series."""
        self._series = min(self._series + 1, len(_SERIES))
        self._lines = 0
        self._tries = 0

    def damaged(self) -> None:
        """The question did not get through: ask it again, but not for ever."""
        self._tries += 1
        if self._tries == _MOST_TRIES:
            self.no_more()

    def result(self, at: float) -> Identified:
        """What is known, in grams. Of several ranges: the largest capacity, the finest step.

        The finest step is that of the lowest range, in which cups and samples are weighed.
        """
        names = [self._told[tag] for tag in ("MFG", "MOD") if self._told.get(tag)]
        return Identified(
            name=" ".join(names) or None,
            capacity=max((capacity for capacity, _ in self._ranges), default=None),
            readability=min((step for _, step in self._ranges), default=None),
            at=at,
        )

    def _add_range(self, text: str) -> None:
        parts = _CAPACITY.fullmatch(text)
        if parts is None or (unit := trimmed(parts[1])) not in GRAMS_PER:
            return
        capacity, step = Decimal(parts[2]), Decimal(parts[3]).scaleb(-int(parts[4]))
        if capacity and step:
            self._ranges.append((to_grams(capacity, unit), to_grams(step, unit)))
