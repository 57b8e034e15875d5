"""The teams of a round: new ones, typed or from a file, and what must hold between them."""

from __future__ import annotations

import csv
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

from kiosk.rounds.contents import Stage, Team
from kiosk.rounds.once import once
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules
from kiosk.texts import say
from kiosk.texts.typed import as_typed

_T = TypeVar("_T", int, str)
COLUMNS = ("label", "school", "division", "sitting", "members", "extra_minutes")
MOST_MEMBERS = 3
MOST_SITTINGS = 999
MOST_EXTRA = 240  # minutes


def label_taken(teams: Iterable[Team], label: str, but: str = "") -> bool:
    """Whether another team that takes part is called so, whatever the capitals."""
    same = label.casefold()
    return any(
        team.label.casefold() == same for team in teams if not team.gone and team.team != but
    )


def free_cup(teams: Iterable[Team], sitting: int) -> int:
    """The lowest number that no cup of that sitting has."""
    return free_cups(teams, sitting, 1)[0]


def free_cups(teams: Iterable[Team], sitting: int, many: int) -> list[int]:
    """So many of the lowest numbers that no cup of that sitting has."""
    taken = {team.cup for team in teams if team.sitting == sitting}
    return [number for number in range(1, len(taken) + many + 1) if number not in taken][:many]


def open_divisions(state: RoundState) -> list[str]:
    """Those that take teams still: of the rules, then of the teams, [""] where nobody named one."""
    named = dict.fromkeys((*state.rules.divisions, *state.divisions)) or [""]
    return [division for division in named if state.stage(division) is Stage.OPEN]


def same_cup(state: RoundState, sitting: int) -> list[int]:
    """The numbers that more than one cup of a sitting has, as two kiosks may have given them."""
    return _twice(team.cup for team in state.teams_of(sitting=sitting) if team.cup)


@once
def same_label(state: RoundState) -> Sequence[str]:
    """The labels that more than one team has, in small letters."""
    return _twice(team.label.casefold() for team in state.teams)


def _twice(found: Iterable[_T]) -> list[_T]:
    return [one for one, often in Counter(found).items() if often > 1]


def room_in(state: RoundState, sitting: int) -> int:
    """How many more teams fit into a sitting by the rules; below zero if it is overfull."""
    return state.rules.teams_a_sitting - len(state.teams_of(sitting=sitting))


def new_team(
    teams: Sequence[Team],
    rules: Rules,
    new_id: Callable[[], str],
    *,
    label: str,
    school: str = "",
    division: str = "",
    sitting: int | None = None,
    members: int = 2,
    extra_minutes: int = 0,
) -> Team:
    """A team beside those that are there already, with the next free cup of its sitting.

    In the last sitting and the first division unless told.
    """
    last = max((team.sitting for team in teams if not team.gone), default=1)
    sitting = last if sitting is None else sitting
    return Team(
        team=new_id(),
        label=label,
        school=school,
        division=division or next(iter(rules.divisions), ""),
        sitting=sitting,
        members=members,
        extra_minutes=extra_minutes,
        cup=free_cup(teams, sitting),
    )


def moved(teams: Iterable[Team], team: Team, sitting: int) -> Team:
    """The team in another sitting, with a cup of that one."""
    return team.model_copy(update={"sitting": sitting, "cup": free_cup(teams, sitting)})


def from_csv(state: RoundState, text: str, new_id: Callable[[], str]) -> list[Team]:
    """The teams of a file with a heading out of COLUMNS, of which only ``label`` must be there.

    Comma or semicolon between cells. ValueError, with the line and what to do, for anything that
    cannot be read, or a division that is locked: then nothing of the file is taken.
    """
    teams = state.everybody
    rows = _rows(text)
    names = [cell.strip().lower() for cell in rows[0]] if rows else []
    if "label" not in names or set(names) - set(COLUMNS) or len(set(names)) < len(names):
        raise ValueError(say("teams.file.heading", columns=", ".join(COLUMNS)))
    there = {team.label.casefold() for team in teams if not team.gone}
    labels = set(there)
    by_sitting: defaultdict[int, list[Team]] = defaultdict(list)
    for team in teams:
        by_sitting[team.sitting].append(team)
    last = max((team.sitting for team in teams if not team.gone), default=1)
    found: list[Team] = []
    for line, row in enumerate(rows[1:], 2):
        texts = [cell.strip() for cell in row]
        if not any(texts):
            continue
        if len(texts) > len(names):
            raise ValueError(say("teams.file.cells", line=line, wanted=len(names)))
        cells = dict(zip(names, texts, strict=False))
        sitting = _whole(cells, "sitting", line, 1, MOST_SITTINGS, None) or last
        made = _team(by_sitting[sitting], sitting, state.rules, line, cells, new_id)
        if made.label.casefold() in labels:
            why = "there" if made.label.casefold() in there else "twice"
            raise ValueError(say(f"teams.file.{why}", line=line, label=made.label))
        if state.stage(made.division) is not Stage.OPEN:
            raise ValueError(say("teams.file.locked", line=line, division=made.division))
        found.append(made)
        labels.add(made.label.casefold())
        by_sitting[sitting].append(made)
        last = max(last, sitting)
    return found


def _rows(text: str) -> list[list[str]]:
    lines = text.removeprefix("\ufeff").splitlines(keepends=True)
    separator = ";" if lines and ";" in lines[0] else ","
    try:
        return list(csv.reader(lines, delimiter=separator, strict=True))
    except csv.Error as error:
        raise ValueError(say("teams.file.no_csv", why=error)) from error


def _team(
    beside: Sequence[Team],
    sitting: int,
    rules: Rules,
    line: int,
    cells: dict[str, str],
    new_id: Callable[[], str],
) -> Team:
    label = cells.get("label", "")
    if not label:
        raise ValueError(say("teams.file.no_label", line=line))
    return new_team(
        beside,
        rules,
        new_id,
        label=label,
        school=cells.get("school", ""),
        division=cells.get("division", ""),
        sitting=sitting,
        members=_whole(cells, "members", line, 1, MOST_MEMBERS, 2) or 2,
        extra_minutes=_whole(cells, "extra_minutes", line, 0, MOST_EXTRA, 0) or 0,
    )


def _whole(
    cells: dict[str, str], name: str, line: int, low: int, high: int, missing: int | None
) -> int | None:
    text = cells.get(name, "")
    if not text:
        return missing
    if not (text.isascii() and text.isdigit() and low <= int(text) <= high):
        typed = as_typed(text)
        raise ValueError(
            say("teams.file.number", line=line, column=name, typed=typed, low=low, high=high)
        )
    return int(text)
