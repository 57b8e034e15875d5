"""The sheet on which a team writes what it guesses: one page a team, one box a digit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kiosk.reports.fonts import width
from kiosk.reports.page import MARGIN, Page
from kiosk.reports.things import Thing, picture
from kiosk.settings import Over, Paper, Rules, Task
from kiosk.texts import say
from kiosk.texts.numbers import number

LARGE, MIDDLE, PLAIN, SMALL = 26.0, 16.0, 11.0, 8.5
BOX, GAP, GROUP = 30.0, 3.0, 8.0  # a digit of a hurried hand; digits by threes
LINE = 56.0  # from one answer to the next, where there is room
FOOT = 70.0  # for the signature
CUP = 44.0
NAME_AT, UNIT_ROOM = 38.0, 52.0
TICK = 10.0
NAME_PART = 0.7  # of the width, for the name of the team


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A jar or box by what stands on it, "K" or "2"."""

    thing: Thing
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerSheet:
    """What one team is asked; ``asked`` in the shuffled order of this team.

    ``cup`` is the number of its cup, "" for none yet; ``minutes`` is the time that this team has.
    ``code`` opens its answers at the kiosk, "" where teams do not type there.
    """

    round_name: str
    place: str
    division: str
    sitting: int
    team: str
    number: int
    cup: str
    asked: tuple[Asked, ...]
    rules: Rules
    minutes: int
    simulated: bool
    code: str = ""


def answer_sheets(sheets: Sequence[AnswerSheet], paper: Paper) -> bytes:
    """A PDF with one page a team. ValueError without any sheet."""
    if not sheets:
        raise ValueError("there is no sheet to print")
    across = say("paper.simulated") if any(sheet.simulated for sheet in sheets) else ""
    page = Page(paper, title=say("paper.answers.head", name=sheets[0].round_name), across=across)
    for place, sheet in enumerate(sheets):
        if place:
            page.turn()
        _sheet(page, sheet)
    return page.finish()


def _sheet(page: Page, sheet: AnswerSheet) -> None:
    y = _head(page, sheet)
    page.words(MARGIN, y, say("paper.answers.rules"), PLAIN, bold=True)
    y -= 1.5 * PLAIN
    for place, sentence in enumerate(_rules(sheet), start=1):
        page.words(MARGIN, y, f"{place}", PLAIN, bold=True)
        y = page.prose(y, sentence, PLAIN, indent=1.4 * PLAIN) - 2
    y -= 0.5 * PLAIN + CUP
    _cup(page, sheet, y)
    y -= 3.2 * PLAIN
    page.words(MARGIN, y, say("paper.answers.write"), PLAIN, bold=True)
    _worths(page, sheet.rules, y)
    y -= BOX + 8
    line = min(LINE, (y - MARGIN - FOOT) / max(1, len(sheet.asked) - 1))
    for asked in sheet.asked:
        _answer(page, asked, sheet.rules, y)
        y -= line
    _foot(page)


def _head(page: Page, sheet: AnswerSheet) -> float:
    """Who, and which sheet; the baseline below."""
    y, wide = page.top - LARGE, page.right - MARGIN
    page.name(MARGIN, y, sheet.team, LARGE, NAME_PART * wide, bold=True)
    label = say("paper.answers.number", number=sheet.number)
    page.words(page.right, y, label, LARGE, bold=True, at=1)
    y -= 2 * PLAIN
    sitting = say("paper.answers.sitting", sitting=sheet.sitting)
    if sheet.code:
        sitting = f"{sitting}. {say('paper.answers.code', code=sheet.code)}"
    page.words(page.right, y, sitting, PLAIN, at=1)
    where = ", ".join(part for part in (sheet.round_name, sheet.division, sheet.place) if part)
    page.name(MARGIN, y, where, PLAIN, NAME_PART * wide)
    page.stroke((MARGIN, y - PLAIN), (page.right, y - PLAIN), thick=1.5)
    return y - 2.8 * PLAIN


def _rules(sheet: AnswerSheet) -> Iterator[str]:
    rules = sheet.rules
    yield say("paper.answers.time", minutes=sheet.minutes)
    mirrored = rules.over is Over.MIRRORED
    yield say("paper.answers.over_mirrored" if mirrored else "paper.answers.over_zero")
    count, volume = number(rules.count_limit), number(rules.volume_limit_cm3)
    yield say("paper.answers.limits", count=count, volume=volume)
    yield say("paper.answers.no_help")
    if rules.tie_break:
        yield say("paper.answers.tie_break", tasks=", ".join(map(_task, rules.tie_break)))
    else:
        yield say("paper.answers.shared")


def _task(task: Task) -> str:
    return say(f"paper.task.{task.replace(' ', '_')}")


def _cup(page: Page, sheet: AnswerSheet, y: float) -> None:
    """A cup with its number, or with room for it."""
    picture(page, Thing.CUP, MARGIN + 3, y, CUP)
    size = page.room(sheet.cup, 22, 0.6 * CUP, bold=True)
    page.words(MARGIN + 3 + CUP / 2, y + 0.44 * CUP - size / 3, sheet.cup, size, bold=True, at=0.5)
    x = MARGIN + CUP + 18
    target = number(sheet.rules.cup_target_g)
    what = say("paper.answers.cup", thing=Thing.CUP.named(sheet.cup), grams=target)
    page.words(x, y + 0.6 * CUP, what, page.room(what, MIDDLE, page.right - x), bold=True)
    once = say("paper.answers.cup_once")
    if not sheet.cup:
        once = f"{say('paper.answers.cup_number')} {once}"
    page.words(x, y + 0.15 * CUP, once, page.room(once, PLAIN, page.right - x))


def _digits(thing: Thing, rules: Rules) -> int:
    """As many as the largest number that any such thing may have; so the boxes tell nothing."""
    return len(f"{rules.count_limit if thing is Thing.JAR else rules.volume_limit_cm3}")


def _left(page: Page, place: int) -> float:
    """Where the box begins of the digit that is worth ten to the power of ``place``."""
    return page.right - UNIT_ROOM - (place + 1) * (BOX + GAP) - place // 3 * GROUP


def _worths(page: Page, rules: Rules, y: float) -> None:
    """What a digit is worth, above the boxes."""
    for place in range(max(_digits(thing, rules) for thing in (Thing.JAR, Thing.BOX))):
        worth = number(10**place)
        size = page.room(worth, SMALL, BOX)
        page.words(_left(page, place) + BOX / 2, y, worth, size, at=0.5)


def _answer(page: Page, asked: Asked, rules: Rules, y: float) -> None:
    picture(page, asked.thing, MARGIN, y + 2, BOX - 4)
    boxes = _digits(asked.thing, rules)
    name, x = asked.thing.named(asked.label), MARGIN + NAME_AT
    page.name(x, y + BOX / 3, name, MIDDLE, _left(page, boxes - 1) - x - GROUP, bold=True)
    for place in range(boxes):
        page.box(_left(page, place), y, BOX, BOX)
    page.words(page.right - UNIT_ROOM + GAP, y + BOX / 3, asked.thing.unit, 1.2 * PLAIN)


def _foot(page: Page) -> None:
    """Who signs, when it came in, and what the table did with it."""
    y, right = MARGIN + 2 * PLAIN, page.right
    middle = MARGIN + 0.64 * (right - MARGIN)
    page.stroke((MARGIN, y), (middle - BOX, y))
    page.words(MARGIN, y - PLAIN, say("paper.answers.signature"), SMALL)
    page.stroke((middle, y), (right, y))
    page.words(middle, y - PLAIN, say("paper.answers.time_in"), SMALL)
    x = right
    for text in (say("paper.answers.typed_again"), say("paper.answers.typed")):
        page.words(x, MARGIN - PLAIN, text, SMALL, at=1)
        x -= width(text, SMALL) + 1.5 * TICK
        page.box(x, MARGIN - PLAIN - 2, TICK, TICK)
        x -= TICK
