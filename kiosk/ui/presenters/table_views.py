"""Presenters of the table itself: home, which pair, which material."""

from __future__ import annotations

from kiosk.procedures.procedure import Person
from kiosk.texts import plural, say
from kiosk.texts.numbers import grams
from kiosk.ui.presenters.surroundings import TableFacts, material_name
from kiosk.ui.presenters.views import Choice, ChoicesView, HomeView, QuestionView, button

TEAMS_PER_PAGE = 15


def home_view(facts: TableFacts, *, ready: bool, unlocked: bool = False) -> HomeView:
    """The table with what stands on it; `unlocked`: the drawers can be locked by a tap."""
    kept = facts.keys_kept + len(facts.used_boxes)
    return HomeView(
        title=say("home.title"),
        body=say("home.caution") if ready else say("records.opening"),
        goal_text=say("home.fill_cup.by_feel", goal=grams(facts.settings.rules.cup_target_g)),
        cups=facts.marks(),
        cups_hint=say("home.bring_back"),
        cups_title=say("home.all_cups"),
        can_guess_jar=bool(facts.keys_kept),
        can_guess_box=bool(facts.used_boxes),
        how=(say("home.how.1"), say("home.how.2"), say("home.how.3")),
        can_throw=bool(facts.cups),
        unlocked=unlocked,
        lock_text=say("home.lock_now" if unlocked else "home.coach"),
        keys_text=plural("home.keys_kept", kept) if kept and not facts.cups else "",
    )


def teams_view(facts: TableFacts, *, guessing: bool = False) -> ChoicesView:
    """Which pair are you? A pair with a cup out finds its number on its card."""
    teams = facts.settings.teams
    pages = max(1, -(-len(teams) // TEAMS_PER_PAGE))
    start = facts.team_page % pages * TEAMS_PER_PAGE
    numbers = {cup.team: cup.number for cup in facts.cups if cup.team}
    out = any(team in numbers for team in teams) and not guessing
    material = say("team.material", material=material_name(facts.material))
    return ChoicesView(
        screen="choices",
        title=say("team.title"),
        corner=plural("team.count", len(teams)),
        choices=tuple(
            Choice(
                text=team,
                value=team,
                cup_number=None if guessing else numbers.get(team),
                chosen=team == facts.team,
            )
            for team in teams[start : start + TEAMS_PER_PAGE]
        ),
        legend=(say("team.has_cup"), say("team.goes_to")) if out else None,
        second=button(say("answer.open"), Person.ANSWERS)
        if guessing
        else button(material, Person.MATERIAL),
        main=button(say("team.trying"), Person.CHOOSE, ""),
        home=button(say("button.home"), sign="home"),
        beside_home=button(say("team.more")) if pages > 1 else None,
    )


def round_runs_view() -> QuestionView:
    """Why no cup is filled or handed in here while the teams of a round work."""
    return QuestionView(
        title=say("round_runs.title"),
        body=say("round_runs.body"),
        second=button(say("round_runs.go_on"), Person.GO_ON),
        home=button(say("button.home"), Person.HOME, sign="home"),
    )


def materials_view(facts: TableFacts) -> ChoicesView:
    """The materials that may go into the cups."""
    return ChoicesView(
        screen="choices",
        title=say("material.title"),
        choices=tuple(
            Choice(text=material_name(name), value=name, chosen=name == facts.material)
            for name in facts.settings.materials
        ),
        note=say("material.note"),
        home=button(say("button.back"), sign="back"),
    )
