"""Who left a division after its answers were locked: they were on a list that somebody saw."""

from __future__ import annotations

from kiosk.rounds.contents import Team
from kiosk.rounds.results import locked_at
from kiosk.rounds.state import RoundState


def left_since_lock(state: RoundState, division: str) -> list[Team]:
    """The teams that take no part any more, in order of entry; none while it is open."""
    locked = locked_at(state, division)
    if locked is None:
        return []
    return [
        team
        for team in state.everybody
        if team.gone and team.division == division and state.history(team.about)[-1].place > locked
    ]
