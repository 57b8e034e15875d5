"""What a check of the balance keeps: each mass and zero as evidence, then the verdicts."""

from __future__ import annotations

from decimal import Decimal
from enum import Enum

from kiosk.estimating.balance_check import Verdict
from kiosk.procedures.check_log import CheckLog, Done
from kiosk.procedures.check_plan import UNKNOWN, CheckThing, Task, loads_of
from kiosk.procedures.pan_memory import PanMemory
from kiosk.procedures.procedure import Procedure, Surroundings
from kiosk.records.entries import BalanceChecked, CheckMass, CheckRole
from kiosk.weighing.pan_events import PanEvent


class CheckProcedure(Procedure):
    """A procedure with weighings to do and a log of those that were done.

    `kit` is what is at hand, `now` what lies on the pan and is written down.
    """

    def __init__(self, state: Enum, surroundings: Surroundings, pan: PanMemory) -> None:
        super().__init__(state, surroundings, pan)
        self.check_id = surroundings.new_id()
        self.kit = UNKNOWN
        self.log = CheckLog()
        self.now: Done | None = None
        self._to_do: list[Task] = []
        self._zero_unseen = False  # the balance may have set itself to zero under the load
        self._balance = ""  # that showed what is on record

    @property
    def task(self) -> Task | None:
        """The weighing that is asked for, or that lies on the pan."""
        return self._to_do[0] if self._to_do else None

    @property
    def loads_left(self) -> tuple[CheckThing, ...]:
        """Known loads of the kit that were not weighed yet."""
        weighed = {each.task.thing for each in self.log.of(CheckRole.LOAD)}
        return tuple(thing for thing in loads_of(self.kit) if thing not in weighed)

    @property
    def worst(self) -> Task | None:
        """The first known load that was not found fine and might be."""
        for each in self.log.of(CheckRole.LOAD):
            found, known = self.log.finding(each), each.task.thing.known
            if found is None or known is None or found.verdict is Verdict.FINE:
                continue
            if found.verdict is Verdict.NOT_FINE or not known.gross_check:
                return each.task
        return None

    def _keep(self, task: Task, event: PanEvent) -> Done:
        weighing = self.weighing(event)
        self._balance = weighing.balance
        known = task.thing.known
        mass = CheckMass(
            id=self.world.new_id(), check_id=self.check_id, role=task.role.value,
            row=self._row(task), name=task.name, known=known.grams if known else None,
            tolerance=known.tolerance if known else None, weighing=weighing, at=weighing.at,
        )  # fmt: skip
        self._do(mass)
        return Done(task=task, mass=mass)

    def _row(self, task: Task) -> int:
        """The place among what was weighed; the same as before when it is weighed again."""
        tasks = [each.task for each in self.log.done]
        before = next((each for each in self.log.done if each.task == task), None)
        return before.mass.row if before else len(tasks) + 1

    def _note_zero(self, event: PanEvent) -> None:
        reading = event.reading
        if self._zero_unseen or self.now is None or reading is None or reading.grams is None:
            return
        self.log.zeros.append(reading.grams)
        weighing = self.weighing(event)
        self.pan.used = False  # nothing lies there
        self._do(
            CheckMass(
                id=self.world.new_id(), check_id=self.check_id, role=CheckRole.ZERO.value,
                row=0, name="", known=Decimal(0), tolerance=Decimal(0), weighing=weighing,
                at=weighing.at,
            )
        )  # fmt: skip

    def _write_verdicts(self) -> None:
        rows = self.log.rows()
        if rows:
            self._do(
                BalanceChecked(
                    id=self.check_id, balance=self._balance, readability=self.log.step, rows=rows,
                    verdict=self.log.verdict.value, at=self._utc_now(),
                )
            )  # fmt: skip
