"""Papers of a round to print; every number is invented."""

from __future__ import annotations

from datetime import UTC, datetime
from decimal import Decimal

from kiosk.estimating.score import score
from kiosk.reports.answer_sheet import AnswerSheet, Asked
from kiosk.reports.day_points import DayList
from kiosk.reports.practice import TeamAnswer
from kiosk.reports.results import Correction, ResultList, ResultRow
from kiosk.reports.sitting_list import SittingList, SittingTeam
from kiosk.reports.team_page import TeamPage
from kiosk.reports.things import Thing
from kiosk.settings import Rules

AT = datetime(2026, 3, 2, 14, 15, tzinfo=UTC)
PLACE = "Larch Hill Middle School"
TASKS = ("cup", "jar 1", "jar 2", "jar 3", "box 1", "box 2", "box 3")
ORDER = tuple(Asked(thing=Thing.JAR, label=label) for label in "KCT") + tuple(
    Asked(thing=Thing.BOX, label=label) for label in "231"
)


def sheet(
    team: str = "Wren",
    number: int = 7,
    *,
    rules: Rules | None = None,
    minutes: int = 30,
    cup: str = "24",
    asked: tuple[Asked, ...] = ORDER,
    simulated: bool = False,
) -> AnswerSheet:
    return AnswerSheet(
        round_name="Round 2",
        place=PLACE,
        division="Grades 4 to 6",
        sitting=2,
        team=team,
        number=number,
        cup=cup,
        asked=asked,
        rules=rules or Rules(),
        minutes=minutes,
        simulated=simulated,
    )


def day(
    *,
    round_name: str = "Round 2",
    jars: str = "CKT",
    boxes: str = "123",
    materials: tuple[str, ...] = ("rice", "pasta", "beads"),
) -> DayList:
    return DayList(
        round_name=round_name,
        place=PLACE,
        day="2026-03-02",
        cups=22,
        jars=tuple(jars),
        boxes=tuple(boxes),
        materials=materials,
    )


def results(
    count: int = 20,
    *,
    team: str = "Goldcrest",
    final: bool = False,
    corrections: tuple[Correction, ...] = (),
    decimals: int = 1,
    simulated: bool = False,
) -> ResultList:
    rows = tuple(
        ResultRow(
            place=place,
            shared=place == 3,
            team=f"{team} {place}",
            scores=(Decimal("98.1"), None, Decimal(100), *[Decimal("88.0")] * 4),
            total=Decimal("638.1") - place,
        )
        for place in (3 if place == 4 else place for place in range(1, count + 1))
    )
    return ResultList(
        round_name="Round 2",
        place=PLACE,
        division="Grades 4 to 6",
        final=final,
        at=AT,
        protests_until=AT.replace(minute=35),
        tasks=TASKS,
        rows=rows,
        best=(Decimal("99.9"),) * 7,
        median=(Decimal("81.5"),) * 7,
        medals=3,
        corrections=corrections,
        decimals=decimals,
        simulated=simulated,
    )


ANSWERS = (
    (Thing.CUP, "24", "97.3", "100"),
    (Thing.JAR, "K", "412", "412"),
    (Thing.JAR, "C", "2000", "3512"),
    (Thing.JAR, "T", "19000", "15234"),
    (Thing.BOX, "1", "2600", "2484"),
    (Thing.BOX, "2", "3999", "1200"),
    (Thing.BOX, "3", None, "512"),
)


def team_page(
    team: str = "Wren",
    *,
    rules: Rules | None = None,
    answers: tuple[tuple[Thing, str, str | None, str], ...] = ANSWERS,
    simulated: bool = False,
) -> TeamPage:
    rules = rules or Rules()
    made = tuple(
        TeamAnswer(
            thing=thing,
            label=label,
            answer=Decimal(said) if said else None,
            actual=Decimal(real),
            points=score(Decimal(real), Decimal(said or 0), rules).points,
        )
        for thing, label, said, real in answers
    )
    return TeamPage(
        round_name="Round 2",
        place=PLACE,
        division="Grades 4 to 6",
        team=team,
        standing=3,
        shared=True,
        teams=20,
        total=sum((answer.points for answer in made), Decimal(0)),
        answers=made,
        rules=rules,
        final=True,
        simulated=simulated,
    )


def sitting(count: int = 20, *, team: str = "Wren", simulated: bool = False) -> SittingList:
    """A sitting; its second team has more time, its third no cup."""
    teams = tuple(
        SittingTeam(
            number=number,
            team=f"{team} {number}",
            cup="" if number == 3 else f"{number + 20}",
            minutes=40 if number == 2 else 30,
        )
        for number in range(1, count + 1)
    )
    return SittingList(
        round_name="Round 2", place=PLACE, sitting=2, minutes=30, teams=teams, simulated=simulated
    )
