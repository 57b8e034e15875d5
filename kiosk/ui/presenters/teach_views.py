"""Presenters of teaching: what the lines mean as far as it is known, and what to do next."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from itertools import groupby
from math import floor

from drivers.errors import Reason
from drivers.learning.findings import Learned, Refusal
from drivers.learning.places import Part
from drivers.line_shape import LineShape
from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.texts.numbers import number, percent, together
from kiosk.ui.lesson import Lesson, Stage
from kiosk.ui.presenters.views import ButtonView, PanView, SheetView, button
from kiosk.ui.raw_tail import RawRow

HIDDEN = "hidden"  # the kind of a span of bytes that do not print
_STEPS = {
    Stage.EMPTY: 1,
    Stage.PUT_ON: 2,
    Stage.TAKE_OFF: 2,
    Stage.REFUSED: 2,
    Stage.NAMING: 3,
    Stage.KEPT: 3,
}
_NOTHING_READ = (Refusal.SILENT, Refusal.NO_LINES)
NOW_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class LineSpan:
    """Characters ``start`` up to ``end`` of a line, and what they are: a Part, or HIDDEN."""

    kind: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LineView:
    """A line as it came."""

    text: str
    spans: tuple[LineSpan, ...] = ()
    ago: str = ""
    newest: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingView:
    """One finding: a Part, its name, its own characters; ``raw`` if these came so in the lines."""

    kind: str
    name: str
    text: str = ""
    raw: bool = True
    found: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class TeachView(SheetView):
    """The sheet of teaching; findings or, in their place, what is amiss."""

    screen: str = "teach"
    lines: tuple[LineView, ...] = ()
    findings: tuple[FindingView, ...] = ()
    step_found: str = ""
    progress: str = ""
    note: str = ""


def teach_view(lesson: Lesson, name: str) -> TeachView:
    """The sheet; ``name`` is the one that the balance gets."""
    stage = lesson.stage
    step = 1 if lesson.refusal in _NOTHING_READ else _STEPS[stage]
    note = _note(lesson)
    main, second = _buttons(lesson, name)
    return TeachView(
        title=_title(lesson, name),
        step=step,
        steps=3,
        step_text=say(f"teach.step.{step}"),
        lines=_lines(lesson),
        findings=() if note else _findings(lesson),
        step_found=_step_found(lesson.learned),
        progress=_progress(lesson),
        note=note,
        main=main,
        second=second,
        home=button(say("button.back"), Person.HOME, sign="back"),
        beside_home=_start_over(lesson),
    )


def teach_pan(lesson: Lesson) -> PanView:
    """What is read, with the question whether it is right."""
    reading = lesson.reading
    if lesson.lost is not None:
        return PanView(
            phase="unplugged", word=say("pan.unplugged"), hidden_text=say("pan.no_scale")
        )
    if lesson.learned is None or reading is None:
        return PanView(phase="moving", word=say("teach.pan.not_yet"))
    if reading.grams is None or reading.value is None:
        return PanView(phase="no mass", word=say("pan.no_mass"), hidden_text=say("pan.no_number"))
    return PanView(
        phase="stable" if lesson.still else "moving",
        word=say("pan.stable" if lesson.still else "pan.moving"),
        label=say("teach.pan.we_read"),
        number=number(reading.value),
        unit=reading.unit or "",
        line1=say("teach.pan.right"),
    )


def _title(lesson: Lesson, name: str) -> str:
    stage, (loads, goal) = lesson.stage, lesson.loads
    if lesson.lost is not None:
        return say("teach.lost.title")
    match stage:
        case Stage.REFUSED:
            assert lesson.refusal is not None
            return say(f"teach.refused.{lesson.refusal.name.lower()}.title")
        case Stage.KEPT | Stage.NAMING:
            return say(f"teach.title.{stage.name.lower()}", name=together(name))
        case Stage.PUT_ON if 0 < loads < goal:
            return say("teach.title.once_more")
    return say(f"teach.title.{stage.name.lower()}")


def _note(lesson: Lesson) -> str:
    if lesson.lost is not None:
        missing = lesson.lost in (Reason.MISSING, Reason.UNPLUGGED)
        return say("teach.lost.plug") if missing else say("teach.lost.why", why=lesson.lost)
    if lesson.refusal is not None:
        return say(f"teach.refused.{lesson.refusal.name.lower()}")
    if lesson.problem:
        return lesson.problem
    if lesson.advice is not None:
        return say(f"teach.advice.{lesson.advice.name.lower()}")
    return ""


def _buttons(lesson: Lesson, name: str) -> tuple[ButtonView, ButtonView | None]:
    """The main button and the second one."""
    if lesson.lost is not None:
        return _waiting("teach.wait.plug"), None
    match lesson.stage:
        case Stage.EMPTY:
            return _waiting("teach.wait.empty"), None
        case Stage.REFUSED:
            return _after_refusal(lesson.refusal), None
        case Stage.NAMING:
            keep = button(say("teach.keep", name=together(name)), Person.KEEP, sign="tick")
            return keep, button(say("teach.more"), Person.MORE)
        case Stage.KEPT:
            return button(say("teach.use"), Person.HOME, sign="tick"), None
    if lesson.learned is not None:
        return _waiting("teach.again"), button(say("teach.right"), Person.GO_ON)
    return _waiting("teach.wait.off" if lesson.stage is Stage.TAKE_OFF else "teach.wait.on"), None


def _waiting(key: str) -> ButtonView:
    return button(say(key), sign="wait", state="waiting")


def _after_refusal(refusal: Refusal | None) -> ButtonView:
    if refusal is Refusal.SILENT:  # it goes on by itself
        return _waiting("teach.wait.empty")
    if refusal is Refusal.NO_LINES:
        return button(say("teach.start_over"), Person.NO, sign="again")
    return button(say("teach.again"), Person.MORE, sign="again")


def _start_over(lesson: Lesson) -> ButtonView | None:
    """Beside Back, unless it is the main button."""
    if lesson.stage is Stage.KEPT or lesson.lost is not None:
        return None
    if lesson.refusal is Refusal.NO_LINES:
        return None
    return button(say("teach.start_over"), Person.NO, sign="undo")


# The lines -----------------------------------------------------------------------------------


def _lines(lesson: Lesson) -> tuple[LineView, ...]:
    rows = lesson.rows()
    return tuple(_line(row, lesson.now, newest=row is rows[-1]) for row in rows)


def _line(row: RawRow, now: float, *, newest: bool) -> LineView:
    fresh = newest and now - row.at < NOW_S
    seconds = max(1, floor(now) - floor(row.at))
    return LineView(
        text=row.text,
        spans=tuple(_spans(row)),
        ago=say("teach.now") if fresh else say("teach.ago", seconds=seconds),
        newest=fresh,
    )


def _spans(row: RawRow) -> list[LineSpan]:
    kinds = [
        HIDDEN if hidden else part.value if part else ""
        for hidden, part in zip(row.hidden, row.parts, strict=True)
    ]
    spans, at = [], 0
    for kind, group in groupby(kinds):
        end = at + sum(1 for _ in group)
        if kind == HIDDEN:  # each byte by itself
            spans += [LineSpan(kind=kind, start=byte, end=byte + 2) for byte in range(at, end, 2)]
        elif kind:
            spans.append(LineSpan(kind=kind, start=at, end=end))
        at = end
    return spans


# The findings --------------------------------------------------------------------------------


def _findings(lesson: Lesson) -> tuple[FindingView, ...]:
    shape = lesson.learned.shape if lesson.learned else None
    reading = lesson.reading
    value = number(reading.value) if reading and reading.value is not None else ""
    unit = shape.unit if shape else ""
    still, moving = (_mark(shape, part) for part in (Part.STILL, Part.MOVING))
    return (
        _finding(Part.NUMBER, value, known=shape is not None),
        _finding(Part.UNIT, unit, known=shape is not None),
        _finding(Part.STILL, still, known=shape is not None),
        _finding(Part.MOVING, moving, known=shape is not None),
    )


def _finding(part: Part, text: str, *, known: bool) -> FindingView:
    name = say(f"teach.part.{part.value}")
    if text or not known:
        return FindingView(kind=part.value, name=name, text=text, found=bool(text))
    return FindingView(kind=part.value, name=name, text=say("teach.no_mark"), raw=False)


def _mark(shape: LineShape | None, part: Part) -> str:
    """The characters that say so; empty if nothing does."""
    if shape is None:
        return ""
    mark = shape.stable if part is Part.STILL else shape.moving
    if mark is not None:
        return "[ ]" if mark.text == "[" else mark.text
    if part is Part.STILL and shape.unit_lacks_while_moving and shape.moving is None:
        return shape.unit
    return ""


def _step_found(learned: Learned | None) -> str:
    if learned is None or learned.shape.readability is None:
        return ""
    step = together(f"{number(learned.shape.readability)} {learned.shape.unit}")
    sure = percent(Decimal(str(learned.confidence)) * 100, 0)
    return say("teach.step_found", step=step, sure=together(sure))


def _progress(lesson: Lesson) -> str:
    loads, goal = lesson.loads
    shown = min(loads + (lesson.stage is Stage.TAKE_OFF), goal)
    return say("teach.progress", number=max(shown, 1), goal=goal) if lesson.learned else ""
