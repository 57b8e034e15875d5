"""Texts: the papers of a round."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "paper.page": "page {page} of {pages}",
    "paper.thing.cup": "Cup {label}",
    "paper.thing.jar": "Jar {label}",
    "paper.thing.box": "Box {label}",
    "paper.unit.cup": "g",
    "paper.unit.jar": "pieces",
    "paper.unit.box": "cm\u00b3",
    "paper.task.mass": "the cup",
    "paper.task.count_low": "the jar with the fewest pieces",
    "paper.task.count_middle": "the jar in the middle",
    "paper.task.count_high": "the jar with the most pieces",
    "paper.task.volume_1": "box 1",
    "paper.task.volume_2": "box 2",
    "paper.task.volume_3": "box 3",
    # Answer sheets
    "paper.answers.head": "Answer sheets: {name}",
    "paper.answers.file": "{name} answer sheets",
    "paper.answers.number": "Sheet {number}",
    "paper.answers.sitting": "Sitting {sitting}",
    "paper.answers.code": "Code {code}",
    "paper.answers.rules": "The rules in short",
    "paper.answers.time": (
        "{minutes} minutes for everything. What is blank or handed in late earns nothing."
    ),
    "paper.answers.over_mirrored": (
        "Each answer earns up to 100 points, the nearer the more. Too much costs as much as too "
        "little; double or more earns nothing."
    ),
    "paper.answers.over_zero": (
        "Each answer earns up to 100 points, the nearer the more. Anything over the real value "
        "earns nothing."
    ),
    "paper.answers.limits": (
        "No jar holds more than {count} pieces, no box more than {volume} cm\u00b3. They stay "
        "closed."
    ),
    "paper.answers.no_help": "No rulers, no scales, no marks on hands or on things.",
    "paper.answers.shared": "Teams with the same total share a place.",
    "paper.answers.tie_break": "With the same total these scores decide, in turn: {tasks}.",
    "paper.answers.cup": "{thing}: put {grams} g in, by feel.",
    "paper.answers.cup_once": "Hand it in once, before time is up. That is final.",
    "paper.answers.cup_number": "Write the number of your cup on it.",
    "paper.answers.write": "One digit in a box; the last digit goes under the 1.",
    "paper.answers.signature": "These are our answers: signature or initials of the team",
    "paper.answers.time_in": "Handed in at",
    "paper.answers.typed": "typed",
    "paper.answers.typed_again": "typed again",
    # Day list
    "paper.day.head": "Before we begin",
    "paper.day.file": "{name} day list",
    "paper.day.balance": "Balance",
    "paper.day.warm": "Switched on for half an hour",
    "paper.day.level": "Level, free of draughts, touching nothing beside it",
    "paper.day.checked": "Checked today with weights or coins",
    "paper.day.turned": "Its own display turned away from the tables, or covered",
    "paper.day.awake": "Automatic switching off is off, or its batteries are fresh",
    "paper.day.things": "Cups, jars, boxes",
    "paper.day.cups": (
        "{count} cup, numbered, empty and dry",
        "{count} cups, numbered, empty and dry",
    ),
    "paper.day.sizes": "Printed sizes and contents covered",
    "paper.day.keys": "Keys sealed; key cards locked away",
    "paper.day.same_jar": "On the balance once, closed: is this still the same jar?",
    "paper.day.same_box": "Not dented, closed, its number on it:",
    "paper.day.people": "People",
    "paper.day.rulers": "No rulers on the tables, no marks on hands",
    "paper.day.helper": "Helpers have read their card and know their code",
    "paper.day.small_parts": (
        "Small parts: nothing goes into a mouth or an ear. Keep away from children under 3. Sweep "
        "up what falls down."
    ),
    "paper.day.allergens": "Asked about allergies before anything is poured:",
    "paper.day.spare": "At hand",
    "paper.day.batteries": "Spare batteries, a spare cup or two, a brush for the pan",
    "paper.day.pencils": "Answer sheets, pencils, erasers; a watch if the kiosk should stop",
    "paper.day.local": (
        "Where the rules of your league, school or country say otherwise, they come first."
    ),
    "paper.day.signature": "Seen to by",
    "paper.day.when": "Time",
    # A sitting
    "paper.sitting.head": "Sitting {sitting}",
    "paper.sitting.file": "{name} sitting {sitting}",
    "paper.sitting.teams": ("{count} team", "{count} teams"),
    "paper.sitting.usual": "{minutes} minutes",
    "paper.sitting.sheet": "sheet",
    "paper.sitting.team": "team",
    "paper.sitting.cup": "cup",
    "paper.sitting.minutes": "minutes",
    "paper.sitting.here": "here",
    "paper.sitting.cup_in": "cup in",
    "paper.sitting.sheet_in": "sheet in",
    "paper.sitting.notes": "notes",
    "paper.sitting.began": "Began at",
    "paper.sitting.ended": "Ended at",
    "paper.sitting.signature": "Supervisor",
    # What a material may do to somebody
    "paper.allergen.holds": "{material}: {allergens}",
    "paper.allergen.no_food": "{material}: no food",
    "paper.allergen.packet": "{material}: read its packet",
    "paper.allergen.wheat": "wheat",
    "paper.allergen.egg": "egg (some kinds)",
    "paper.allergen.peanut": "peanut",
    "paper.allergen.tree_nuts": "tree nuts",
    "paper.allergen.soy": "soy",
    "paper.allergen.sesame": "sesame",
    "paper.allergen.milk": "milk",
    # A new helper
    "paper.helper.head": "You help today",
    "paper.helper.file": "Helper card",
    "paper.helper.begin": (
        "The kiosk is the touch screen beside the balance. Open the round with your helper code. "
        "Nothing that you tap there can lose a record."
    ),
    "paper.helper.cups": "At the balance: cups",
    "paper.helper.cup_on": "The screen names a team and a cup. That cup goes on, hands off.",
    "paper.helper.cup_off": "Sign and sound: it is recorded. Take it off, stand it aside, full.",
    "paper.helper.cup_next": (
        "Wait till the pan is seen empty, then the next cup. There is nothing to press."
    ),
    "paper.helper.cup_brush": "\u201cBrush the pan\u201d: brush it. The screen goes on by itself.",
    "paper.helper.cup_wrong": "Another cup came first? Tap its team, then put it on.",
    "paper.helper.cup_trouble": (
        "Spilled, cracked, late, not handed in, will not rest: tap what happened, take the next "
        "one and tell the coach."
    ),
    "paper.helper.sheets": "At the typing table: answer sheets",
    "paper.helper.sheet_type": (
        "Take the sheet whose number is on the screen. Type what the paper says, row by row. Each "
        "sheet has its jars and boxes in another order: read each name before you type."
    ),
    "paper.helper.sheet_blank": "A row without a digit is blank: leave it blank.",
    "paper.helper.sheet_unreadable": (
        "You cannot read it? Never guess: tap \u201cCannot read\u201d, the judge decides."
    ),
    "paper.helper.sheet_again": (
        "Somebody else types every sheet again. Where the two differ the screen asks both to look "
        "at the paper."
    ),
    "paper.helper.sheet_pile": "Tick \u201ctyped\u201d on the sheet and keep the pile in order.",
    "paper.helper.always": "Always",
    "paper.helper.no_numbers": 'Say no mass and no answer aloud, and no "nearly" either.',
    "paper.helper.no_help": "Teams carry their own cups till they are handed in.",
    "paper.helper.ask": "Not sure? Screen dark? Stop and call the coach. Nothing is lost.",
    # Results
    "paper.results.head": "Results: {name}",
    "paper.results.file": "{name} {division} results {state}",
    "paper.results.final": "final",
    "paper.results.provisional": "provisional",
    "paper.results.not_released": "not released",
    "paper.results.left": "{team} takes no part: {reason}",
    "paper.results.as_of": "as of {at}",
    "paper.results.protests": "Protests until {time}",
    "paper.results.team": "team",
    "paper.results.of": "of {points}",
    "paper.results.best": "best",
    "paper.results.median": "median",
    "paper.results.shared": "=  shared place",
    "paper.results.missing": "\u2013  no answer",
    "paper.results.medal": "medal",
    "paper.results.corrections": "Corrected",
    "paper.results.correction": "{what}: {before} became {after}. {reason}",
    "paper.results.correction_of_all": "{what}, all teams: {reason}",
    "paper.results.signature": "Signature of the judge",
    "paper.results.foot": "{name}, {division}: {state}, {at}",
    # One team
    "paper.team.head": "Results of {name}",
    "paper.team.file": "{name} team pages",
    "paper.team.place": "Place {place}",
    "paper.team.shared": "Place {place} =",
    "paper.team.among": ("of {count} team", "of {count} teams"),
    "paper.team.total": "{points} of {most} points",
    "paper.team.real": "really {value} {unit}",
    "paper.team.asked": "asked for {value} {unit}",
    "paper.team.said": "you said {value} {unit}",
    "paper.team.filled": "you put in {value} {unit}",
    "paper.team.none": "no answer",
    "paper.team.points": "points",
    "paper.team.exact": "on target",
    "paper.team.under": "under",
    "paper.team.over": "over",
    "paper.team.practise": "What to practise next",
    "paper.team.best": "Best: {thing}, {points} points. Do that again.",
    "paper.team.all_good": "Everything within {percent}: keep it, and get quicker.",
    "paper.team.blank": "{thing}: blank, or 0. Even a rough answer earns points.",
    "paper.team.lean.under": (
        "{count} of your {all} answers were under. Dare to say more than you think at first."
    ),
    "paper.team.lean.over": (
        "{count} of your {all} answers were over. Say less than you think at first."
    ),
    "paper.team.next.cup_under": (
        "{thing}: from one like it about 1 part in {parts} was missing. Fill one in your hand, "
        "weigh it, and feel the difference."
    ),
    "paper.team.next.cup_over": (
        "{thing}: about 1 part in {parts} of it was too much. Fill one in your hand, weigh it, and "
        "feel the difference."
    ),
    "paper.team.next.jar": (
        "{thing}: count how many pieces lie on the bottom, and how many layers there are. "
        "Multiply, then compare with a jar that you have counted."
    ),
    "paper.team.next.box": (
        "{thing}: know the span of your hand in cm. Length, width, height, one after the other; "
        "then multiply."
    ),
    # The printer
    "paper.printer.sent": "Sent to the printer: {name}",
    "paper.printer.none": (
        "This machine has no printer. The file is in {folder}: carry it to one that has."
    ),
    "paper.printer.refused": (
        "The printer did not take {name} ({why}). See to the printer, or open the file in {folder}."
    ),
    "paper.printer.silent": "it did not answer",
}
