"""Texts of the clock of a sitting."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "hub.clock": "Clock",
    "clock.title": "Which sitting?",
    "clock.sitting": "Sitting {sitting}",
    "clock.none_begun": "not started",
    "clock.begun": "sitting {sitting} has begun",
    "clock.going.not_started": "not started",
    "clock.going.running": "running",
    "clock.going.paused": "paused",
    "clock.going.over": "over",
    "clock.because": "{told}: {reason}",
    "clock.all_well": "Teams and keys are ready.",
    "clock.extra": "has more time",
    "clock.stop": "Stop\nfor all",
    "clock.large": "Large\nclock",
    "clock.start": "Start",
    "clock.pause": "Pause",
    "clock.go_on": "Go on",
    "clock.start.title": "Start the clock now?",
    "clock.start.body": "From now on rules and keys are frozen.",
    "clock.start.doubts": (
        "Some keys are doubtful: see the list. From now on rules and keys are frozen."
    ),
    "clock.start.no": "Not yet",
    "clock.pause.title": "Why does the clock pause?",
    "clock.pause.offers": "fire drill|somebody is ill|a mistake of ours",
    "clock.stop.title": "Why does it stop for everybody?",
    "clock.stop.offers": "all teams are done|alarm|started by mistake",
    "wall.legend": "one bead, one minute",
    "wall.corner": "{name}, sitting {sitting}",
    "wall.ready": "Ready to start",
    "wall.paused": "Paused: {reason}",
    "wall.over": "Time is up",
    "wall.behind": ("{count} team has more time", "{count} teams have more time"),
    "wall.sign.10": "10 minutes left",
    "wall.sign.5": "5 minutes left",
    "wall.sign.1": "1 minute left",
    "wall.cups": "{done} of {of} cups are in",
}
