"""Texts: making a count key."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "key.step.1": "Step 1 of 5: material",
    "key.step.2": "Step 2 of 5: samples",
    "key.step.3": "Step 3 of 5: container",
    "key.step.4": "Step 4 of 5: pour",
    "key.step.5": "Step 5 of 5: key",
    # Resume, or a material
    "key.resume.title": "Go on with {material}?",
    "key.resume.body": "A key was left half made.",
    "key.resume.yes": "Go on",
    "key.resume.no": "Start over",
    "key.material.title": "What is in the jar?",
    "key.material.rice": "rice",
    "key.material.lentils": "lentils",
    "key.material.beans": "beans",
    "key.material.pasta": "pasta",
    "key.material.beads": "beads",
    "key.material.hex_nuts": "hex nuts",
    "key.material.buttons": "buttons",
    "key.material.something_else": "something else",
    "key.class.beads": "beads, hardware",
    "key.class.pasta": "pasta",
    "key.class.grains": "pulses, grains",
    "key.class.mixed": "mixed pieces",
    "key.class.unknown": "don't know",
    "key.caution": "Ask about allergies. Small pieces: not for children under 3.",
    # Samples of another day
    "key.old.title": "Use the samples of {day} {month}?",
    "key.old.piece": "{mass} a piece.",
    "key.old.piece.whole": "{mass} a whole piece.",
    "key.old.piece.bits": "{mass} a piece or bit.",
    "key.old.fresh": "Nothing to count then: only fill and weigh.",
    "key.old.moist": (
        "In {count} day damp or dry air may change that by {percent}.",
        "In {count} days damp or dry air may change that by {percent}.",
    ),
    "key.old.yes": "Use them",
    "key.old.no": "Count anew",
    "key.same_bag.title": "Is it from the same bag?",
    "key.same_bag.body": "Another bag may hold larger or smaller pieces. Then they are counted.",
    "key.same_bag.yes": "Yes, all of it",
    "key.same_bag.no": "No, or mixed",
    # Broken bits
    "key.bits.title": "Do broken bits count?",
    "key.bits.body": "If so, each bit is one piece, in the samples too.",
    "key.bits.yes": "Yes, each\nbit",
    "key.bits.no": "No, whole only",
    "key.month.1": "January",
    "key.month.2": "February",
    "key.month.3": "March",
    "key.month.4": "April",
    "key.month.5": "May",
    "key.month.6": "June",
    "key.month.7": "July",
    "key.month.8": "August",
    "key.month.9": "September",
    "key.month.10": "October",
    "key.month.11": "November",
    "key.month.12": "December",
    # Tray and samples
    "key.clear.body": "Then put the empty tray on.",
    "key.tray_on.title": "Put the empty tray on.",
    "key.tray_on.body": "Same tray for all samples. Mix all bags first. Scoop, do not pick.",
    "key.tray_on.body.whole": (
        "Same tray for all samples. Mix all bags first. Scoop, then put bits aside."
    ),
    "key.tray_on.body.bits": (
        "Same tray for all samples. Mix all bags first. Scoop: each bit is one piece."
    ),
    "key.count.title": "Count {pieces} pieces into the tray.",
    "key.count.title.whole": "Count out {pieces} whole pieces.",
    "key.count.title.bits": "Count out {pieces}, bits too.",
    "key.add.title": "Add the next {pieces}, or empty the tray.",
    "key.add.title.whole": "Add the next {pieces} whole ones, or empty the tray.",
    "key.add.title.bits": "Add the next {pieces}, bits too, or empty the tray.",
    "key.same.title": "As heavy as before: the same pieces?",
    "key.too_many.title": "More than one sample at once?",
    "key.samples_off": "tray and samples {mass} taken off",
    "key.in_tens": "In tens",
    "key.tens.title": "Put the next ten on the tray.",
    "key.tens": "{done} of {all} tens are on. Put each on in one go.",
    "key.tens.waiting": "Waiting for a ten",
    "key.tens.stop": "Not\nin tens",
    "key.odd_ten.title": "Count that ten again.",
    "key.odd_ten.more": "It weighs about one piece more than the others. Put it right on the tray.",
    "key.odd_ten.less": "It weighs about one piece less than the others. Put it right on the tray.",
    "key.odd_ten.far": "It is not as heavy as the others at all. Put it right on the tray.",
    "key.odd_ten.two": "Those two tens are a piece or more apart. Put them right on the tray.",
    "key.odd_ten.below": "Ten {place} was a piece or more off. Empty the tray and begin anew.",
    "key.odd_ten.sure": "It is ten",
    "key.too_few.title": "Too light for this scale.",
    "key.light_tray.title": "Lighter than the empty tray. Same tray?",
    "key.empty_tray.title": "Empty the tray for the next sample.",
    "key.spread.title": "The samples are in.",
    "key.aside": "Keep the counted pieces aside until all samples are weighed.",
    "key.add": "The tray stays on the scale. Pieces taken off stay aside till the end.",
    "key.same": "Add the next {pieces} to them, or show the scale the empty tray first.",
    "key.too_many": "Far heavier than those before. Take some off, or undo the wrong ones.",
    "key.honest": "Scoop, do not pick.",
    "key.sample.1": "first",
    "key.sample.2": "second",
    "key.sample.3": "third",
    "key.sample.4": "fourth",
    "key.sample.5": "fifth",
    "key.sample.6": "sixth",
    "key.sample.7": "seventh",
    "key.sample.8": "eighth",
    "key.sample.9": "ninth",
    "key.sample.10": "tenth",
    "key.sample.on_pan": "on the pan",
    "key.sample.to_come": "to come",
    "key.brick": "one brick = {mass}",
    "key.bricks": "one brick = {count} steps of {mass}",
    "key.differ_by": "they differ by {mass}",
    "key.no_difference": "no difference to be seen",
    "key.keep": "Keep {mass}",
    "key.waiting": "Waiting for a sample",
    "key.waiting_empty": "Waiting for an empty tray",
    "key.enough": "That is\nenough",
    "key.one_more": "One more\nsample",
    "key.at_once": "Count {pieces}\nat once",
    "key.go_on": "Go on",
    # Container and pour
    "key.back_in.title": "Are the counted pieces in the jar?",
    "key.back_in.body": "In the jar that you weigh next, together with the rest.",
    "key.back_in.yes": "Yes, in the jar",
    "key.back_in.no": "No",
    "key.back_in.done": "counted pieces in the jar",
    "key.back_out.done": "counted pieces kept out",
    "key.pan_clear.body": "Then put the empty jar on, without its lid.",
    "key.empty_on.title": "Put the empty jar on.",
    "key.empty_on.body": "Without its lid. It is weighed once.",
    "key.empty_on.body.whole": "Lid off. Then only whole pieces go in.",
    # More than a bag
    "key.bags.title": "All from the bag you sampled?",
    "key.bags.body": (
        "Or from bags that you mixed before you scooped. Another may hold larger or smaller pieces."
    ),
    "key.bags.yes": "Yes, all of it",
    "key.bags.no": "No, count\nanew",
    "key.goal.title": "How full shall it be?",
    "key.goal.low": "hundreds",
    "key.goal.middle": "thousands",
    "key.goal.high": "{low} to {high}",
    "key.goal.from": "from about {mass}",
    "key.goal.number": "another number",
    "key.goal.pieces": "{count} pieces",
    "key.goal.any": "as it comes",
    "key.goal.lots": "in lots",
    "key.goal.lots.off": "if it is too heavy for the scale",
    "key.goal.lots.on": "yes, one after the other",
    "key.goal.note": "It can be changed while you pour.",
    "key.goal.number.title": "About how many?",
    "key.goal.number.label": "our goal",
    "key.goal.number.enter": "That is our goal",
    "key.goal.too_many": "At most {limit} in the event.",
    "key.goal.other": "Another\ngoal",
    "key.goal.change": "Change\ngoal",
    "key.goal.set": "Set a\ngoal",
    "key.pour.title": "Pour, then stop.",
    "key.pour.until": "Pour until the arrow is in the tall box.",
    "key.pour.inside": "Stop here.",
    "key.pour.past": "Too many. Take some out.",
    "key.pour.lot_full": "Stop here: enough for one lot.",
    "key.pour.to_go": "about {mass} to go",
    "key.pour.too_much": "about {mass} over",
    "key.pour.goal": "Goal: {low} to {high}",
    "key.pour.goal.number": "Goal: about {count}",
    "key.pour.too_heavy": "Too heavy for this scale: weigh in lots.",
    "key.pour.in_lots": "Weigh\nin lots",
    "key.pour.first_lot": "Lot 1",
    "key.pour.lot": "Lot {number}; kept before: {mass}",
    "key.pour.jar": "Empty jar {mass}",
    "key.pour.again": "Weigh\nit again",
    "key.pour.empty": "Fill the jar on the pan, or beside it.",
    "key.pour.between": "95 % sure: {low} to {high}",
    "key.pour.good_to": "Good to {percent}",
    "key.pour.over": "More than {limit} pieces: too many for the event.",
    "key.stopping.title": "Hands off. The scale comes to rest.",
    "key.stopping.wait": "Wait for rest",
    "key.emptied.title": "Empty it, then put it on again.",
    "key.emptied.body": "The same container. It is weighed once more, then comes the next lot.",
    "key.lot.title": "Lot {number} is kept.",
    "key.lot.name": "lot {number}",
    "key.lot.next": "Next lot",
    "key.lot.next.small": "Next\nlot",
    "key.lot.all": "That is all",
    "key.lot.all.small": "That is\nall",
    "key.lot.together": (
        "{pieces} pieces in {count} lot, 95 % sure: {low} to {high}.",
        "{pieces} pieces in {count} lots, 95 % sure: {low} to {high}.",
    ),
    "key.lot.to_go": "About {mass} to go.",
    "key.lot.inside": "The goal is reached.",
    "key.lot.past": "That is past the goal, by about {mass}.",
    "key.stop": "Stop here",
    "key.band.low": "low",
    "key.band.middle": "middle",
    "key.band.high": "high",
    "key.now": "now",
    # The key
    "key.done.title": "{count} pieces",
    "key.done.title.whole": "{count} whole pieces",
    "key.done.title.bits": "{count} pieces and bits",
    "key.sure": "95 % sure: between\n[b]{low}[/b] and [b]{high}[/b]",
    "key.cost": "up to {points} points",
    "key.cost.where": "near the top",
    "key.real": "the real number",
    "key.real.where": "is in here",
    "key.pieces_at": "{count} pieces",
    "key.which_jar": "Which\njar?",
    "key.used": "used",
    "key.letters": "{{first}} to {{last}}",
    "key.save": "Save as jar {letter}",
    "key.save.none": "Choose a letter",
    "key.cover": "Cover the\nbig number",
    "key.uncover": "Show the\nbig number",
    "key.refused.title": "No key from these masses.",
    "key.refused.more": "More samples",
    "key.refused.pour": "Pour on",
    "key.saved.title": "Jar {letter} is kept.",
    "key.saved.body": "Close the jar and write {letter} on it. Then weigh it closed.",
    "key.leave.title": "Leave this key for now?",
    "key.leave.body": "What was weighed is kept. Go on with it later.",
    "key.all_used": "All letters are used.",
    # How much to count, before anything was counted
    "advice.before": "{promise}{condition}.",
    "advice.before.fine": "{samples} samples of {pieces} should be good to about {now}",
    "advice.before.more": (
        "{samples} samples of {pieces} should be good to about {now}, of {other} to {then}"
    ),
    "advice.before.fewer": "{samples} samples of {other} will do: good to about {then}",
    "advice.before.if": ", if each weighs over {mass}",
    "advice.before.coarse": (
        "This scale steps by {step}: count {pieces} at once, or use a finer one."
    ),
    "advice.before.too_coarse": (
        "This scale steps by {step}, too coarse for these: use one that steps by {finer}."
    ),
    # What counting more would bring
    "key.most.help": "{most} It would help to {help}.",
    "key.most.pieces": "Unsure mostly because pieces differ.",
    "key.most.sample_rounding": "Unsure mostly by the steps of the scale in the samples.",
    "key.most.fill_rounding": "Unsure mostly by the steps of the scale in the fill.",
    "key.most.old_samples": "Unsure mostly because the samples are old.",
    "key.most.miscount": "Unsure mostly because a sample may be miscounted.",
    "advice.good": "Good to {now}.",
    "advice.gain": "Good to {now}: {help}.",
    "advice.unknown": "To see how good this is, {help}.",
    "advice.then": "{help} to reach about {then}",
    "advice.more_samples": (
        "weigh {count} more sample of {pieces}",
        "weigh {count} more samples of {pieces}",
    ),
    "advice.at_once": "count {pieces} at once (the scale steps by {step})",
    "advice.finer": "use a scale that steps by {step}",
    "advice.more_in_the_fill": "fill in more",
    # No key
    "count.refused.no_sample": "There is no sample: count some pieces and weigh them.",
    "count.refused.too_many_samples": "More than {limit} samples: leave some out.",
    "count.refused.empty_sample": (
        "Sample {place} weighs {mass}: put the pieces on and weigh again."
    ),
    "count.refused.light_sample": (
        "Sample {place} is only {steps} steps of {step}, at least {least} are needed: "
        "count more pieces at once, or use a finer scale."
    ),
    "count.refused.one_sample": (
        "One sample does not show how much the pieces differ: "
        "weigh two more, or say beforehand how much pieces differ."
    ),
    "count.refused.empty_fill": (
        "The filled container ({filled}) is not heavier than the empty one ({empty}): "
        "weigh both again."
    ),
    "count.refused.light_fill": (
        "What was filled in is only {steps} steps of {step}, at least {least} are needed: "
        "fill in more, or use a finer scale."
    ),
    "count.refused.less_than_one": "What was filled in weighs less than one piece: fill in more.",
    "count.refused.less_than_counted": (
        "About {count} pieces are too few to hold the {pieces} counted ones: "
        "say that those are not in the container, or weigh it again."
    ),
    "count.odd_sample": "sample {place} of {mass} is far from the others, look at it again",
    "count.refused.too_wide": "Good only to {now}, and {limit} is the limit: {help}.",
    # A key, but
    "count.warning.differ": (
        "The samples differ more than such pieces should: count and weigh them again."
    ),
    "count.warning.differ.if": (
        "Pieces of one kind would differ less: if yours are, count and weigh the samples again."
    ),
    "count.warning.differ.if.one": (
        "Pieces of one kind would differ less: if yours are, count sample {place} ({mass}) again."
    ),
    "count.warning.bits": "Broken bits weigh but do not count: take them out of the jar too.",
    "count.warning.differ.one": (
        "The samples differ more than such pieces should: count sample {place} ({mass}) again."
    ),
    "count.warning.old_samples": (
        "The samples are from another day or scale: that may change the count by {percent}."
    ),
    "count.warning.one_sample": "With a single sample a miscount goes unseen.",
    "count.warning.two_samples": "Two samples show little of how pieces differ: weigh a third.",
    "count.warning.few_sample": (
        "The lightest sample is only {steps} steps of {step}; "
        "from {least} on, rounding hardly counts."
    ),
    "count.warning.few_fill": (
        "What was filled in is only {steps} steps of {step}; "
        "from {least} on, rounding hardly counts."
    ),
    "count.warning.one_tray": (
        "The samples hardly differ at steps of {step}, so more of them do not average the "
        "rounding: count more pieces at once."
    ),
    "count.warning.readability": (
        "No readability was given: it was taken to be {step}, from the digits of the masses."
    ),
    "count.warning.finer_digits": "Some masses have finer digits than the readability of {step}.",
    "count.warning.over_limit": "More than {limit} pieces: too many for the event.",
    "count.warning.few_pieces": "Samples of fewer than {least} pieces tell little.",
    "count.warning.many_pieces": "Samples of more than {most} pieces are easily miscounted.",
}
