"""Which texts a source uses, read without running it."""

from __future__ import annotations

import ast
import re
import string
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tests.helpers.imports import our_modules

Catalogue = dict[str, str | tuple[str, str]]

SAID_IN_KV = re.compile(r"""\b(say|plural)\(\s*(['"])(.+?)\2""")
KEY = re.compile(r"[a-z][a-z0-9_]*(\.[a-z0-9_]+)+")
MODULES = our_modules()
FILE_ENDINGS = {"csv", "db", "json", "kv", "mo", "png", "sqlite", "ttf", "txt"}


@dataclass(frozen=True)
class Said:
    """A text asked for by its full key; ``places`` are the values given, None if not readable."""

    way: str
    key: str
    places: frozenset[str] | None
    line: int


@dataclass(frozen=True)
class Uses:
    """Texts asked for, other strings that look like keys, and patterns of keys put together."""

    said: tuple[Said, ...]
    named: frozenset[str]
    patterns: tuple[re.Pattern[str], ...]


def uses_in_python(source: str) -> Uses:
    """The uses in a Python source."""
    nodes = list(ast.walk(ast.parse(source)))
    pieces = {id(part) for node in nodes if isinstance(node, ast.JoinedStr) for part in node.values}
    return Uses(
        tuple(_said(nodes)),
        frozenset(
            node.value
            for node in nodes
            if isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in pieces
            and looks_like_a_key(node.value)
        ),
        tuple(_pattern(node) for node in nodes if isinstance(node, ast.JoinedStr)),
    )


def uses_in_kv(source: str) -> Uses:
    """The uses in a kv source; values are given there as in Python, but are not read."""
    said = [
        Said(found[1], found[3], None, source.count("\n", 0, found.start()) + 1)
        for found in SAID_IN_KV.finditer(source)
    ]
    return Uses(tuple(said), frozenset(), ())


def looks_like_a_key(text: str) -> bool:
    """Whether a string may be a key or the beginning of one, and no file's or module's name."""
    before, _, last = text.rpartition(".")
    return bool(KEY.fullmatch(text)) and last not in FILE_ENDINGS and before not in MODULES


def _said(nodes: Iterable[ast.AST]) -> Iterator[Said]:
    for node in nodes:
        if not isinstance(node, ast.Call) or not node.args:
            continue
        way, key = ast.unparse(node.func).rsplit(".", 1)[-1], node.args[0]
        if way in {"say", "plural"} and isinstance(key, ast.Constant):
            names = [keyword.arg for keyword in node.keywords]
            places = None if None in names else frozenset(name for name in names if name)
            yield Said(way, str(key.value), places, node.lineno)


def _pattern(node: ast.JoinedStr) -> re.Pattern[str]:
    parts = (
        re.escape(str(part.value)) if isinstance(part, ast.Constant) else r"\w+"
        for part in node.values
    )
    return re.compile("".join(parts))


def faults(uses: Uses, catalogue: Catalogue) -> list[str]:
    """What a source asks for and the catalogue cannot give."""
    return [
        *(fault for said in uses.said for fault in _faults_of(said, catalogue)),
        *(
            f"{name} is no text"
            for name in sorted(uses.named - {said.key for said in uses.said})
            if _area(name) in {_area(key) for key in catalogue} and not _below(name, catalogue)
        ),
    ]


def _faults_of(said: Said, catalogue: Catalogue) -> Iterator[str]:
    if said.key not in catalogue:
        yield f"line {said.line}: {said.key} is no text"
        return
    entry = catalogue[said.key]
    if isinstance(entry, tuple) != (said.way == "plural"):
        yield f"line {said.line}: {said.way}() is the wrong way to ask for {said.key}"
    lacking = _places(entry) - (said.places or frozenset()) - {"count"}
    if said.places is not None and lacking:
        yield f"line {said.line}: {said.key} also needs {', '.join(sorted(lacking))}"


def _places(entry: str | tuple[str, str]) -> set[str]:
    forms = (entry,) if isinstance(entry, str) else entry
    return {place for form in forms for _, place, *_ in string.Formatter().parse(form) if place}


def _area(key: str) -> str:
    return key.split(".")[0]


def _below(name: str, catalogue: Catalogue) -> list[str]:
    return [key for key in catalogue if key == name or key.startswith(f"{name}.")]


def unused(all_uses: Iterable[Uses], catalogue: Catalogue) -> set[str]:
    """The keys that nobody says, names, or puts together from a fixed beginning."""
    left = set(catalogue)
    for uses in all_uses:
        left -= {said.key for said in uses.said}
        left -= {key for name in uses.named for key in _below(name, catalogue)}
        left -= {key for key in left for pattern in uses.patterns if _made_by(pattern, key)}
    return left


def _made_by(pattern: re.Pattern[str], key: str) -> bool:
    begins_alike = pattern.pattern.startswith(re.escape(f"{_area(key)}."))
    return begins_alike and bool(pattern.fullmatch(key))
