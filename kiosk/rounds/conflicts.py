"""What was noted here and on another kiosk about the same thing, in words."""

from __future__ import annotations

from kiosk.records.round_notes import NoteKind
from kiosk.rounds.contents import MODELS, Answer, Content, CupNote, Team
from kiosk.rounds.state import RoundState
from kiosk.texts import say
from kiosk.texts.numbers import number


def in_words(state: RoundState, kind: NoteKind, about: str, content: str) -> str:
    """One sentence: what it is about, what stands here and what the other one says."""
    theirs = MODELS[kind].model_validate_json(content)
    here = state.latest(type(theirs), about)
    return say(
        "files.conflict.both",
        what=_thing(state, theirs),
        here=_value(here) if here else say("files.conflict.nothing"),
        there=_value(theirs),
    )


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


def _value(content: Content) -> str:
    match content:
        case Answer(unreadable=True):
            return say("files.conflict.unreadable")
        case Answer(estimate=None):
            return say("files.conflict.blank")
        case Answer(estimate=estimate):
            return number(estimate) if estimate is not None else ""
        case CupNote():
            return say(f"files.conflict.turn.{content.turn.name.lower()}")
    return say("files.conflict.changed")
