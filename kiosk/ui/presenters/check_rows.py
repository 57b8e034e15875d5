"""Presenter of the table of a check: one row for each known mass and each test."""

from __future__ import annotations

from kiosk.estimating.known_masses import COINS, WEIGHT_TOLERANCES
from kiosk.procedures.check_log import CheckLog
from kiosk.procedures.check_plan import UNKNOWN, CheckThing
from kiosk.records.entries import CheckedRow, CheckRole
from kiosk.texts import say
from kiosk.texts.numbers import mass_number, number
from kiosk.ui.presenters.views import CheckRowView


def head() -> tuple[str, ...]:
    """The heads of the columns; the verdict needs none."""
    return (say("check.head.known"), say("check.head.shown"), say("check.head.off"),
            say("check.head.limit"))  # fmt: skip


def thing_name(thing: CheckThing) -> str:
    """A thing in words."""
    if thing.kit in WEIGHT_TOLERANCES:
        return say("check.thing.weight", count=thing.count)
    if thing.kit in COINS:
        return say("check.thing.coins", count=thing.count)
    return say(f"check.thing.{UNKNOWN}")


def known_text(thing: CheckThing) -> str:
    """What it weighs and how well that is known; "" for a thing of unknown mass."""
    known = thing.known
    if known is None:
        return ""
    # A tolerance of milligrams is told in full, one of coins to a tenth of a gram.
    decimals = 1 if known.gross_check else None
    mass = number(known.grams, decimals)
    tolerance = number(known.tolerance.normalize() + 0, decimals)
    return say("check.thing.known", mass=mass, tolerance=f"{tolerance} g")


def row_view(row: CheckedRow, log: CheckLog) -> CheckRowView:
    """A verdict of that log as a row."""
    loads = (each.task.thing for each in log.of(CheckRole.LOAD))
    thing = next((thing for thing in loads if thing.name == row.name), None)
    step = log.step
    verdict = row.verdict.replace(" ", "_")
    load = row.test == CheckRole.LOAD
    coins = load and thing is not None and thing.kit in COINS
    name = thing_name(thing) if load and thing is not None else say(f"check.row.{row.test}")
    return CheckRowView(
        name=name,
        note=known_text(thing) if coins and thing is not None else "",
        shown=mass_number(row.shown, step) if load else "",
        off=mass_number(abs(row.off), step),
        limit=mass_number(row.limit, step),
        verdict=row.verdict,
        verdict_text=say(f"check.{verdict}"),
    )
