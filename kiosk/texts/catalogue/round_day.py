"""Texts of the day list on the screen, and of the papers of a round."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "hub.day": "Before we begin",
    "day.what_for": "what to see to on the day",
    "day.how": "Tap what is done. Scale and jars: a tap begins the check.",
    "day.done": "{done} of {of}",
    "day.jar.same": "Weighed today: it is still the same.",
    "day.jar.other": "Weighed today: it weighs something else. Count it again.",
    "day.jar.closed_today": "Closed and weighed today.",
    "hub.papers": "Papers",
    "papers.what_for": "sheets, lists, the helper card",
    "papers.title": "Which paper is made?",
    "papers.sheets": "Answer sheets, sitting {sitting}",
    "papers.list": "List of sitting {sitting}",
    "papers.day": "Day list",
    "papers.whole_day": "For the whole day",
    "papers.card": "Card for a helper",
    "papers.teams": ("{count} page, one a team", "{count} pages, one a team"),
    "papers.no_keys": "Jars and boxes first: they have no letters yet",
    "papers.page": "one page",
    "papers.saved_in": "Saved in {folder}",
    "papers.refused.save": "It is not saved.",
    "papers.refused.print": "It is not printed.",
    "papers.again": "Try again",
    "papers.leave": "Leave it",
    "papers.working": "Making it.",
    "papers.send": "Print it",
    "papers.sending": "On its way to the printer.",
}
