"""What keeps the results of a division where they are, in words."""

from __future__ import annotations

from kiosk.rounds.standing import Block, What
from kiosk.settings import Task
from kiosk.texts import say

LETTERS = 52  # of the names of those that are missing; more of them are counted


def block_words(block: Block) -> str:
    """What it is."""
    return say(f"results.block.{block.what}")


def names_of(block: Block) -> str:
    """As many of the names as fit a line, and how many more there are."""
    names = [_name(block.what, name) for name in block.names]
    shown = names[:1]
    for name in names[1:]:
        if len(", ".join([*shown, name])) > LETTERS:
            break
        shown.append(name)
    words = ", ".join(shown)
    left = len(names) - len(shown)
    return say("results.block.more", names=words, count=left) if left else words


def _name(what: What, name: str) -> str:
    match what:
        case What.KEYS:
            return say(f"task.{Task(name).replace(' ', '_')}")
        case What.SITTINGS:
            return say("teams.sitting", sitting=name)
    return name
