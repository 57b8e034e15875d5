"""What a screen shows, as frozen values: made by presenters, bound by screens, compared for free.

All texts arrive finished; a screen adds no word and no number of its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from string import ascii_uppercase
from typing import Any

from kiosk.procedures.procedure import Person, PersonEvent


@dataclass(frozen=True, slots=True, kw_only=True)
class ButtonView:
    """A button: its words, its sign, whether it can be pressed, and what pressing it says."""

    text: str
    sign: str = ""
    state: str = "ready"  # ready, waiting, off
    says: PersonEvent | None = None


def button(
    text: str,
    person: Person | None = None,
    value: Any = None,
    *,
    sign: str = "",
    state: str = "ready",
) -> ButtonView:
    """A button that says `person` with `value`; without a person it can only wait or be off."""
    says = None if person is None else PersonEvent(person, value)
    return ButtonView(text=text, sign=sign, state=state, says=says)


@dataclass(frozen=True, slots=True, kw_only=True)
class PanView:
    """The pan at the left: see the widget of that name."""

    phase: str = "empty"
    word: str = ""
    label: str = ""
    number: str = ""
    unit: str = ""
    unit_below: bool = False
    line1: str = ""
    line2: str = ""
    progress: float = 0.0
    simulated: bool = False
    hidden_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StripView:
    """The status strip at the top."""

    connected: bool = False
    words: tuple[str, ...] = ()
    simulated: bool = False
    typed: bool = False
    plate: str = ""
    lock: str = ""
    lock_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ContainerView:
    """A container in the pan's place: its drawing, its volume so far, and the limit.

    ``sizes`` are cm, 0 for none yet; ``share`` and the bounds' are shares of the limit.
    """

    name: str
    shape: str
    sizes: tuple[float, ...]
    states: tuple[str, ...]
    tags: tuple[str, ...]
    number: str = ""
    unit: str = ""
    between: str = ""
    zero: str = ""
    limit: str = ""
    share: float = 0.0
    low_share: float = 0.0
    high_share: float = 0.0
    covered: bool = False
    covered_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetView:
    """What every screen has: the trail, the instruction, the buttons.

    A ``container`` stands in the pan's place, where nothing is weighed.
    """

    screen: str
    title: str = ""
    body: str = ""
    step: int = 0
    steps: int = 0
    step_text: str = ""
    main: ButtonView | None = None
    second: ButtonView | None = None
    home: ButtonView | None = None
    beside_home: ButtonView | None = None
    container: ContainerView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRow:
    """An edge with the sizes at its places; ``typing`` is None where nothing can be typed."""

    edge: str
    name: str
    state: str = "to come"  # to come, now, done
    cells: tuple[str, ...] = ()
    typing: str | None = None
    note: str = ""
    mean: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureView(SheetView):
    """The edges of a container, a keypad, and what to keep in mind or what is wrong."""

    screen: str = "measure"
    rows: tuple[EdgeRow, ...] = ()
    hint: str = ""
    warns: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CupMark:
    """A cup among others: its number, whose it is, how it looks (out, yours, chosen)."""

    number: int
    name: str = ""
    look: str = "out"


@dataclass(frozen=True, slots=True, kw_only=True)
class HomeView(SheetView):
    """The table."""

    screen: str = "home"
    goal_text: str = ""
    cups: tuple[CupMark, ...] = ()
    cups_title: str = ""
    cups_hint: str = ""
    how: tuple[str, ...] = ()
    keys_text: str = ""
    can_throw: bool = False
    can_guess_jar: bool = False
    can_guess_box: bool = False
    unlocked: bool = False
    lock_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of several things to choose."""

    text: str
    value: Any
    cup_number: int | None = None
    chosen: bool = False
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoicesView(SheetView):
    """Cards to choose from: pairs, materials."""

    choices: tuple[Choice, ...] = ()
    corner: str = ""
    note: str = ""
    legend: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TraceView:
    """What the pan showed in the last seconds: points from 0 to 1 across (newest at 1) and up.

    `stable` is where across the present rest began, None while there is none.
    """

    points: tuple[tuple[float, float], ...] = ()
    top: str = ""
    bottom: str = ""
    stable: float | None = None
    stable_text: str = ""
    ago_text: str = ""
    now_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class GuessView(SheetView):
    """One number to type; the container with its letter stands where the pan is otherwise."""

    screen: str = "guess"
    kind: str = "jar"
    letter: str = ""
    label: str = ""
    typed: str = ""
    unit: str = ""
    hint: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerMark:
    """One pair's guess: whole points as shown, and the share of the real number."""

    name: str
    points: str
    share: float
    side: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerView(SheetView):
    """The real number and all guesses on one tent; each side highest first."""

    screen: str = "answer"
    actual: str = ""
    corner: str = ""
    under: tuple[AnswerMark, ...] = ()
    over: tuple[AnswerMark, ...] = ()
    band: float = 0.0
    left: str = ""
    peak: str = ""
    right: str = ""
    sums: tuple[str, str, str] | tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeView(SheetView):
    """The coach's code: how many of its digits are typed, never which."""

    screen: str = "code"
    typed: int = 0
    digits: int = 6
    typed_text: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleView(SheetView):
    """The scale in use: each fact with its name, and what there is to say."""

    screen: str = "scale"
    described: str = ""
    facts: tuple[tuple[str, str], ...] = ()
    trace: TraceView | None = None
    lines: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckRowView:
    """One known mass or one test; `verdict` is fine, not fine, cannot tell, or "" for none yet."""

    name: str
    note: str = ""
    shown: str = ""
    off: str = ""
    limit: str = ""
    verdict: str = ""
    verdict_text: str = ""
    now: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckView(SheetView):
    """A weighing of the check, with the rows around it and the live trace."""

    screen: str = "check"
    facts: tuple[tuple[str, str], ...] = ()
    plug: str = ""
    trace: TraceView = TraceView()
    head: tuple[str, ...] = ()
    rows: tuple[CheckRowView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedView(SheetView):
    """What the check found, and what it means."""

    screen: str = "checked"
    head: tuple[str, ...] = ()
    rows: tuple[CheckRowView, ...] = ()
    lines: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PutOnView(SheetView):
    """One thing to put on the pan, or to take off it, with its picture."""

    screen: str = "put on"
    art: str = "none"
    arrows: str = "none"
    cup_number: int | None = None
    cup_label: str = ""
    sign: str = ""  # ring, eye
    sign_text: str = ""
    side_text: str = ""
    big: bool = False  # the cup itself, large, instead of scale and cup


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeCupView(SheetView):
    """The number to remember, the goal, the cups that are out."""

    screen: str = "take cup"
    number: int = 0
    goal_label: str = ""
    goal: str = ""
    goal_unit: str = ""
    goal_note: str = ""
    cups: tuple[CupMark, ...] = ()
    cups_title: str = ""
    free_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HandInView(SheetView):
    """The cups that are out, one of them chosen."""

    screen: str = "hand in"
    cups: tuple[CupMark, ...] = ()
    chosen: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreView(SheetView):
    """One scored cup."""

    screen: str = "score"
    sum_text: str = ""
    points: str = ""
    points_of: str = ""
    error: str = ""
    side: str = "on target"  # under, over, on target
    side_text: str = ""
    true_value: float = 100.0
    estimate: float = 0.0
    left: str = ""
    peak: str = ""
    right: str = ""
    yours: str = ""
    errors: tuple[float, ...] = ()
    tries_text: str = ""
    cup_key: str = ""  # changes with each scored cup, so that the marker climbs once


@dataclass(frozen=True, slots=True, kw_only=True)
class LeaveView(SheetView):
    """The question whether to leave this for now."""

    screen: str = "leave"
    number: int | None = None
    art: str = "none"
    kept: str = ""
    later: str = ""
    ask: str = ""
    cups_title: str = ""
    cups: tuple[CupMark, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionView(SheetView):
    """A question with two answers."""

    screen: str = "question"
    art: str = "none"
    number: int | None = None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TroubleView(SheetView):
    """What is in the way, three things to do, what is kept."""

    screen: str = "trouble"
    lines: tuple[str, ...] = ()
    now: int = 1  # the line that is to be done now
    kind: str = ""
    zero: str = ""
    kept: str = ""
    kept_more: str = ""
    cups: tuple[CupMark, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SampleRow:
    """One sample: kept, on the pan or to come; as bricks of one step of the balance each."""

    name: str
    mass_text: str = ""
    bricks: int = 0
    differing: int = 0
    state: str = "to come"
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SamplesView(SheetView):
    """The samples so far, and one sentence of advice."""

    screen: str = "samples"
    rows: tuple[SampleRow, ...] = ()
    undo_text: str = ""
    brick_text: str = ""
    differ_text: str = ""
    advice: str = ""
    change: ButtonView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PourView(SheetView):
    """The pour: how many pieces, between which numbers, how far to the goal.

    The goal is a `band` (low, middle, high), or a `target` from one number to another.
    """

    screen: str = "pour"
    count: int = 0
    band: str | None = None
    target: tuple[int, int] | None = None
    to_go: str = ""
    goal_text: str = ""
    warning: str = ""
    change: ButtonView | None = None
    bands: tuple[str, str, str] = ("", "", "")
    now_text: str = ""
    between: str = ""
    good_to: str = ""
    jar_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyView(SheetView):
    """The key, its interval, what it costs, and the labels for the jar or box."""

    screen: str = "key"
    count: Decimal = Decimal(0)
    chip: str = ""
    sure: str = ""
    cost: str = ""
    cost_where: str = ""
    real: str = ""
    real_where: str = ""
    band: float = 0.0
    left: str = ""
    peak: str = ""
    right: str = ""
    which: str = ""
    labels: tuple[str, ...] = tuple(ascii_uppercase)
    lids: bool = True  # of jars; boxes have none
    used_text: str = ""
    used: tuple[str, ...] = ()
    chosen: str = ""
    covered: bool = False
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class MessageView(SheetView):
    """A sentence or two, nothing to decide but where to go."""

    screen: str = "message"
    art: str = "none"
    lines: tuple[str, ...] = ()
    letter: str = ""
