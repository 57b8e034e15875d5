from __future__ import annotations

import pytest

from kiosk.estimating.scatter import CLASS_CV_PERCENT, PRIOR_DOF, PriorScatter, ScatterClass


def test_every_class_has_its_scatter() -> None:
    assert CLASS_CV_PERCENT.keys() == set(ScatterClass)


def test_only_not_knowing_has_none() -> None:
    assert [kind for kind, cv in CLASS_CV_PERCENT.items() if cv is None] == [ScatterClass.UNKNOWN]


def test_a_word_is_worth_twenty_degrees_of_freedom() -> None:
    assert PriorScatter(relative=0.1).dof == PRIOR_DOF == 20


@pytest.mark.parametrize("relative", [0.0, -0.1, 1.01, float("nan")])
def test_no_scatter_like_that(relative: float) -> None:
    with pytest.raises(ValueError, match="up to 100 per cent"):
        PriorScatter(relative=relative)
