"""What the kiosk has understood of an unknown balance so far, and what it waits for next.

Pure: what came through the port, what a study of it found, presses and the time in; nothing is
opened, written down or waited for here.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from drivers.dialects.lines import Lines
from drivers.errors import Reason
from drivers.events import Back, Lost, ReadingReceived
from drivers.learning.findings import Learned, Refusal, Study
from drivers.line_shape import LineShape
from drivers.packet import Packet
from drivers.passive_line import LineEvent, SettingsTried
from drivers.reading import Reading
from kiosk.ui.raw_tail import RawRow, RawTail

GOAL = 3  # loads for which a person is asked
STUDY_EVERY_S = 1.0
EMPTY_S = 2.0  # an empty pan is watched at least that long
SILENT_S, NO_LINES_S = 6.0, 12.0  # eight lines may take a slow balance so long
SLOW_S = 25.0  # then advice is given to whoever does as told and nothing follows
MOST_BYTES = 24_000  # a study of more would be slow on a small machine
REST_S = 1.0
_PRIME_S = 4.0  # of the past tell a new shape which unit counts

_PASSING = (Refusal.SILENT, Refusal.NO_LINES, Refusal.NEVER_CHANGED, Refusal.NOT_RETURNED)


class Stage(Enum):
    """What the person is asked to do."""

    EMPTY = "leave the pan empty"
    PUT_ON = "put something on"
    TAKE_OFF = "wait, take it off"
    REFUSED = "nothing can be learned so"
    NAMING = "keep it"
    KEPT = "kept"


@dataclass(slots=True)
class _Watched:
    """What came since the pan was last asked to be empty; dropped together."""

    packets: deque[Packet]
    size: int = 0
    studied: Study | None = None
    refused: Refusal | None = None
    learned: Learned | None = None
    loads: int = 0
    goal: int = GOAL
    naming: bool = False


class Lesson:
    """Begins at second ``now``; ``settings`` are those at which the port is heard."""

    def __init__(self, now: float) -> None:
        self.lost: Reason | None = None
        self.settings: str | None = None
        self.kept: LineShape | None = None
        self.problem = ""  # why it could not be kept
        self.watched_for = 0  # counts the beginnings, so that a late study of before is dropped
        self._garbage = False
        self._begin(now)

    def _begin(self, now: float) -> None:
        self._now = self._began = self._stage_since = now
        self._studied_at = now
        self._studying = False
        self._heard_since: float | None = None
        self._watched = _Watched(deque())
        self._tail = RawTail()
        self._dialect: Lines | None = None
        self._values: deque[tuple[float, Decimal]] = deque()
        self.reading: Reading | None = None
        self.watched_for += 1
        self._stage = Stage.EMPTY

    # What comes ------------------------------------------------------------------------------

    def heard(self, event: LineEvent) -> None:
        """Take in what the listener told."""
        match event:
            case Packet():
                self._packet(event)
            case SettingsTried(settings=settings, all_failed=failed, at=at):
                self.settings, self._garbage = str(settings), failed
                self._begin(at)
            case Lost(reason=reason):
                self.lost = reason
            case Back(at=at) if self.lost is not None:
                self.lost = None
                if self.kept is None:
                    self._begin(at)  # its zero may be another one by now

    def _packet(self, packet: Packet) -> None:
        watched = self._watched
        if self._heard_since is None:
            self._heard_since = packet.at
        watched.packets.append(packet)
        watched.size += len(packet.data)
        while watched.size > MOST_BYTES:
            watched.size -= len(watched.packets.popleft().data)
        self._tail.feed(packet)
        self._read([packet])

    def _read(self, packets: Sequence[Packet]) -> None:
        if self._dialect is None:
            return
        for event in (event for packet in packets for event in self._dialect.feed(packet)):
            if isinstance(event, ReadingReceived):
                self.reading = event.reading
                if event.reading.value is not None:
                    self._values.append((event.reading.at, event.reading.value))
        while self._values and self._values[-1][0] - self._values[0][0] > REST_S:
            self._values.popleft()

    def tick(self, now: float) -> None:
        """Let time pass."""
        self._now = now
        stage = self.stage
        if stage is not self._stage:
            self._stage, self._stage_since = stage, now

    # Studies ---------------------------------------------------------------------------------

    def to_study(self) -> tuple[Packet, ...] | None:
        """The packets to look at now; None while there is nothing new, or a study is under way."""
        watched = self._watched
        due = self._now - self._studied_at >= STUDY_EVERY_S
        if self._studying or not due or not watched.packets or watched.naming or self.lost:
            return None
        self._studying = True
        return tuple(watched.packets)

    def studied(self, study: Study, watched_for: int) -> None:
        """Take in what a study found; one of packets that were dropped since is dropped too."""
        if watched_for != self.watched_for:
            return
        self._studying, self._studied_at = False, self._now
        watched, found = self._watched, study.found
        if isinstance(found, Learned):
            watched.refused = None
            self._learned(found, study)
        elif found not in _PASSING:
            # Said only if it stays so: in the middle of a movement much looks odd.
            before = watched.studied
            watched.refused = found if before and before.found is found else watched.refused
        watched.studied = study

    def _learned(self, found: Learned, study: Study) -> None:
        watched = self._watched
        watched.loads = max(watched.loads, study.loads, 1)
        changed = watched.learned is None or watched.learned.shape != found.shape
        watched.learned = found
        if changed:
            self._dialect = Lines(found.shape.name, found.shape)
            self._values.clear()
            recent = [p for p in watched.packets if p.at >= self._now - _PRIME_S]
            self._read(recent)
        if watched.loads >= watched.goal and not study.loaded:
            watched.naming = True

    # The person ------------------------------------------------------------------------------

    def once_more(self) -> None:
        """One more load, after a refusal from the beginning."""
        watched = self._watched
        if self.stage is Stage.REFUSED:
            self._begin(self._now)
        elif watched.naming:
            watched.naming, watched.goal = False, watched.loads + 1
            self._studied_at = self._now

    def go_on(self) -> None:
        """The person finds that what is read is right."""
        if self._watched.learned is not None:
            self._watched.naming = True

    # What is known ---------------------------------------------------------------------------

    @property
    def stage(self) -> Stage:
        """What the person is asked to do now."""
        watched = self._watched
        if self.kept is not None:
            return Stage.KEPT
        if self.refusal is not None:
            return Stage.REFUSED
        if watched.naming:
            return Stage.NAMING
        if watched.studied is None or watched.studied.found in (Refusal.SILENT, Refusal.NO_LINES):
            return Stage.EMPTY
        if watched.studied.loaded:
            return Stage.TAKE_OFF
        return Stage.PUT_ON if self._empty_seen else Stage.EMPTY

    @property
    def _empty_seen(self) -> bool:
        since = self._heard_since
        return self._watched.loads > 0 or (since is not None and self._now - since >= EMPTY_S)

    @property
    def refusal(self) -> Refusal | None:
        """Why nothing can be learned in this way; None while it goes on."""
        if self._heard_since is None:
            if self._garbage:
                return Refusal.NO_LINES
            return Refusal.SILENT if self._now - self._began >= SILENT_S else None
        studied = self._watched.studied
        unread = studied is None or studied.found in (Refusal.SILENT, Refusal.NO_LINES)
        if unread and (self._garbage or self._now - self._heard_since >= NO_LINES_S):
            return Refusal.NO_LINES
        return self._watched.refused

    @property
    def advice(self) -> Refusal | None:
        """What seems to be amiss although it may still come right."""
        slow = self._now - self._stage_since >= SLOW_S
        if not slow or self._watched.studied is None or self._watched.learned is not None:
            return None
        found = self._watched.studied.found
        return found if found in (Refusal.NEVER_CHANGED, Refusal.NOT_RETURNED) else None

    @property
    def learned(self) -> Learned | None:
        """The findings so far."""
        return self._watched.learned

    @property
    def loads(self) -> tuple[int, int]:
        """How many loads came and went, and for how many is asked."""
        return self._watched.loads, self._watched.goal

    @property
    def now(self) -> float:
        """The time that was told last."""
        return self._now

    @property
    def still(self) -> bool:
        """Whether the mass that is read rests: by the balance's mark, and by itself."""
        if self.reading is None or self.reading.stable is False or self.learned is None:
            return False
        values = [value for _, value in self._values]
        step = self.learned.shape.readability or Decimal(0)
        return len(values) > 1 and max(values) - min(values) <= step

    def rows(self) -> tuple[RawRow, ...]:
        """The newest lines as they came."""
        return self._tail.rows(None if self.learned is None else self.learned.shape)
