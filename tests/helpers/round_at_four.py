"""One round at four kiosks, one of which is cut off for a while: see benchmarks.four_kiosks."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from functools import partial
from pathlib import Path
from statistics import median
from threading import Event

from kiosk.procedures.procedure import Person
from kiosk.records.checking import check
from kiosk.records.store import Store
from kiosk.rounds.contents import CupTurn, Stage, Team
from kiosk.rounds.cups import Pass
from kiosk.rounds.standing import results_now
from kiosk.settings import KioskSettings, Rules
from kiosk.ui.pages.division_results import ResultsPage
from tests.helpers.forwarder import Forwarder
from tests.helpers.note_ledger import Ledger, refusals, what_is_wrong
from tests.helpers.postgres import Postgres
from tests.helpers.round_hands import (
    ROUND,
    CupHands,
    keep_keys,
    net,
    prepare,
    start_and_stop,
    type_sheets,
)
from tests.helpers.round_notes import DIVISION
from tests.helpers.whole_kiosk import WholeKiosk

NAMES = ("coach", "first table", "second table", "typist")
COACH, FIRST, SECOND, TYPIST = range(4)
CONFLICTS = 2 + 6  # two cups, and the answers of a sheet
SETTINGS = KioskSettings(rules=Rules(protest_minutes=0))
Hands = Callable[[], object]


class RoundAtFour:
    """The round of so many teams; journals lie in ``folder``."""

    def __init__(self, folder: Path, server: Postgres, teams: int, seconds: float) -> None:
        self.where = server.fresh()
        self.line = Forwarder(self.where)
        self.ledger = Ledger()
        self.teams, self.seconds = teams, seconds
        self.cut_off = (0.0, 0.0)  # since when, until when
        self.waited, self.caught_up, self.seen_by_all = 0, 0.0, 0.0
        with closing(Store(self.where)) as store:
            keep_keys(store)
        self.kiosks = [
            WholeKiosk(
                self.line.address if number == SECOND else self.where,
                folder / f"journal-{number}.sqlite",
                SETTINGS,
                partial(self.ledger.saw, number),
            )
            for number in range(4)
        ]

    def play(self) -> list[str]:
        """From the teams to the final list; what is wrong, in words."""
        with self._timed(f"{self.teams} teams and six keys are entered"):
            prepare(self.kiosks[COACH], [f"Team {number}" for number in range(1, self.teams + 1)])
            for kiosk in self.kiosks[FIRST:]:
                kiosk.enter(ROUND)
        for kiosk in self.kiosks[FIRST:TYPIST]:
            kiosk.tap("Cups")
        self.kiosks[TYPIST].tap("Answers")
        with self._timed("all cups weighed empty at two tables"):
            self._together(
                {FIRST: partial(self._weigh, FIRST, Pass.EMPTY, self._cups(0, 4)),
                 SECOND: partial(self._weigh, SECOND, Pass.EMPTY, self._cups(4, 8)[::-1])}
            )  # fmt: skip
        self._together({COACH: partial(start_and_stop, self.kiosks[COACH])})
        with self._timed("half of the cups handed in, a quarter of the sheets typed"):
            self._together(
                {FIRST: partial(self._weigh, FIRST, Pass.FILLED, self._cups(0, 2)),
                 SECOND: partial(self._weigh, SECOND, Pass.FILLED, self._cups(6, 8)[::-1]),
                 TYPIST: partial(self._type, TYPIST, self._cups(0, 2), "DD")}
            )  # fmt: skip
        with self._timed("the second table is cut off, all go on"):
            self._play_cut_off()
        with self._timed("it is back, and catches up"):
            self._catch_up()
        with self._timed("all sheets typed a second time"):
            self._together(
                {SECOND: partial(self._type, SECOND, [*self._cups(0, 6), self.teams], "CC"),
                 TYPIST: partial(self._type, TYPIST, self._cups(6, 8)[:-1], "DD")}
            )  # fmt: skip
        with self._timed("a cup decided, locked, released, final"):
            self._together({COACH: self._finish})
            self._together({number: partial(self._see_final, number) for number in range(4)})
        closed = [kiosk.close() for kiosk in self.kiosks]
        self.line.cut()
        return [*([] if all(closed) else ["a kiosk could not finish"]), *self._judged()]

    def _play_cut_off(self) -> None:
        self.line.cut()
        self.cut_off = (time.monotonic(), 0)

        def first() -> None:
            self._weigh(FIRST, Pass.FILLED, [*self._cups(2, 4), self._twice], [self._missed])

        def second() -> None:
            self._weigh(SECOND, Pass.FILLED, self._cups(4, 6)[::-1])
            self.kiosks[SECOND].back()
            self.kiosks[SECOND].tap("Answers")
            self._type(SECOND, self._cups(6, 8), "CC")

        def typist() -> None:
            self._type(TYPIST, [*self._cups(2, 6), self.teams], "DD")

        self._together({FIRST: first, SECOND: second, TYPIST: typist})

    def _catch_up(self) -> None:
        kiosk = self.kiosks[SECOND]
        self.waited = kiosk.not_stored
        self.line.mend()
        mended = time.monotonic()

        def back() -> None:
            kiosk.until(lambda: not kiosk.not_stored, "the end of the journal")
            self.caught_up = time.monotonic() - mended
            self.cut_off = (self.cut_off[0], time.monotonic())
            kiosk.rest(1.5)  # time for the others to see it
            kiosk.press(Person.MORE)  # and for a person to read what was refused

        self._together({SECOND: back})
        late = self.ledger.made(SECOND, *self.cut_off)
        others = [at for note in late for at in self.ledger.seen[note].values() if at > mended]
        self.seen_by_all = max(others, default=mended) - mended

    def _finish(self) -> None:
        kiosk = self.kiosks[COACH]
        kiosk.tap("Results")
        page = kiosk.desk.room.page
        assert isinstance(page, ResultsPage)

        def ready() -> bool:
            main = page.main()
            return main is not None and main.state == "ready"

        kiosk.until(ready, "the last answer")
        kiosk.press(Person.KEEP)  # what the cup is worth that was weighed and refused
        team = self._team(self._missed)
        kiosk.tap(team.label)
        kiosk.words(str(net(team)))
        kiosk.words("weighed at the second table")
        for _ in range(3):
            kiosk.until(ready, "the next step")
            kiosk.press(Person.GO_ON)
            kiosk.press(Person.YES)

    def _see_final(self, number: int) -> None:
        kiosk = self.kiosks[number]
        kiosk.until(lambda: kiosk.round.stage(DIVISION) is Stage.FINAL, "the final list")

    def _judged(self) -> Iterator[str]:
        rounds = [kiosk.round for kiosk in self.kiosks]
        lists = [results_now(state, DIVISION) for state in rounds]
        journals = [kiosk.journal for kiosk in self.kiosks]
        refused = sum(len(entries) for entries, _ in refusals(journals[SECOND]))
        self._print(refused)
        if refused != CONFLICTS:
            yield f"{refused} notes were refused in place of {CONFLICTS}"
        for number in range(1, 4):
            if lists[number] != lists[COACH]:
                yield f"the {NAMES[number]} has other results than the coach"
        told = [kiosk.told for kiosk in self.kiosks]
        yield from what_is_wrong(self.where, rounds[COACH].id, self.ledger, journals, told)
        for finding in check(self.where, lambda *_: True).findings:
            yield str(finding)

    def _print(self, refused: int) -> None:
        made = [len(self.ledger.made(number)) for number in range(4)]
        parts = ", ".join(f"{many} {name}" for name, many in zip(NAMES, made, strict=True))
        captured = len(self.ledger.made(SECOND, *self.cut_off))
        delays = sorted(self.ledger.delays(SECOND, *self.cut_off))
        print(f"\nnotes: {sum(made)} ({parts})")
        print(f"made while cut off: {captured}; waited at last {self.waited}; refused {refused}")
        print(f"stored {self.caught_up:.2f} s after the line was mended, seen everywhere "
              f"{self.seen_by_all:.2f} s after it")  # fmt: skip
        print(f"seen at another kiosk: median {median(delays):.2f} s, 99 of 100 within "
              f"{delays[len(delays) * 99 // 100]:.2f} s, worst {delays[-1]:.2f} s")  # fmt: skip
        for sentence in dict.fromkeys(self.kiosks[SECOND].told):
            print(f"told {self.kiosks[SECOND].told.count(sentence)} times: {sentence}")

    # What each does ---------------------------------------------------------------------------

    @property
    def _twice(self) -> int:
        """The cup that is weighed at both tables."""
        return self._cups(4, 6)[-1]

    @property
    def _missed(self) -> int:
        """The cup that is weighed at one table, and noted as not handed in at the other."""
        return self._cups(4, 6)[-2]

    def _cups(self, since: int, until: int) -> list[int]:
        """The numbers of the cups, and of the sheets, between these eighths of all."""
        return list(range(self.teams * since // 8 + 1, self.teams * until // 8 + 1))

    def _team(self, cup: int) -> Team:
        return next(team for team in self.kiosks[COACH].round.teams if team.cup == cup)

    def _weigh(
        self, number: int, pass_: Pass, cups: list[int], not_there: list[int] | None = None
    ) -> None:
        hands = CupHands(self.kiosks[number], pass_, self.seconds)
        for cup in cups:
            hands.weigh(cup)
        for cup in not_there or []:
            hands.note(cup, CupTurn.NOT_HANDED_IN)
        hands.leave()

    def _type(self, number: int, cups: list[int], by: str) -> None:
        type_sheets(self.kiosks[number], map(self._team, cups), by, self.seconds)

    def _together(self, hands: dict[int, Hands]) -> None:
        """Let hands work at some kiosks at once; the others follow until all are done."""
        ended = [Event() for _ in hands]

        def work(act: Hands, end: Event) -> None:
            try:
                act()
            finally:
                end.set()

        def at(number: int) -> None:
            kiosk = self.kiosks[number]
            if number in hands:
                work(hands[number], ended[list(hands).index(number)])
            kiosk.follow(lambda: all(end.is_set() for end in ended))

        with ThreadPoolExecutor(len(self.kiosks)) as threads:
            list(threads.map(at, range(len(self.kiosks))))

    @contextmanager
    def _timed(self, what: str) -> Iterator[None]:
        began = time.monotonic()
        yield
        print(f"{what:58}{time.monotonic() - began:7.1f} s", flush=True)
