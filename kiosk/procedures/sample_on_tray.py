"""Judge what rests on the tray: a sample, the sample from before, two at once, or no sample."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from statistics import median

from kiosk.estimating.count_refusals import LEAST_DIVISIONS
from kiosk.procedures.begin_key import BeginKey, S, SamplesState
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.key_procedure import TRAY_DIVISIONS
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import PersonEvent, Surroundings, WeighAgain
from kiosk.procedures.tray_memory import Found, TrayMemory
from kiosk.weighing.pan_events import PanEvent, PanKind

TWO_AT_ONCE = Decimal("1.6")  # times the middle sample: hardly one sample any more

# The tray may have been emptied and filled again meanwhile.
LIFTED = frozenset({PanKind.LOAD_REMOVED, PanKind.PAN_EMPTY, PanKind.UNREADABLE, PanKind.SILENT})


class SampleOnTray(BeginKey):
    """Takes a sample off the reading that was there before it."""

    def __init__(
        self,
        state: SamplesState,
        surroundings: Surroundings,
        *,
        pan: PanMemory,
        draft: KeyDraft | None,
        known: Mapping[str, KeyDraft],
    ) -> None:
        super().__init__(state, surroundings, pan=pan, draft=draft, known=known)
        samples = draft.samples if draft else ()
        self._on_it = TrayMemory(last=samples[-1].weighing if samples else None)

    @property
    def taken_off(self) -> Decimal | None:
        """Gross grams of what lies under the next sample: the tray, or the tray and samples."""
        if self._on_it.under is not None:
            return self._on_it.under.grams
        return self.kept.tray.weighing.grams if self.kept.tray else None

    @property
    def adding(self) -> bool:
        """Whether kept pieces lie under the next sample."""
        return self._on_it.under is not None

    @property
    def waits_for_more(self) -> bool:
        """Whether the next sample may be added to those on the tray just now."""
        return self.state in (S.ADD, S.SAME)

    @property
    def on_tray(self) -> Decimal | None:
        """Net grams of the sample that rests on the pan and is not kept yet."""
        if self._settled is None or self._settled.grams is None or self.taken_off is None:
            return None
        return self._settled.grams - self.taken_off

    def _tray(self, event: PanEvent) -> S:
        self._keep("tray", event)
        return S.COUNT

    def _judge_sample(self, event: PanEvent) -> S:
        self._settled = event
        match self._find(event):
            case Found.EMPTY_TRAY:
                return S.COUNT
            case Found.LIGHTER:
                return S.LIGHT_TRAY
            case Found.LESS:
                return S.EMPTY_TRAY
            case Found.AS_KEPT:
                return self._as_kept(event)
        net = self.on_tray or Decimal(0)
        if net < LEAST_DIVISIONS * (event.readability or Decimal(0)):
            return S.TOO_FEW
        nets = self.kept.sample_nets
        return S.TOO_MANY if nets and net > TWO_AT_ONCE * median(nets) else S.READY

    def _find(self, event: PanEvent) -> Found:
        assert self.kept.tray is not None
        near = TRAY_DIVISIONS * (event.readability or Decimal(0))
        return self._on_it.find(event.grams or Decimal(0), self.kept.tray.weighing.grams, near)

    def _as_kept(self, event: PanEvent) -> S:
        """More can be added to these pieces, whoever put them there; they are kept already.

        Once they were lifted, the next sample is taken off what is shown now: they may be others.
        """
        if self._on_it.under is None:
            self._on_it.under = self.weighing(event)
            return S.SAME
        return S.SAME if self.state is S.SAME else S.ADD

    def _judge_emptied(self, event: PanEvent) -> S:
        """Pieces of which nobody knows what they are must go; those kept last may stay."""
        found = self._find(event)
        if found is Found.AS_KEPT:
            return self._as_kept(event)
        return S.COUNT if found is Found.EMPTY_TRAY else S.EMPTY_TRAY

    def _sample(self, _event: PersonEvent) -> S:
        assert self._settled is not None
        self._keep("sample", self._settled, self._on_it.under)
        self._settled = None
        self._on_it.keep(self.kept.samples[-1].weighing)
        return S.SPREAD if self._all_in() else S.ADD

    def _all_in(self) -> bool:
        return len(self.kept.samples) >= self.kept.wanted

    def _go_on(self) -> S:
        return S.SPREAD if self._all_in() else self._next_sample()

    def _next_sample(self) -> S:
        self._settled = None
        if not self.pan.loaded:
            self._on_it.lifted()
            return S.COUNT
        self._do(WeighAgain())  # it may be the emptied tray that rests there
        return S.ADD if self.adding else S.EMPTY_TRAY

    def _moved(self, event: PanEvent) -> S:
        self._settled = None
        if event.kind in LIFTED:
            self._on_it.lifted()
        return S.ADD if self.adding else S.COUNT

    def _lifted(self, _event: PanEvent) -> S:
        """While something else is asked."""
        self._on_it.lifted()
        assert isinstance(self.state, SamplesState)
        return self.state

    def _undo(self, event: PersonEvent) -> S:
        """A sample that was added to this one keeps its own readings.

        Where the pieces of this one lie on top, nobody knows what is done with them.
        """
        gone = self.kept.samples[event.value]
        if self._on_it.last is not None and gone.weighing.id == self._on_it.last.id:
            self._on_it = TrayMemory()
        self._void(gone, reason="undone")
        return self._next_sample()
