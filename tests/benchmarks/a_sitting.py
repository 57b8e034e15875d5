"""Plays a sitting by touch on the simulated balance, from a file of teams to the final list.

    python -m tests.benchmarks.a_sitting [--teams 20] [--pictures FOLDER] [--size 1024x600]

Cups are weighed empty and handed in, the kiosk is closed and opened again in between, every sheet
is typed twice by two people with a mismatch in it, one answer is decided by the judge, results are
locked, released, protested against, corrected, made final and saved as PDF. Prints how long each
part takes at the table: the time that hands, balance and kiosk need by the simulated clock, with
a tenth of a second between two touches.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from kiosk.ui.environment import prepare

BIRDS = (
    "Avocet", "Bunting", "Curlew", "Dunlin", "Eider", "Fulmar", "Goldcrest", "Heron", "Ibis",
    "Jackdaw", "Kestrel", "Linnet", "Merlin", "Nuthatch", "Osprey", "Pipit", "Quail", "Redstart",
    "Siskin", "Teal",
)  # fmt: skip
KEYS = {"A": 400, "B": 4000, "C": 15000}
BOXES = {1: "900", 2: "2000", 3: "3500"}
ACTUAL = {
    "count low": 400, "count middle": 4000, "count high": 15000,
    "volume 1": 900, "volume 2": 2000, "volume 3": 3500,
}  # fmt: skip


def main() -> None:
    """Play it and print the times."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--teams", type=int, default=len(BIRDS))
    parser.add_argument("--pictures", type=Path)
    parser.add_argument("--size", default="1024x600")
    options = parser.parse_args()
    width, height = map(int, options.size.split("x"))
    prepare(width=width, height=height, offscreen=True)
    with TemporaryDirectory() as folder:
        Sitting(Path(folder), BIRDS[: options.teams], options.pictures, (width, height)).play()


class Sitting:
    """One sitting of these teams; records, papers and the file of teams lie in ``folder``."""

    def __init__(
        self, folder: Path, teams: tuple[str, ...], pictures: Path | None, size: tuple[int, int]
    ) -> None:
        from kiosk.records.store import Store
        from kiosk.reports import saving
        from tests.helpers.kept_keys import keep_box, keep_jar

        self.folder, self.teams, self._pictures, self._size = folder, teams, pictures, size
        self._shown = 0
        saving.user_documents_path = lambda: folder
        (folder / "Gramstand").mkdir()
        rows = "".join(f"{team}\n" for team in teams)
        (folder / "Gramstand" / "teams.csv").write_text(f"label\n{rows}")
        store = Store(str(folder / "records"))
        for letter, count in KEYS.items():
            keep_jar(store, letter, count)
        for number, cm3 in BOXES.items():
            keep_box(store, number, cm3)
        store.close()
        self.journey = self._open()

    def _open(self):  # type: ignore[no-untyped-def]  # a Journey; Kivy comes along only here
        from tests.helpers.journey import Journey

        return Journey(self.folder / "records", size=self._size)

    def restart(self) -> None:
        """Close the kiosk and open it again."""
        self.journey.close()
        self.journey = self._open()

    @contextmanager
    def timed(self, what: str) -> Iterator[None]:
        """Print how long a part took by the table's clock."""
        began = self.journey.desk.world.now()
        yield
        print(f"{what:44}{self.journey.desk.world.now() - began:8.1f} s", flush=True)

    def taps(self, *names: str) -> None:
        """One touch after the other."""
        for name in names:
            self.journey.tap(name)

    def picture(self, name: str) -> None:
        """Keep what is to be seen."""
        if self._pictures is not None:
            self._pictures.mkdir(parents=True, exist_ok=True)
            self._shown += 1
            self.journey.picture(self._pictures / f"{self._shown:02d}-{name}.png")

    def play(self) -> None:
        """From the file of teams to the final list."""
        with self.timed("a new round, teams from a file, six keys"):
            self.set_up()
        with self.timed(f"{len(self.teams)} empty cups"):
            self.cups("Empty cups", "empty")
        with self.timed("day list, papers, the clock starts"):
            self.start_clock()
        self.restart()
        with self.timed(f"{len(self.teams)} cups handed in"):
            self.cups("Filled cups", "filled")
        with self.timed("the clock is stopped"):
            self.stop_clock()
        with self.timed(f"{len(self.teams)} sheets typed once"):
            self.type_sheets("KL")
        with self.timed(f"{len(self.teams)} sheets typed again, one mismatch"):
            self.type_sheets("MN")
        with self.timed("the judge decides"):
            self.judge()
        with self.timed("lock, release, correct, protest, final, print"):
            self.results()
        self.journey.close()

    def set_up(self) -> None:
        """A round with its teams and keys."""
        self.taps("Run a round", "A new round", "Autumn round", "Done", "Teams", "From\na file")
        self.taps("teams.csv")
        self.picture("teams")
        self.taps("Back", "Jars and boxes")
        tasks = (
            ("Jar in the hundreds", "jar A"), ("Jar in the thousands", "jar B"),
            ("Jar of the high count", "jar C"), ("First box", "box 1"), ("Second box", "box 2"),
            ("Third box", "box 3"),
        )  # fmt: skip
        for task, key in tasks:
            self.taps(task, key)
        self.picture("keys")
        self.taps("Back", "Rules", "Time for protests", "0 min", "Back")
        self.picture("hub")
        self.home()

    def cups(self, pass_: str, how: str) -> None:
        """All cups of one pass."""
        from tests.helpers.queue_journey import go_to, weigh

        go_to(self.journey, pass_)
        for number in range(1, len(self.teams) + 1):
            weigh(self.journey, f"cup {number} {how}")
            if number == 3:
                self.taps("Put away")
                self.picture(f"cup-table-{how}")
        self.picture(f"cups-{how}")
        if self.journey.kiosk.controls.things_out:
            self.taps("Put away")
        self.home()

    def home(self) -> None:
        """Back to the table."""
        while self.journey.screen != "home":
            self.taps("Back")

    def enter(self) -> None:
        """To the hub of the round."""
        self.taps("Run a round", "Autumn round")

    def start_clock(self) -> None:
        """The papers, and the half-hour begins."""
        self.enter()
        self.taps("Before we begin")
        self.picture("day")
        self.taps("Back", "Clock", "Sitting 1", "Start")
        self.taps("Start")
        self.picture("wall")
        self.journey.kiosk.home()  # a touch on the wall
        self.journey.step()
        self.home()

    def stop_clock(self) -> None:
        """All teams are done before the time."""
        self.enter()
        self.taps("Clock", "Sitting 1", "Stop\nfor all", "all teams are done", "Done")
        self.home()

    def estimate(self, place: int, task: str) -> str:
        """What a team answered: each a little farther off, over as often as under, two the same."""
        rank = place - place % 2 if place < 4 else place
        row = list(ACTUAL).index(task)
        off = 0.005 + 0.011 * rank + 0.004 * ((7 * row + 3 * rank) % 5)
        return str(round(ACTUAL[task] * (1 + off if (row + rank) % 2 else 1 - off)))

    def type_sheets(self, by: str) -> None:
        """Each sheet once; in the second typing one number is typed wrong at first."""
        from kiosk.rounds.sheets import sheet_rows

        self.enter()
        self.taps("Answers")
        journey, state = self.journey, self.journey.desk.room.state
        for place, team in enumerate(state.teams):
            self._find_row(team.label)
            self.taps(team.label)
            if place == 0:
                for letter in (by[0], by[1:].lower()):  # a capital by itself at the start
                    journey.tap(letter)
                self.taps("Done")
            for row_place, row in enumerate(sheet_rows(state, team)):
                if (place, row_place, by) == (1, 0, "KL"):
                    self.taps("Cannot read")
                    continue
                digits = self.estimate(place, row.task)
                if (place, row_place, by) == (2, 0, "MN"):
                    self._type("9", "Next row")
                    self.picture("mismatch")
                last = row_place == 5
                self._type(digits, "Last row" if last else "Next row")
        self.picture(f"sheets-{by}")
        self.home()

    def _find_row(self, label: str) -> None:
        for _ in range(4):
            if label in self.journey.texts():
                return
            turn = next(text for text in self.journey.texts() if " of " in text and len(text) < 8)
            self.taps(turn)

    def _type(self, digits: str, main: str) -> None:
        for digit in digits:
            self.journey.tap(digit)
        self.taps(main)
        if any("press once more" in text for text in self.journey.texts()):
            self.taps(main)  # over the limit, as it stands on the sheet

    def judge(self) -> None:
        """What could not be read."""
        from kiosk.rounds.typed_answers import for_the_judge

        self.enter()
        self.taps("Answers", "Judge: 1 open")
        self.picture("judge")
        (open_,) = for_the_judge(self.journey.desk.room.state)
        row = next(text for text in self.journey.texts() if text.startswith("Bunting,"))
        self.taps(row)
        answer = self.estimate(1, open_.task)
        shown = f"{int(answer):,}".replace(",", "\u2009")
        self.taps(shown, "so it stands on paper", "Done")
        self.home()

    def results(self) -> None:
        """From the lock to the final list on paper."""
        journey = self.journey
        self.enter()
        self.taps("Results", "Lock", "Lock", "Result list")
        journey.until(
            lambda: all(line.safe for line in journey.scene.sheet.lines),
            "how safe the places are",
            300,  # of the table's time; the draws are made beside it
        )
        self.picture("results-numbers")
        self.taps("tents")
        self.picture("results-tents")
        self.taps("Back", "Release", "Release")
        self.taps("Protests", "A protest", "Curlew")
        self.picture("protest")
        self.taps("cup", "the mass is wrong", "Done")
        self.picture("evidence")
        self.taps("Decide", "refused", "the score stands", "Done", "Back", "Back")
        self.taps("Correct an answer", "Curlew")
        self.picture("which-answer")
        row = next(text for text in journey.texts() if text.lower().startswith(("box 3", "third")))
        self.taps(row)
        self.picture("correct")
        journey.kiosk.text("3400")
        journey.step()
        self.taps("Done")
        self.picture("why")
        self.taps("typed wrongly", "Done")
        self.taps("Wall view")
        journey.wait(1.0)
        self.picture("results-wall")
        self.taps("coach", "Make final", "Make final")
        self.taps("Print", "Result list")
        journey.until(lambda: any(self.folder.rglob("*.pdf")), "the list on paper", 60)
        self.picture("printed")


if __name__ == "__main__":
    main()
