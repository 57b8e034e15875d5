"""What was noted here and on another kiosk about the same thing or given twice, in words."""

from __future__ import annotations

from kiosk.rounds.contents import Answer, Content, CupNote, Stage, Step, Team, read
from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from kiosk.rounds.teams import same_cup, same_label
from kiosk.texts import say
from kiosk.texts.numbers import number


def in_words(state: RoundState, kind: str, about: str, content: str) -> str:
    """One sentence: what it is about, what stands here and what the other one says.

    ValueError for a note that this version cannot read.
    """
    theirs = read(kind, about, content)
    if theirs is None:
        raise ValueError(f"{content!r} is no {kind}")
    here = state.latest(type(theirs), about)
    return say(
        "files.conflict.both",
        what=_thing(state, theirs),
        here=_value(here or _unsaid(theirs)),
        there=_value(theirs),
    )


def _unsaid(theirs: Content) -> Content | None:
    return Step(division=theirs.division, stage=Stage.OPEN) if isinstance(theirs, Step) else None


def _thing(state: RoundState, content: Content) -> str:
    match content:
        case Answer():
            task = say(f"task.{content.task.replace(' ', '_')}")
            return say("files.conflict.answer", team=_label(state, content.team), task=task)
        case CupNote():
            return say("files.conflict.cup", team=_label(state, content.team))
        case Team():
            return say("files.conflict.team", team=content.label)
    return say(f"files.conflict.{content.KIND}")


def _label(state: RoundState, team: str) -> str:
    found = state.latest(Team, f"team {team}")
    return found.label if found else team


def _value(content: Content | None) -> str:
    match content:
        case None:
            return say("files.conflict.nothing")
        case Answer(unreadable=True):
            return say("files.conflict.unreadable")
        case Answer(estimate=None):
            return say("files.conflict.blank")
        case Answer(estimate=estimate):
            return number(estimate) if estimate is not None else ""
        case Step():
            return say(f"files.conflict.stage.{content.stage}")
        case CupNote():
            return say(f"files.conflict.turn.{content.turn.name.lower()}")
    return say("files.conflict.changed")


@once
def given_twice(state: RoundState) -> str:
    """The number or label that two kiosks gave twice, cups first; "" for none."""
    for sitting in state.sittings:
        for cup in same_cup(state, sitting):
            return say("teams.cup_twice", sitting=sitting, number=cup)
    for label in same_label(state):
        found = next(team.label for team in state.teams if team.label.casefold() == label)
        return say("teams.label_twice", label=found)
    return ""
