"""Prints how long a kiosk takes for a press in a round of a whole district.

    python -m tests.benchmarks.many_teams [--teams 2000] [--pictures FOLDER] [--size 800x480]

So many teams in four divisions and sittings of 20, everything but the first sitting weighed and
typed twice, and the same teams once more in one division; put into a records file and opened by
touch. Each line is a press, by this machine's clock: "press" until the frame after it, whatever is
read or written down included, "beat" what the kiosk takes for one turn of balance, pan and screen
while the page lies in front, which comes about twenty times a second.
"""

from __future__ import annotations

import argparse
import cProfile
import pstats
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from kiosk.ui.environment import prepare

DIVISIONS = ("Grades 3 to 4", "Grades 5 to 6", "Grades 7 to 8", "Grades 9 to 10")
DISTRICT, ONE = "District round", "One division"
MOST_S = 0.3
BEATS = 5
A_BEAT_S = 0.05


def main() -> None:
    """Make the rounds, walk through them and print the times."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--teams", type=int, default=2000)
    parser.add_argument("--pictures", type=Path)
    parser.add_argument("--size", default="800x480")
    parser.add_argument("--profile", default="", help="the press of which a profile is printed")
    options = parser.parse_args()
    width, height = map(int, options.size.split("x"))
    prepare(width=width, height=height, offscreen=True)
    with TemporaryDirectory() as folder:
        walk = Walk(Path(folder), options.teams, options.pictures, (width, height))
        walk.profiled = options.profile
        walk.play()


class Walk:
    """Through rounds of so many teams; records and papers lie in ``folder``."""

    def __init__(
        self, folder: Path, teams: int, pictures: Path | None, size: tuple[int, int]
    ) -> None:
        from kiosk.reports import saving
        from tests.helpers.journey import Journey
        from tests.helpers.many_teams import ManyTeams

        saving.user_documents_path = lambda **_: folder  # type: ignore[attr-defined]  # imported
        self.folder, self.teams, self._pictures = folder, teams, pictures
        self._shown = 0
        self.profiled = ""
        district = ManyTeams(DISTRICT, teams, DIVISIONS, DIVISIONS[-1:])
        self._notes = district.notes
        for each in (district, ManyTeams(ONE, teams, DIVISIONS[:1], DIVISIONS[:1])):
            each.keep(folder / "records")
        print(f"{len(district.notes)} notes in a round of {teams} teams", flush=True)
        self.journey = Journey(folder / "records", size=size)

    # Measuring -------------------------------------------------------------------------------

    def timed(self, what: str, do: Callable[[], object]) -> None:
        """Print how long that took, and how long a beat takes from then on."""
        profile = cProfile.Profile() if what == self.profiled else None
        began = time.perf_counter()
        if profile is not None:
            profile.runcall(do)
        else:
            do()
        press = time.perf_counter() - began
        began = time.perf_counter()
        for _ in range(BEATS):
            self.journey.kiosk.step()
            self.journey.kiosk.drain()
        beat = (time.perf_counter() - began) / BEATS
        mark = "  slow" if press > MOST_S else ""
        print(f"{what:44}{press:8.3f} s press {1000 * beat:8.1f} ms beat{mark}", flush=True)
        if profile is not None:
            pstats.Stats(profile).sort_stats("cumulative").print_stats(45)

    def press(self, name: str, what: str = "") -> None:
        """One touch, measured without the search for its place."""
        self.journey.wait(0.5)
        found = self.journey.find(name)
        left, bottom, width, height = found.target()
        place = found.parent.to_window(left + width / 2, bottom + height / 2)
        self.timed(what or " ".join(name.split()), lambda: self.journey.touch(*place))
        self.picture(what or name)

    def back(self, times: int = 1) -> None:
        """As often back."""
        for _ in range(times):
            self.journey.tap("Back")

    def picture(self, name: str) -> None:
        """Keep what is to be seen."""
        if self._pictures is not None:
            self._pictures.mkdir(parents=True, exist_ok=True)
            self._shown += 1
            name = "-".join(name.lower().split()).replace("/", "-")
            self.journey.picture(self._pictures / f"{self._shown:02d}-{name}.png")

    # The way ---------------------------------------------------------------------------------

    def play(self) -> None:
        """Through both rounds."""
        self.reading()
        self.journey.tap("Run a round")
        self.press(DISTRICT, "opening the round")
        for part in (self.lists, self.sheet, self.others, self.cups, self.results):
            part()
        self.journey.tap("Run a round")
        self.press(ONE, "opening the round of one division")
        self.of_one_division("of all teams")
        self.journey.close()

    def reading(self) -> None:
        """The state by itself."""
        from kiosk.rounds.state import RoundState

        began = time.perf_counter()
        RoundState.of(self._notes)
        self._notes = []
        print(f"{'building the state':44}{time.perf_counter() - began:8.3f} s", flush=True)

    def lists(self) -> None:
        """The pages that list teams, sittings and keys."""
        self.press("Teams")
        self.to_first_team()
        self.press("Avocet 1", "one team")
        self.press("Back", "back to the teams")
        self.home_to_hub()
        for name in ("Jars and boxes", "Before we begin", "Papers", "Clock", "Cups"):
            self.press(name)
            self.home_to_hub()

    def to_first_team(self) -> None:
        """Through the sections, where there are any, to the first team."""
        while "Avocet 1" not in self.journey.texts():
            self.press(self._rows()[0].text)

    def _rows(self) -> Any:
        sheet: Any = self.journey.scene.sheet
        return sheet.rows

    def home_to_hub(self) -> None:
        """Back until the hub is there."""
        while "Jars and boxes" not in self.journey.texts():
            self.back()

    def sheet(self) -> None:
        """One sheet, each digit and each row."""
        from kiosk.rounds.sheets import sheet_rows

        self.press("Answers")
        self.to_first_team()
        self.press("Avocet 1", "who types")
        self.journey.tap("R")
        self.journey.tap("k")
        self.press("Done", "the sheet")
        state = self.journey.desk.room.state
        for number, _ in enumerate(sheet_rows(state, state.teams[0])):
            for digit in "412" if number == 0 else "4":
                self.press(digit, f"digit {digit}") if number == 0 else self.journey.tap(digit)
            if number < 5:
                self.press("Next row") if number < 2 else self.journey.tap("Next row")
            else:
                self.press("Last row")
        self.home_to_hub()

    def others(self) -> None:
        """Another kiosk notes something."""
        from kiosk.records.entries import new_id
        from kiosk.records.store import Store
        from kiosk.rounds.contents import Answer, Typing
        from kiosk.settings import Task

        room = self.journey.desk.room
        self.press("Answers", "answers again")
        team = room.state.teams[1].team
        answer = Answer(team=team, task=Task.COUNT_LOW, typing=Typing.FIRST, by="XY")
        note = room.state.next_note(answer, at=room.now_utc(), new_id=new_id)
        store = Store(str(self.folder / "records"))
        store.save(note)
        store.close()

        def follow() -> None:
            room.follow()
            self.journey.until(lambda: room.state.last == note.id, "the note of another kiosk")

        self.timed("one note of another kiosk", follow)
        self.home_to_hub()

    def cups(self) -> None:
        """The cup table of the first sitting."""
        from kiosk.procedures.queue_steps import QueueState
        from tests.helpers.queue_journey import until_state

        self.press("Cups", "cups again")
        while not any("illed" in row.text for row in self._rows()):
            self.press(self._rows()[0].text)
        self.press(next(row.text for row in self._rows() if "illed" in row.text), "cup table")
        self.journey.tap("Weigh filled cups")  # the clock of this sitting was not started
        until_state(self.journey, QueueState.PUT_ON)
        self.journey.tap_thing("cup 1 filled")
        self.timed("a cup recorded", lambda: until_state(self.journey, QueueState.RECORDED))
        self.journey.tap("Put away")
        self.picture("a cup recorded")
        self.journey.tap("clear pan") if "clear pan" in self.journey.texts() else None
        self.home_to_hub()

    def results(self) -> None:
        """A division that waits for the first sitting, then one that is released."""
        self.press("Results")
        self.press(DIVISIONS[0], "results of an open division")
        self.back()
        self.press(DIVISIONS[-1], "results of a division")
        self.of_division("of a division")
        while self.journey.screen != "home":
            self.back()

    def of_one_division(self, whose: str) -> None:
        """All teams in one division."""
        self.press("Results", f"results {whose}")
        self.of_division(whose)

    def of_division(self, whose: str) -> None:
        """Table, wall, a team's page, hints, paper."""
        self.press("Result list", f"table {whose}")
        self.timed("draws till ranges are there", self._drawn)
        self.picture("table with ranges")
        self.press("tents", f"tents {whose}")
        self.back()
        self.press("Wall view", f"wall {whose}")
        self.journey.kiosk.home()
        self.journey.step()
        self.press("Correct an answer", f"correct {whose}")
        self.back()
        self.press("Print", f"papers {whose}")
        self.press("Result list", f"list on paper {whose}")
        self.timed("paper is there", self._printed)
        self.picture("printed")
        self.back()

    def _drawn(self) -> None:
        def ranges() -> bool:
            time.sleep(A_BEAT_S)  # as a screen does between two beats: the writer's thread works
            sheet: Any = self.journey.scene.sheet
            return all(line.safe for line in sheet.lines)

        self.journey.until(ranges, "ranges", 3000)

    def _printed(self) -> None:
        self.journey.until(lambda: any(self.folder.rglob("*.pdf")), "the list on paper", 3000)
        for file in self.folder.rglob("*.pdf"):
            if self._pictures is not None:
                (self._pictures / file.name).write_bytes(file.read_bytes())
            file.unlink()


if __name__ == "__main__":
    main()
