"""Measure a container with a ruler: each edge at two or three places, then its volume.

Nothing is weighed; a container that is filled with water is another procedure's. Whatever was
kept is written down at once and can be gone on with later.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from typing import ClassVar

from kiosk.estimating.count_key import score_effect
from kiosk.estimating.volume import Volume
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Ask,
    NotOfferedError,
    Person,
    PersonEvent,
    Procedure,
    Rule,
    Signal,
    Surroundings,
    go,
    judge,
)
from kiosk.procedures.volume_draft import (
    MOST_PLACES,
    USUAL_PLACES,
    VolumeDraft,
    centimetres,
    unlike,
)
from kiosk.records.volume_entries import (
    LengthUnit,
    Shape,
    SizeRead,
    SizeVoided,
    VolumeDropped,
    VolumeMade,
    VolumeStarted,
)
from kiosk.texts import say
from kiosk.texts.typed import NotANumberError

MOST_DIGITS = 7
LONGEST = Decimal(300)  # cm; nothing larger stands on a table
UNLIKE = 2  # times another place: a slip of the point makes it ten, a bulge never two


class MeasureState(Enum):
    """Where the coach stands."""

    RESUME = "resume"
    SHAPE = "shape"
    UNIT = "unit"
    SIZE = "size"
    SURE = "sure"
    RESULT = "result"
    SAVED = "saved"
    LEAVING = "leaving"
    LEFT = "left"
    WATER = "water"


S = MeasureState


class Measure(Procedure):
    """From the choice of a shape to a number for the box; ``draft`` resumes a key that was left.

    ``edge`` is being measured, ``text`` what is typed of it; ``note`` says what is wrong with it.
    """

    def __init__(
        self, surroundings: Surroundings, *, pan: PanMemory, draft: VolumeDraft | None = None
    ) -> None:
        super().__init__(S.SHAPE if draft is None else S.RESUME, surroundings, pan)
        self.draft = draft
        self.edge = ""
        self.text = ""
        self.note = ""
        self.other: Decimal | None = None  # the place in cm that a doubtful size is unlike
        self.number: int | None = None
        self._shape: Shape | None = None
        self._enough: set[str] = set()  # edges for which one place must do
        self._left_from: Enum = self.state

    @property
    def kept(self) -> VolumeDraft:
        """The draft, in all states that have one."""
        if self.draft is None:
            raise AssertionError(f"{self.state} has no draft")
        return self.draft

    @property
    def shape(self) -> Shape | None:
        """The shape, once it is chosen."""
        return self._shape if self.draft is None else self.draft.shape

    @property
    def typed_cm(self) -> Decimal | None:
        """What is typed in centimetres; None while it is no number."""
        try:
            return centimetres(self.text, self.kept.unit, self.edge)
        except NotANumberError:
            return None

    @property
    def last(self) -> SizeRead | None:
        """The size that an undo takes back: the last of this edge, or else of all."""
        sizes = self.kept.at(self.edge) or self.kept.sizes
        return sizes[-1] if sizes else None

    @property
    def full(self) -> bool:
        """Whether this edge has as many places as it can have."""
        return len(self.kept.at(self.edge)) >= MOST_PLACES

    def wants(self, edge: str) -> bool:
        """Whether that edge was measured at too few places yet."""
        wanted = 1 if edge in self._enough else USUAL_PLACES
        return len(self.kept.at(edge)) < wanted

    def score_effect(self, volume: Volume) -> Decimal:
        """Points that a 90-point answer can lose by what is unknown of the volume."""
        return score_effect(volume.cm3, volume.low, volume.high, self.world.rules)

    def offers(self, person: Person) -> bool:
        """As the table says; what is typed decides between keeping a size and going on."""
        if not super().offers(person) or self.state is not S.SIZE:
            return super().offers(person)
        match person:
            case Person.TYPE:
                return not self.full
            case Person.KEEP | Person.RUB_OUT:
                return bool(self.text)
            case Person.GO_ON:
                return not self.text and bool(self.kept.at(self.edge))
            case Person.UNDO:
                return self.last is not None
        return True

    def _choose_shape(self, event: PersonEvent) -> S:
        self._shape = Shape(event.value)
        return S.WATER if self._shape is Shape.WATER else S.UNIT

    def _choose_unit(self, event: PersonEvent) -> S:
        assert self._shape is not None
        started = VolumeStarted(id=self.world.new_id(), shape=self._shape, at=self._utc_now())
        self.draft = VolumeDraft(id=started.id, shape=self._shape, unit=LengthUnit(event.value))
        self._do(started)
        return self._next()

    def _next(self) -> S:
        """On to the first edge that has too few places, or to the result."""
        self._clear()
        for edge in self.kept.edges:
            if self.wants(edge):
                self.edge = edge
                return S.SIZE
        self.edge = self.kept.edges[-1]
        return S.RESULT

    def _clear(self) -> None:
        self.text, self.note, self.other = "", "", None

    def _resume(self, _event: PersonEvent) -> S:
        return self._next()

    def _start_over(self, _event: PersonEvent) -> S:
        self._do(VolumeDropped(key_id=self.kept.id, reason="started over", at=self._utc_now()))
        self.draft = None
        return S.SHAPE

    def _type(self, event: PersonEvent) -> S:
        self.note = ""
        if len(self.text) < MOST_DIGITS and not (event.value == "." and "." in self.text):
            self.text += event.value
        return S.SIZE

    def _rub_out(self, _event: PersonEvent) -> S:
        self.text, self.note = self.text[:-1], ""
        return S.SIZE

    def _select(self, event: PersonEvent) -> S:
        if event.value not in self.kept.edges:
            raise NotOfferedError(f"{self.kept.shape} has no edge {event.value}")
        self._clear()
        self.edge = event.value
        return S.SIZE

    def _judge(self, _event: PersonEvent) -> S:
        try:
            cm = centimetres(self.text, self.kept.unit, self.edge)
        except NotANumberError:
            self.note = say("measure.unreadable")
            return S.SIZE
        if cm <= 0:
            self.note = say("measure.zero")
            return S.SIZE
        self.other = unlike(cm, self.kept.places(self.edge), UNLIKE)
        if cm > LONGEST or self.other is not None:
            return S.SURE
        return self._keep(_event)

    def _keep(self, _event: PersonEvent) -> S:
        size = SizeRead(
            id=self.world.new_id(),
            key_id=self.kept.id,
            edge=self.edge,
            typed=self.text,
            unit=self.kept.unit,
            at=self._utc_now(),
        )
        self._do(size)
        self.draft = self.kept.with_size(size)
        if self.kept.uneven(self.edge) and not self.full:
            self._clear()
            return S.SIZE  # a third place tells whether it bulges
        return self._next()

    def _not_so(self, _event: PersonEvent) -> S:
        self._clear()
        return S.SIZE

    def _go_on(self, _event: PersonEvent) -> S:
        self._enough.add(self.edge)
        return self._next()

    def _undo(self, _event: PersonEvent) -> S:
        size = self.last
        assert size is not None
        self._do(SizeVoided(size_id=size.id, reason="undone", at=self._utc_now()))
        self.draft = self.kept.without(size)
        self._clear()
        self.edge = size.edge
        self._enough.discard(size.edge)
        return S.SIZE

    def _more(self, _event: PersonEvent) -> S:
        """Back to the edge whose places differ most for its size: another place pays there."""
        draft = self.kept
        self.edge = max(draft.edges, key=lambda edge: draft.spread(edge) / max(draft.places(edge)))
        return S.SIZE

    def _save(self, event: PersonEvent) -> S:
        volume = self.kept.volume()
        assert volume is not None
        self.number = event.value
        self._do(
            VolumeMade(
                id=self.world.new_id(),
                key_id=self.kept.id,
                number=event.value,
                cm3=volume.cm3,
                low=volume.low,
                high=volume.high,
                score_effect=self.score_effect(volume),
                at=self._utc_now(),
            )
        )
        return S.SAVED

    def _ask_leave(self, _event: PersonEvent) -> S:
        if not self.kept.sizes:
            return S.LEFT
        self._left_from = self.state
        return S.LEAVING

    def _stay(self, _event: PersonEvent) -> Enum:
        return self._left_from

    _ASK_LEAVE: ClassVar[Rule] = judge(_ask_leave, S.LEAVING, S.LEFT)
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.RESUME: {
            Person.YES: judge(_resume, S.SIZE, S.RESULT),
            Person.NO: judge(_start_over, S.SHAPE),
            Person.HOME: go(S.LEFT),
        },
        S.SHAPE: {Person.CHOOSE: judge(_choose_shape, S.UNIT, S.WATER), Person.HOME: go(S.LEFT)},
        S.UNIT: {Person.CHOOSE: judge(_choose_unit, S.SIZE), Person.HOME: go(S.LEFT)},
        S.SIZE: {
            Person.TYPE: judge(_type, S.SIZE),
            Person.RUB_OUT: judge(_rub_out, S.SIZE),
            Person.CHOOSE: judge(_select, S.SIZE),
            Person.KEEP: judge(_judge, S.SIZE, S.SURE, S.RESULT),
            Person.GO_ON: judge(_go_on, S.SIZE, S.RESULT),
            Person.UNDO: judge(_undo, S.SIZE),
            Person.HOME: _ASK_LEAVE,
        },
        S.SURE: {
            Person.YES: judge(_keep, S.SIZE, S.RESULT),
            Person.NO: judge(_not_so, S.SIZE),
            Person.HOME: _ASK_LEAVE,
        },
        S.RESULT: {
            Person.KEEP: judge(_save, S.SAVED),
            Person.MORE: judge(_more, S.SIZE),
            Person.HOME: _ASK_LEAVE,
        },
        S.SAVED: {Person.HOME: go(S.LEFT)},
        S.LEAVING: {
            Person.STAY: judge(_stay, S.SIZE, S.SURE, S.RESULT),
            Person.LEAVE: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.WATER})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.RESUME: Ask(title="measure.resume.title", body="measure.resume.body", needs_pan=False),
        S.SHAPE: Ask(title="measure.shape.title", needs_pan=False),
        S.UNIT: Ask(title="measure.unit.title", needs_pan=False),
        S.SIZE: Ask(title="measure.second.title", needs_pan=False),
        S.SURE: Ask(title="measure.sure.title", needs_pan=False),
        S.RESULT: Ask(title="measure.result.volume", needs_pan=False),
        S.SAVED: Ask(title="measure.saved.title", body="measure.saved.body", needs_pan=False),
        S.LEAVING: Ask(title="measure.leave.title", body="measure.leave.body", needs_pan=False),
    }
