### What the pages say where cards and pieces are handled: swapped, turned over, spoiled, measured.

## One card and its pieces

batch-both = Both faces of every piece
batch-touch = Touch a card to see its pieces, turn one over, or swap one with another card.
batch-drag = Or drag a piece onto another card, and the two change places; under a finger, hold it for a moment first. In a line-up all cards are in sight. By keyboard: on a card the space bar takes up a piece, once more the next one; arrows carry it, Enter lets it go, Esc puts it back.
batch-line-up = Lined up, small
batch-lit-alt = Card { $number }, { $recipe }. { $faces }
batch-faces = { $layer }: { $shows } shows, { $behind } behind it
batch-walk = From card to card
batch-before = Card before
batch-after = Next card
batch-close = All cards
batch-piece = piece { $mark }, from sheet { $sheet } of { $letter }
batch-shows = { $face } shows
batch-behind = { $face } is behind it
batch-turn = Turn it over
batch-rub-out = It was turned over: rub out the pencilled letter that is now in sight.
batch-swap = Swap it with another card
batch-swap-title = Whose { $layer } shall card { $number } have?
batch-swap-lead = Touch a card: its { $layer } and that of card { $number } change places. Nothing is cut anew.
batch-swap-not = Leave it as it is
batch-swap-with = Swap with card { $number }
batch-swap-why = { $why ->
    [choice-same-card] this card
    [choice-other-size] has another size
    [choice-same-print] one print twice
    [choice-both-large] two large prints
    [choice-same-ground] one ground twice
    [choice-never-together] prints kept apart
    [choice-other-designs] its recipe does not take the print
   *[other] has no such piece
}
hold-taken = The { $layer } of card { $card }. Pale cards cannot have it.
hold-may = Let go: cards { $card } and { $with } swap their { $layer }. Nothing is cut anew.
batch-no-card = Write the number of a card.
batch-chosen = Chosen by hand
batch-take-back = Take back
batch-wish-all = All cards
batch-even = { $why ->
    [same] Evenly shared: { $most } of each.
    [one] Evenly shared: { $fewest } or { $most } of each.
    [used] From { $fewest } ({ $of-fewest }) to { $most } ({ $of-most }), { $apart } apart: every piece of { $of-fewest } is used.
    [partners] From { $fewest } ({ $of-fewest }) to { $most } ({ $of-most }), { $apart } apart: partners go together first.
   *[rule] From { $fewest } ({ $of-fewest }) to { $most } ({ $of-most }), { $apart } apart: more of { $of-fewest } would meet its own print.
}
batch-kits = { $count } kits: { $alike ->
    [yes] all alike.
   *[no] they differ by a card.
}

## Changes, as they are kept

edit-swapped = Cards { $card } and { $with } swapped their { $layer }
edit-turned = The { $layer } of card { $card } turned over, its { $side ->
    [front] front
   *[back] back
} shows
edit-recolored = The { $layer } of card { $card } cut from { $name }
edit-swap = { $moved } pieces ({ $piece }) have another colour: packs are saved
edit-choice-back = A choice was taken back

## A spoiled piece

spoiled-title = Spoiled one?
spoiled-lead = Say which, and see the least that has to be cut again. Nothing else changes, and it is kept until you take it back.
spoiled-this = It is spoiled
spoiled-paper = What is pencilled on its back
spoiled-hint = such as { $name }
spoiled-layout = From layout
spoiled-stock = Or a piece of cardstock
spoiled-say = This one is spoiled
spoiled-none = Choose one
spoiled-name = { $kind ->
    [paper] { $name }, { $layer } of { $recipe }, { $size }
   *[stock] { $stock }: { $name } of { $recipe }, { $size }
}
spoiled-take = { $kind ->
    [spare] Take the spare { $what }: it is cut already.
    [paper-rest] Cut it from what a sheet of { $what } leaves over on layout { $layout }: a piece of { $size }.
    [stock-rest] Cut it from what a sheet of { $what } leaves over: a piece of { $size }.
    [earlier] Cut it from what was left when the earlier one was cut again: a piece of { $size }.
    [paper-sheet] Take one more sheet of { $what }, { $size }.
   *[stock-sheet] Take one more sheet of { $what }, { $size }.
}
spoiled-fewest = No fewer sheets would do.
spoiled-missing = Nothing is left to cut it from. Make one card less, or use another print.
spoiled-steps = How it is cut
spoiled-take-back = It is not spoiled after all
spoiled-cut = It is cut again
spoiled-not-cut = Not cut yet after all
spoiled-is-cut = cut again
spoiled-stale = { $count ->
    [one] One spoiled piece belongs
   *[other] { $count } spoiled pieces belong
} to an earlier plan and { $count ->
    [one] does
   *[other] do
} not count in this one.
spoiled-unknown = There is no piece { $name }. Write what is pencilled on its back, a letter and a number.
spoiled-several = { $name } is on the layouts { $layouts }. Say which layout it is from.
spoiled-empty = Say which piece it is: write the letter and the number pencilled on its back, or choose a piece of cardstock.
spoiled-other-plan = That piece belongs to an earlier plan. Choose it again.
spoiled-followed = It stays as it is: one that was spoiled after it is cut again already, from what this one left. Take the tick of that one away first.

## The first sample

sample-title = Sample first
sample-lead = Cut one sheet and make one card before you cut the rest. Measure its pieces and write what the rule says: up to 1/32 in, or 1 mm, is no matter.
sample-which = Which recipe
sample-planned = planned { $width } × { $height }
sample-width = Width
sample-height = Height
sample-compare = Compare
sample-plan = Plan the rest with these sizes
sample-unclear = { $layer }, { $side ->
    [width] width
   *[height] height
}: “{ $typed }” is no length. Write it like 3 1/16 or 78 mm.
sample-fine = { $layer }, { $side ->
    [width] width
   *[height] height
}: { $measured } is fine.
sample-off = { $layer }, { $side ->
    [width] width
   *[height] height
}: { $measured } instead of { $planned }, { $by } { $more ->
    [yes] too much.
   *[no] too little.
}
sample-setting = Where the stop is set to { $setting } ({ $sheet }, step { $steps }), set it to { $corrected }.
sample-rest = It is the rest of its row ({ $sheet }): it takes the errors of the cuts before it. Measure the pieces cut before it, and correct their setting.
sample-layout = layout { $number }
sample-fewer = With these sizes the sheets give { $now } cards instead of { $before }. Correct the setting instead, or change the sizes on the Cards page.
