"""Presenters of the drawer of the scale: the scale in use, and which others there are."""

from __future__ import annotations

from datetime import datetime

from kiosk.procedures.procedure import Person
from kiosk.texts import say
from kiosk.ui.presenters.last_check import last_check_text
from kiosk.ui.presenters.scale_facts import FoundScale, ScaleKind
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.presenters.trace_views import scale_facts, steadiness_lines, trace_view
from kiosk.ui.presenters.views import ButtonView, Choice, ChoicesView, ScaleView, button

MOST_CARDS = 6  # few enough for cards that hold a description


def scale_view(facts: TableFacts, *, connected: bool, now: datetime) -> ScaleView:
    """The scale in use: what is known of it, and what can be done."""
    scale = facts.scale
    kind = scale.chosen.kind if scale.chosen else None
    other = button(say("scale.other"), Person.OTHER_SCALE)
    home = button(say("button.home"), Person.HOME, sign="home")
    if scale.trying:
        return ScaleView(
            title=say("scale.trying.title"), lines=(say("scale.trying.body"),),
            described=described(scale.chosen), main=_waiting(), second=other, home=home,
        )  # fmt: skip
    if not scale.understood:
        way = "silent" if scale.silent else "unknown"
        return ScaleView(
            title=say(f"scale.{way}.title"), lines=(say(f"scale.{way}.body"),),
            described=described(scale.chosen), second=other, home=home,
            main=button(say("scale.teach"), Person.TEACH),
        )  # fmt: skip
    known = bool(connected or kind is ScaleKind.TYPED)
    return ScaleView(
        title=say("scale.title" if known else "scale.missing.title"),
        described=described(scale.chosen),
        facts=scale_facts(facts),
        trace=trace_view(facts.past, facts.readability) if connected else None,
        lines=(
            *(steadiness_lines(facts) if connected else ()),
            last_check_text(facts.last_check, now),
        ),
        main=button(say("scale.check"), Person.CHECK) if known else _waiting(),
        second=other,
        home=home,
    )


def scales_view(facts: TableFacts) -> ChoicesView:
    """Which scale? Each with what can be read on its cable."""
    scale = facts.scale
    real = [
        each
        for kind in (ScaleKind.HID, ScaleKind.SERIAL)
        for each in scale.found
        if each.kind is kind
    ]
    rest = [each for each in scale.found if each not in real]
    shown = [*real[: MOST_CARDS - len(rest)], *rest]
    note = say("scales.note") if real else say("scales.none")
    return ChoicesView(
        screen="choices",
        title=say("scales.title"),
        choices=tuple(
            Choice(
                text=say(f"scales.{each.kind}"),
                note=each.described or say(f"scales.{each.kind}.note"),
                value=each.where,
                chosen=scale.chosen is not None and scale.chosen.where == each.where,
            )
            for each in shown
        ),
        note=scale.problem or note,
        main=button(say("scales.again"), Person.CHOOSE, LOOK_AGAIN),
        home=button(say("button.back"), sign="back"),
    )


LOOK_AGAIN = ""  # no scale has that address


def described(found: FoundScale | None) -> str:
    """The scale in words that fit its cable."""
    if found is None:
        return say("scale.none")
    return found.described or say(f"scales.{found.kind}")


def _waiting() -> ButtonView:
    return button(say("scale.wait"), sign="wait", state="waiting")
