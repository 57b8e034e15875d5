"""Teaching the kiosk a balance: the listener at its port, the lesson, and where shapes are kept.

Nothing is ever sent to the balance. What a study costs is spent in the listener's thread.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from itertools import count
from typing import Protocol

from drivers.dialects import known_dialects
from drivers.learning.findings import Study
from drivers.learning.learner import study
from drivers.line_shape import LineShape
from drivers.packet import Packet
from drivers.passive_line import LineEvent, PassiveLine, listen_at
from drivers.port import PATIENCE
from drivers.transports.addresses import is_url
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.texts import say
from kiosk.ui.lesson import Lesson
from kiosk.ui.presenters.teach_views import TeachView, teach_pan, teach_view
from kiosk.ui.presenters.views import PanView


class ShapeKeeper(Protocol):
    """Where learned shapes are kept by name."""

    def names(self) -> Sequence[str]:
        """The names that are taken."""
        ...

    def keep(self, shape: LineShape) -> object:
        """Write it down. May raise OSError."""
        ...


Listen = Callable[[Callable[[LineEvent], object]], PassiveLine]


class Teaching:
    """`changed` is called when there may be something new to show.

    `later` brings a call over into the screen's thread, in which everything here is called. With
    `stepped` nothing runs by itself: `pump` does. `listen` makes the listener, `listen_at` if not
    given. BadAddress for a `where` that sends no lines.
    """

    def __init__(
        self,
        *,
        where: str,
        port_settings: str | None = None,
        keeper: ShapeKeeper,
        clock: Callable[[], float],
        changed: Callable[[], None],
        later: Callable[[Callable[[], None]], None],
        stepped: bool = False,
        listen: Listen | None = None,
    ) -> None:
        self._has_settings = not is_url(where)
        self._keeper = keeper
        self._clock = clock
        self._changed = changed
        self._later = later
        self._stepped = stepped
        self._listen = listen or partial(_listen, where, port_settings, clock, stepped)
        self._turn = 0
        self._started = False
        self.name = self._free_name()
        self._begin()

    def _begin(self) -> None:
        self._turn += 1
        self._lesson = Lesson(self._clock())
        self._line = self._listen(partial(self._published, self._turn))

    def start(self) -> None:
        """Begin to listen."""
        self._started = True
        if not self._stepped:
            self._line.start()

    def pump(self) -> None:
        """One turn of the listener, in the caller's time."""
        self._line.pump()

    def tick(self) -> None:
        """Let time pass; to be called a few times a second."""
        lesson = self._lesson
        lesson.tick(self._clock())
        packets = lesson.to_study()
        if packets is not None:
            settings = lesson.settings if self._has_settings else None
            job = partial(self._study, packets, settings, lesson.watched_for, self._turn)
            self._line.between_reads(job)
        self._changed()

    def close(self) -> None:
        """Let go of the port."""
        self._turn += 1  # what still comes is not heard
        self._line.close()

    # What comes, from the listener's thread --------------------------------------------------

    def _published(self, turn: int, event: LineEvent) -> None:
        self._later(partial(self._heard, turn, event))

    def _heard(self, turn: int, event: LineEvent) -> None:
        if turn == self._turn:
            self._lesson.heard(event)
            self._changed()

    def _study(
        self, packets: Sequence[Packet], settings: str | None, watched_for: int, turn: int
    ) -> None:
        found = study(packets, self.name, settings)
        self._later(partial(self._studied, found, watched_for, turn))

    def _studied(self, found: Study, watched_for: int, turn: int) -> None:
        if turn == self._turn:
            self._lesson.studied(found, watched_for)
            self._changed()

    # The person ------------------------------------------------------------------------------

    def press(self, event: PersonEvent) -> None:
        """Take a press; one that is not offered now came from a finger that was late."""
        match event.kind:
            case Person.GO_ON:
                self._lesson.go_on()
            case Person.MORE:
                self._lesson.once_more()
            case Person.KEEP:
                self._keep()
            case Person.NO:
                self._start_over()
        self._lesson.tick(self._clock())
        self._changed()

    def _start_over(self) -> None:
        """From the very beginning, with the port settings in doubt again."""
        if self.learned is not None:
            return
        self._line.close()
        self._begin()
        if self._started:
            self.start()

    def _keep(self) -> None:
        lesson = self._lesson
        if lesson.learned is None or lesson.kept is not None:
            return
        self.name = self._free_name()
        shape = lesson.learned.shape.model_copy(update={"name": self.name})
        try:
            self._keeper.keep(shape)
        except OSError as error:
            lesson.problem = say("teach.not_kept", why=error.strerror or str(error))
        else:
            lesson.kept, lesson.problem = shape, ""

    def _free_name(self) -> str:
        taken = {name.casefold() for name in (*self._keeper.names(), *known_dialects())}
        names = (say("teach.name", number=number) for number in count(1))
        return next(name for name in names if name.casefold() not in taken)

    # What is known ---------------------------------------------------------------------------

    @property
    def learned(self) -> LineShape | None:
        """The shape, once it is kept."""
        return self._lesson.kept

    def view(self) -> TeachView:
        """The sheet."""
        return teach_view(self._lesson, self.name)

    def pan(self) -> PanView:
        """The pan: what is read, for the person to compare."""
        return teach_pan(self._lesson)

    @property
    def connected(self) -> bool:
        """Whether the port is open, as far as is known."""
        return self._lesson.lost is None


def _listen(
    where: str,
    port_settings: str | None,
    clock: Callable[[], float],
    stepped: bool,
    publish: Callable[[LineEvent], object],
) -> PassiveLine:
    return listen_at(
        where,
        port_settings,
        publish=publish,
        clock=clock,
        wait=_no_wait if stepped else None,
        patience=0.0 if stepped else PATIENCE,
    )


def _no_wait(_seconds: float) -> None:
    """In stepped time nobody waits."""
