"""Weigh counted samples: the first half of a count key (steps 1 and 2).

The tray is weighed once and stays the same for all samples. Each is counted into the emptied tray
or added to those that lie there. A tray that comes back as heavy as it left is not taken for a new
sample until it was seen empty, so that no sample is taken twice.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from enum import Enum
from typing import ClassVar

from kiosk.estimating.samples import MOST_SAMPLES
from kiosk.procedures.begin_key import FIRST_PIECES, BeginKey, S, SamplesState
from kiosk.procedures.count_in_tens import CountInTens
from kiosk.procedures.key_draft import KeyDraft
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import (
    Art,
    Ask,
    Person,
    PersonEvent,
    Rule,
    Signal,
    Surroundings,
    WeighAgain,
    go,
    judge,
)
from kiosk.procedures.sample_on_tray import LIFTED, SampleOnTray
from kiosk.procedures.tray_memory import TrayMemory
from kiosk.records.entries import KeyChanged
from kiosk.weighing.pan_events import PanKind

__all__ = ["FIRST_PIECES", "CountSamples", "SamplesState"]


class CountSamples(CountInTens):
    """From the choice of a material to enough samples.

    `draft` resumes a key that was left; `go_on` takes it up without asking. `known` are the drafts
    whose samples a material remembers.
    """

    def __init__(
        self,
        surroundings: Surroundings,
        *,
        pan: PanMemory,
        draft: KeyDraft | None = None,
        go_on: bool = False,
        known: Mapping[str, KeyDraft] | None = None,
    ) -> None:
        start = S.MATERIAL if draft is None else S.RESUME
        super().__init__(start, surroundings, pan=pan, draft=draft, known=known or {})
        if go_on:
            self.state = self._resume(PersonEvent(Person.YES))

    def values(self) -> dict[str, object]:
        """`material`, `pieces` and `mass`: the net grams of the sample on the pan."""
        return {**super().values(), "mass": self.on_tray}

    def _resume(self, _event: PersonEvent) -> S:
        draft = self.kept
        if draft.tray is None:
            return self._tray_next()
        if draft.back_in is not None and draft.enough:
            return S.SAMPLED
        self.draft = replace(draft, back_in=None)  # said of samples that are counted anew
        return self._go_on()

    def _change_pieces(self, event: PersonEvent) -> S:
        self._void(*self.kept.samples, reason=f"samples of {event.value} instead")
        self._on_it = TrayMemory()
        self.draft = replace(self.kept, pieces=event.value)
        self._do(
            KeyChanged(key_id=self.kept.id, pieces=event.value, back_in=None, at=self._utc_now())
        )
        return self._next_sample()

    def _more(self, _event: PersonEvent) -> S:
        wanted = min(MOST_SAMPLES, len(self.kept.samples) + 1)
        self.draft = replace(self.kept, wanted=wanted)
        return self._go_on()

    def _enough(self, _event: PersonEvent) -> S:
        self.draft = replace(self.kept, wanted=len(self.kept.samples))
        return S.SPREAD

    def offers(self, person: Person) -> bool:
        """As the table says; going on needs enough samples, one more needs room for it."""
        if person is Person.GO_ON and self.state is not S.SPREAD:
            return super().offers(person) and self.kept.enough
        if person is Person.MORE:
            return super().offers(person) and len(self.kept.samples) < MOST_SAMPLES
        return super().offers(person)

    def _ask_leave(self, _event: PersonEvent) -> S:
        self._left_from = self.state
        if self.tens:  # nobody will know how many pieces are on the tray
            self.tens = ()
            self._on_it.lifted()
        return S.LEAVING

    def _stay(self, _event: PersonEvent) -> S:
        if self._left_from in (S.READY, S.TOO_FEW, S.TOO_MANY, S.LIGHT_TRAY):
            # The pan may have moved while the question stood: look at it afresh.
            self._do(WeighAgain())
            return S.ADD if self.adding else S.COUNT
        if self._left_from in (S.TRAY_CLEAR, S.TRAY_ON):
            return self._tray_next()
        return S.SPREAD if self._left_from is S.SPREAD else self._next_sample()

    _ASK_LEAVE: ClassVar[Rule] = judge(_ask_leave, S.LEAVING)
    _ANEW: ClassVar[tuple[S, ...]] = (S.BITS, S.TRAY_CLEAR, S.TRAY_ON)
    _SAMPLING: ClassVar[Mapping[Signal, Rule]] = {
        Person.UNDO: judge(SampleOnTray._undo, S.EMPTY_TRAY, S.ADD, S.COUNT),
        Person.PIECES: judge(_change_pieces, S.EMPTY_TRAY, S.COUNT),
        Person.HOME: _ASK_LEAVE,
    }
    _MOVED: ClassVar[Mapping[Signal, Rule]] = {
        kind: judge(SampleOnTray._moved, S.ADD, S.COUNT)
        for kind in (PanKind.LOAD_PLACED, PanKind.DISTURBED, PanKind.OVERLOADED, *LIFTED)
    }
    _AWAY: ClassVar[Mapping[Signal, Rule]] = {
        kind: judge(SampleOnTray._moved, S.COUNT) for kind in LIFTED
    }
    _JUDGED: ClassVar[Rule] = judge(
        SampleOnTray._judge_sample,
        S.COUNT, S.ADD, S.SAME, S.READY, S.TOO_FEW, S.TOO_MANY, S.LIGHT_TRAY, S.EMPTY_TRAY,
    )  # fmt: skip
    _WAITING: ClassVar[Mapping[Signal, Rule]] = {
        PanKind.SETTLED: _JUDGED,
        Person.TENS: judge(CountInTens._begin_tens, S.TENS),
        Person.GO_ON: judge(_enough, S.SPREAD),
        **_SAMPLING,
    }
    _IN_TENS: ClassVar[Mapping[Signal, Rule]] = {
        **{kind: judge(CountInTens._tens_away, S.COUNT) for kind in LIFTED},
        PanKind.SETTLED: judge(CountInTens._judge_ten, S.TENS, S.ODD_TEN, S.READY, S.EMPTY_TRAY),
        Person.NO: judge(CountInTens._stop_tens, S.ADD, S.COUNT),
        Person.HOME: _ASK_LEAVE,
    }
    TABLE: ClassVar[Mapping[Enum, Mapping[Signal, Rule]]] = {
        S.RESUME: {
            Person.YES: judge(
                _resume, S.TRAY_CLEAR, S.TRAY_ON, S.EMPTY_TRAY, S.COUNT, S.SPREAD, S.SAMPLED
            ),
            Person.NO: judge(BeginKey._start_over, S.MATERIAL),
            Person.HOME: go(S.LEFT),
        },
        S.MATERIAL: {
            Person.CHOOSE: judge(BeginKey._choose, S.OLD_SAMPLES, *_ANEW),
            Person.HOME: go(S.LEFT),
        },
        S.OLD_SAMPLES: {
            Person.YES: go(S.SAME_BAG),
            Person.NO: judge(BeginKey._anew, *_ANEW),
            Person.HOME: go(S.LEFT),
        },
        S.SAME_BAG: {
            Person.YES: judge(BeginKey._use_again, S.SAMPLED),
            Person.NO: judge(BeginKey._anew, *_ANEW),
            Person.HOME: go(S.LEFT),
        },
        S.BITS: {
            Person.YES: judge(BeginKey._answer_bits, S.TRAY_CLEAR, S.TRAY_ON),
            Person.NO: judge(BeginKey._answer_bits, S.TRAY_CLEAR, S.TRAY_ON),
            Person.HOME: go(S.LEFT),
        },
        S.TRAY_CLEAR: {PanKind.PAN_EMPTY: go(S.TRAY_ON), Person.HOME: _ASK_LEAVE},
        S.TRAY_ON: {PanKind.SETTLED: judge(SampleOnTray._tray, S.COUNT), Person.HOME: _ASK_LEAVE},
        S.COUNT: _WAITING,
        S.ADD: {**_WAITING, **_AWAY},
        S.SAME: {**_WAITING, **_AWAY},
        S.TENS: _IN_TENS,
        S.ODD_TEN: {
            **_IN_TENS,
            PanKind.LOAD_PLACED: go(S.TENS),
            PanKind.DISTURBED: go(S.TENS),
            Person.YES: judge(CountInTens._it_is_ten, S.TENS, S.READY),
        },
        S.READY: {
            **_MOVED,
            Person.KEEP: judge(SampleOnTray._sample, S.ADD, S.SPREAD),
            **_SAMPLING,
        },
        S.TOO_FEW: {**_MOVED, **_SAMPLING},
        S.TOO_MANY: {**_MOVED, **_SAMPLING},
        S.LIGHT_TRAY: {**_MOVED, **_SAMPLING},
        S.EMPTY_TRAY: {
            PanKind.PAN_EMPTY: go(S.COUNT),
            PanKind.SETTLED: judge(SampleOnTray._judge_emptied, S.COUNT, S.SAME, S.EMPTY_TRAY),
            Person.GO_ON: judge(_enough, S.SPREAD),
            **_SAMPLING,
        },
        S.SPREAD: {
            **{kind: judge(SampleOnTray._lifted, S.SPREAD) for kind in LIFTED},
            Person.GO_ON: go(S.SAMPLED),
            Person.MORE: judge(_more, S.EMPTY_TRAY, S.ADD, S.COUNT),
            **_SAMPLING,
        },
        S.LEAVING: {
            **{kind: judge(SampleOnTray._lifted, S.LEAVING) for kind in LIFTED},
            Person.STAY: judge(
                _stay, S.TRAY_CLEAR, S.TRAY_ON, S.COUNT, S.ADD, S.EMPTY_TRAY, S.SPREAD
            ),
            Person.LEAVE: go(S.LEFT),
        },
    }
    FINAL: ClassVar[frozenset[Enum]] = frozenset({S.LEFT, S.SAMPLED})
    ASKS: ClassVar[Mapping[Enum, Ask]] = {
        S.RESUME: Ask(
            title="key.resume.title", body="key.resume.body", art=Art.TRAY, needs_pan=False
        ),
        S.MATERIAL: Ask(title="key.material.title", needs_pan=False),
        S.OLD_SAMPLES: Ask(title="key.old.title", needs_pan=False),
        S.SAME_BAG: Ask(title="key.same_bag.title", body="key.same_bag.body", needs_pan=False),
        S.BITS: Ask(title="key.bits.title", body="key.bits.body", needs_pan=False),
        S.TRAY_CLEAR: Ask(
            title="cup.clear.title", body="key.clear.body", step=2, art=Art.CLEAR_PAN
        ),
        S.TRAY_ON: Ask(title="key.tray_on.title", body="key.tray_on.body", step=2, art=Art.TRAY),
        S.COUNT: Ask(title="key.count.title", step=2),
        S.READY: Ask(title="key.count.title", step=2),
        S.ADD: Ask(title="key.add.title", step=2),
        S.SAME: Ask(title="key.same.title", step=2),
        S.TOO_FEW: Ask(title="key.too_few.title", step=2),
        S.TOO_MANY: Ask(title="key.too_many.title", step=2),
        S.LIGHT_TRAY: Ask(title="key.light_tray.title", step=2),
        S.EMPTY_TRAY: Ask(title="key.empty_tray.title", step=2),
        S.TENS: Ask(title="key.tens.title", step=2),
        S.ODD_TEN: Ask(title="key.odd_ten.title", step=2),
        S.SPREAD: Ask(title="key.spread.title", step=2, needs_pan=False),
        S.LEAVING: Ask(
            title="key.leave.title", body="key.leave.body", step=2, art=Art.TRAY, needs_pan=False
        ),
    }
