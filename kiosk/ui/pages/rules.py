"""The rules of the event on one page, and the helpers' code; frozen once a sitting began."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.state import RoundState
from kiosk.settings import Over, Rules, Task, Weighed
from kiosk.texts import say
from kiosk.texts.numbers import grams, number
from kiosk.ui.pages.codes import CodePage, keep_helper_code
from kiosk.ui.pages.common import RowsPage, TextPage
from kiosk.ui.pages.keys import task_name
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.presenters.page_views import RowView
from kiosk.ui.presenters.views import ButtonView, button


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rule:
    """A rule: its field, how its value reads, and the values to pick from (none: it is typed)."""

    name: str
    reads: Callable[[Any], str]
    offers: tuple[Any, ...] = ()


def _minutes(value: Any) -> str:
    return say("teams.minutes", minutes=value)


_RULES = (
    _Rule(name="cup_target_g", reads=grams),
    _Rule(name="over", reads=lambda value: say(f"rules.over.{value}"), offers=tuple(Over)),
    _Rule(name="decimals", reads=str, offers=(0, 1, 2)),
    _Rule(name="minutes", reads=_minutes, offers=(15, 20, 25, 30, 35, 40, 45, 60)),
    _Rule(name="teams_a_sitting", reads=str, offers=(5, 8, 10, 12, 15, 16, 18, 20, 24, 25, 30, 40)),
    _Rule(name="divisions", reads=", ".join),
    _Rule(name="medals", reads=str, offers=(0, 1, 2, 3, 4, 5, 6, 8, 10)),
    _Rule(name="tie_break", reads=lambda value: _ties(value)),
    _Rule(name="protest_minutes", reads=_minutes, offers=(0, 5, 10, 15, 20, 30, 45, 60)),
    _Rule(
        name="weighed_again",
        reads=lambda value: say(f"rules.weighed_again.{value}"),
        offers=tuple(Weighed),
    ),
    _Rule(
        name="teams_type",
        reads=lambda value: say(f"rules.teams_type.{'yes' if value else 'no'}"),
        offers=(False, True),
    ),
    _Rule(name="count_limit", reads=number),
    _Rule(name="volume_limit_cm3", reads=number),
)


def stands(state: RoundState) -> str:
    """What matters most of them."""
    rules = state.rules
    return f"{grams(rules.cup_target_g)}, {_minutes(rules.minutes)}"


class RulesPage(RowsPage):
    """One row for each rule."""

    columns = 2

    def title(self) -> str:
        """The heading."""
        return say("rules.title")

    def body(self) -> str:
        """Whether they can still be changed."""
        return say("rules.frozen" if self._frozen else "rules.printed")

    @property
    def _frozen(self) -> bool:
        return self.room.state.any_begun

    def rows(self) -> Sequence[RowView]:
        """What each rule says now."""
        rules = self.room.state.rules
        return [
            RowView(
                text=say(f"rules.{rule.name}"),
                value=rule.reads(getattr(rules, rule.name)),
                says=None if self._frozen else PersonEvent(Person.CHOOSE, rule.name),
            )
            for rule in _RULES
        ]

    def second(self) -> ButtonView:
        """The code that helpers type."""
        return button(say("rules.helper_code"), Person.KEEP)

    def press(self, event: PersonEvent) -> None:
        """Change a rule, or the helpers' code."""
        match event.kind:
            case Person.CHOOSE:
                self._change(next(rule for rule in _RULES if rule.name == event.value))
            case Person.KEEP:
                room = self.room
                room.open(
                    CodePage(
                        room, digest="", whose="helper",
                        done=lambda digest: keep_helper_code(room, digest),
                    )
                )  # fmt: skip
            case _:
                super().press(event)

    def _change(self, rule: _Rule) -> None:
        room, now = self.room, getattr(self.room.state.rules, rule.name)
        title = say(f"rules.{rule.name}")
        if rule.name == "tie_break":
            room.open(TieBreakPage(room))
        elif rule.offers:
            options = [(rule.reads(value), "", value) for value in rule.offers]
            room.open(
                PickPage(
                    room, title=title, options=options, now=now,
                    done=lambda value: self._set(rule.name, value),
                )
            )  # fmt: skip
        else:
            typed = ", ".join(now) if isinstance(now, tuple) else str(now)
            room.open(
                TextPage(
                    room, title=title, label=say(f"rules.{rule.name}.label"), typed=typed,
                    done=lambda words: self._set(rule.name, _read(rule.name, words)),
                    refuses=lambda words: self._refuses(rule.name, words),
                )
            )  # fmt: skip

    def _refuses(self, name: str, words: str) -> str:
        try:
            self._with(name, _read(name, words))
        except ValidationError:
            return say("rules.number")
        return ""

    def _with(self, name: str, value: object) -> Rules:
        return Rules.model_validate(self.room.state.rules.model_dump() | {name: value})

    def _set(self, name: str, value: object) -> None:
        plan = self.room.state.plan
        self.room.say(plan.model_copy(update={"rules": self._with(name, value)}))


def _read(name: str, words: str) -> object:
    if name == "divisions":
        return tuple(dict.fromkeys(part.strip() for part in words.split(",") if part.strip()))
    return words.replace(",", ".").replace("\u2009", "").replace(" ", "")


def _ties(tasks: Sequence[Task]) -> str:
    return task_name(tasks[0]) if tasks else say("rules.tie_break.shared")


class TieBreakPage(RowsPage):
    """Which tasks break a tie, in the order in which they were tapped."""

    columns = 2

    def title(self) -> str:
        """The question."""
        return say("rules.tie_break.title")

    def body(self) -> str:
        """What no task means."""
        return say("rules.tie_break.body")

    def rows(self) -> Sequence[RowView]:
        """The tasks, those chosen with their rank."""
        chosen = self.room.state.rules.tie_break
        return [
            RowView(
                text=task_name(task),
                value=str(chosen.index(task) + 1) if task in chosen else "",
                look="now" if task in chosen else "plain",
                says=None if self.room.state.any_begun else PersonEvent(Person.CHOOSE, task),
            )
            for task in Task
        ]

    def press(self, event: PersonEvent) -> None:
        """Take a task in at the end, or out."""
        if event.kind is not Person.CHOOSE:
            super().press(event)
            return
        plan = self.room.state.plan
        chosen = list(plan.rules.tie_break)
        chosen.remove(event.value) if event.value in chosen else chosen.append(event.value)
        rules = plan.rules.model_copy(update={"tie_break": tuple(chosen)})
        self.room.say(plan.model_copy(update={"rules": rules}))
