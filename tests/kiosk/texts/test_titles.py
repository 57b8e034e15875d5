"""An instruction is read at a glance: one sentence of at most eight words."""

from __future__ import annotations

import re

from kiosk.procedures.count_samples import CountSamples
from kiosk.procedures.fill_container import FillContainer
from kiosk.procedures.hand_in import HandIn
from kiosk.procedures.throw_away import ThrowAway
from kiosk.procedures.weigh_empty import WeighEmpty
from kiosk.texts.catalogue import ENGLISH

PROCEDURES = (WeighEmpty, HandIn, CountSamples, FillContainer, ThrowAway)
TITLES = sorted(
    {key for key in ENGLISH if re.search(r"\.title(_|$)", key)}
    | {ask.title for procedure in PROCEDURES for ask in procedure.ASKS.values()}
)
MOST_WORDS = 8
NAMES = {"bench.title", "key.done.title"}  # what is there, not what to do
# What is the matter, then what to do about it; or both halves of one errand.
IN_TWO_PARTS = {
    "cup.early.title",
    "cup.fill.title",
    "hand_in.early.title",
    "key.light_tray.title",
    "key.stopping.title",
    "trouble.below_zero.title",
    "trouble.too_heavy.title",
}


def text_of(key: str) -> str:
    entry = ENGLISH[key]
    assert isinstance(entry, str), f"{key} is a pair"
    return entry


def test_a_title_has_eight_words_at_most() -> None:
    assert [key for key in TITLES if len(text_of(key).split()) > MOST_WORDS] == []


def test_a_title_is_one_sentence() -> None:
    wrong = [key for key in sorted(set(TITLES) - NAMES) if not is_whole(key)]
    assert wrong == [], "it begins or ends in the middle, or there are more"


def is_whole(key: str) -> bool:
    sentences = re.findall(r"[^.?!]+[.?!](?=\s|$)", text_of(key))
    wanted = 2 if key in IN_TWO_PARTS else 1
    return "".join(sentences) == text_of(key) and len(sentences) == wanted


def test_the_exceptions_are_still_there() -> None:
    assert set(TITLES) >= NAMES | IN_TWO_PARTS
