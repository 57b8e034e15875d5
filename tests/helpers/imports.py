"""What a source imports and calls, read from its text; and the list of our modules."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGES = ("drivers", "kiosk")
LATE = {"import_module", "importlib.import_module", "__import__"}


@dataclass(frozen=True)
class Import:
    """One thing that is fetched: the module, and the name out of it if one was named."""

    module: str
    name: str | None
    line: int

    @property
    def path(self) -> str:
        """Module and name as one dotted path; a name may be a module itself."""
        return f"{self.module}.{self.name}" if self.name else self.module


def within(path: str, place: str) -> bool:
    """Whether a dotted path is ``place`` or lies in it."""
    return path == place or path.startswith(f"{place}.")


def imports_in(tree: ast.AST, module: str, *, is_package: bool) -> Iterator[Import]:
    """Every import of a source, wherever it stands, relative ones resolved, literal calls too."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (Import(alias.name, None, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            origin = _origin(node, module, is_package=is_package)
            yield from (Import(origin, alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.Call) and called(node) in LATE:
            for argument in node.args[:1]:
                if isinstance(argument, ast.Constant) and isinstance(argument.value, str):
                    yield Import(argument.value, None, node.lineno)


def _origin(node: ast.ImportFrom, module: str, *, is_package: bool) -> str:
    if not node.level:
        return node.module or ""
    above = module.split(".")[: len(module.split(".")) - node.level + is_package]
    return ".".join([*above, *([node.module] if node.module else [])])


def called(node: ast.Call) -> str:
    """The last two words of what is called: ``date.today`` for ``datetime.date.today()``."""
    return ".".join(ast.unparse(node.func).split(".")[-2:])


def module_name(file: Path) -> str:
    """The dotted name of a file of this repository."""
    parts = file.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def our_modules() -> dict[str, Path]:
    """Every module of the packages, by its dotted name."""
    files = (file for package in PACKAGES for file in sorted((ROOT / package).rglob("*.py")))
    return {module_name(file): file for file in files}
