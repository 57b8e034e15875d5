"""What is changed about a team: noted at once, after the lock for a reason; and who comes back."""

from __future__ import annotations

from collections.abc import Mapping

from kiosk.rounds.contents import Stage, Team
from kiosk.rounds.state import RoundState
from kiosk.texts import say
from kiosk.ui.pages.common import AskPage, TextPage
from kiosk.ui.pages.kept_list import list_before
from kiosk.ui.pages.pick import PickPage
from kiosk.ui.pages.room import Room


def change_team(room: Room, team: Team, changed: Mapping[str, object]) -> None:
    """Note the change; where the answers of its division are locked, ask for a reason first."""
    if room.state.stage(team.division) is Stage.OPEN:
        keep_team(room, team, changed)
        return
    room.open(
        TextPage(
            room,
            title=say("teams.why"),
            label=say("teams.reason"),
            offers=say("teams.why.offers").split("|"),
            done=lambda reason: keep_team(room, team, changed, reason),
        )
    )


def keep_team(
    room: Room, team: Team, changed: Mapping[str, object], reason: str = "", left: bool = False
) -> None:
    """Note the team as it is now; a list that was shown is kept beside it."""
    now = room.state.team(team.team)
    locked = room.state.stage(now.division) is not Stage.OPEN
    why = say("teams.left" if left else "teams.changed", label=now.label, reason=reason)
    room.say(
        *list_before(room, now.division, why),
        now.model_copy(update={**changed, "reason": reason if locked else ""}),
    )


def who_left(state: RoundState) -> list[Team]:
    """The teams that take no part any more and may still come back."""
    return [
        team
        for team in state.everybody
        if team.gone and state.stage(team.division) is not Stage.FINAL
    ]


def choose_who_comes_back(room: Room) -> None:
    """Ask which of those it is, and whether it really does."""

    def chosen(value: object) -> None:
        team = room.state.team(str(value))
        room.open(
            AskPage(
                room,
                title=say("teams.back.title", label=team.label),
                body=say("teams.back.body", reason=team.gone),
                yes=say("teams.back.yes"),
                no=say("teams.back.no"),
                done=lambda: change_team(room, team, {"gone": "", "into": ""}),
            )
        )

    room.open(
        PickPage(
            room,
            title=say("teams.back.which"),
            options=[(team.label, team.gone, team.team) for team in who_left(room.state)],
            sort=True,
            done=chosen,
        )
    )
