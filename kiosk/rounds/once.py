"""What follows from a state of a round, found once: it never changes, and pages are shown often."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from kiosk.rounds.state import RoundState

P = ParamSpec("P")
T = TypeVar("T")


def once(
    find: Callable[Concatenate[RoundState, P], T],
) -> Callable[Concatenate[RoundState, P], T]:
    """`find` for a state and what else it is given, all of it hashable; not for what it raises.

    What it gives back is shared by all who ask: nobody may change it.
    """

    @wraps(find)
    def found(state: RoundState, /, *args: P.args, **more: P.kwargs) -> T:
        asked = (find, args, *more.items())
        if asked not in state.found:
            state.found[asked] = find(state, *args, **more)
        known: T = state.found[asked]
        return known

    return found
