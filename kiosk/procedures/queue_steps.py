"""What the cup table of a round does at each step; `CupQueue` says when. Nothing tells a mass."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from enum import Enum

from kiosk.evidence import Weighing
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Effect,
    Event,
    NotOfferedError,
    PersonEvent,
    Procedure,
    Surroundings,
    WeighAgain,
)
from kiosk.procedures.queue_list import QueueList
from kiosk.procedures.weigh_empty import HEAVIEST_CUP_G, LIGHTEST_CUP_G
from kiosk.rounds.contents import CupTurn
from kiosk.rounds.cups import Pass, TeamCup, is_dirty, seems_filled, seems_unfilled
from kiosk.rounds.state import RoundState
from kiosk.weighing.pan_events import PanEvent, PanKind

ENOUGH_CUPS = 3  # to compare an empty cup with


class QueueState(Enum):
    """What the table waits for."""

    CLEAR = "clear"  # something lies there that nobody asked for
    LIFTED = "lifted"  # the pan is seen empty in a moment
    DIRTY = "dirty"
    PUT_ON = "put on"
    WEIGHING = "weighing"
    ODD = "odd"
    RECORDED = "recorded"
    CHOOSING = "choosing"
    MISHAP = "mishap"
    NO_EMPTY = "no empty"
    ALL_DONE = "all done"
    LEFT = "left"


S = QueueState
_GONE = (PanKind.SILENT, PanKind.UNREADABLE, PanKind.OVERLOADED, PanKind.LOAD_REMOVED)


class QueueSteps(Procedure):
    """One pass of one sitting. `recorded` is the cup whose mass was written down, while it lies.

    With `again`, the id of a team, its cup alone is weighed once more, in the `protest` of that id.
    `early`: a cup was lifted before it was recorded. `signal` is the id of the newest mass.
    """

    def __init__(
        self,
        surroundings: Surroundings,
        *,
        state: RoundState,
        sitting: int,
        pass_: Pass,
        pan: PanMemory,
        again: str = "",
        protest: str = "",
    ) -> None:
        super().__init__(S.PUT_ON, surroundings, pan)
        self.list = QueueList(
            surroundings, state, sitting=sitting, pass_=pass_, again=again, protest=protest
        )
        self.recorded: TeamCup | None = None
        self.early = False
        self.signal = ""
        self._settled: PanEvent | None = None
        self._zero: Weighing | None = None
        # Whether the pan was seen empty, and clean: None where it has to be seen first.
        self._clean: bool | None = None if pan.loaded or pan.hindrance else True
        self.state = self._ready()
        if not pan.loaded:
            self._do(WeighAgain())  # for what it shows now

    @property
    def cup(self) -> TeamCup | None:
        """The cup that lies there recorded, or else the one that is waited for."""
        return self.recorded or self.list.current

    def values(self) -> dict[str, object]:
        """`number` of that cup, and its `team`."""
        cup = self.cup
        return {"number": cup.team.cup if cup else "", "team": cup.team.label if cup else ""}

    def see(self, state: RoundState) -> None:
        """Another kiosk noted something: whose turn it is may have changed."""
        before = self.list.current
        self.list.see(state)
        now = self.list.current
        if self.recorded or self.state is S.LEFT or _same(before, now):
            return
        self._unknown_if_loaded()
        self.state = self._ready()

    def step(self, event: Event) -> list[Effect]:
        """Take one event; what the pan does counts in states too that do not wait for it."""
        if isinstance(event, PersonEvent):
            self.early = False
        elif event.kind not in self.TABLE.get(self.state, {}):
            if event.kind is PanKind.PAN_EMPTY:
                self._note_pan(event)
            elif event.kind in _GONE:
                self._clean, self.recorded = None, None
        return super().step(event)

    # The pan ----------------------------------------------------------------------------------

    def _ready(self) -> S:
        """What to wait for, by the list and by what is known of the pan."""
        if self.list.current is None:
            return S.ALL_DONE
        if self.list.lacks_empty:
            return S.NO_EMPTY
        if self.pan.loaded or self.pan.hindrance:
            if not self._clean or self.pan.used or self.pan.hindrance:
                return S.CLEAR
            self._do(WeighAgain())
            return S.WEIGHING
        if self._clean is None:
            return S.LIFTED
        if not self._clean:
            self._do(WeighAgain())  # the pan is brushed without anything coming or going
            return S.DIRTY
        return S.PUT_ON

    def _note_pan(self, event: PanEvent) -> None:
        self.recorded = None
        self._zero = None if event.reading is None else self.shown(event)
        self._clean = self._zero is None or not is_dirty(self._zero)

    def pan_seen(self, event: PanEvent) -> S:
        """The empty pan rests: it is clean, or to be brushed."""
        self._note_pan(event)
        return self._ready()

    def lift(self, _event: PanEvent) -> S:
        """The load is gone; in a moment the pan is seen empty."""
        self.early = self.state is S.WEIGHING
        self._clean, self.recorded = None, None
        return S.LIFTED if self.list.current else S.ALL_DONE

    def lose_pan(self, _event: PanEvent) -> S:
        """Silence, an overload: nobody knows what lies there."""
        self._clean, self.recorded = None, None
        return S.CLEAR if self.list.current else S.ALL_DONE

    def find_left(self, event: PanEvent) -> S:
        """Something rests where nothing should: crumbs, or a cup."""
        return S.DIRTY if _light(event) else S.CLEAR

    def find_beside(self, event: PanEvent) -> S:
        """What rests after a cup was recorded: it still, or what it left behind."""
        assert self._settled is not None
        if (event.grams or 0) > (self._settled.grams or Decimal(0)) / 2:
            return S.RECORDED
        self._clean, self.recorded = None, None
        return S.DIRTY if self.list.current else S.ALL_DONE

    def _unknown_if_loaded(self) -> None:
        """Nobody knows any more whose cup lies there: it has to go first."""
        if self.pan.loaded:
            self._clean = None

    # Recording --------------------------------------------------------------------------------

    def judge_cup(self, event: PanEvent) -> S:
        """A cup rests: it is recorded, unless something is odd about it."""
        self._settled = event
        self.early = False
        if _light(event):
            self._clean = None
            return S.DIRTY
        return S.ODD if self._is_odd(event.grams or Decimal(0)) else self.record()

    def _is_odd(self, grams: Decimal) -> bool:
        cup = self.list.current
        assert cup is not None
        if not self.list.weighs_empty:
            return cup.empty is not None and seems_unfilled(grams, cup.empty)
        others = [empty.grams for empty in self.list.empties()]
        if len(others) < ENOUGH_CUPS:
            return grams > HEAVIEST_CUP_G
        return seems_filled(grams, others, self.world.rules)

    def record(self, _event: PersonEvent | None = None) -> S:
        """Write down what rests on the pan."""
        assert self._settled is not None
        mass = self.weighing(self._settled)
        self.recorded = self.list.current
        turn = CupTurn.EMPTY if self.list.weighs_empty else CupTurn.FILLED
        # The wrong cup's note may have had the same zero, and no weighing is kept twice.
        zero = self._zero and replace(self._zero, id=self.world.new_id())
        note = self.list.note(turn, at=mass.at, weighing=mass, zero=zero)
        self._do(note)
        self.signal = note.id
        return S.RECORDED

    # What a person does -----------------------------------------------------------------------

    def happen(self, event: PersonEvent) -> S:
        """An outcome that is no mass, or that asks for another one."""
        if event.value not in (*self.list.outcomes, *self.list.mishaps):
            raise NotOfferedError(f"{event.value} is no outcome of this pass")
        self._do(self.list.note(event.value, at=self._utc_now()))
        self._unknown_if_loaded()
        return self._ready()

    def undo(self, _event: PersonEvent) -> S:
        """Void what was noted last."""
        self._take_back()
        self._unknown_if_loaded()
        return self._ready()

    def _take_back(self) -> None:
        note = self.list.take_back(self._utc_now())
        if note is not None:
            self._do(note)
        self.recorded = None

    def choose(self, event: PersonEvent) -> S:
        """Another cup is on the pan, or comes before its turn."""
        cup = self.list.numbered(event.value)
        if cup is None:
            raise NotOfferedError(f"cup {event.value} cannot come")
        if self.recorded is None:
            self.list.choose(cup.team.team)
            return self._ready()
        # The wrong cup was written down: what rests there is the chosen one's.
        self._take_back()
        self.list.choose(cup.team.team)
        assert self._settled is not None
        if self.list.lacks_empty:
            return S.NO_EMPTY
        return self.judge_cup(self._settled)

    def go_back(self, _event: PersonEvent) -> S:
        """Think better of it."""
        return S.RECORDED if self.recorded else self._ready()

    def refuse(self, _event: PersonEvent) -> S:
        """What rests there is not what it should be."""
        if not self.list.weighs_empty and not self.list.again:
            return S.CHOOSING
        self._clean = None
        return S.CLEAR

    def weigh_empty(self, _event: PersonEvent) -> S:
        """Weigh the current cup empty although it is to be handed in."""
        cup = self.list.current
        assert cup is not None
        self.list.choose(cup.team.team)
        self.list.anew = cup.team.team
        self._unknown_if_loaded()
        return self._ready()


def _light(event: PanEvent) -> bool:
    """Whether what rests is lighter than any cup."""
    return (event.grams or Decimal(0)) < LIGHTEST_CUP_G


def _same(one: TeamCup | None, other: TeamCup | None) -> bool:
    return (one and one.team.team) == (other and other.team.team)
