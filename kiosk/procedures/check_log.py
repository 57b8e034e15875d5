"""What a check of the balance has found so far: the masses, and the verdicts they bear."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from kiosk.estimating.balance_check import (
    Finding,
    Verdict,
    judge,
    judge_spread,
    judge_zero,
    off_by_one_share,
    overall,
)
from kiosk.estimating.known_masses import KnownMass
from kiosk.procedures.check_plan import Task
from kiosk.records.entries import CheckedRow, CheckMass, CheckRole


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """A task with the mass that counts for it."""

    task: Task
    mass: CheckMass

    @property
    def grams(self) -> Decimal:
        """As the balance showed it."""
        return self.mass.weighing.grams


@dataclass(slots=True)
class CheckLog:
    """Grows while the check goes on; `zeros` are the emptied pan's readings in grams."""

    done: list[Done] = field(default_factory=list)
    zeros: list[Decimal] = field(default_factory=list)
    readability: Decimal | None = None

    def of(self, role: CheckRole) -> list[Done]:
        """What counts for one test."""
        return [each for each in self.done if each.task.role is role]

    def replace(self, done: Done) -> None:
        """Let a mass count, instead of the one before for the same task."""
        self.done = [each for each in self.done if each.task != done.task] + [done]

    def finding(self, done: Done) -> Finding | None:
        """The verdict on one load; None where its mass is not known."""
        known = done.task.thing.known
        return None if known is None else judge(known, done.grams, self.step)

    @property
    def step(self) -> Decimal:
        """The readability in grams, once something was weighed."""
        assert self.readability is not None
        return self.readability

    def expected(self, task: Task) -> Decimal | None:
        """About what this task will show: the known mass, or what the same thing showed before."""
        if task.thing.known is not None:
            return task.thing.known.grams
        same = (each.grams for each in self.done if each.task.thing == task.thing)
        return next(same, None)

    def rows(self) -> tuple[CheckedRow, ...]:
        """One row for each known load, then one for each test that was done."""
        loads = []
        for each in self.of(CheckRole.LOAD):
            found = self.finding(each)
            if found is not None:
                known = each.mass.known
                loads.append(_row(CheckRole.LOAD, each.task.thing.name, each.grams, found, known))
        return (*loads, *self._spread(CheckRole.REPEAT), *self._spread(CheckRole.POSITION),
                *self._zero())  # fmt: skip

    def _spread(self, role: CheckRole) -> tuple[CheckedRow, ...]:
        done = self.of(role)
        if len(done) < 2:
            return ()
        shown = [each.grams for each in done]
        thing = done[0].task.thing
        load = thing.known.grams if thing.known else shown[0]
        found = judge_spread(shown, load, self.step)
        return (_row(role, thing.name, found.off, found, None),)

    def _zero(self) -> tuple[CheckedRow, ...]:
        if not self.zeros:
            return ()
        found = judge_zero(self.zeros, self.step)
        return (_row(CheckRole.ZERO, "", found.off, found, None),)

    @property
    def verdict(self) -> Verdict:
        """On the balance as a whole, so far."""
        rows = self.rows()
        loads = [Verdict(row.verdict) for row in rows if row.test == CheckRole.LOAD]
        tests = [Verdict(row.verdict) for row in rows if row.test != CheckRole.LOAD]
        return overall(loads, tests)

    @property
    def one_share(self) -> bool | None:
        """Whether all loads are off by one and the same share; None where that cannot be seen."""
        loads: list[tuple[KnownMass, Decimal]] = []
        for each in self.of(CheckRole.LOAD):
            known = each.task.thing.known
            if known is not None and not known.gross_check:
                loads.append((known, each.grams))
        return off_by_one_share(loads, self.step) if loads else None


def _row(
    role: CheckRole, name: str, shown: Decimal, found: Finding, known: Decimal | None
) -> CheckedRow:
    return CheckedRow(
        test=role.value, name=name, known=known, shown=shown, off=found.off, limit=found.limit,
        verdict=found.verdict.value,
    )  # fmt: skip
