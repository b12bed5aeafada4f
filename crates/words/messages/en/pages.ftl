### Texts on the drawn pages.

page-number = Page { $number } of { $count }

## Finished cards

page-card-alt = A finished card, { $recipe }, in print { $letter }, { $name }
page-more-cards = More finished cards
page-no-cards = This plan makes no cards yet. See the findings on the last page.
page-caption-count = { $count ->
    [one] { $count } card
   *[other] { $count } cards
}
page-caption-mat = on { $name }
page-caption-partner = band { $letter }
page-fact-cards = { $count ->
    [one] finished card
   *[other] finished cards
}
page-fact-sheets = { $count ->
    [one] sheet of patterned paper
   *[other] sheets of patterned paper
}
page-fact-finished = { $unit }, finished
page-fact-settings = { $count ->
    [one] setting, { $cuts } cuts a sheet
   *[other] settings, { $cuts } cuts a sheet
}

## The patterned sheet

page-sheet-title = How to cut each patterned sheet
page-sheet-title-numbered = Patterned sheets, layout { $number }
page-sheet-lead = { $pack }, { $size }. Cut { $sheets ->
    [one] 1 sheet
   *[other] { $sheets } sheets
} this way; each gives { $cards ->
    [one] 1 card
   *[other] { $cards } cards
}. The arrow shows which way is up.
page-sheet-alt = Layout { $number } on a sheet of { $size }. { $pieces }.
page-sheet-key = Solid lines: cut. Slanted lines: left over. Crossed lines: unusable edge. Pencil the number on the back of each piece, after the letter of its print.
page-sheet-key-whole = Solid lines: cut. Nothing is left over. Pencil the number on the back of each piece, after the letter of its print.
page-sheet-use = { $letter }: { $count ->
    [one] 1 sheet
   *[other] { $count } sheets
}
page-piece-kind = { $name }, { $size }, { $count } on each sheet
