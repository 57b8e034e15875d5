"""Texts: the coach's code."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "code.code.title": "Type the coach's code.",
    "code.code.main": "Open",
    "code.new.title": "Choose a code for the coach.",
    "code.new.main": "Go on",
    "code.new.note": "Six digits. It opens the drawers and the answer keys.",
    "code.again.title": "Type the same code again.",
    "code.again.main": "Keep this code",
    "code.again.note": "Write it down where no student sees it.",
    "code.typed": "{typed} of {digits}",
    "code.wrong": "That is not the code.",
    "code.differ": "The two codes differ. Choose again.",
    "code.locked_itself": "Nobody touched it for a while, so it locked itself. All is kept.",
    "code.later": "No code\nyet",
    "codes.coach.code": "Type the coach's code.",
    "codes.coach.new": "Choose a code for the coach.",
    "codes.coach.again": "Type the same code again.",
    "codes.helper.code": "A second adult: type the helpers' code.",
    "codes.helper.new": "Choose a code for the helpers.",
    "codes.helper.again": "Type the same code again.",
    "code.wait": ("Wait {count} second", "Wait {count} seconds"),
}
