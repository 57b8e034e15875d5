"""What the pages of a round show that other sheets do not: rows to tap, and words to type."""

from __future__ import annotations

from dataclasses import dataclass

from kiosk.procedures.procedure import PersonEvent
from kiosk.ui.presenters.views import ButtonView, SheetView


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """One row; tapping it says `says`, a row without that cannot be tapped.

    `sign` is a verdict or state at its left ("fine", "not fine", "cannot tell", "lock", "to come",
    or "" for none), `value` stands at its right, `note` in smaller letters behind or below `text`.
    `look` is plain, done (quiet) or now (the one to go on with).
    """

    text: str
    note: str = ""
    value: str = ""
    sign: str = ""
    look: str = "plain"
    says: PersonEvent | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsView(SheetView):
    """Rows over the whole width, in one or two columns; a presenter gives one page of them.

    `corner` stands at the right of the title, `body` below it. Below the rows: `home`, then `turn`
    (the next page), `beside_home`, `second` and `main`, whichever there are.
    """

    screen: str = "rows"
    corner: str = ""
    rows: tuple[RowView, ...] = ()
    columns: int = 1
    turn: ButtonView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TextView(SheetView):
    """A few words to type: a name, a reason. `label` says what, `hint` what is wrong with it.

    Keys say TYPE with a character, RUB_OUT and ENTER; `offers` are whole texts to take with one tap
    (they say CHOOSE with the text).
    """

    screen: str = "text"
    label: str = ""
    typed: str = ""
    hint: str = ""
    offers: tuple[str, ...] = ()


ROWS_A_PAGE = 5  # of one column, in every size of panel
