"""What the tests of several rooms share."""

from __future__ import annotations

import pytest

from tests.helpers.command import Command


@pytest.fixture
def gramstand(capsys: pytest.CaptureFixture[str]) -> Command:
    """The command line, in this process."""
    return Command(capsys)
