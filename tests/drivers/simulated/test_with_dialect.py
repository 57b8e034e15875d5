"""The simulated balance and the dialect that reads it, joined in memory."""

from __future__ import annotations

from decimal import Decimal

import pytest

from drivers.dialects.sma import Sma
from drivers.events import (
    BalanceEvent,
    CommandDone,
    CommandRefused,
    Identified,
    ReadingReceived,
)
from drivers.packet import Packet
from drivers.reading import Basis, Range, Reading
from tests.helpers.simulated_desk import SimulatedDesk, quiet_profile


class Pair:
    """Both ends on one clock, twenty turns a second."""

    def __init__(self, level: int = 2) -> None:
        self.desk = SimulatedDesk(quiet_profile(), level)
        self.dialect = Sma("pair")
        self.dialect.reset(self.desk.clock.now)

    def run(self, seconds: float = 3.0) -> list[BalanceEvent]:
        events: list[BalanceEvent] = []
        for _ in range(round(seconds * 20)):
            self.desk.clock.wait(0.05)
            now = self.desk.clock.now
            asked = self.dialect.due(now)
            said = self.desk.device.receive(asked, now) if asked else self.desk.device.due(now)
            events += self.dialect.feed(Packet(now, said))
        return events

    def rested(self, grams: float) -> Reading:
        self.desk.pan.load(grams, self.desk.clock.now)
        return readings(self.run())[-1]


def readings(events: list[BalanceEvent]) -> list[Reading]:
    return [event.reading for event in events if isinstance(event, ReadingReceived)]


def test_the_mass_arrives_as_shown() -> None:
    reading = Pair().rested(112.34)

    assert (reading.value, reading.grams) == (Decimal("112.3"), Decimal("112.3"))
    assert (reading.stable, reading.basis, reading.range) == (True, Basis.GROSS, Range.IN_RANGE)


@pytest.mark.parametrize(("level", "readability"), [(2, Decimal("0.1")), (1, None)])
def test_it_says_what_its_level_lets_it_say(level: int, readability: Decimal | None) -> None:
    (identified,) = (event for event in Pair(level).run() if isinstance(event, Identified))

    assert identified.readability == readability


@pytest.mark.parametrize(("grams", "kind"), [(15.0, CommandDone), (300.0, CommandRefused)])
def test_zero_is_done_or_refused(grams: float, kind: type[BalanceEvent]) -> None:
    pair = Pair()
    pair.rested(grams)
    pair.dialect.zero()

    assert [type(e) for e in pair.run() if isinstance(e, CommandDone | CommandRefused)] == [kind]


def test_moving_over_and_below_are_told_apart() -> None:
    pair = Pair()
    pair.desk.pan.load(100, pair.desk.clock.now)
    moving = readings(pair.run(0.4))[-1]
    over = pair.rested(2400)
    below = pair.rested(-5)

    assert moving.stable is False
    assert (over.range, over.grams) == (Range.OVER, None)
    assert (below.range, below.value) == (Range.UNDER, Decimal("-5.0"))


def test_the_tare_key_shows_as_net() -> None:
    pair = Pair()
    pair.rested(12.3)
    assert pair.desk.device.press_tare(pair.desk.clock.now)

    assert readings(pair.run())[-1].basis is Basis.NET


def test_no_wrong_mass_comes_over_a_bad_line() -> None:
    pair = Pair()
    pair.rested(112.3)
    for _ in range(60):
        pair.desk.device.faults.tear()
        pair.desk.device.faults.garble()
        pair.desk.device.faults.repeat()
    seen = readings(pair.run(30))

    assert len(seen) >= 20
    assert {reading.grams for reading in seen} <= {Decimal("112.3"), None}
