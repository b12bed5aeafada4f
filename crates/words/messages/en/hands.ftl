### What the pages say where cards and pieces are handled: swapped, turned over, spoiled, measured.

## One card and its pieces

batch-both = Both faces of every piece
batch-touch = Touch a card to see its pieces, turn one over, or swap one with another card.
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
edit-choice-back = A choice was taken back
