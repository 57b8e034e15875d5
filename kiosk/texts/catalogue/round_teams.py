"""Texts of the teams of a round."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "teams.file.heading": (
        "The file's first line names its columns: label, and those of these that you need: "
        "{columns}."
    ),
    "teams.file.no_csv": "This is no CSV file: {why}. Save the table as CSV, then try again.",
    "teams.file.cells": (
        "In line {line} there are more than {wanted} cells. Put a name with a comma in quotes."
    ),
    "teams.file.no_label": "In line {line} the label is missing. Give each team one.",
    "teams.file.twice": "In line {line} {label} comes a second time. Give each team its own label.",
    "teams.file.number": (
        "In line {line}, {column} is {typed}. Write a whole number from {low} to {high}."
    ),
}
