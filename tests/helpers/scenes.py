"""Every screen that can come, with the longest texts that can stand on it: each built afresh.

Team names of fourteen letters, numbers up to 99, eighteen cups out, 20 000 pieces, ten samples.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from enum import Enum

from drivers.errors import Reason
from kiosk.estimating.count_key import CountKey
from kiosk.estimating.pour_goal import AS_IT_COMES
from kiosk.procedures.balance_check import BalanceCheck, CheckState
from kiosk.procedures.check_jars import CheckJars, JarState
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.cup_queue import CupQueue
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.fill_goal import IN_LOTS, NUMBER
from kiosk.procedures.guess import Guess, GuessState
from kiosk.procedures.hand_in import HandIn, HandInState
from kiosk.procedures.key_procedure import KeyProcedure
from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.pan_memory import Hindrance, PanMemory
from kiosk.procedures.procedure import Person, Procedure
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.show_answer import Answer, ShowAnswer, ShowState
from kiosk.procedures.throw_away import ThrowAway, ThrowState
from kiosk.procedures.weigh_empty import WeighEmpty, WeighEmptyState
from kiosk.records.backlog import News
from kiosk.records.entries import CupOut, new_id
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.kept import Guess as KeptGuess
from kiosk.records.kept import Guessed
from kiosk.rounds.cups import Pass
from kiosk.settings import KioskSettings
from kiosk.texts import say
from kiosk.texts.numbers import number
from kiosk.ui.desk import Desk
from kiosk.ui.desk_base import Place
from kiosk.ui.lock import Lock, digest_of
from kiosk.ui.presenters.code_views import code_view
from kiosk.ui.presenters.scale_facts import FoundScale, ScaleFacts, ScaleKind
from kiosk.ui.presenters.scene import Scene, scene_of
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.reading_off import ReadingOff
from kiosk.weighing.pan_state import PanPhase, PanState, Press
from tests.helpers import (
    check_scenes,
    day_scenes,
    jar_scenes,
    measure_scenes,
    page_scenes,
    protest_scenes,
    result_scenes,
    teach_scenes,
    wall_scenes,
    water_scenes,
)
from tests.helpers.pan import DISTURBED, EMPTY, PLACED, STARTED, feed, memory, press, settled
from tests.helpers.pan import surroundings as world
from tests.helpers.queue_scenes import among_ended, early, in_protest, in_queue
from tests.helpers.sampled import LENTILS, UNKNOWN, draft, in_tens, lay, sampled, started
from tests.helpers.weighings import weighed

LONG_TEAMS = tuple(f"Hummingbirds {letter}" for letter in "ABCDEFGHIJKLMNOPQ")
MANY, ALL = 18, 99  # cups out: more than one page, and all numbers
GROSS = Decimal("1234.5")
LONG_PATH = "/var/lib/gramstand/larch-hill/records.sqlite"
LONG_FOLDER = "/srv/people/larch-hill-science/Documents/Gramstand"
LONG_PAPER = f"{LONG_FOLDER}/Jar W key card (simulated) (12).pdf"
PAPERS = (
    say("paper.saved", folder=LONG_FOLDER),
    "Jar W label (simulated) (12).pdf\nJar W key card (simulated) (12).pdf",
)


class SilentWriter:
    """Takes requests and never answers: a scene asks for nothing."""

    def ask(self, *_request: object, **_answers: object) -> None:
        """Nothing comes of it."""

    save = ask


class RefusingWriter:
    """Refuses every request at once, with the longest words."""

    def __init__(self, problem: Problem) -> None:
        self._error = RecordsError(
            problem, where=LONG_PATH, detail="(sqlite3.OperationalError) disk I/O error",
            number=99, letter="W", count=99, line=999,
        )  # fmt: skip

    def ask(
        self, *_request: object, failed: Callable[[RecordsError], None], **_done: object
    ) -> None:
        """Refuse."""
        failed(self._error)

    save = ask


def cups(how_many: int) -> list[CupOut]:
    """Cups that are out, numbers up to 99."""
    return [
        CupOut(
            id=new_id(), number=99 - place, team=LONG_TEAMS[place % len(LONG_TEAMS)],
            material="rice", empty=weighed("112.3"), since=STARTED,
        )
        for place in range(how_many)
    ]  # fmt: skip


def facts(out: int = 0, **more: object) -> TableFacts:
    """What is known at a full table."""
    known: dict[str, object] = {
        "settings": KioskSettings(teams=LONG_TEAMS),
        "simulated": True,
        "cups": cups(out),
        "team": LONG_TEAMS[0],
        "material": "lentils",
        "readability": Decimal("0.1"),
        "errors": (-100.0, 100.0, -30.0, 12.0, 105.0),
        "keys_kept": 26,
        "used_letters": tuple("ABCDE"),
    }
    return TableFacts(**(known | more))  # type: ignore[arg-type]  # by name, as above


def desk(
    table: TableFacts,
    procedure: Procedure | None = None,
    pan: PanMemory | None = None,
    writer: object = None,
) -> Desk:
    """A desk at which that procedure runs."""
    made = Desk(
        facts=table,
        world=world(table.settings.rules),
        writer=writer or SilentWriter(),  # type: ignore[arg-type]  # as much as a scene needs
        weigh_again=lambda: None,
        changed=lambda: None,
    )
    made.ready = True
    made.procedure = procedure
    if procedure is not None:
        made.memory = procedure.pan
    if pan is not None:
        made.memory = pan
    return made


def scene(
    made: Desk,
    *,
    shown: Decimal | None = GROSS,
    lost: Reason | None = None,
    connected: bool = True,
    typing: ReadingOff | None = None,
    **pan: object,
) -> Scene:
    """The scene of a desk with that mass on the pan."""
    state = {"phase": PanPhase.STABLE, "grams": shown, "readings_flow": True, "progress": 1.0}
    return scene_of(
        made, PanState(**(state | pan)), connected=connected, shown=shown, lost=lost,  # type: ignore[arg-type]  # by name
        typing=typing,
    )  # fmt: skip


# Cups ----------------------------------------------------------------------------------------


def weigh_empty(out: int = 0, pan: PanMemory | None = None) -> WeighEmpty:
    return WeighEmpty(
        world(), number=99, team=LONG_TEAMS[0], material="lentils", others_out=out > 0,
        pan=pan or PanMemory(),
    )  # fmt: skip


E = WeighEmptyState
WEIGHING_EMPTY: dict[WeighEmptyState, tuple[object, ...]] = {
    E.PUT_ON: (),
    E.SETTLING: (PLACED,),
    E.LIFTED_EARLY: (PLACED, EMPTY),
    E.TOO_LIGHT: (PLACED, settled("1.0")),
    E.REALLY_EMPTY: (PLACED, settled("180.0")),
    E.WEIGHED: (PLACED, settled("112.3")),
    E.FILL: (PLACED, settled("112.3"), EMPTY),
    E.LEAVING: (PLACED, settled("112.3"), EMPTY, press(Person.HOME)),
}


def in_weigh_empty(state: WeighEmptyState, out: int) -> Scene:
    if state is E.CLEAR:
        used = memory(PLACED)
        used.used = True
        return scene(desk(facts(out), weigh_empty(out, used)))
    procedure = weigh_empty(out)
    feed(procedure, *WEIGHING_EMPTY[state])  # type: ignore[arg-type]
    assert procedure.state is state
    taken = procedure.cup is not None
    return scene(desk(facts(max(out, taken)), procedure))


H = HandInState
CHOSEN = 99
HANDING_IN: dict[HandInState, tuple[object, ...]] = {
    H.PUT_ON: (),
    H.WEIGHING: (PLACED,),
    H.LIFTED_EARLY: (PLACED, EMPTY),
    H.LIGHTER: (PLACED, settled("8.0")),
    H.NOTHING_INSIDE: (PLACED, settled("112.3")),
    H.OTHER_CUP: (PLACED, settled("1112.3")),
    H.SCORED: (PLACED, settled("205.7")),
    H.LIFTED: (PLACED, settled("205.7"), EMPTY),
    H.LEAVING: (press(Person.HOME),),
}


def in_hand_in(state: HandInState, out: int, **pan_now: object) -> Scene:
    table = facts(out)
    pan = memory(PLACED) if state in (H.WHOSE, H.CLEAR) else PanMemory()
    pan.used = state is H.CLEAR
    number = None if state in (H.CHOOSE, H.WHOSE) else CHOSEN
    procedure = HandIn(world(), cups=table.cups, number=number, pan=pan)
    feed(procedure, *HANDING_IN.get(state, ()))  # type: ignore[arg-type]
    assert procedure.state is state
    return scene(desk(table, procedure), **pan_now)


def scored(gross: str, errors: tuple[float, ...], target: Decimal | None = None) -> Scene:
    """A score with that gross mass of a cup of 112.3 g."""
    table = facts(1, errors=errors)
    procedure = HandIn(world(), cups=table.cups, number=CHOSEN, pan=PanMemory())
    feed(procedure, PLACED, settled(gross))
    if procedure.state is H.OTHER_CUP:
        feed(procedure, press(Person.YES))
    return scene(desk(table, procedure))


# Count keys ----------------------------------------------------------------------------------


def remembering(*, yes: bool = False, days: int = 31) -> CountSamples:
    """Lentils that were sampled so many days ago, and whether those samples are wanted."""
    now = replace(world(), utc=lambda at: STARTED + timedelta(days=days, seconds=at))
    procedure = CountSamples(now, pan=PanMemory(), known={"lentils": draft()})
    feed(procedure, press(Person.CHOOSE, LENTILS), *([press(Person.YES)] if yes else []))
    return procedure


def in_samples(state: SamplesState) -> CountSamples:
    s = SamplesState
    if state in (s.OLD_SAMPLES, s.SAME_BAG):
        return remembering(yes=state is s.SAME_BAG)
    if state is s.RESUME:
        return CountSamples(world(), pan=PanMemory(), draft=draft())
    if state in (s.MATERIAL, s.BITS, s.TRAY_CLEAR, s.TRAY_ON):
        procedure = CountSamples(
            world(), pan=memory(PLACED) if state is s.TRAY_CLEAR else PanMemory()
        )
        answers = {s.MATERIAL: 0, s.BITS: 1}.get(state, 2)
        feed(procedure, *(press(Person.CHOOSE, LENTILS), press(Person.NO))[:answers])
        return procedure
    if state in (s.TENS, s.ODD_TEN):
        return in_tens("5.0", "5.1", "5.0", *(("5.6",) if state is s.ODD_TEN else ()))
    events: dict[SamplesState, tuple[object, ...]] = {
        s.READY: lay("103.5"),
        s.TOO_FEW: lay("1.5"),
        s.TOO_MANY: lay("203.5"),
        s.SAME: (EMPTY, *lay("103.5")),
        s.EMPTY_TRAY: (press(Person.UNDO, 2),),
        s.LIGHT_TRAY: lay("-5.0"),
        s.LEAVING: (press(Person.HOME),),
    }
    procedure = sampled(3 if state is s.SPREAD else 2)
    if state in (s.ADD, s.SAME, s.EMPTY_TRAY):
        feed(procedure, *lay("103.5"), press(Person.KEEP), press(Person.MORE))  # type: ignore[arg-type]
    feed(procedure, *events.get(state, ()))  # type: ignore[arg-type]
    return procedure


def poured(net: str) -> tuple[object, ...]:
    return (PLACED, settled(str(Decimal("159.9") + Decimal(net))))


def in_container(
    state: ContainerState, net: str = "1000.0", goal: str = AS_IT_COMES
) -> FillContainer:
    """An empty jar of 159.9 g; 1 000 g are about 20 000 pieces."""
    c = ContainerState
    pan = memory(PLACED) if state is c.PAN_CLEAR else PanMemory()
    procedure = FillContainer(world(), pan=pan, draft=draft())
    if state is c.BACK_IN:
        return procedure
    feed(procedure, press(Person.NO))
    if state in (c.GOAL, c.NUMBER):
        feed(procedure, *([] if state is c.GOAL else [press(Person.CHOOSE, NUMBER)]))
        return procedure
    if state in (c.LOT, c.EMPTIED):
        feed(procedure, press(Person.CHOOSE, IN_LOTS))
    aim(procedure, goal)
    if state in (c.PAN_CLEAR, c.EMPTY_ON):
        return procedure
    feed(procedure, PLACED, settled("159.9"))
    events: dict[ContainerState, tuple[object, ...]] = {
        c.STILL: poured(net),
        c.LOT: (*poured(net), press(Person.STOP)),
        c.EMPTIED: (*poured(net), press(Person.STOP), press(Person.GO_ON)),
        c.STOPPING: (DISTURBED, press(Person.STOP)),
        c.BAGS: (*poured(net), press(Person.STOP)),
        c.KEY: (*poured(net), press(Person.STOP)),
        c.REFUSED: (*poured("0.7"), press(Person.STOP)),
        c.SAVED: (*poured(net), press(Person.STOP)),
        c.LEAVING: (press(Person.HOME),),
    }
    feed(procedure, *events.get(state, ()))  # type: ignore[arg-type]
    if procedure.state is c.BAGS and state is not c.BAGS:
        feed(procedure, press(Person.YES))
    if state is c.SAVED:
        feed(procedure, press(Person.KEEP, "W"))
    return procedure


def aim(procedure: FillContainer, goal: str) -> None:
    """Choose a band, or type the number."""
    if not goal.isdigit():
        feed(procedure, press(Person.CHOOSE, goal))
        return
    keys = [press(Person.TYPE, digit) for digit in goal]
    feed(procedure, press(Person.CHOOSE, NUMBER), *keys, press(Person.ENTER))


def in_lots(how_many: int, goal: str = "high") -> FillContainer:
    """So many lots of 100 g, and the container emptied for the next one."""
    procedure = in_container(ContainerState.LOT, "100.0", goal)
    for _ in range(how_many - 1):
        feed(procedure, EMPTY, press(Person.GO_ON), PLACED, settled("159.9"))
        feed(procedure, *poured("100.0"), press(Person.STOP))  # type: ignore[arg-type]
    return procedure


def lots_kept(how_many: int, goal: str = "high") -> Scene:
    return scene(desk(facts(), in_lots(how_many, goal)))


def another_lot(shown: str, goal: str = "high", capacity: str | None = "600") -> Scene:
    """Eleven lots are kept, the twelfth is being poured."""
    procedure = in_lots(11, goal)
    feed(procedure, EMPTY, press(Person.GO_ON), PLACED, settled("159.9"))
    table = facts()
    table.scale.capacity = None if capacity is None else Decimal(capacity)
    return scene(desk(table, procedure), shown=Decimal(shown))


def number_typed(digits: str) -> Scene:
    procedure = in_container(ContainerState.NUMBER)
    feed(procedure, *(press(Person.TYPE, digit) for digit in digits))
    return scene(desk(facts(), procedure))


def goals(*chosen: str) -> Scene:
    """What was chosen before, and is to be changed."""
    procedure = in_container(ContainerState.POUR, goal="20000")
    feed(procedure, press(Person.CHOOSE), *(press(Person.CHOOSE, each) for each in chosen))
    return scene(desk(facts(), procedure))


def of_samples(state: SamplesState) -> Scene:
    procedure = in_samples(state)
    assert procedure.state is state
    return scene(desk(facts(), procedure))


def of_container(state: ContainerState) -> Scene:
    procedure = in_container(state)
    assert procedure.state is state
    return scene(desk(facts(), procedure))


def spread_of(how_many: int) -> Scene:
    return scene(desk(facts(), sampled(how_many)))


def before_samples(material: tuple[object, ...]) -> Scene:
    """The tray is weighed, nothing is counted yet."""
    return scene(desk(facts(), started(material)))


def unknown_sample() -> Scene:
    """One sample of pieces of which nothing is known: the longest advice."""
    procedure = started(UNKNOWN)
    feed(procedure, *lay("3.5"), press(Person.KEEP), EMPTY)  # type: ignore[arg-type]
    return scene(desk(facts(), procedure))


def light_sample() -> Scene:
    procedure = started()
    feed(procedure, *lay("3.5"))  # type: ignore[arg-type]
    return scene(desk(facts(), procedure))


def key_with(*, covered: bool = False, used: str = "ABC", net: str = "1000.0") -> Scene:
    table = facts(covered=covered, used_letters=tuple(used))
    return scene(desk(table, in_container(ContainerState.KEY, net)))


def with_bits(procedure: KeyProcedure) -> Scene:
    """Where broken bits count too."""
    procedure.draft = replace(procedure.kept, bits=True)
    if isinstance(procedure, FillContainer):
        procedure.key = procedure.kept.key(procedure.world.rules)
    return scene(desk(facts(), procedure))


def warned_key() -> Scene:
    """With the longest sentence that can stand first."""
    procedure = in_container(ContainerState.KEY)
    assert isinstance(procedure.key, CountKey)
    longest = say("count.warning.differ.if.one", place=10, mass="1\u2009031.2 g")
    procedure.key = replace(procedure.key, warnings=(longest,))
    return scene(desk(facts(), procedure))


def printed(lines: tuple[str, ...]) -> Scene:
    return scene(desk(facts(printed=lines), in_container(ContainerState.SAVED)))


def pouring(shown: Decimal, goal: str = AS_IT_COMES, capacity: str | None = None) -> Scene:
    table = facts()
    table.scale.capacity = None if capacity is None else Decimal(capacity)
    return scene(desk(table, in_container(ContainerState.POUR, goal=goal)), shown=shown)


# The table, and what is in the way -----------------------------------------------------------


def table(place: Place, out: int, **more: object) -> Scene:
    made = desk(facts(out, **more))
    made.place = place
    return scene(made)


def throwing(state: ThrowState, out: int) -> Scene:
    known = facts(out)
    procedure = ThrowAway(world(), cups=known.cups, pan=PanMemory())
    if state is ThrowState.SURE:
        feed(procedure, press(Person.CHOOSE, CHOSEN))
    assert procedure.state is state
    return scene(desk(known, procedure))


def hindered(
    hindrance: Hindrance,
    out: int,
    *,
    flowing: bool = False,
    lost: Reason | None = None,
    **more: object,
) -> Scene:
    pan = PanMemory(loaded=True, hindrance=hindrance)
    made = desk(facts(out), weigh_empty(out), pan)
    return scene(made, lost=lost, readings_flow=flowing, **more)


def hindered_hid(lost: Reason) -> Scene:
    made = desk(facts(1), weigh_empty(1), PanMemory(hindrance=Hindrance.UNPLUGGED))
    made.facts.scale = ScaleFacts(chosen=USB)
    return scene(made, lost=lost, readings_flow=False)


def hindered_key() -> Scene:
    """A key with twelve masses when the cable is pulled."""
    procedure = sampled(10)
    procedure.state = SamplesState.COUNT
    procedure.pan.hindrance = Hindrance.UNPLUGGED
    return scene(desk(facts(MANY), procedure))


def printing(press_next: Press, out: int) -> Scene:
    return scene(desk(facts(out), weigh_empty(out)), press=press_next)


def printing_back(press_next: Press) -> Scene:
    return in_hand_in(H.PUT_ON, MANY, press=press_next)


def printing_key(press_next: Press) -> Scene:
    return scene(desk(facts(), sampled(1)), press=press_next)


def restless(out: int, **more: object) -> Scene:
    procedure = weigh_empty(out)
    feed(procedure, PLACED)
    return scene(desk(facts(out), procedure), phase=PanPhase.MOVING, restless_for=7.0, **more)


def failing(problem: Problem) -> Scene:
    """An empty cup was captured, and the records refuse it for that reason."""
    made = desk(facts(3), weigh_empty(3), writer=RefusingWriter(problem))
    for event in (PLACED, settled("112.3")):
        made.pan_event(event)
    return scene(made)


def refused_later(problem: Problem) -> Scene:
    """What was captured while the records were away does not fit any more; some still waits."""
    made = desk(facts(3))
    why = RecordsError(problem, number=99)
    jar = say("journal.jar", team="Hummingbirds of Larch Hill Middle School", letter="C")
    told = say("journal.refused", what=f"{jar}, {number(16_590)}", why=why)
    made.journal_said(News(waiting=20, refused=(told,)))
    return scene(made)


def refusing_to_say() -> Scene:
    """No number can be had for the next cup."""
    made = desk(facts(3), writer=RefusingWriter(Problem.ALL_OUT))
    made.team_chosen(LONG_TEAMS[16])
    return scene(made)


Make = Callable[[], Scene]


def named(state: Enum, more: str = "") -> str:
    """What the scene of a state is called."""
    return f"{type(state).__name__.removesuffix('State').lower()}: {state.value}{more}"


def _states() -> Iterator[tuple[str, Make]]:
    for empty in set(E) - WeighEmpty.FINAL:
        for out in (0, MANY):
            yield named(empty, f", {out} out"), lambda s=empty, n=out: in_weigh_empty(s, n)
    for back in set(H) - HandIn.FINAL:
        for out in (1, MANY):
            yield named(back, f", {out} out"), lambda s=back, n=out: in_hand_in(s, n)
    for sample in set(SamplesState) - CountSamples.FINAL:
        yield named(sample), lambda s=sample: of_samples(s)
    for jar in set(ContainerState) - FillContainer.FINAL:
        yield named(jar), lambda s=jar: of_container(s)
    for checked in set(CheckState) - BalanceCheck.FINAL:
        yield named(checked), lambda s=checked: checking(check_scenes.in_check(s))
    for measure in set(MeasureState) - Measure.FINAL:
        yield named(measure), lambda s=measure: measuring(measure_scenes.in_measure(s))
    for water in set(WaterState) - MeasureWater.FINAL:
        yield named(water), lambda s=water: measuring(water_scenes.in_water(s))
    for closed in set(JarState) - CheckJars.FINAL:
        yield named(closed), lambda s=closed: jars(jar_scenes.in_check_jars(s))
    for queued in set(QueueState) - CupQueue.FINAL:
        for pass_ in Pass:
            if (queued, pass_) not in NEVER_EMPTY:
                yield named(queued, f", {pass_}"), lambda s=queued, p=pass_: queue(in_queue(s, p))
    for thrown in set(ThrowState) - ThrowAway.FINAL:
        for out in (1, MANY, ALL):
            yield named(thrown, f", {out} out"), lambda s=thrown, n=out: throwing(s, n)


def scale_drawer(*, connected: bool = True, **known: object) -> Scene:
    """The drawer of a scale, or its list of scales."""
    place = known.pop("place", Place.SCALE)
    made = desk(facts(MANY, past=check_scenes.PAST))
    told: dict[str, object] = {"chosen": CABLE, "capacity": Decimal(2000), "found": FOUND}
    made.facts.scale = ScaleFacts(**(told | known))  # type: ignore[arg-type]  # by name
    made.place = place  # type: ignore[assignment]  # one of the two
    return scene(made, connected=connected)


CABLE = FoundScale(
    where="/dev/ttyUSB0",
    kind=ScaleKind.SERIAL,
    described="Bridge from USB to a serial port, in USB socket 1-1.4.2",
)
USB = FoundScale(
    where="hid:1209:0001:A7",
    kind=ScaleKind.HID,
    described="Larch Hill Pan, serial number 0123456789AB",
)
BESIDE = (
    FoundScale(where="typed", kind=ScaleKind.TYPED),
    FoundScale(where="simulated", kind=ScaleKind.SIMULATED),
)
FOUND = (*[replace(CABLE, where=f"/dev/ttyUSB{n}") for n in range(12)], USB, *BESIDE)


JARS = tuple(
    Guessed(kind="jar", key_id=letter, letter=letter, guesses=17, shown=letter == "B")
    for letter in "ABCDEFGHI"
)


def guessing(state: GuessState, typed: str = "", kind: str = "jar") -> Scene:
    """A pair guesses."""
    procedure = Guess(
        world(), team=LONG_TEAMS[0], containers=JARS, limit=20_000, pan=PanMemory(), kind=kind
    )
    procedure.done.add("A")
    if state is not GuessState.CHOOSE:
        procedure.step(press(Person.CHOOSE, "C"))
        for digit in typed:
            procedure.step(press(Person.TYPE, digit))
    if state is GuessState.WRITTEN:
        procedure.step(press(Person.ENTER))
    return scene(desk(facts(MANY), procedure))


def answer_to(*guesses: int, state: ShowState = ShowState.SHOWN) -> Scene:
    """What is in jar C, and what as many pairs guessed."""
    answers = [
        Answer(
            container=jar, actual=Decimal(2830), low=Decimal(2770), high=Decimal(2890),
            guesses=tuple(
                KeptGuess(team=LONG_TEAMS[place % 17], guess=Decimal(guess), seen=False)
                for place, guess in enumerate(guesses)
            ),
        )
        for jar in JARS
    ]  # fmt: skip
    procedure = ShowAnswer(world(), answers=answers, pan=PanMemory())
    if state in (ShowState.RETIRE, ShowState.RETIRE_SURE):
        procedure.step(press(Person.UNDO))
    if state not in (ShowState.CHOOSE, ShowState.RETIRE):
        procedure.step(press(Person.CHOOSE, "C"))
    if state is ShowState.SHOWN:
        procedure.step(press(Person.YES))
    return scene(desk(facts(0), procedure))


FEW = (1200, 2400, 2600, 2780, 2830, 2860, 3000, 3600, 9000)


def guessing_teams() -> Scene:
    made = desk(facts(MANY))
    made.place, made.guessing = Place.TEAMS, "box"
    return scene(made)


def _guesses() -> Iterator[tuple[str, Make]]:
    yield "guess: choose", lambda: guessing(GuessState.CHOOSE)
    yield "guess: nothing typed", lambda: guessing(GuessState.TYPE)
    yield "guess: typed", lambda: guessing(GuessState.TYPE, "20000")
    yield "guess: too many", lambda: guessing(GuessState.TYPE, "999999")
    for state in (GuessState.CHOOSE, GuessState.TYPE, GuessState.WRITTEN):
        yield f"guess: {state.value}, box", lambda s=state: guessing(s, "4000", "box")
    yield "guess: too many, box", lambda: guessing(GuessState.TYPE, "999999", "box")
    yield "guess: written", lambda: guessing(GuessState.WRITTEN, "20000")
    for state in set(ShowState) - ShowAnswer.FINAL:
        yield f"answer: {state.value}", lambda s=state: answer_to(*FEW, state=s)
    yield "answer: nobody", lambda: answer_to()
    yield "answer: nobody yet", lambda: answer_to(state=ShowState.SURE)
    yield "answer: all under", lambda: answer_to(*range(1000, 2700, 100))


def asking_code(
    *,
    digest: str = "",
    wrong: int = 0,
    typed: str = "",
    label: str = "",
    helper: str = "",
    whose: str = "",
    code: str = "000000",
) -> Scene:
    """The coach's code, or another's, with so many wrong ones before."""
    made = desk(facts(MANY))
    made.place, made.drawer_label = Place.CODE, label
    lock = made.lock = Lock(closes_after=60.0, digest=digest, helper_digest=helper)
    lock.ask(helper_welcome=bool(helper))
    for each in [code] * wrong + [typed]:
        for digit in each:
            lock.type(digit, made.world.now())
        if each != typed:
            lock.enter(made.world.now())
    shown = scene(made)
    if not whose:
        return shown
    sheet = code_view(lock, label, made.world.now(), whose)
    return replace(shown, sheet=replace(sheet, second=None))


def _codes() -> Iterator[tuple[str, Make]]:
    yield "code, new", lambda: asking_code(label="home.count_key")
    yield "code, again", lambda: asking_code(wrong=1, typed="314", label="home.throw")
    kept = digest_of("271828")
    yield "code, asked", lambda: asking_code(digest=kept, typed="271828", label="home.scale")
    yield "code, wrong", lambda: asking_code(digest=kept, wrong=1)
    yield "code, waiting", lambda: asking_code(digest=kept, wrong=5)
    yield "code, taken", lambda: asking_code(helper=kept, wrong=1, code="271828")
    yield "code, either", lambda: asking_code(digest=kept, helper=kept, label="home.round")
    yield "code, for helpers", lambda: asking_code(whose="helper")
    yield (
        "code, for helpers, taken",
        lambda: asking_code(helper=kept, whose="helper", wrong=1, code="271828"),
    )


def _scales() -> Iterator[tuple[str, Make]]:
    yield "scale", scale_drawer
    yield "scale, not heard", lambda: scale_drawer(connected=False)
    yield "scale, trying", lambda: scale_drawer(trying=True)
    yield "scale, unknown", lambda: scale_drawer(understood=False)
    yield "scale, silent", lambda: scale_drawer(understood=False, silent=True)
    yield "scales, many", lambda: scale_drawer(place=Place.SCALES)
    yield "scales, none", lambda: scale_drawer(place=Place.SCALES, problem="", found=BESIDE)


def typing(procedure: Procedure | None, *keys: str, zero: str = "0.0") -> Scene:
    """What is to be seen when those keys were pressed, an empty text for "That is it"."""
    pad = ReadingOff(lambda _events: None, lambda: 0.0)
    for text in ([zero, ""] if zero else []) + list(keys):
        for sign in text:
            pad.key(sign)
        if not text:
            pad.done()
    known = facts(MANY, typed=True, simulated=False)
    known.scale = ScaleFacts(chosen=BESIDE[0], capacity=None)
    made = desk(known, procedure)
    made.place = Place.SCALE if procedure is None else Place.HOME
    return scene(made, typing=pad, connected=False)


def _typed() -> Iterator[tuple[str, Make]]:
    yield "typed: zero", lambda: typing(weigh_empty(), zero="")
    yield "typed: not zero", lambda: typing(weigh_empty(), "99999.999", "", zero="")
    yield "typed: mass", lambda: typing(weigh_empty(), "99999.999")
    yield "typed: slip", lambda: typing(weigh_empty(), "99999", "")
    yield "typed: too long", lambda: typing(weigh_empty(), "123456789", "")
    yield "typed: unfinished", lambda: typing(weigh_empty(), "12.", "")
    yield "typed: weighed", lambda: typing(fed(weigh_empty(), PLACED, settled("112.3")))
    yield "typed: tray", lambda: typing(in_samples(SamplesState.TRAY_ON))
    yield "typed: sample", lambda: typing(in_samples(SamplesState.READY), "12.3")
    yield "typed: pour", lambda: typing(in_container(ContainerState.POUR))
    yield "typed: clear", lambda: typing(in_container(ContainerState.PAN_CLEAR))
    yield "typed: key", lambda: typing(in_container(ContainerState.KEY))
    yield "typed: check", lambda: typing(check_scenes.in_check(CheckState.CLEAR))
    yield "typed: scale", lambda: typing(None, zero="")


def fed(procedure: Procedure, *events: object) -> Procedure:
    feed(procedure, *events)  # type: ignore[arg-type]
    return procedure


def _hindrances() -> Iterator[tuple[str, Make]]:
    for hindrance in Hindrance:
        for out in (0, MANY):
            yield f"hindered: {hindrance}, {out} out", lambda h=hindrance, n=out: hindered(h, n)
    for lost in Reason:
        yield f"lost: {lost}", lambda r=lost: hindered(Hindrance.UNPLUGGED, MANY, lost=r)
    yield "lost: a rule is missing", lambda: hindered_hid(Reason.NOT_ALLOWED)
    yield "hindered: key", hindered_key
    yield "failing: a question", refusing_to_say
    for press_next in (Press.LOAD, Press.ONCE_MORE, Press.EMPTY):
        for out in (0, MANY):
            yield f"print: {press_next}, {out} out", lambda p=press_next, n=out: printing(p, n)
        yield f"print: {press_next}, hand in", lambda p=press_next: printing_back(p)
        yield f"print: {press_next}, key", lambda p=press_next: printing_key(p)
    yield "look", lambda: scene(desk(facts(1), weigh_empty(1)), look=True)
    yield "creeping", lambda: restless(1, creeping=True)
    yield "taken off", lambda: hindered(Hindrance.TARED, 1, taken_off=True)
    yield "hindered: back", lambda: hindered(Hindrance.UNPLUGGED, MANY, flowing=True)
    for problem in Problem:
        yield f"failing: {problem}", lambda p=problem: failing(p)


NEVER_EMPTY = ((QueueState.NO_EMPTY, Pass.EMPTY), (QueueState.MISHAP, Pass.EMPTY))


def queue(procedure: CupQueue, *, simulated: bool = True, **pan_now: object) -> Scene:
    """The cup table of a round on a pan that shows next to nothing."""
    made = desk(facts(simulated=simulated), procedure)
    made.place = Place.ROUND
    return scene(made, **{"shown": Decimal("0.3"), **pan_now})  # type: ignore[arg-type]  # by name


def _queues() -> Iterator[tuple[str, Make]]:
    moving = {"phase": PanPhase.MOVING, "restless_for": 7.0}
    yield "queue: early", lambda: queue(early())
    yield "queue: in a protest", lambda: queue(in_protest())
    yield "queue: among ended ones", lambda: queue(among_ended())
    yield "queue: no scale of ours", lambda: queue(in_queue(QueueState.PUT_ON), simulated=False)
    yield "queue: restless", lambda: queue(in_queue(QueueState.WEIGHING), **moving)
    yield "queue: creeping", lambda: queue(in_queue(QueueState.WEIGHING), creeping=True, **moving)
    yield "queue: print", lambda: queue(in_queue(QueueState.PUT_ON), press=Press.ONCE_MORE)
    yield "queue: typed", lambda: typing(in_queue(QueueState.PUT_ON), "99999.999")
    yield "queue: typed, lifted", lambda: typing(in_queue(QueueState.RECORDED))


def jars(procedure: CheckJars) -> Scene:
    """Closed jars are looked at."""
    return scene(desk(facts(), procedure))


def checking(procedure: BalanceCheck) -> Scene:
    """That check on a scale of 2 kg, at the end of ten lively seconds."""
    known = facts(MANY, past=check_scenes.PAST)
    known.scale = ScaleFacts(chosen=CABLE, capacity=Decimal(2000))
    return scene(desk(known, procedure))


def measuring(procedure: Measure | MeasureWater, *, covered: bool = False) -> Scene:
    """That container, while others have numbers already."""
    return scene(desk(facts(MANY, used_boxes=("1", "2"), covered=covered), procedure))


def _measurements() -> Iterator[tuple[str, Make]]:
    m = measure_scenes
    yield "measure: first edge", lambda: measuring(m.first_edge())
    yield "measure: wrong size", lambda: measuring(m.wrong_size())
    yield "measure: bulging", lambda: measuring(m.bulging())
    yield "measure: full row", lambda: measuring(m.full_row())
    yield "measure: bin", lambda: measuring(m.bin_())
    yield "measure: bin, covered", lambda: measuring(m.bin_(), covered=True)
    yield "measure: bin done", lambda: measuring(m.bin_done())
    yield "measure: can", lambda: measuring(m.can())
    yield "measure: one place each", lambda: measuring(m.one_place_each())
    yield "measure: flat box", lambda: measuring(m.flat_box())
    yield "measure: covered", lambda: measuring(m.flat_box(), covered=True)


def _waters() -> Iterator[tuple[str, Make]]:
    w = water_scenes
    yield "water: Fahrenheit", lambda: measuring(w.fahrenheit())
    yield "water: filled anew", lambda: measuring(w.filled_anew())
    yield "water: large", lambda: measuring(w.large())
    yield "water: covered", lambda: measuring(w.large(), covered=True)


def _checks() -> Iterator[tuple[str, Make]]:
    yield "check: coins on the pan", lambda: checking(check_scenes.with_coins_on_the_pan())
    yield "check: at the edge", lambda: checking(check_scenes.at_the_edge())
    yield "checked: right", lambda: checking(check_scenes.right_check())
    yield "checked: heavy by a share", lambda: checking(check_scenes.heavy_by_a_share())
    yield "checked: coarse", lambda: checking(check_scenes.coarse_check())
    yield "checked: coins", lambda: checking(check_scenes.coin_check())
    yield "checked: nothing known", lambda: checking(check_scenes.with_nothing_known())
    yield "checked: nothing done", lambda: checking(check_scenes.skipped_all())


STATES: dict[str, Make] = dict(sorted(_states()))
OTHERS: dict[str, Make] = {
    "home": lambda: table(Place.HOME, 0),
    "home, 1 out": lambda: table(Place.HOME, 1),
    "home, 5 out": lambda: table(Place.HOME, 5),
    "home, 18 out": lambda: table(Place.HOME, MANY),
    "teams": lambda: table(Place.TEAMS, 0),
    "round runs": lambda: table(Place.ROUND_RUNS, 0),
    "home, with boxes": lambda: table(Place.HOME, 5, used_boxes=("1",)),
    "home, with boxes only": lambda: table(Place.HOME, 5, keys_kept=0, used_boxes=("1",)),
    "home, without keys": lambda: table(Place.HOME, 1, keys_kept=0),
    "teams, guessing": guessing_teams,
    "teams, 18 out": lambda: table(Place.TEAMS, MANY),
    "teams, second page": lambda: table(Place.TEAMS, MANY, team_page=1),
    "materials": lambda: table(Place.MATERIALS, 0),
    "score: double": lambda: scored("1912.3", (1700.0,)),
    "score: on target": lambda: scored("212.3", (0.0, 0.0)),
    "score: nothing": lambda: scored("113.3", (-99.0,)),
    "old samples, of today": lambda: scene(desk(facts(), remembering(days=0))),
    "spread of ten": lambda: spread_of(10),
    "spread of four": lambda: spread_of(4),
    "before samples": lambda: before_samples(LENTILS),
    "bits, samples": lambda: with_bits(sampled(2)),
    "tens, the first two apart": lambda: scene(desk(facts(3), in_tens("5.0", "5.8"))),
    "tens, one below": lambda: scene(desk(facts(3), in_tens("5.7", "5.0", "5.0", "5.0", "5.1"))),
    "tens, far": lambda: scene(desk(facts(3), in_tens("5.0", "5.0", "7.9"))),
    "bits, tray": lambda: with_bits(in_samples(SamplesState.TRAY_ON)),
    "bits, key": lambda: with_bits(in_container(ContainerState.KEY)),
    "before samples, coarse": lambda: before_samples(("rice", "pulses and grains", Decimal(20))),
    "before samples, unknown": lambda: before_samples(UNKNOWN),
    "unknown sample": unknown_sample,
    "light sample": light_sample,
    "refused later": lambda: refused_later(Problem.ROUND_LOCKED),
    "key, covered": lambda: key_with(covered=True),
    "key, with a warning": lambda: key_with(net="1100.0"),
    "key, with a long warning": warned_key,
    "key, printed": lambda: printed(PAPERS),
    "key, not printed": lambda: printed((say("paper.save.not_allowed", where=LONG_PAPER),)),
    "key, all letters used": lambda: key_with(used="ABCDEFGHIJKLMNOPQRSTUVWXYZ"),
    "key, small": lambda: key_with(net="25.0"),
    "pour, nothing yet": lambda: pouring(Decimal("159.9")),
    "pour, high": lambda: pouring(Decimal("1159.9")),
    "pour, too many": lambda: pouring(Decimal("1359.9")),
    "pour, to a band": lambda: pouring(Decimal("699.9"), "high"),
    "pour, in its band": lambda: pouring(Decimal("959.9"), "high"),
    "pour, past its band": lambda: pouring(Decimal("1359.9"), "high"),
    "pour, to hundreds": lambda: pouring(Decimal("159.9"), "low"),
    "pour, to a number": lambda: pouring(Decimal("659.9"), "20000"),
    "pour, too heavy": lambda: pouring(Decimal("459.9"), "high", capacity="600"),
    "pour, twelfth lot": lambda: another_lot("199.9"),
    "pour, enough for a lot": lambda: another_lot("559.9", "20000", "600"),
    "lots, one": lambda: lots_kept(1),
    "lots, twelve": lambda: lots_kept(12, "20000"),
    "lots, as it comes": lambda: lots_kept(3, AS_IT_COMES),
    "lots, past the goal": lambda: lots_kept(3, "middle"),
    "goal, changed": lambda: goals(IN_LOTS),
    "goal, too many": lambda: number_typed("999999"),
    "goal, typed": lambda: number_typed("20000"),
    "jar: like another": lambda: jars(jar_scenes.like_another()),
    "jar: lighter than open": lambda: jars(jar_scenes.lighter_than_open()),
    "jar: sealing": lambda: jars(jar_scenes.sealing()),
    "restless": lambda: restless(0),
    "restless, 18 out": lambda: restless(MANY),
    **dict(_hindrances()),
    **dict(_scales()),
    **teach_scenes.SCENES,
    **dict(_codes()),
    **dict(_guesses()),
    **dict(_typed()),
    **dict(_checks()),
    **dict(_measurements()),
    **dict(_waters()),
    **dict(_queues()),
}
SCENES: dict[str, Make] = (
    STATES
    | OTHERS
    | page_scenes.scenes()
    | protest_scenes.scenes()
    | day_scenes.scenes()
    | wall_scenes.scenes()
    | result_scenes.scenes()
)
