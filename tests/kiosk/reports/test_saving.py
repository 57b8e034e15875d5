"""Saved sheets overwrite nothing, leave nothing half written, and say in words what is wrong."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from pytest_mock import MockerFixture

from kiosk.evidence import Source
from kiosk.reports.key_papers import save_key_papers
from kiosk.reports.saving import PaperError, papers_folder, save_pdf
from kiosk.settings import Paper
from tests.helpers.papers import kept_key, words_on


def test_a_folder_is_made_for_the_first_sheet(tmp_path: Path) -> None:
    saved = save_pdf(b"one", tmp_path / "papers" / "of today", "Jar C label")
    assert saved == tmp_path / "papers" / "of today" / "Jar C label.pdf"
    assert saved.read_bytes() == b"one"


def test_what_is_there_already_stays_as_it_is(tmp_path: Path) -> None:
    names = [save_pdf(data, tmp_path, "Jar C label").name for data in (b"one", b"two", b"three")]
    assert names == ["Jar C label.pdf", "Jar C label (2).pdf", "Jar C label (3).pdf"]
    assert [(tmp_path / name).read_bytes() for name in names] == [b"one", b"two", b"three"]


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (errno.ENOSPC, "is full. Make room on it"),
        (errno.EROFS, "must not be written"),
        (errno.EACCES, "must not be written"),
        (errno.EIO, "could not be written (Input/output error)"),
    ],
)
def test_a_failure_is_told_in_words_and_leaves_no_file(
    tmp_path: Path, mocker: MockerFixture, number: int, said: str
) -> None:
    failure = OSError(number, os.strerror(number))
    mocker.patch("kiosk.reports.saving.os.fsync", side_effect=failure)
    with pytest.raises(PaperError) as caught:
        save_pdf(b"one", tmp_path, "Jar C label")
    assert said in str(caught.value)
    assert str(tmp_path) in str(caught.value)
    assert list(tmp_path.iterdir()) == []


def test_a_file_in_the_place_of_the_folder_is_named(tmp_path: Path) -> None:
    (tmp_path / "papers").write_bytes(b"")
    with pytest.raises(PaperError, match="papers is no folder"):
        save_pdf(b"one", tmp_path / "papers", "Jar C label")
    with pytest.raises(PaperError, match="is no folder"):
        save_pdf(b"one", tmp_path / "papers" / "deeper", "Jar C label")


def test_papers_go_into_a_folder_of_the_users_documents(monkeypatch: pytest.MonkeyPatch) -> None:
    documents = Path("documents").absolute()
    monkeypatch.setenv("XDG_DOCUMENTS_DIR", str(documents))
    assert papers_folder() == documents / "Gramstand"


def test_a_key_gets_two_labels_and_a_card(tmp_path: Path) -> None:
    label, card = save_key_papers(kept_key(), tmp_path, Paper.LETTER)
    assert (label.name, card.name) == ("Jar W label.pdf", "Jar W key card.pdf")
    assert words_on(label.read_bytes()) == "W W"
    assert "15 234 pieces" in words_on(card.read_bytes())


def test_papers_of_a_simulated_key_say_so_in_their_names(tmp_path: Path) -> None:
    papers = save_key_papers(kept_key(source=Source.SIMULATED), tmp_path, Paper.A4)
    assert ["(simulated)" in paper.name for paper in papers] == [True, True]
