### Findings of a plan: `finding-<code>`, its remedy in `.remedy`; facts by name.

finding-background-no-ink = In the picture `{ $picture }` of the stamp “{ $stamp }” no ink was found, so “{ $background }” cannot be stamped.
    .remedy = Put the picture beside the project file; its motif must be dark on light, or opaque on clear.
finding-background-no-outline = The stamp “{ $stamp }” has no outline, so “{ $background }” cannot be stamped.
    .remedy = Give it a shape, corners or a picture.
finding-background-nothing-to-stamp = Nothing of “{ $background }” can be stamped as it stands.
    .remedy = Give at least one stamp a share of 1 or more.
finding-background-other-sheet = “{ $background }” is stamped on { $sheet-width } × { $sheet-height }; design { $design } shows it on a sheet of { $width } × { $height }, from its top left corner.
    .remedy = Make the two sheets the same size.
finding-background-short = { $placed } of { $wished } wished impressions go on “{ $background }”: that is the fullest sheet that was found at this gap.
    .remedy = With a gap of { $gap } all of them go on; or ask for { $placed }.
finding-background-short-at-any-gap = { $placed } of { $wished } wished impressions go on “{ $background }”: that is the fullest sheet that was found at this gap.
    .remedy = No smaller gap was found that holds them all: ask for { $placed }, or make the stamps smaller.
finding-background-stamp-too-large = The stamp “{ $stamp }” is { $size } long, larger than the sheet of “{ $background }”, { $sheet-width } × { $sheet-height }.
    .remedy = Make the stamp smaller, or take a larger sheet.
finding-background-too-near = On “{ $background }” { $count } { $count ->
        [one] impression that you placed is
       *[other] impressions that you placed are
    } nearer to another than { $gap }, or { $count ->
        [one] shows
       *[other] show
    } only a sliver at an edge.
    .remedy = Move them apart, or set the others out anew.
finding-base-fits-no-sheet = The base of { $recipe }, { $width } × { $height }, comes out of no sheet of { $cardstock }.
    .remedy = Choose a larger cardstock, another fold or a smaller card.
finding-base-longer-than-trimmer = The base of { $recipe } is { $long } long; your trimmer cuts { $cut }.
    .remedy = Swing out the ruler, or mark both ends and cut from each.
finding-batch-too-large = More than { $most } cards at once are not planned; the plan stops there.
    .remedy = Plan the batch in parts, or check the number of copies and cards.
finding-border-errors = The narrowest border is { $edge ->
    [left] at the left
    [right] at the right
    [top] above
   *[bottom] below
} of the { $layer } on { $recipe }: { $planned } as planned, down to { $stop } where one setting of the stop is { $hand } off, to { $cuts } where every cut is; { $share ->
    [0] fewer than one such card in 100 shows
   *[other] { $share } in 100 such cards show
} less than half of it.
    .remedy = Cut one sheet and measure its pieces before you cut the rest; a wider border forgives more.
finding-border-narrow = In { $recipe } the { $layer } shows a border of only { $border }.
    .remedy = Below { $least } every small error shows: make the border wider.
finding-cardstock-no-sheet = No sheet of { $cardstock } has a size.
    .remedy = Write at least one sheet size for it.
finding-cardstock-short = { $cardstock }: { $wanted } sheets of { $width } × { $height } are needed and { $there } are there.
    .remedy = Get { $short } more, or use another colour for some of the cards.
finding-cardstock-strip-narrow = { $cardstock }: a strip of { $width } comes off a sheet. Strips under { $least } are hard to hold, and no plan without one was found that costs no more.
    .remedy = Hold the wide part behind the rail, never the strip, or buy sheets of another size.
finding-cardstock-too-fine = The sizes cut from { $cardstock } have no common mark coarse enough to plan on.
    .remedy = Round the sizes to the marks of your trimmer.
finding-cardstock-unfinished = The sheets of { $cardstock } could not be worked out in the time given.
    .remedy = Ask for fewer cards at once, or allow more time.
finding-choice-both-large = Card { $wanted } would have two large prints on it, { $design } and { $other }: the choice for its { $layer } is left out.
    .remedy = Take a card whose print is smaller.
finding-choice-never-together = On card { $wanted } the prints { $design } and { $other } would meet, which you keep apart: the choice for its { $layer } is left out.
    .remedy = Take another card.
finding-choice-no-card = There is no card { $wanted }: the choice for its { $layer } is left out.
    .remedy = Take the choice back, or name another card.
finding-choice-no-piece = Card { $wanted } has no patterned { $layer }: the choice is left out.
    .remedy = Name a layer of patterned paper that both cards have.
finding-choice-no-plain = Card { $wanted } has no plain { $layer }: the choice is left out.
    .remedy = Name a mat or another piece of plain cardstock that the card has.
finding-choice-other-designs = { $recipe } is not made of design { $design }, so card { $wanted } cannot have its { $layer }.
    .remedy = Take a card of a design that the recipe names, or add { $design } to it.
finding-choice-other-size = The { $layer } of card { $card } and that of card { $with } are not of one size, so they cannot change places.
    .remedy = Take a card whose piece has the same size.
finding-choice-same-card = Card { $card } cannot change places with itself.
    .remedy = Take another card.
finding-choice-same-ground = On card { $wanted } two prints with one ground would touch, { $design } and { $other }: the choice for its { $layer } is left out.
    .remedy = Take a card with another ground.
finding-choice-same-print = Card { $wanted } would have print { $design } twice: the choice for its { $layer } is left out.
    .remedy = Take a card of another print.
finding-choice-sideways = The { $layer } of card { $card } lies a quarter turned on its sheet, so its other face, { $face }, would lie on its side.
    .remedy = Turn over a piece that stands upright on its sheet, or call that face one that may lie any way.
finding-collage-fits-no-recipe = None of the { $panels } printed panels on the collage sheet of { $pack } gives the pieces of a card.
    .remedy = Write a recipe whose pieces fit inside a panel, or turn the sheet so that its other side shows.
finding-collage-not-straight = The { $panels } printed panels of { $pack } cannot be parted by straight cuts from edge to edge.
    .remedy = Cut one panel free by hand with a ruler, or turn the sheet so that its other side shows.
finding-currencies-differ = Prices are in more than one currency, so there is no total.
    .remedy = Write all prices in one currency.
finding-design-no-recipe = No recipe may be made of design { $design }, so its { $sheets } { $sheets ->
        [one] sheet stays
       *[other] sheets stay
    } whole.
    .remedy = Add its letter to a recipe's designs, or leave the design out of the batch.
finding-design-short = { $batch }: design { $design } is to give { $wanted } sheets and { $there } { $there ->
        [one] is
       *[other] are
    } left: { $short } too few.
    .remedy = Get { $short } more, or use another design in their place. Or let something go: { $fewer } cards of { $design }{ $kits-left ->
        [0] { "" }
        [one] , which leaves { $kits-left } whole kit
       *[other] , which leaves { $kits-left } whole kits
    }{ $other ->
        [none] .
       *[other] ; or { $other }, which takes { $other-sheets } sheets of it and makes { $other-cards } cards.
    }
finding-envelope-tight = The card fits { $envelope } with only { $clearance } to spare; { $wanted } is easier.
    .remedy = { $next ->
        [none] Use an envelope a little larger.
       *[other] The next envelope that fits well is { $next }, { $width } × { $height }.
    }
finding-envelope-too-small = The finished card does not fit { $envelope }: { $clearance } to spare, and it needs { $wanted } for its thickness.
    .remedy = { $next ->
        [none] Make an envelope to measure.
       *[other] The next envelope that fits is { $next }, { $width } × { $height }.
    }
finding-goal-no-mix = The numbers asked for each recipe cannot make the cards asked for a sheet.
    .remedy = Widen the least and most of a recipe, or change the cards per sheet.
finding-grain-across-fold = The { $recipe } piece of { $width } × { $height } comes out of { $cardstock } only with its fold across the grain.
    .remedy = Score it well before folding, or use a larger sheet.
finding-greeting-covered = In { $recipe } the { $above } lies over “{ $words }”.
    .remedy = Move one of them, or stamp the words elsewhere on the { $layer }.
finding-greeting-tight = “{ $words }” leaves { $clear } at the edge of its { $layer }.
    .remedy = Leave at least { $least } on every side: { $wide } × { $high } or larger will do.
finding-greeting-too-large = “{ $words }” runs over the edge of its { $layer } by { $over }.
    .remedy = Use a { $layer } of { $wide } × { $high } or larger, or a smaller stamp.
finding-inside-fits-no-sheet = The inside sheet of { $recipe }, { $width } × { $height }, comes out of no sheet of { $cardstock }.
    .remedy = Choose a larger sheet or a smaller inside sheet.
finding-inside-too-large = The inside sheet of { $recipe }, { $width } × { $height }, is larger than the open base.
    .remedy = Make it a little smaller than the base.
finding-internal-check = A check of our own failed, so this part of the plan is not shown.
    .remedy = This is a mistake in Octavo, not in your project: please report it with the project file.
finding-kits-too-many = { $cards } cards do not fill { $kits } kits: some would be empty.
    .remedy = Make fewer kits, or cut more sheets for this batch.
finding-kits-unequal = The { $kits } kits are not alike: { $odd } do not go round evenly. Neighbours whose kits differ can swap: { $swaps } pairs can.
    .remedy = { $aside ->
        [0] { "" }
       *[other] { $aside } cards set aside make the kits alike.{ " " }
    }{ $fewer ->
        [0] { $more ->
            [0] Or change the sheets of the designs that do not go round.
           *[other] { $more } kits would be alike.
        }
       *[other] { $more ->
            [0] { $fewer } kits would be alike.
           *[other] { $fewer } or { $more } kits would be alike.
        }
    }
finding-layer-hidden = In { $recipe } nothing shows of the { $layer }: it lies wholly under the { $above }.
    .remedy = Move one of them, or leave the { $layer } out.
finding-layer-runs-over = In { $recipe } the { $layer } runs { $over } over the edge of what it lies on.
    .remedy = Make it smaller, move it, or say that it may overlap.
finding-layout-none = No straight cuts give these pieces from one sheet of { $pack }, at marks of { $mark }.
    .remedy = Widen a range by one mark, ask for one card fewer, or let a piece turn.
finding-layout-piece-too-large = The { $layer } of { $recipe } is larger than a sheet of { $pack }.
    .remedy = Use a smaller piece or a larger sheet.
finding-layout-pin = A pinned piece cannot lie where it is pinned.
    .remedy = Check its place and its size.
finding-layout-too-many = A layout takes at most { $kinds } kinds of pieces and { $pieces } of one kind.
    .remedy = Ask for fewer cards from one sheet.
finding-layout-too-much-area = The smallest pieces together are { $percent } % of a sheet of { $pack }.
    .remedy = Ask for fewer cards from one sheet, or make the pieces smaller.
finding-layout-unfinished = No layout of { $pack } was found in the time given; that does not mean there is none.
    .remedy = Ask for fewer cards from one sheet, or allow more time.
finding-no-paper-piece = No recipe takes a piece of patterned paper.
    .remedy = Add a patterned layer to a recipe.
finding-no-sheets = There is no sheet of patterned paper to cut.
    .remedy = Add a pack with a design, and at least one sheet of it.
finding-pairs-short = Cards of { $designs } need { $needed } pieces of another design, and only { $there } are there.
    .remedy = Cut more sheets of other designs, or name partners; until then they keep their own print.
finding-panels-cut = The layout cuts through { $cut } of { $panels } printed panels of { $face } (design { $design }).
    .remedy = Turn the sheet so that its other side shows, or cut this design on its printed lines.
finding-partner-missing = Design { $design } has no partner for the pieces that come from one.
    .remedy = Name a pair of designs; until then it takes pieces of any other design, shared evenly.
finding-partner-twice = Design { $design } is paired more than once; the pair with { $partner } is left out.
    .remedy = Give each design one partner.
finding-partner-uneven = Design { $design } has { $sheets } sheets and its partner { $partner } has { $partner-sheets }.
    .remedy = Use equal numbers of sheets of both.
finding-piece-fits-no-sheet = A { $width } × { $height } piece of { $recipe } comes out of no sheet of { $cardstock }.
    .remedy = Choose a larger cardstock or a smaller piece.
finding-piece-not-on-mark = The { $layer } of { $recipe } has no size on your marks of { $mark } that fits its card.
    .remedy = Widen its range or choose a finer mark.
finding-pin-dropped = The pin of the { $layer } of { $recipe } was left out: it does not lie on the marks of the usable sheet.
    .remedy = Move it to a mark, or choose a finer mark.
finding-price-missing = { $name } has no price, so the total reads “at least”.
    .remedy = Write what you paid for it, with the date.
finding-print-turned = On layout { $layout } the print { $face } (design { $design }) would lie on its side on pieces { $pieces }.
    .remedy = Use its other side, or do not let these pieces turn.
finding-recipe-bounds = { $recipe } asks for at least { $least } cards and at most { $most }.
    .remedy = Make the least no more than the most.
finding-recipe-without-paper = { $recipe } takes no patterned paper, so no sheet gives cards of it.
    .remedy = Add a patterned layer, or take the recipe out.
finding-rest-matters = On layout { $layout } the rest of { $cuts } cuts falls on { $on }, where every error shows.
    .remedy = Cut { $better } last instead: there it does not matter.
finding-sets-not-whole = { $cards } cards make { $sets } sets of { $set } and leave { $rest } over.
    .remedy = Change the number of cards, or keep the rest as spares.
finding-share-all-used = On { $recipe } the { $layer } shows { $most } on { $most-cards } cards and { $fewest } on { $fewest-cards }: every piece of { $fewest } is used.
    .remedy = Cut one more sheet of { $fewest } in place of one of { $most } for even shares.
finding-share-by-rule = On { $recipe } the { $layer } shows { $most } on { $most-cards } cards and { $fewest } on { $fewest-cards }: more of { $fewest } would meet a piece of its own design.
    .remedy = Name other partners, or leave it so.
finding-sheet-gives-fewer = A sheet of { $pack } gives { $cards } cards, not { $wanted }.
    .remedy = Use it for the last cards of the batch.
finding-sheet-not-on-grid = A sheet of { $pack } is not a whole number of marks of { $mark }: { $width } across and { $height } down are trimmed off.
    .remedy = Square the sheet to size first, or choose a finer mark.
finding-sheet-too-large = A sheet of { $pack } is too large to plan at marks of { $mark }.
    .remedy = Choose a coarser mark.
finding-sheet-too-small = Nothing is left of a sheet of { $pack } inside its unusable edges.
    .remedy = Check its size and its edges.
finding-spare-unknown = No piece { $layer } of { $recipe } is known, so no spare of it was planned.
    .remedy = Use the names of the recipe and of its layer.
finding-strip-narrow = Piece { $piece } of layout { $layout } is only { $width } wide; strips under { $least } are hard to hold.
    .remedy = Cut it while it is attached to a wide piece, and keep fingers behind the rail.
finding-too-few-sheets = { $batch }: { $wanted } cards are wanted and the sheets give { $cards }.
    .remedy = About { $short } more { $short ->
        [one] sheet is
       *[other] sheets are
    } needed, of any design. Or let something go: { $fewer } { $fewer ->
        [one] card
       *[other] cards
    } of this batch{ $other ->
        [none] .
       *[other] ; or { $other }, which takes { $other-sheets } sheets and makes { $other-cards } cards.
    }

### Ways out of a finding: phrases for a list, by their code.

way-narrower = let the { $layer } of { $recipe } be { $by } narrower, { $to } wide
way-wider = let the { $layer } of { $recipe } be { $by } wider, { $to } wide
way-lower = let the { $layer } of { $recipe } be { $by } lower, { $to } high
way-higher = let the { $layer } of { $recipe } be { $by } higher, { $to } high
way-turn = let the { $layer } of { $recipe } lie a quarter turned on the sheet
way-fewer-cards = ask for { $cards } from a sheet, { $by } fewer
way-sheet = { $name ->
    [none] use a sheet of { $width } × { $height }
   *[other] use a sheet of { $width } × { $height } ({ $name })
}
way-and = { $first }, and { $next }
way-gives-whole = { $way }: nothing is left over
way-gives = { $way }: { $percent } % of the sheet is left over
way-perhaps-smaller = { $way }; a smaller change may do too

## A class

finding-class-kits-empty = The batch makes { $cards } cards and is shared out over { $planned } kits: some hold none.
    .remedy = Ask for more cards in the batch and get the sheets for them (octavo replan --people does both), or have fewer kits.
finding-class-kits-few = The class needs { $kits } kits and the batch is shared out over { $planned }.
    .remedy = Set kits to { $kits } in the batch, or take fewer spare kits. Kits that are cut stay as they are.
finding-class-kits-many = The batch is shared out over { $planned } kits and the class needs { $kits }.
    .remedy = { $more ->
        [one] The one that is over is a spare.
       *[other] The { $more } that are over are spare ones.
    }
finding-class-left-handers = { $left } left-handers cannot sit on { $seats } seats.
    .remedy = Correct the number of left-handers or of seats.
finding-class-sheets-short = The kits that come on top take { $sheets ->
        [one] one more sheet
       *[other] { $sheets } more sheets
    } of design { $letter }, and { $short ->
        [one] one of them is not there
       *[other] { $short } of them are not there
    }.
    .remedy = Buy another pack, or give the last kits other prints.
finding-class-past-midnight = At { $each } minutes a card, { $cards } cards take until after midnight.
    .remedy = Begin earlier, make fewer cards, or correct the minutes.
finding-class-past = The day of the class, { $date }, is over: today is { $today }.
    .remedy = Write the day of the next class.
finding-class-late = { $days ->
        [0] The class is today, and some of what comes before it was due on days that are over.
        [one] One day is left, and some of what comes before the class was due on days that are over.
       *[other] { $days } days are left, and some of what comes before the class was due on days that are over.
    }
    .remedy = Do what is late first, or let people cut in the class.
finding-class-currencies = The prices of this class are in several currencies.
    .remedy = Write all of them in one: what they come to today is yours to say.
finding-region-cut = { $regions ->
        [one] The region to keep whole on { $face } (design { $design }) is cut or covered on layout { $layout }.
       *[other] { $lost } of { $regions } regions to keep whole on { $face } (design { $design }) are cut or covered on layout { $layout }.
    }
    .remedy = No order of the same cuts keeps it: make the region smaller, or give it a larger piece.
finding-region-shows = A region to avoid on { $face } (design { $design }) shows on a card of layout { $layout }.
    .remedy = No order of the same cuts hides all of it: cover it, or pin a piece elsewhere.
finding-region-not-looked-at = The regions marked on { $face } (design { $design }) were not looked at: layout { $layout } is cut on printed lines, or has pinned pieces.
    .remedy = Take the pins off, or check the pieces by eye.
