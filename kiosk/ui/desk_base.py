"""What every part of the desk stands on: the running procedure, the notebook, the place."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum
from typing import TYPE_CHECKING

from kiosk.procedures.balance_check import BalanceCheck
from kiosk.procedures.check_jars import CheckJars
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.measure import Measure
from kiosk.procedures.measure_water import MeasureWater
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Effect,
    Procedure,
    Surroundings,
    WeighAgain,
)
from kiosk.procedures.show_answer import ShowAnswer
from kiosk.procedures.throw_away import ThrowAway
from kiosk.records.entries import CupOut, Entry
from kiosk.records.round_notes import RoundNote
from kiosk.records.writer import Writer
from kiosk.ui.lock import CODE, HELPER_CODE, Lock
from kiosk.ui.notebook import Notebook
from kiosk.ui.pages.room import Room
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.scale_drawer import ScaleDrawer
from kiosk.weighing.pan_events import PanEvent

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may


class Place(Enum):
    """Where the kiosk is while no procedure runs."""

    HOME = "home"
    TEAMS = "teams"
    MATERIALS = "materials"
    SCALE = "scale"
    SCALES = "scales"
    TEACH = "teach"
    CODE = "code"
    ROUND = "round"
    ROUND_RUNS = "round runs"  # cups are not weighed here meanwhile


COACHS_PLACES = frozenset({Place.SCALE, Place.SCALES, Place.TEACH, Place.CODE})
COACHS_PROCEDURES = (
    KeyProcedure,
    Measure,
    MeasureWater,
    ThrowAway,
    BalanceCheck,
    ShowAnswer,
    CheckJars,
)


class DeskBase:
    """`changed` is called when there may be something new to show."""

    def __init__(
        self,
        *,
        facts: TableFacts,
        world: Surroundings,
        writer: Writer,
        weigh_again: Callable[[], None],
        changed: Callable[[], None],
    ) -> None:
        self.facts = facts
        self.world = world
        self.place = Place.HOME
        self.procedure: Procedure | None = None
        self.memory = PanMemory()
        self.notebook = Notebook(writer, facts, changed)
        self.room = Room(self)
        self.ready = False
        self._weigh_again = weigh_again
        self._changed = changed
        self.drawer: ScaleDrawer | None = None
        self.lock = Lock(closes_after=facts.settings.coach_idle_s, open=True)
        self.guessing = ""  # the kind of container that pairs guess; "" while they fill cups
        self.drawer_label = ""
        self._behind: Callable[[], None] | None = None  # what the code opens
        self._behind_for_helper: Callable[[], None] | None = None
        self._missed: list[PanEvent] = []  # on the pan, while nothing could be written down

    def open(self) -> None:
        """Read what is kept: the cups that are out, the last choices, the keys."""
        simulated = self.facts.simulated

        def read(store: Store) -> tuple[list[CupOut], str | None, list[str], list[str], str, str]:
            letters = [key.made.letter for key in store.keys(simulated)]
            boxes = [str(volume.made.number) for volume in store.volumes(simulated)]
            code, helper = store.recall(CODE) or "", store.recall(HELPER_CODE) or ""
            material = store.recall("material")
            return store.cups_out(simulated), material, letters, boxes, code, helper

        def done(kept: tuple[list[CupOut], str | None, list[str], list[str], str, str]) -> None:
            self.facts.cups, material, letters, boxes, *codes = kept
            self.lock.digest, self.lock.helper_digest = codes
            self.facts.used_boxes = tuple(boxes)
            self.facts.material = material or self.facts.settings.materials[0]
            self.facts.used_letters = tuple(letters)
            self.facts.keys_kept = len(letters)
            self.ready = True

        self.notebook.look_up(read, done)

    @property
    def settled_for_showing(self) -> bool:
        """False while something captured is not yet written down."""
        return self.notebook.up_to_date

    @property
    def failure(self) -> str | None:
        """Why something could not be written down, None while all is well.

        What was captured earlier and is refused only now is told when nobody is at work.
        """
        told = self.notebook.refusal if self.procedure is None else None
        return self.notebook.failure or told

    @property
    def may_leave(self) -> bool:
        """Whether a failure can be left behind without losing anything."""
        return self.ready and self.notebook.droppable

    @property
    def in_room(self) -> bool:
        """Whether a page of a round lies in front."""
        return self.place is Place.ROUND and self.procedure is None

    def _free(self) -> bool:
        return self.ready and self.failure is None and self.settled_for_showing

    def _go(self, place: Place) -> None:
        if self._free():
            self.place = place
            self._changed()

    def _start(self, procedure: Procedure) -> None:
        self.procedure = procedure
        self._carry_out(procedure.take_effects())
        self._changed()

    def _carry_out(self, effects: list[Effect]) -> None:
        entries = [effect for effect in effects if isinstance(effect, Entry)]
        if entries:
            self.notebook.write(entries)
            self.room.noted(*(entry for entry in entries if isinstance(entry, RoundNote)))
        if any(isinstance(effect, WeighAgain) for effect in effects):
            self._weigh_again()
        if self.procedure is not None and self.procedure.ended:
            self._after(self.procedure)

    def run(self, procedure: Procedure) -> None:
        """A job that a page of a round asks for; the page lies in front again when it ends."""
        self._start(procedure)

    def leave_room(self) -> None:
        """The last page of a round is gone: back to the table."""
        self.place = Place.HOME
        self._changed()

    def _after(self, ended: Procedure) -> None:
        """Where an ended procedure leads."""
        raise NotImplementedError  # the desk itself knows
