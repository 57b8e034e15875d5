"""Texts: the coach's code."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "code.code.main": "Open",
    "code.new.main": "Go on",
    "code.again.main": "Keep this code",
    "code.again.note": "Write it down where no student sees it.",
    "code.typed": "{typed} of {digits}",
    "code.wrong": "That is not the code.",
    "code.differ": "The two codes differ. Choose again.",
    "code.locked_itself": "Nobody touched it for a while, so it locked itself. All is kept.",
    "code.later": "No code\nyet",
    "codes.coach.code": "Type the coach's code.",
    "codes.coach.new": "Choose a code for the coach.",
    "codes.coach.new.note": "Six digits. It opens the drawers and the answer keys.",
    "codes.coach.again": "Type the same code again.",
    "codes.coach.taken": "The helpers have this code. Choose another one.",
    "codes.either.code": "Type the coach's or the helpers' code.",
    "codes.helper.code": "A second adult: type the helpers' code.",
    "codes.helper.new": "Choose a code for the helpers.",
    "codes.helper.new.note": "Six digits. It opens cups and answers, but no key.",
    "codes.helper.again": "Type the same code again.",
    "codes.helper.taken": "The coach has this code. Choose another one.",
    "code.wait": ("Wait {count} second", "Wait {count} seconds"),
}
