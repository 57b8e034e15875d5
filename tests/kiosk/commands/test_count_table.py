from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.commands.console import BadInputError
from kiosk.commands.count_cells import Cells
from kiosk.commands.count_table import read_table

HEADER = "jar,pieces,readability,empty,filled,sample_1,sample_2\n"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "jars.csv"


def cells(file: Path, text: str, default: str | None = None, encoding: str = "utf-8") -> Cells:
    file.write_text(text, encoding=encoding, newline="")
    [row] = read_table(str(file))
    return row.cells(default_readability=default)


def test_a_row_as_it_was_typed(file: Path) -> None:
    assert cells(file, HEADER + "A,100,0.10,5.0,98,3.4,3.50\n") == Cells(
        pieces="100", samples=("3.4", "3.50"), filled="98", empty="5.0", readability="0.10"
    )


def test_blank_cells_are_left_out(file: Path) -> None:
    read = cells(file, HEADER + "A,100,,,98,3.4, \n")
    assert (read.readability, read.empty, read.samples) == (None, None, ("3.4",))


def test_a_readability_for_all_fills_the_blank_ones(file: Path) -> None:
    assert cells(file, HEADER + "A,100,,,98,3.4,3.5\n", "0.1").readability == "0.1"


def test_the_readability_of_the_row_comes_first(file: Path) -> None:
    assert cells(file, HEADER + "A,100,1,,98,3.4,3.5\n", "0.1").readability == "1"


def test_samples_come_by_their_numbers(file: Path) -> None:
    text = "sample_10,sample_2,jar,pieces,filled,sample_1\n3,2,A,100,98,1\n"
    assert cells(file, text).samples == ("1", "2", "3")


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
def test_with_and_without_a_byte_order_mark(file: Path, encoding: str) -> None:
    assert cells(file, HEADER + "A,100,,,98,3.4,\n", encoding=encoding).pieces == "100"


def test_lines_may_end_as_in_windows_and_cells_may_be_quoted(file: Path) -> None:
    text = (HEADER + '"A, left",100,,,"98",3.4,\n').replace("\n", "\r\n")
    file.write_text(text, encoding="utf-8", newline="")
    assert [row.jar for row in read_table(str(file))] == ["A, left"]


def test_blank_lines_and_columns_do_not_matter(file: Path) -> None:
    text = HEADER.replace("\n", ",,\n") + ",,,,,,,,\n\nA,100,,,98,3.4,,,\n"
    assert cells(file, text).filled == "98"


def test_too_many_cells_are_a_bad_row(file: Path) -> None:
    with pytest.raises(ValueError, match="more cells than the table"):
        cells(file, HEADER + "A,100,,,98,3.4,3.5,3.6\n")


def test_a_row_names_its_jar(file: Path) -> None:
    with pytest.raises(ValueError, match="Row 1 does not name its jar"):
        cells(file, HEADER + ",100,,,98,3.4,3.5\n")


@pytest.mark.parametrize(
    ("data", "complaint"),
    [
        (b"", "is empty: its first line must name the columns"),
        (b"jar,pieces\nA,100\n", "lacks the column filled, sample_1"),
        (b"jar;pieces;filled;sample_1\n", "lacks the column .* separated by commas"),
        (b"jar,pieces,filled,sample_1,smaple_2\n", "a column smaple_2 that means nothing"),
        (b"jar,pieces,filled,sample_1,sample_0\n", "a column sample_0 that means nothing"),
        (b"jar,pieces,filled,sample_1,jar\n", "the column jar more than once"),
        (
            "jar,pieces,filled,sample_1\nA\u00e9".encode("latin-1"),
            "no table|is not a table in UTF-8",
        ),
        ("jar,pieces,filled,sample_1\n".encode("utf-16"), "is not a table in UTF-8"),
        (b'jar,pieces,filled,sample_1\n"A,100,98,3.4\n', "cannot be read: unexpected end of data"),
    ],
)
def test_a_table_that_cannot_be_used(file: Path, data: bytes, complaint: str) -> None:
    file.write_bytes(data)
    with pytest.raises(BadInputError, match=complaint):
        list(read_table(str(file)))


def test_a_folder_is_no_table(tmp_path: Path) -> None:
    with pytest.raises(BadInputError, match="cannot be read"):
        list(read_table(str(tmp_path)))
