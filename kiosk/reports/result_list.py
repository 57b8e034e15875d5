"""The list of a division: places, seven scores and the total, on as many pages as it needs.

It says nothing of how sure a place is: that is for the coach alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from kiosk.reports.fonts import width
from kiosk.reports.page import LEADING, MARGIN, Page, numbered
from kiosk.reports.results import Correction, ResultList, ResultRow, clock
from kiosk.settings import Paper
from kiosk.texts import say
from kiosk.texts.numbers import number

TITLE, PLAIN, SMALL, MARK = 22.0, 11.0, 9.0, 6.5
MARKS = 9.0  # for the numbers of corrections, between two columns
INDENT = 17.0
LINE = 19.0
NAME_AT, SCORES_AT = 42.0, 0.34  # points; part of the width between the margins
PLACE_AT, DISC = 18.0, 7.5
BELOW = 66.0  # what stands below the last team: best, median, legend
SIGNED = 50.0


def result_list(results: ResultList, paper: Paper) -> bytes:
    """A PDF; each page repeats the heading and says whether the list is final."""
    return numbered(lambda pages: _Written(results, paper, pages).page)


class _Written:
    """The list on ``page``; ``y`` is where the next line goes."""

    def __init__(self, results: ResultList, paper: Paper, pages: int) -> None:
        self.results = results
        foot = say("paper.results.foot", name=results.round_name, division=results.division,
                   state=results.state, at=clock(results.at))  # fmt: skip
        across = say("paper.simulated") if results.simulated else ""
        title = say("paper.results.head", name=results.round_name)
        self.page = Page(paper, title=title, across=across, foot=foot, of=pages)
        wide = self.page.right - MARGIN
        self.column = (1 - SCORES_AT) * wide / (len(results.tasks) + 1)
        self.y = self._heading()
        self._rows()
        self._summary()
        self._corrections()
        self._signature()

    def _heading(self) -> float:
        """The baseline of the first row."""
        page, results = self.page, self.results
        y = page.top - TITLE
        state = results.state
        room = page.right - MARGIN - width(state, TITLE, bold=True) - TITLE
        page.name(MARGIN, y, results.round_name, TITLE, room, bold=True)
        page.words(page.right, y, state, TITLE, bold=True, at=1)
        y -= 2 * PLAIN
        until = self._until()
        page.words(page.right, y, until, PLAIN, at=1)
        where = f"{results.division}, {results.place}" if results.place else results.division
        page.name(MARGIN, y, where, PLAIN, page.right - MARGIN - width(until, PLAIN) - PLAIN)
        return self._heads(y - 2.4 * PLAIN)

    def _until(self) -> str:
        at = say("paper.results.as_of", at=clock(self.results.at))
        until = self.results.protests_until
        if self.results.final or until is None:
            return at
        protests = say("paper.results.protests", time=f"{until:%H:%M}")
        return f"{at}. {protests}"

    def _heads(self, y: float) -> float:
        page, results = self.page, self.results
        page.words(MARGIN + NAME_AT, y, say("paper.results.team"), SMALL)
        for place, head in enumerate(results.tasks):
            marks = self._marks(None, place)
            page.words(self._end(place), y, head, page.room(head, SMALL, self.column - 5), at=1)
            page.words(self._end(place) + 1, y + 3, marks, page.room(marks, MARK, MARKS))
        page.words(page.right, y, self._most(), page.room(self._most(), SMALL, self.column), at=1)
        page.stroke((MARGIN, y - 5), (page.right, y - 5), thick=1.2)
        return y - 5 - LINE + 5

    def _most(self) -> str:
        return say("paper.results.of", points=100 * len(self.results.tasks))

    def _end(self, place: int) -> float:
        """Where a column of scores ends; the total ends at the margin."""
        return self.page.right - (len(self.results.tasks) - place) * self.column

    def _room(self, high: float, *, heads: bool = False) -> None:
        """Turn the page if there is not so much room below."""
        if self.y - high >= MARGIN:
            return
        self.page.turn()
        self.y = self._heading() if heads else self.page.top - PLAIN

    def _rows(self) -> None:
        page, rows = self.page, self.results.rows
        for turn, row in enumerate(rows, start=1):
            # The last team takes along what stands below it.
            self._room(BELOW if turn == len(rows) else 0, heads=True)
            self._row(row)
            page.stroke((MARGIN, self.y - 6), (page.right, self.y - 6), thick=0.25)
            self.y -= LINE

    def _row(self, row: ResultRow) -> None:
        page, y = self.page, self.y
        self._place(row)
        room = SCORES_AT * (page.right - MARGIN) - NAME_AT
        page.name(MARGIN + NAME_AT, y, row.team, PLAIN, room)
        self._scores(row.scores, team=row.team)
        total = number(row.total, self.results.decimals)
        page.words(
            page.right,
            y,
            total,
            page.room(total, PLAIN, self.column - 9, bold=True),
            bold=True,
            at=1,
        )

    def _place(self, row: ResultRow) -> None:
        """White on a black disc where there is a medal."""
        page, y, medal = self.page, self.y, row.place <= self.results.medals
        x = MARGIN + PLACE_AT
        if medal:
            page.disc(x - 4, y + 4, DISC)
            page.words(x - 4, y, f"{row.place}", PLAIN, bold=True, at=0.5, white=True)
        else:
            page.words(x, y, f"{row.place}", PLAIN, bold=True, at=1)
        if row.shared:
            page.words(x + 7, y, "=", PLAIN, bold=True)

    def _scores(self, scores: Sequence[Decimal | None], *, team: str = "") -> None:
        for place, points in enumerate(scores):
            text = "\u2013" if points is None else number(points, self.results.decimals)
            size = self.page.room(text, PLAIN, self.column - MARKS)
            self.page.words(self._end(place), self.y, text, size, at=1)
            if marks := self._marks(team, place) if team else "":
                size = self.page.room(marks, MARK, MARKS)
                self.page.words(self._end(place) + 1, self.y + 4, marks, size)

    def _marks(self, team: str | None, task: int) -> str:
        """The numbers of the corrections of a score."""
        corrections = enumerate(self.results.corrections, start=1)
        return " ".join(
            f"{place}" for place, each in corrections if (each.team, each.task) == (team, task)
        )

    def _summary(self) -> None:
        page, results = self.page, self.results
        if results.rows:
            for key, values in (("best", results.best), ("median", results.median)):
                page.words(MARGIN + NAME_AT, self.y, say(f"paper.results.{key}"), SMALL)
                self._scores(values)
                self.y -= LINE
        self.y -= SMALL / 2
        if results.medals:
            page.disc(MARGIN + 5, self.y + 3, 5)
            page.words(MARGIN + 14, self.y, say("paper.results.medal"), SMALL)
        page.words(MARGIN + 70, self.y, say("paper.results.shared"), SMALL)
        page.words(MARGIN + 160, self.y, say("paper.results.missing"), SMALL)
        self.y -= 2 * LINE

    def _corrections(self) -> None:
        page, corrections = self.page, self.results.corrections
        if not corrections and not self.results.left:
            return
        self._room(3 * PLAIN)
        page.words(MARGIN, self.y, say("paper.results.corrections"), PLAIN, bold=True)
        self.y -= 1.5 * PLAIN
        for place, each in enumerate(corrections, start=1):
            text = self._correction(each)
            self._room((len(page.lines(text, PLAIN, indent=INDENT)) - 1) * LEADING * PLAIN)
            page.words(MARGIN, self.y, f"{place}", PLAIN, bold=True)
            self.y = page.prose(self.y, text, PLAIN, indent=INDENT) - 2
        for text in self.results.left:
            self._room((len(page.lines(text, PLAIN, indent=INDENT)) - 1) * LEADING * PLAIN)
            self.y = page.prose(self.y, text, PLAIN, indent=INDENT) - 2
        self.y -= PLAIN

    def _correction(self, each: Correction) -> str:
        task = self.results.tasks[each.task]
        if each.team is None:
            return say("paper.results.correction_of_all", what=task, reason=each.reason)
        before, after = (
            "\u2013" if points is None else number(points, self.results.decimals)
            for points in (each.before, each.after)
        )
        return say("paper.results.correction", what=f"{each.team}, {task}", before=before,
                   after=after, reason=each.reason)  # fmt: skip

    def _signature(self) -> None:
        page = self.page
        self._room(SIGNED)
        y = self.y - SIGNED + 2 * PLAIN
        page.stroke((MARGIN, y), (page.width / 2, y))
        page.words(MARGIN, y - PLAIN, say("paper.results.signature"), SMALL)
