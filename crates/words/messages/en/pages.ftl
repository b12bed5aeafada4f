### Texts on the drawn pages.

page-number = Page { $number } of { $count }

## Finished cards

page-card-alt = A finished card, { $recipe }, in print { $letter }, { $name }
page-card-alt-words = A finished card, { $recipe }, in print { $letter }, { $name }, with the words “{ $words }”
page-more-cards = More finished cards
page-batch-cards = { $name }: { $count ->
    [one] one finished card
   *[other] { $count } finished cards
}
page-of-batch = { $title } · { $name }
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
    [one] patterned sheet
   *[other] patterned sheets
}
page-fact-finished = { $unit }, finished size
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
page-sheet-first = Measure a sheet before you set the stop: paper varies, and damp paper grows. Make one card completely before you cut the rest.

page-placed-plain = In plain order: { $whole } of { $pictures } pictures on one piece.
page-placed-now = As it is cut: { $whole } of { $pictures } pictures on one piece.
page-placed-print = Print { $letter }.

## The paper and its colours

page-colored-title = The paper and its colours
page-colored-lead = Each print with its top up, its colours by their share of the area, and what lies nearest to it. An arrow shows its top; a pair of arrows: upright or upside down, not sideways. The numbers are ΔE₀₀: under 1 nobody sees it, over 10 it is another colour.
page-colored-screen = Colours of a screen, a camera or a printed page are not the paper's. Hold the sheet itself against cardstock, ribbon and ink in daylight before you cut.
page-colored-front = Front
page-colored-back = Back
page-colored-goes-on = { $heading } (continued)
page-colored-face = { $side }: { $name }
page-colored-unseen = { $side }, { $name }: does not show on these cards.
page-colored-cardstock = Nearest cardstock: { $name }, { $near } (ΔE { $delta })
page-colored-ribbon = Nearest ribbon: { $name }, { $near } (ΔE { $delta })
page-colored-ink = Nearest ink: that of “{ $name }”, { $near } (ΔE { $delta })
page-colored-alt = { $title }, { $way }. Its colours by share: { $colors }

## Cutting steps

page-steps-title = The cuts, step by step
page-steps-title-numbered = The cuts of layout { $number }, step by step
page-steps-lead = The dark bar is the stop; thick lines are cuts; the arrow points to the top of the print. { $sheets ->
    [one] One sheet
   *[other] { $sheets } sheets
}, { $cuts } cuts on each, { $strokes } strokes of the blade in all.
page-steps-as = It is cut as layout { $number }: follow the steps there.
page-steps-right = The stop is at the left of the blade: the right hand cuts, the left hand holds the paper down.
page-steps-left = For the left hand: turn the trimmer so that the stop is at the right of the blade. The left hand cuts, the right hand holds the paper down. The pieces are the same.
page-step-set = Set the stop to { $length }
page-step-stays = Leave the stop at { $length }
page-step-take-sheet = Take a whole sheet{ $turn ->
    [right] {" "}and turn it a quarter turn to the right.
    [left] {" "}and turn it a quarter turn to the left.
    [half] {" "}and turn it half round.
   *[none] , upright.
}
page-step-take-parts = Take the { $count ->
    [one] shaded part
   *[other] { $count } shaded parts
}{ $turn ->
    [right] , turned a quarter turn to the right.
    [left] , turned a quarter turn to the left.
    [half] , turned half round.
   *[none] , without turning.
}
page-step-cuts = { $count ->
    [one] Cut { $parts ->
        [one] once.
       *[other] each once.
    }
   *[other] Cut { $parts ->
        [one] { $count } times
       *[other] each { $count } times
    }, pushing the paper up to the stop each time.
}
page-step-rest = The rest is { $length }.
page-step-rest-waste = The rest, { $length }, is not used.
page-step-rest-edge = The rest, { $length }, is the unusable edge.
page-step-stack = { $layers ->
    [1] One sheet
   *[other] Stack { $layers }
} at a time: { $strokes ->
    [one] 1 stroke
   *[other] { $strokes } strokes
} for all { $sheets } sheets.
page-step-label = Finished: { $marks }; pencil { $count ->
    [one] the number on its back.
   *[other] the numbers on their backs.
}
page-step-label-letter = Finished: { $marks }; pencil { $count ->
    [one] on its back the letter of its print and its number
   *[other] on the back of each the letter of its print and its number
}, such as { $such }.
page-step-stock = { $name }, { $count ->
    [one] 1 sheet
   *[other] { $count } sheets
}.
page-step-score = Score at { $length } from the { $side ->
    [top] top
   *[left] left
}.
page-step-score-parts = { $strokes ->
    [one] One line
   *[other] { $strokes } lines
} to press, on pieces { $marks }.
page-step-short = { $turn ->
    [right] Quarter turn right.{" "}
    [left] Quarter turn left.{" "}
    [half] Turn half round.{" "}
   *[none] {""}
}{ $same ->
    [yes] Leave the stop at { $length }.
   *[no] Stop at { $length }.
} { $count ->
    [one] Cut { $parts ->
        [one] once.
       *[other] { $parts } parts once each.
    }
   *[other] Cut { $parts ->
        [one] { $count } times.
       *[other] { $parts } parts { $count } times each.
    }
}
page-step-long = Take care: this cut is { $length } long, longer than the trimmer. Mark both ends and cut from each side.
page-step-narrow = Take care: a narrow strip comes off. Hold the wide part, { $length }, never the strip.
page-step-narrow-rest = Take care: the rest is only { $length }. Hold it down with a ruler, not with fingers.
page-step-map = where
page-step-alt = Step { $number }: { $head }

## What to cut

page-needs-title = What to cut and to have ready
page-needs-piece = Piece
page-needs-size = Size
page-needs-from = Colour or print
page-needs-count = How many
page-needs-what = What
page-needs-how = Which
page-needs-base = base
page-needs-inside = inside sheet
page-needs-prints = { $name }, prints { $letters }
page-needs-scored = { $size }, scored { $at } from the { $side ->
    [top] top
   *[left] left
}
page-needs-small = Small supplies
page-needs-ribbon-name = { $name }, { $width } wide
page-needs-ribbon = { $length }, { $each } for each card
page-needs-spools = { $count ->
    [one] 1 spool
   *[other] { $count } spools
}
page-needs-rolls = { $count ->
    [one] 1 roll
   *[other] { $count } rolls
}
page-needs-packs = { $count ->
    [one] 1 pack
   *[other] { $count } packs
}
page-needs-strips = strips to stamp
page-needs-foam = foam squares
page-needs-envelopes = envelopes
page-cost-title = Material used
page-cost-what = What
page-cost-date = Price of
page-cost-used = Used
page-cost-unknown = unknown
page-cost-total = Together
page-cost-each = For each card
page-cost-at-least = at least { $amount }

## Cardstock

page-stock-title = Cardstock, sheet by sheet
page-stock-lead = Solid lines are cut, dashed lines are scored, slanted lines are left over: keep them for tags.
page-stock-edges = Crossed lines are an edge that is not used: cut it off first.
page-stock-color = { $name }: { $count ->
    [one] 1 sheet
   *[other] { $count } sheets
}
page-stock-best = No plan uses fewer sheets.
page-stock-found = The best plan found; by area at least { $bound ->
    [one] 1 sheet is
   *[other] { $bound } sheets are
} needed.
page-stock-stopped = Not worked out to the end: check the numbers before you buy.
page-stock-times = Cut { $count ->
    [one] 1 sheet
   *[other] { $count } sheets
} like this
page-stock-piece = { $marks }: { $name }, { $size }
page-stock-alt = A sheet of cardstock, { $size }, cut into { $count ->
    [one] 1 piece
   *[other] { $count } pieces
}

## Before you begin

page-before-title = Good to know
page-findings-title = What was found
page-findings-none = Nothing was found that needs your attention.
page-finding-serious = Must be changed
page-finding-warning = Look at this
page-finding-note = Note
page-finding-ways = Any one of these would do:
page-finding-layout = layout { $number }
page-rule-title = Check the printer
page-rule-square = 1 in
page-rule-square-alt = A square of exactly one inch
page-rule-inches = 4 in
page-rule-mm = 100 mm
page-cautions-cutting = Mind your fingers
page-supply = { $key ->
    [tape] Tape
    [foam] Foam squares
    [envelopes] Envelopes
    [ink-pad] Ink pad
    [stamps] Stamps
   *[own] { $name }
}
page-label-more = … and { $count } more: see the list of contents.
page-cautions-title = Take care

page-caution-blade = Every trimmer has a live blade. Close or lock it when it is not cutting. To change a blade, take the strip off the rail, and wrap the old blade before it is thrown away.
page-caution-lever = A lever cutter can take a fingertip. One person at a time, guard fitted, arm latched down when not in use, never lifted by children.
page-caution-strips = Never hold a narrow strip by hand near the blade: cut it last, from a piece you can hold safely.
page-caution-stack = A stack thicker than the cutter is made for drifts and can kick the blade. The cutter’s own instructions come before the stack sizes given here.
page-caution-knife = With a craft knife: a metal ruler with a raised edge, a cutting mat, a fresh blade, and the blade away from the hand that holds.
page-caution-sample = Make one card completely before you cut the batch.
page-caution-paper = Paper sizes vary by a millimetre or two, pads may carry a printed strip, and damp paper grows across the grain. Measure a sheet.
page-caution-colors = Colours on a screen or a printed page are guides. Compare paper, cardstock and ink in daylight before you buy for a batch.
page-caution-heat = Heat tools blow air hot enough to burn skin and to scorch or light paper. Hold the card with tongs, keep ribbon, alcohol and solvents away, let the nozzle cool on a stand, and never leave the tool plugged in unattended.
page-caution-solvent = Solvent inks, solvent cleaners and alcohol markers give off vapours: open a window, keep them from flames and heat tools, close the caps, read the label. Children, pregnant people and people with asthma should choose water-based ink.
page-caution-glue = Hot glue burns. Spray glue, loose glitter and embossing powder hang in the air: work low, with the room aired, away from food.
page-caution-children = A card for a child under 3 should carry nothing that pulls off and could be swallowed. With children in the room an adult does or watches all cutting and heating.
page-caution-ribbon = Long ribbon and cord do not belong on anything hung near an infant.
page-caution-post = Measure and weigh one finished card in its closed envelope, and ask the local counter before the batch goes out: bows, foam and thick layers often cost more, and limits change.
page-caution-rights = Patterned paper, stamped images and verses are other people’s works. Whether you may sell or teach with them depends on their makers’ terms and your country’s law. This is not legal advice.
page-caution-scale = Print this page at 100 % (“actual size”) and measure the square and the lines before you cut good paper.
page-caution-costs = Costs use the prices you entered, on their dates; postage, fees and tax are in only if you entered them.

## Measures in other editions

page-edition-mm = The measures are told in millimetres here, to the nearest half; “about” or ≈ stands where that is not exact. The project was planned in inches, and the pieces are the same.
page-edition-inches = The measures are told in inches here, to the nearest sixteenth; “about” or ≈ stands where that is not exact. The project was planned in millimetres, and the pieces are the same.
page-about = about { $measure }
page-length-words = { $length } ({ $words })
page-size-words = { $size } ({ $width } by { $height })
page-fraction-after = { $whole } and { $fraction }
page-fraction = { $under ->
    [2] one half
    [4] { $over ->
        [1] one quarter
       *[other] three quarters
    }
    [8] { $over ->
        [1] one eighth
       *[other] { $count } eighths
    }
    [16] { $over ->
        [1] one sixteenth
       *[other] { $count } sixteenths
    }
    [32] { $over ->
        [1] one thirty-second
       *[other] { $count } thirty-seconds
    }
   *[other] { $over ->
        [1] one sixty-fourth
       *[other] { $count } sixty-fourths
    }
}
page-number-words = { $number ->
    [0] nought
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
    [9] nine
    [10] ten
    [11] eleven
    [12] twelve
    [13] thirteen
    [14] fourteen
    [15] fifteen
    [16] sixteen
    [17] seventeen
    [18] eighteen
    [19] nineteen
    [20] twenty
    [21] twenty-one
    [22] twenty-two
    [23] twenty-three
    [24] twenty-four
    [25] twenty-five
    [26] twenty-six
    [27] twenty-seven
    [28] twenty-eight
    [29] twenty-nine
    [30] thirty
    [31] thirty-one
   *[other] { $number }
}

## Putting a card together

page-assembly-title = Putting a card together
page-assembly-title-named = Putting a card together: { $name }
page-assembly-lead = The layers in the order they lie, the base first. A dashed frame shows where the next one goes; the pale frame is the edge of the card.
page-assembly-alt = The layers pulled apart, from the base up: { $layers }
page-assembly-print = print { $letter }
page-assembly-borders = The borders
page-assembly-left = { $length } of { $below } at the left of { $name }
page-assembly-steps = One act at a time
page-border-round = { $length } of { $below } shows all round.
page-border-each = { $sides }; { $top } of it shows above, { $bottom } below.
page-border-flush = Flush with { $below } at the sides
page-border-even = { $length } of { $below } shows at the left and at the right
page-border-sides = { $below } shows { $left } at the left, { $right } at the right
page-act-stamp = Stamp “{ $words }” in the middle of each { $name }: { $margin } stays free at the left and at the right. Try on scrap first; the jig among the templates helps.
page-act-stamp-at = Stamp “{ $words }” on each { $name }: the ink begins { $margin } from the left edge and { $above } from the top. Try on scrap first; the jig among the templates helps.
page-act-flat = Lay the base in front of you, the way up it will be read.
page-act-fold = Fold the base on its score and press the fold flat with a bone folder.
page-act-folds = Fold the base on both scores and press the folds flat with a bone folder.
page-act-glue = Glue the { $name } on the { $below }.
page-act-foam = Put { $count ->
    [one] a foam square
   *[other] { $count } foam squares
} under the { $name } and set it on the { $below }.
page-act-ribbon = Lay the { $name } across, over what is glued so far.
page-act-ribbon-ends = Turn the ends of the { $name } to the back and fix them there with tape.
page-act-bow-right = Tie the bow: a loop in each hand, the right one over the left, under, through, and pull.
page-act-bow-left = Tie the bow: a loop in each hand, the left one over the right, under, through, and pull.
page-act-inside = Glue the inside sheet into the card along its fold.
page-act-press = Wipe off glue that came out, and let the card dry under a book.

## Colours, other sizes, notes

page-colors-title = The colours, each with its letters and its pattern
page-others-title = If your paper has another size
page-others-lead = How many pieces one sheet gives when all are cut alike, side by side, the print upright. For a mix of pieces, make the project again with your sheet.
page-others-sheet = Sheet
page-notes-title = Notes
page-notes-lead = Your own: what you changed, what to do next time.

## Templates

page-template-true = True size: print at 100 % (“actual size”).
page-template-part = True size, part { $number } of { $count }: row { $row }, column { $column }. Cut along one dashed line of each pair, lay the crosses on each other, and tape.
page-template-mm = 25 mm
page-template-mm-alt = A square of exactly 25 millimetres
page-template-check = Measure the left square before you use this page. If it is not { $measured }, make the project again with --square-measured and what you measured.
page-template-corrected = Drawn for a printer whose inch measured { $measured } in: on it the left square is 1 in now.
page-jig-title = A jig for “{ $words }”
page-jig-note = Print it on cardstock, cut round the two flaps and fold them up along the thick corner; or tape an L of cardstock along it. Lay the blank piece, { $strip }, into it; the words come into the dashed box, { $inked }: its left edge { $side } from the corner, its top { $above }. Try once on scrap.
page-place-title = Where the layers go: { $name }
page-place-note = The thick frame is the front of the folded card, { $size }. Lay a card on it, or hold it against a window, and mark corners lightly.
page-gauge-title = Score gauge: { $name }
page-gauge-note = Lay the base, { $size }, with its left edge on the left end and press where the dashed line is.
page-gauge-note-top = Lay the base, { $size }, on its side with its upper edge on the left end and press where the dashed line is.
page-gauge-score = score at { $length }
page-full-title = Layout { $number } at full size: { $pack }
page-full-note = The whole sheet, { $size }, with its cuts.

## Heads of tables for a spreadsheet

csv-piece = piece
csv-recipe = recipe
csv-width = width
csv-height = height
csv-unit = unit
csv-from = from
csv-face = print
csv-scored-at = scored at
csv-how-many = how many
csv-color = colour
csv-sheets = sheets
csv-what = what
csv-which = which
csv-amount = amount
csv-paper = patterned paper
csv-ribbon = ribbon
## What small errors do

page-errors-title = What small errors do
page-errors-lead = Nobody cuts to the hair. Here every width is told as it is planned, and as it is left when one thing goes wrong by as much as it does at most tables: the hand or the stop by { $hand }, a sheet out of square by { $rise } over { $run }, a print { $drift } off its place. The arrow points at the narrowest border of each card.
page-errors-said = The narrowest border is { $border }: { $planned } as planned. Where one setting of the stop is off, { $stop } is left. Where every cut and the placing are off by chance, { $share ->
    [0] fewer than one card in 100 has
   *[other] { $share } in 100 cards have
} less than half of it there or across from it.
page-errors-named = { $layer }, { $edge ->
    [left] at the left
    [right] at the right
    [top] above
   *[bottom] below
}
page-errors-border = Border
page-errors-planned = Planned
page-errors-cuts = Every cut off
page-errors-stop = Stop off
page-errors-placed = Laid off
page-errors-square = Out of square
page-errors-drift = Print off
page-errors-gone = none
page-errors-rest-title = Where the rest lies
page-errors-rest-well = What is left at the end of a row takes the errors of all its cuts. On these layouts it already lies where it shows least.
page-errors-rest = On layout { $layout } the last of a row is { $on }, and takes the errors of all its cuts. Cut { $better } last instead: there nobody sees them.

### How the prints are shared.

page-shares-title = How the prints are shared
page-shares-large = At most one print with large motifs lies on a card.
page-shares-only = Only these meet: { $pairs }.
page-shares-never = These never meet: { $pairs }.
page-shares-rule = { $apart ->
    [designs] No card has two pieces of one design
    [faces] No card shows the same print twice
   *[nothing] Any prints may meet
}: a piece that comes from another sheet is given out so that every piece is used once and all prints show on as many cards as can be.
page-shares-partners = Partners go together first: { $pairs }.
page-shares-pair = { $one } with { $other }
page-shares-print = Print
page-shares-all-used = { $layer }: { $most } shows on { $most-cards } cards and { $fewest } on { $fewest-cards }, because every piece of { $fewest } is used.
page-shares-by-partner = { $layer }: { $most } shows on { $most-cards } cards and { $fewest } on { $fewest-cards }, because partners go together first.
page-shares-by-rule = { $layer }: { $most } shows on { $most-cards } cards and { $fewest } on { $fewest-cards }; more of { $fewest } would meet a piece of its own design.
page-kits-title = { $count ->
        [one] One kit
       *[other] { $count } kits
    }
page-kits-title-of = { page-kits-title } · { $batch }
page-kits-alike = All { $count } kits are alike.
page-kits-unlike = The cards do not go round evenly, so the kits differ by a card. Kits that lie side by side can swap where each has what the other lacks: { $swaps ->
        [0] none can.
        [one] one pair can.
       *[other] { $swaps } pairs can.
    }
page-kits-each = In each kit
page-kits-these = Kit { $numbers }
page-kits-card = Card

light-shows = { $face }, which shows
light-behind = { $face }, behind it
lost-base = base
lost-inside = inside sheet
page-quoted = “{ $words }”

## The envelope to make

page-envelope-title = Envelope for { $names }
page-envelope-note = Cut { $size } along the solid lines, score the dashed ones, fold the side flaps in first, glue the lower flap to them. Score one first and try a finished card in it.
page-envelope-face = face { $size }

page-one-rest = There was no room for the rest on one page: the full handout has it.

page-every-card = Every card
page-every-card-lead = Every card as these cuts give it, by its number.
