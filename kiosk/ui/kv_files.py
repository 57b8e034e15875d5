"""Loads the rules that lie beside a class, once: a kv file applied twice doubles its children."""

from __future__ import annotations

from pathlib import Path

from kivy.lang import Builder

_loaded: set[Path] = set()


def load(module_file: str) -> None:
    """Load ``name.kv`` beside ``name.py``, given as ``__file__``; a second call does nothing."""
    rules = Path(module_file).resolve().with_suffix(".kv")
    if rules in _loaded:
        return
    Builder.load_file(str(rules))
    _loaded.add(rules)
