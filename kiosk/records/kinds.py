"""What can carry a label: a number or a letter that is given once at a time."""

from __future__ import annotations

CUP, JAR, BOX = "cup", "jar", "box"
