"""Texts of rounds: opening one, its hub, what all its pages share."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "round_runs.title": "A round is running.",
    "round_runs.body": (
        "No cups here till its clock is over or stopped: they may be the round's. Ask the coach."
    ),
    "round_runs.go_on": "The coach\ngoes on",
    "home.round": "Run a\nround",
    "strip.round": "Round",
    "rows.turn": "{page} of {pages}",
    "rows.from_to": "{first} to {last}",
    "rows.sitting": "Sitting {first}",
    "rows.sittings": "Sittings {first} to {last}",
    "text.done": "Done",
    "rounds.title": "Which round?",
    "rounds.since": "since {when}",
    "rounds.newer": "A newer version wrote this round. Bring this kiosk up to date.",
    "rounds.unread": (
        "A newer version wrote {count} note that is missing here. Bring this kiosk up to date.",
        "A newer version wrote {count} notes that are missing here. Bring this kiosk up to date.",
    ),
    "rounds.new": "A new round",
    "rounds.none": "None yet. Begin one here, or take in one that another kiosk wrote.",
    "rounds.files": "From\na file",
    "rounds.name": "What is the round called?",
    "rounds.name.label": "name of the round",
    "rounds.name.offers": "Practice round|Autumn round|Spring round",
    "rounds.name.twice": "There is a round of that name. Give it another one.",
}
