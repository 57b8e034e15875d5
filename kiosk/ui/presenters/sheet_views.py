"""What the sheet of answers shows that is typed from paper: six rows, two typings, a keypad."""

from __future__ import annotations

from dataclasses import dataclass, replace

from kiosk.procedures.procedure import Person
from kiosk.rounds.contents import Answer, Team, Typing
from kiosk.rounds.sheets import SheetRow, limit, sheet_rows
from kiosk.rounds.state import RoundState
from kiosk.rounds.typed_answers import Stand, Typed, typed, typed_twice
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.presenters.views import SheetView, button

MOST_DIGITS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperRow:
    """One row: a jar or a box, its two typings, and how it stands.

    ``state`` is to come, now, done, differs or unreadable. ``hidden``: the first typing is not
    shown before the second one is in.
    """

    thing: str
    name: str
    first: str = ""
    second: str = ""
    hidden: bool = False
    state: str = "to come"
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperView(SheetView):
    """Six rows and a keypad; ``first_name`` and ``second_name`` head the two columns."""

    screen: str = "paper"
    rows: tuple[PaperRow, ...] = ()
    first_name: str = ""
    second_name: str = ""
    progress: str = ""
    hint: str = ""
    present: int = 0


def value_of(answer: Answer | None) -> str:
    """What was typed, in words."""
    if answer is None:
        return ""
    if answer.unreadable:
        return say("paper_typing.unread")
    return say("paper_typing.blank") if answer.estimate is None else number(answer.estimate)


def paper_view(
    state: RoundState,
    team: Team,
    typing: Typing,
    *,
    present: int,
    typed_now: str,
    hint: str,
    kept: bool = False,
) -> PaperView:
    """The sheet of a team in that typing; `typed_now` are the digits of the present row.

    `kept`: they are those that stand there already, also where a blank or unread row has none.
    """
    rows = sheet_rows(state, team)
    second = typing is Typing.SECOND
    shown = tuple(
        _row(row, _typed(state, team, row, typing), second, now, kept=kept)
        for place, row in enumerate(rows)
        for now in [typed_now if place == present else None]
    )
    there, wanted = typed_twice(state, state.teams_of(sitting=team.sitting))
    last = present == len(rows) - 1
    differs = second and typed(state, team.team, rows[present].task).stand is Stand.MISMATCH
    if typed_now or kept:
        main = say("paper_typing.done" if last else "paper_typing.next")
    else:
        main = say("paper_typing.leave" if differs else "paper_typing.blank_next")
    return PaperView(
        title=say(
            "paper_typing.again" if second else "paper_typing.title", first=row_name(rows[0])
        ),
        rows=shown,
        first_name=say("paper_typing.own" if typing is Typing.TEAM else "paper_typing.first"),
        second_name=say("paper_typing.second") if second else "",
        progress=say("paper_typing.progress", there=there, wanted=wanted),
        hint=hint,
        present=present,
        main=button(main, Person.ENTER, sign="arrow"),
        second=button(say("paper_typing.first_wrong"), Person.UNDO)
        if differs and (kept or not typed_now)
        else button(say("paper_typing.cannot_read"), Person.NO),
        home=button(say("button.back"), Person.HOME, sign="back"),
    )


def _typed(state: RoundState, team: Team, row: SheetRow, typing: Typing) -> Typed:
    """What helpers typed; or what the team itself did, as if it were the first time."""
    found = typed(state, team.team, row.task)
    if typing is not Typing.TEAM:
        return found
    own = state.answer(team.team, row.task, Typing.TEAM)
    return replace(found, first=own, second=None, judge=None)


def row_name(row: SheetRow) -> str:
    """How the paper calls the jar or the box of a row."""
    return say(f"paper_typing.{row.thing}", label=row.label)


def _row(
    row: SheetRow, found: Typed, second: bool, now: str | None, *, kept: bool = False
) -> PaperRow:
    name = row_name(row)
    hidden = second and found.second is None and found.first is not None
    first = "" if hidden else value_of(found.first)
    differs = second and found.stand is Stand.MISMATCH
    unread = any(each is not None and each.unreadable for each in (found.first, found.second))
    done = found.second if second else found.first
    if now is not None:
        told = number(int(now)) if now else value_of(done) if kept else ""
        return PaperRow(
            thing=row.thing, name=name, first=first if second else told, hidden=hidden,
            second=(told or value_of(found.second)) if second else "", state="now",
            words=say("paper_typing.look_again") if differs and not now else "",
        )  # fmt: skip
    words, state = "", "done" if done is not None else "to come"
    if differs:
        words, state = say("paper_typing.look_again"), "differs"
    elif unread and done is not None:
        words, state = say("paper_typing.judge"), "unreadable"
    return PaperRow(
        thing=row.thing, name=name, first=first, hidden=hidden,
        second=value_of(found.second) if second else "", state=state, words=words,
    )  # fmt: skip


def over_limit(state: RoundState, row: SheetRow) -> str:
    """What is asked where a number is larger than the rules let anyone expect."""
    return say(f"paper_typing.{row.thing}.over", limit=number(limit(row.task, state.rules)))
