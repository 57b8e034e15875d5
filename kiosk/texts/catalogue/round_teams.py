"""Texts of the teams of a round."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "hub.teams": "Teams",
    "teams.title": "Who takes part?",
    "teams.no_names": "A label is enough: no names of children.",
    "teams.count": ("{count} team", "{count} teams"),
    "teams.sittings": ("{count} sitting", "{count} sittings"),
    "teams.sitting": "sitting {sitting}",
    "teams.sitting.most": "Up to {most} teams in each.",
    "teams.overfull": "Sitting {sitting} is overfull: up to {most} teams work at once.",
    "teams.cup": "cup {number}",
    "teams.absent": ("{count} absent", "{count} absent"),
    "teams.extra": "{minutes} minutes more",
    "teams.minutes": "{minutes} min",
    "teams.none": "none",
    "teams.none_yet": "none yet",
    "teams.begun": "Its sitting has begun.",
    "teams.add": "Add a team",
    "teams.add.title": "What is the new team called?",
    "teams.rename": "What is the team called?",
    "teams.name.label": "label of the team",
    "teams.name.taken": "There is a team {label} already. Choose another label.",
    "teams.school.label": "code of the school",
    "teams.cup_twice": (
        "Sitting {sitting}: two teams have cup {number}. In Teams, give one of them another."
    ),
    "teams.label_twice": "Two teams are called {label}. In Teams, rename one, or make them one.",
    "teams.all_locked": (
        "All answers are locked: nobody can join any more. To let a team in, go a step back "
        "in Results."
    ),
    "teams.final": "The results are final. A step back in Results opens them.",
    "teams.back": "Not here:\n{count}",
    "teams.back.which": "Which team takes part again?",
    "teams.back.title": "Does {label} take part again?",
    "teams.back.body": "It was taken out: {reason}. Its cup and answers count again.",
    "teams.back.yes": "Yes, again",
    "teams.back.no": "No",
    "teams.locked": "The answers of its division are locked: a change needs a reason.",
    "teams.why": "Why is it changed now?",
    "teams.why.offers": "typed wrongly|told by the school|wrong division",
    "teams.changed": "{label} changed: {reason}",
    "teams.left": "{label} takes no part: {reason}",
    "teams.row.cup": "Number on the cup",
    "teams.row.label": "Label",
    "teams.row.division": "Division",
    "teams.row.sitting": "Sitting",
    "teams.row.members": "Students in the team",
    "teams.row.absent": "Absent today",
    "teams.row.extra": "Extra minutes",
    "teams.row.school": "School code",
    "teams.leave": "Takes no part",
    "teams.leave.title": "Why does {label} take no part?",
    "teams.leave.offers": "did not come|ill|entered twice",
    "teams.reason": "reason",
    "teams.merge": "Is the same as…",
    "teams.merge.into": "Which team is {label} the same as?",
    "teams.merge.title": "Is {label} the same team as {into}?",
    "teams.merge.body": "Cup and answers of {into} count. Those of {label} are kept, and do not.",
    "teams.merge.yes": "Yes, one team",
    "teams.merge.no": "No, two",
    "teams.merged": "the same team as {label}",
    "teams.file": "From\na file",
    "teams.file.which": "Which file has the teams?",
    "teams.file.columns": "CSV with a first line: label, school, division, sitting, members.",
    "teams.file.none": "No CSV file found. Plug the stick in, wait a moment, come back here.",
    "teams.file.taken": ("{count} team is in.", "{count} teams are in."),
    "teams.file.unreadable": "{name} cannot be read as text. Save the table as CSV, UTF-8.",
    "teams.file.heading": (
        "The file's first line names its columns: label, and those of these that you need: "
        "{columns}."
    ),
    "teams.file.no_csv": "This is no CSV file: {why}. Save the table as CSV, then try again.",
    "teams.file.cells": (
        "In line {line} there are more than {wanted} cells. Put a name with a comma in quotes."
    ),
    "teams.file.no_label": "In line {line} the label is missing. Give each team one.",
    "teams.file.locked": (
        "In line {line} the division {division} is locked: nobody can join it. "
        "Go a step back in Results first."
    ),
    "teams.file.there": (
        "In line {line}: there is a team {label} in this round already. Take the line out, "
        "or give it another label."
    ),
    "teams.file.twice": "In line {line} {label} comes a second time. Give each team its own label.",
    "teams.file.number": (
        "In line {line}, {column} is {typed}. Write a whole number from {low} to {high}."
    ),
}
