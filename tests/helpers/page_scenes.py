"""Pages of a round as scenes: full rows, long words, and everything that can be missing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.rounds.contents import Typing
from kiosk.rounds.sheets import sheet_rows
from kiosk.texts import say
from kiosk.ui.pages.page import back_button
from kiosk.ui.presenters.page_views import ROWS_A_PAGE, RowsView, RowView, TextView
from kiosk.ui.presenters.scene import Scene
from kiosk.ui.presenters.sheet_views import over_limit, paper_view
from kiosk.ui.presenters.views import PanView, SheetView, StripView, button
from tests.helpers.round_notes import answer, said, with_teams

LONG_TEAMS = tuple(f"Hummingbirds {letter}" for letter in "ABCDEFGHIJKLMNO")
LONG = "Larch Hill Middle School, Grades 4 to 6"


def shown(sheet: SheetView) -> Scene:
    """With a strip, on a simulated scale."""
    return Scene(sheet=sheet, pan=PanView(), strip=StripView(words=("Round",), simulated=True))


def row(number: int, note: str = "Up to 1.5 points of a good answer hang on it.") -> RowView:
    """One of many."""
    signs = ("", "fine", "not fine", "cannot tell", "to come")
    looks = ("plain", "done", "now")
    return RowView(
        text=f"Jar in the thousands: jar {number}",
        note=note,
        value="15 234 pieces" if number % 2 else "",
        sign=signs[number % 5],
        look=looks[number % 3],
        says=None if number % 4 == 3 else PersonEvent(Person.CHOOSE, number),
    )


def half(number: int) -> RowView:
    """One in two columns."""
    if number % 3 == 2:
        return RowView(text="Weighed twice: what counts", value="the last mass")
    return replace(row(number, "Grades 7 to 8, sitting 12"), text="Hummingbirds Q", value="cup 17")


FULL = RowsView(
    title=f"{LONG}: which key is which task?",
    body="Sitting 2 is overfull: up to 20 teams work at once. A label is enough: no names.",
    corner="20 teams, 2 sittings",
    rows=tuple(map(row, range(ROWS_A_PAGE))),
    home=back_button(),
    turn=button("1 of 4", Person.MORE),
    beside_home=button("Other division", Person.UNDO),
    second=button("Large\nclock", Person.KEEP),
    main=button("A new round", Person.GO_ON),
)
WORDS = TextView(
    title="Why is the key changed after the start?",
    label="names with commas between them",
    typed="The jar of the high count was opened by somebody",
    hint="There is a team Great Crested Grebes already. Choose another label.",
    offers=("jar was opened", "counted again", "wrong jar chosen", "our mistake"),
    home=back_button(),
    main=button("Done", Person.ENTER),
)


def on_paper(
    typing: Typing, digits: str, *, present: int, kept: bool = False, hint: str = ""
) -> SheetView:
    """A sheet with a row of every kind: agreed, different, not read, not typed."""
    state = with_teams(LONG_TEAMS)
    team = state.teams[0]
    rows = sheet_rows(state, team)
    first = ("2500", "14200", "340", None, "460000", "3000")
    second = ("2500", "12200", "340")
    both = [
        *(answer(team.label, row.task, each) for row, each in zip(rows, first, strict=True)),
        *(
            answer(team.label, row.task, each, Typing.SECOND)
            for row, each in zip(rows, second, strict=False)
        ),
        answer(team.label, rows[3].task, None, Typing.SECOND).model_copy(
            update={"unreadable": True}
        ),
    ]
    upto = 2 if typing is Typing.FIRST else len(both)
    state = said(state, *both[:upto])
    if typing is Typing.FIRST and not hint:
        hint = over_limit(state, rows[present])
    return paper_view(
        state, team, typing, present=present, typed_now=digits, hint=hint, kept=kept
    )  # fmt: skip


def scenes() -> dict[str, Callable[[], Scene]]:
    """By name, made when they are wanted."""
    two = replace(FULL, columns=2, rows=tuple(map(half, range(2 * ROWS_A_PAGE))))
    bare = RowsView(title="Which round?", home=back_button())
    empty = replace(WORDS, typed="", hint="", offers=(), main=button("Done", state="off"))
    return {
        "rows": lambda: shown(FULL),
        "rows, two columns": lambda: shown(two),
        "rows, none": lambda: shown(bare),
        "words": lambda: shown(WORDS),
        "paper, first": lambda: shown(on_paper(Typing.FIRST, "12500", present=2)),
        "paper, second": lambda: shown(on_paper(Typing.SECOND, "46", present=4)),
        "paper, differs": lambda: shown(on_paper(Typing.SECOND, "", present=1)),
        "paper, typed elsewhere": lambda: shown(
            on_paper(
                Typing.SECOND, "2500", present=0, kept=True, hint=say("paper_typing.elsewhere")
            )
        ),
        "paper, not read elsewhere": lambda: shown(
            on_paper(Typing.SECOND, "", present=3, kept=True, hint=say("paper_typing.elsewhere"))
        ),
        "paper, locked": lambda: shown(
            on_paper(Typing.SECOND, "", present=5, hint=say("paper_typing.closed"))
        ),
        "words, none": lambda: shown(empty),
    }
