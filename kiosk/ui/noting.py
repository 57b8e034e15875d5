"""What is known at the table, moved on by each entry that is written down."""

from __future__ import annotations

from kiosk.records.entries import (
    BalanceChecked,
    CupHandedIn,
    CupOut,
    CupTaken,
    Entry,
    KeyMade,
    TryThrownAway,
)
from kiosk.records.volume_entries import VolumeMade
from kiosk.ui.presenters.cup_views import error_percent
from kiosk.ui.presenters.surroundings import TableFacts


def note(facts: TableFacts, entry: Entry) -> None:
    """Take one entry into the facts."""
    if isinstance(entry, CupTaken):
        facts.cups.append(
            CupOut(
                id=entry.id,
                number=entry.number,
                team=entry.team,
                material=entry.material,
                empty=entry.empty,
                since=entry.at,
            )
        )
    elif isinstance(entry, CupHandedIn):
        for cup in [cup for cup in facts.cups if cup.id == entry.try_id]:
            facts.cups.remove(cup)
            facts.team = cup.team
        facts.errors = (error_percent(entry.net, entry.target),)
    elif isinstance(entry, TryThrownAway):
        facts.cups = [cup for cup in facts.cups if cup.id != entry.try_id]
    elif isinstance(entry, BalanceChecked):
        facts.last_check = entry
    elif isinstance(entry, KeyMade):
        facts.used_letters = (*facts.used_letters, entry.letter)
        facts.keys_kept += 1
        facts.letter = ""
        facts.printed = ()
    elif isinstance(entry, VolumeMade):
        facts.used_boxes = (*facts.used_boxes, str(entry.number))
        facts.letter = ""
        facts.printed = ()
