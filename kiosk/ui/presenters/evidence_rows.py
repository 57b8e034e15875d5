"""What stands behind a score, row by row: masses with their frames, typings, the key."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from decimal import Decimal

from kiosk.rounds.contents import Answer, Protest, Team, Typing
from kiosk.rounds.counted import Counted, counted, if_accepted, weighed_in
from kiosk.rounds.cups import CupMass, CupStand, Filling, TeamCup, cup_of, division
from kiosk.rounds.readiness import bounds
from kiosk.rounds.state import RoundState
from kiosk.settings import Task, Weighed
from kiosk.texts import say
from kiosk.texts.numbers import grams, number
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.result_words import task_short

LONGEST_FRAME = 32  # characters of a raw frame


def evidence_rows(state: RoundState, team: Team, task: Task) -> list[RowView]:
    """For the coach: a key's value is among them."""
    if task is Task.MASS:
        rows = [*_cup(state, cup_of(state, team)), *_typings(state, team, task)]
        goal = say("protests.goal", mass=grams(state.rules.cup_target_g))
        return [*rows, RowView(text=goal)]
    return [*_typings(state, team, task), *_key(state, team, task)]


def _cup(state: RoundState, cup: TeamCup) -> Iterator[RowView]:
    if cup.empty is not None:
        words = say(
            "protests.cup.empty", number=cup.team.cup, mass=_mass(cup.empty, cup.empty.grams)
        )
        yield RowView(text=words, note=_seen(cup.empty))
    for filling in cup.fillings:
        words = say(
            "protests.cup.again" if filling.protest else "protests.cup.filled",
            mass=_mass(filling.filled, filling.filled.grams),
            net=_mass(filling.filled, filling.net),
        )
        yield RowView(
            text=words, note=_seen(filling.filled), value=_whether_counts(state, cup.team, filling)
        )
    judged = state.answer(cup.team.team, Task.MASS, Typing.JUDGE) is not None
    if cup.stand is CupStand.NO_MASS and cup.ended is not None:
        yield RowView(
            text=say("protests.cup.outcome", number=cup.team.cup, outcome=outcome(cup)),
            note="" if judged else say("protests.cup.outcome.judge"),
        )


def _whether_counts(state: RoundState, team: Team, filling: Filling) -> str:
    """Whether a mass counts; of one that was weighed in a protest also why not."""
    cup = counted(state, team)
    if cup is not None and cup.filling == filling:
        return say("protests.counts")
    if not filling.protest:
        return ""
    protest = state.latest(Protest, f"protest {filling.protest}")
    accepted = protest.accepted if protest else None
    if accepted is False:
        return say("protests.counts.refused")
    if state.rules.weighed_again is Weighed.FIRST:
        return say("protests.counts.first")
    if protest is not None and accepted is None:
        would = if_accepted(state, protest)
        same = would and would.filling and would.filling.note_id == filling.note_id
        return say("protests.counts.if") if same else ""
    return "" if filling.counts_from is not None else say("protests.counts.late")


def decision_notes(state: RoundState, protest: Protest) -> tuple[str, str]:
    """What accepting and refusing mean where a cup was weighed once more; else nothing."""
    if not weighed_in(state, protest):
        return "", ""
    accepted = _worth(if_accepted(state, protest))
    refused = _worth(counted(state, state.team(protest.team)))
    first = state.rules.weighed_again is Weighed.FIRST
    return (
        say("protests.accepted.first" if first else "protests.accepted.note", mass=accepted),
        say("protests.refused.note", mass=refused),
    )


def _worth(cup: Counted | None) -> str:
    if cup is None or cup.grams is None:
        return say("protests.no_mass")
    return _mass(cup.filling.filled, cup.grams) if cup.filling else grams(cup.grams)


def outcome(cup: TeamCup) -> str:
    """What ended a cup without a mass, in words."""
    return say(f"files.conflict.turn.{cup.ended.name.lower()}") if cup.ended else ""


def _mass(mass: CupMass, shown: Decimal) -> str:
    return grams(shown, division(mass.weighing))


def _seen(mass: CupMass) -> str:
    """When, with which steps, by which balance, and what it sent."""
    weighing = mass.weighing
    words = say(
        "protests.cup.seen",
        time=_time(weighing.at),
        step=grams(division(weighing)),
        balance=weighing.balance,
    )
    raw = weighing.raw.decode("ascii", "backslashreplace").strip()
    return say("protests.cup.raw", seen=words, raw=raw[:LONGEST_FRAME]) if raw else words


def _time(at: datetime) -> str:
    return f"{at.astimezone():%H:%M:%S}"


def _typings(state: RoundState, team: Team, task: Task) -> Iterator[RowView]:
    for typing in Typing:
        for said in state.history(f"answer {team.team} {task} {typing}"):
            answer = said.content
            if isinstance(answer, Answer):
                latest = answer is state.answer(team.team, task, typing)
                counts = latest and typing is Typing.JUDGE and _judge_counts(state, team, task)
                yield _typing(answer, said.note.at, latest=latest, counts=counts)


def _judge_counts(state: RoundState, team: Team, task: Task) -> bool:
    cup = counted(state, team) if task is Task.MASS else None
    return cup is None or cup.filling is None


def _typing(answer: Answer, at: datetime, *, latest: bool, counts: bool) -> RowView:
    if answer.unreadable:
        value = say("protests.typed.unreadable")
    elif answer.estimate is None:
        value = say("results.correct.blank")
    else:
        value = number(answer.estimate)
    by = ("by" if answer.by else "at") if not answer.reason else "why"
    return RowView(
        text=say(f"protests.typed.{answer.typing}", value=value),
        note=say(f"protests.typed.{by}", by=answer.by, time=_time(at), reason=answer.reason),
        value=say("protests.counts") if counts else "",
        look="plain" if latest else "done",
    )


def _key(state: RoundState, team: Team, task: Task) -> Iterator[RowView]:
    key = state.key(team.division, task)
    if key is None:
        return
    low, high = bounds(key)
    yield RowView(
        text=say(
            "protests.key",
            what=task_short(state, team.division, task),
            value=number(key.actual, 0),
            unit=say(f"results.unit.{task.value.partition(' ')[0]}"),
        ),
        note=say("protests.key.sure", low=number(low), high=number(high)),
    )
