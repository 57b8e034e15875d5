"""The tour of a round: its pages in the order of the day, with two teams."""

from __future__ import annotations

from kiosk.ui.tour_hands import Stops, put_away, things
from kiosk.ui.walk import Walker

ROUND, TEAMS = "Autumn round", ("Avocet", "Curlew")


def _taps(walker: Walker, *names: str) -> None:
    for name in names:
        walker.tap(name)
    walker.wait(0.3)


def _home(walker: Walker) -> None:
    while walker.screen != "home":
        walker.tap("Home" if "Home" in walker.texts() else "Back")


def _name(walker: Walker) -> None:
    _home(walker)
    _taps(walker, "Run a\nround", "A new round")


def _hub(walker: Walker) -> None:
    _taps(walker, ROUND, "Done")


def _rules(walker: Walker) -> None:
    _taps(walker, "Rules")


def _team(walker: Walker) -> None:
    _taps(walker, "Back", "Teams")
    for team in TEAMS:
        _taps(walker, "Add a team", team, "Done")
        if team != TEAMS[-1]:
            _taps(walker, "Back")


def _teams(walker: Walker) -> None:
    _taps(walker, "Back")


def _keys(walker: Walker) -> None:
    _taps(walker, "Back", "Jars and boxes", "Jar in the thousands", "jar A")


def _day(walker: Walker) -> None:
    _taps(walker, "Back", "Before we begin")


def _papers(walker: Walker) -> None:
    _taps(walker, "Back", "Papers")


def _clock(walker: Walker) -> None:
    _taps(walker, "Back", "Clock", "Sitting 1")


def _wall(walker: Walker) -> None:
    _taps(walker, "Large\nclock")


def _cups(walker: Walker) -> None:
    walker.kiosk.home()
    walker.step()
    _taps(walker, "Back", "Back", "Cups")


def _cup_table(walker: Walker) -> None:
    _taps(walker, "Empty cups")
    things(walker, "clear pan")  # of what was weighed before
    walker.until(lambda: "Waiting for cup\u00a01" in " ".join(walker.texts()), "the empty pan")
    things(walker, "cup 1 empty")
    walker.until(lambda: "recorded" in " ".join(walker.texts()), "the recorded cup")
    put_away(walker)


def _sheet(walker: Walker) -> None:
    things(walker, "clear pan")
    put_away(walker)
    _taps(walker, "Back", "Back", "Answers", TEAMS[0], "K", "l", "Done", "4", "2")


def _results(walker: Walker) -> None:
    _taps(walker, "Back", "Back", "Results")


def _files(walker: Walker) -> None:
    _taps(walker, "Back", "Files")


STOPS: Stops = (
    ("round-name", _name),
    ("round", _hub),
    ("round-rules", _rules),
    ("round-team", _team),
    ("round-teams", _teams),
    ("round-keys", _keys),
    ("round-day", _day),
    ("round-papers", _papers),
    ("round-clock", _clock),
    ("round-wall", _wall),
    ("round-cups", _cups),
    ("round-cup-table", _cup_table),
    ("round-sheet", _sheet),
    ("round-results", _results),
    ("round-files", _files),
)
