### Post, supplies, price and class: what the pages and the command line say of them.

## Amounts

amount-sheets = { $count ->
    [one] 1 sheet
   *[other] { $count } sheets
}
amount-pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
}
amount-uses = { $count ->
    [one] 1 use
   *[other] { $count } uses
}
amount-yards = { $count } yd
amount-metres = { $count } m
amount-packs = { $count ->
    [0] none
    [one] 1 pack of { $holds }
   *[other] { $count } packs of { $holds }
}
amount-no-pack = no pack is told of
sum-at-least = at least { $amount }
sum-unknown = not known
sum-mixed = in several currencies ({ $currencies }), not added up: write every price in one of them
sum-missing = No price is told of { $names }.
grams-ounces = { $grams } g ({ $ounces } oz)
millimetres = { $mm } mm

## Post

post-title = Post
post-lead = What a finished card weighs and measures, which envelope takes it, and which class its letter falls into. Prices are your own.
post-kind = { $recipe }, { $cards ->
    [one] 1 card
   *[other] { $cards } cards
}
post-of-batch = { $batch }: { $kind }
post-weighs = Closed in its envelope it weighs about { $weight }.
post-weighs-at-least = Closed in its envelope it weighs at least { $weight }: the grammage of a paper is not told.
post-thick = It is about { $mm } where it is thickest, { $all } if all its layers met in one place.
post-size = The envelope measures { $width } × { $height }.
post-fits = { $envelope } fits: it leaves { $width } and { $height }, and { $wanted } each way would do.
post-fits-not = { $envelope } is too small: it leaves { $width } and { $height }, and such a card needs { $wanted } each way.
post-no-envelope = No envelope is told. Such a card needs { $wanted } more than its own size each way.
post-others = Envelopes that would do: { $names }.
post-named = { $name } ({ $width } × { $height })
post-make = To make one: a sheet of { $width } × { $height }, scored for a face of { $face-width } × { $face-height } with side flaps of { $side }, a lower flap of { $lower } and an upper one of { $upper }. A template at true size is made for it.
post-template = The envelope to make, at true size (PDF)
post-layers = Layer by layer
post-layer = Layer
post-layer-thick = Thickness
post-layer-weight = Weight
post-layer-base = base, folded
post-layer-inside = inside sheet
post-layer-foam = foam under { $name }
post-layer-extras = tape, ribbon, foam, glue
post-layer-envelope = envelope, both sides
post-measured = measured
post-guessed = common practice
post-with-extras = with the extras
post-unknown = not told
post-postage = Your rate
post-source = Read in
post-none = no letter: ask for a parcel
post-not = { $class }: { $reasons }
post-why-too-small = smaller than { $least }
post-why-too-long = longer than { $most }
post-why-too-high = higher than { $most }
post-why-too-thick = thicker than { $most }
post-why-too-thin = thinner than { $least }
post-why-too-heavy = heavier than { $most }
post-why-too-square = too near a square: length ÷ height is under { $ratio }
post-why-too-slender = too slender: length ÷ height is over { $ratio }
post-why-uneven = uneven, with a bow or the like
post-why-stiff = it does not bend
post-why-upright = the address runs along the short edge
post-why-too-large-together = length, height and thickness together are over { $most }
post-why-not-over = no larger than a letter
post-doubt = Ask at the counter: it may be { $reasons } (from memory).
post-rate = { $price }
post-rate-dated = { $price } on { $date }
post-no-rate = none entered
post-sure = { $source }, { $year }; { $sure }
post-confirm = Confirm with your local operator before a batch goes out: limits differ by country and change. These were read in the sources and years named beside them. No price here is ours.
post-others-not = Only these operators are judged here: their limits were read in sources that are named. For another, hold its size, thickness and weight limits against the figures above; Octavo takes no limits of your own yet.
post-flat-test = A flat test is not enough: bows, pearls and foam make a letter uneven or stiff, and several operators then charge more or treat it as a parcel, even under the thickness limit. In Australia a rigid item is a parcel; in the USA uneven, rigid and square letters cannot go through the machines.
post-weigh-one = Measure and weigh one finished card in its closed envelope. Thickness computed from layers is an estimate; knots and wet glue spread.
post-shape = Square, tall-addressed, dark or very small envelopes often cost more or are refused.
post-abroad = Seeds, pressed plants, liquids, scent and batteries may be barred abroad; goods may need a customs form. Ask before posting a battery.
post-lighter = Lighter and flatter: tie the bow without a knot, lay flat ribbon for the post, take thinner foam, put a stiff card beside a bow and not over it.
rates-title = Your own postage
rates-lead = Write down what your counter or its price list says, with the day on which you saw it. Cards take the first line of their operator and class that is heavy enough.
rates-none = Nothing is written down yet.
rates-class = Operator and class
rates-up-to = Up to
rates-all = all of the class
rates-price = Price
rates-date = Seen on
rates-add = Write it down
rates-take = Take away
rates-added = postage of { $class } written down: { $price }
rates-taken = a line of postage taken away
post-own = Your envelope and your scale
post-extras = Tape, ribbon, foam and glue of one card
post-envelope-gsm = Paper of the envelope, g/m²
post-foam = Thickness of foam
post-bow = Thickness of a bow
post-addressed = The address runs along
post-addressed-long = the long edge
post-addressed-short = the short edge
post-stiff = Something in it does not bend
post-no = no
post-yes = yes

## Supplies

supplies-title = Supplies
supplies-lead = What the batch needs, what lies on the shelf, what to buy in whole packs at the least cost.
supplies-need = Needed
supplies-there = On the shelf
supplies-buy = To buy
supplies-cost = Costs
supplies-left = Left over
supplies-name = What
supplies-line = { $name }: { $need } ({ $rule }); on the shelf { $there }; buy { $buy }; { $cost }; left over { $left }
need-rule-paper = sheets cut for { $cards } cards
need-rule-cardstock = sheets for { $pieces }
need-of-bases = { $count ->
    [one] 1 base
   *[other] { $count } bases
}
need-of-mats = { $count ->
    [one] 1 mat or other piece
   *[other] { $count } mats and other pieces
}
need-of-strips = { $count ->
    [one] 1 greeting strip
   *[other] { $count } greeting strips
}
need-of-inside = { $count ->
    [one] 1 inside sheet
   *[other] { $count } inside sheets
}
need-rule-ribbon = { $wraps } wrapped, { $bows } with a bow
need-rule-tape = two lines on a layer at least { $from } wide, one on a narrower
need-rule-foam = squares under each raised strip
need-rule-envelopes = one for each card
need-rule-ink-pad = one impression for each greeting
need-rule-stamps = one impression for each greeting
supplies-swap = { $saved } saved: give { $moved ->
    [one] one piece ({ $piece })
   *[other] { $moved } pieces ({ $piece })
} another colour and buy { $after } packs instead of { $before }.
supplies-swap-one = { $name }: { $now } become { $then }
supplies-swap-do = Change the colours
supplies-swap-how = The last cards of a colour change; cards that are shared out over kits only where the others do not do. See them on the Batch page, where each can be taken back, or undo it all.
supplies-dark-base = { $recipe }: a black pen reads only { $contrast } : 1 on { $base }. Glue in a lighter sheet to write on: give the recipe an inside sheet on the Cards page.
supplies-figures = Three figures, never mixed
supplies-used = Used
supplies-used-says = what lies in the cards
supplies-bought = Bought
supplies-bought-says = whole packs for this batch, after what is on the shelf
supplies-next = Next batch
supplies-next-says = whole packs for the same again, with what is left over
supplies-figure = Figure
supplies-total = In all
supplies-each = Each card
supplies-shared-rule = A card’s share is what its parts use. The total is shared out over batches and recipes first, then in each over its cards. Shares are cut off to the coin, and the coins left over go one by one to those that lost most, so that the cards add up to the total.
supplies-by-kind = The figures by batch and recipe
supplies-cards = Cards
supplies-all-cards = { $cards ->
    [one] 1 card
   *[other] all { $cards } cards
}
supplies-of-each = { $each } a card
supplies-each-card = Every card’s share, to the coin
supplies-share-line = { $cards }: used { $used }, bought { $bought }, next batch { $next }
supplies-figure-line = { $name }: { $total }, { $each } a card ({ $says })
supplies-price = Time and price
supplies-batch = Batch
supplies-material = Material a card
supplies-minutes = Minutes a card
supplies-asked = Price asked
supplies-leaves = Leaves
supplies-wage = For an hour
supplies-wished = Price for your wish
supplies-price-line = { $batch }: { $material } and { $minutes } minutes a card; { $asked } leaves { $leaves }, { $wage } an hour; for your wish { $wished }
supplies-no-price = no price asked
supplies-nothing-stays = fees, tax and margin leave nothing of any price
supplies-work = Where the minutes go
work-piece = patterned pieces cut
work-base = bases cut, scored, folded
work-mat = mats and other cardstock
work-strip = strips stamped
work-ribbon = ribbon wrapped
work-bow = bows tied
work-card = cards assembled
work-layered = cards with a bow assembled
work-label = kits labelled
work-kit = kits filled
work-line = { $what }: { $times } × { $each } = { $minutes } min
supplies-timings = Your own timings, in minutes
supplies-selling = What you ask, and what of it does not stay
supplies-asked-label = Price of a card
supplies-fees = Fees, percent
supplies-tax = Tax, percent
supplies-margin = Left over, percent
supplies-hour = An hour of yours
supplies-caution-costs = Costs use the prices you entered, on their dates; postage, fees and tax are only in if you entered them.
supplies-caution-tax = Income from cards or classes may be taxed, and goods sold may need the maker’s name and address or a safety notice. The price is arithmetic, not advice.
supplies-caution-rights = Patterned paper, stamped images, greetings, verses and fonts are other people’s works. Whether you may sell cards made with them depends on each maker’s terms and your country’s law: read the terms, and keep a note of them with the supply. This is not legal advice.
supplies-caution-label = Labels such as “non-toxic” follow different rules in different countries; the label of the product in hand counts.
supplies-shelf = The shelf
supplies-shelf-lead = One shelf for all projects. A plan lays aside what it needs; the last step of a part at the table uses it up, taking the tick away gives it back.
supplies-shelf-empty = Nothing is on the shelf yet.
shelf-kind = Kind
shelf-name = Name
shelf-amount = Amount
shelf-unit = Unit
shelf-price = Price
shelf-buys = buys
shelf-currency = Currency
shelf-priced-on = on
shelf-place = Where it lies
shelf-color = Its colour, such as #66834f
shelf-held = Laid aside
shelf-held-here = { $amount } here
shelf-held-others = { $amount } for { $project }
shelf-ledger = Why it is so
shelf-counted = counted
shelf-bought = bought
shelf-used = used up
shelf-returned = given back
shelf-entry = { $why } { $amount }
shelf-entry-day = { $day }: { $said }; { $there } there
shelf-entry-of = { $day }: { $said } ({ $part }, { $project }); { $there } there
shelf-part-sheet = patterned paper cut
shelf-part-stock = cardstock cut
shelf-part-card = cards put together
shelf-entry-short = { $why } { $amount }; { $short } more was wanted and not there
shelf-add = Put something on the shelf
shelf-save = Keep
shelf-why = Because it was
shelf-remove = Take off the shelf
shelf-import = Read a table (CSV)
shelf-import-do = Read it
shelf-export = Save the shelf as a table (CSV)
shelf-kind-name = { $kind ->
    [paper] patterned paper
    [cardstock] cardstock
    [ribbon] ribbon
    [adhesive] adhesive
    [foam] foam squares
    [envelope] envelopes
    [ink] ink
    [stamp] stamps
   *[other] something else
}
shelf-unit-name = { $unit ->
    [sheet] sheets
    [piece] pieces
    [roll] rolls
    [use] uses
   *[other] { $unit }
}
shelf-there = { $unit ->
    [sheet] { $amount } { $one ->
        [yes] sheet
       *[no] sheets
    }
    [piece] { $amount } { $one ->
        [yes] piece
       *[no] pieces
    }
    [roll] { $amount } { $one ->
        [yes] roll
       *[no] rolls
    }
    [use] { $amount } { $one ->
        [yes] use
       *[no] uses
    }
   *[other] { $amount } { $unit }
}
shelf-stale = Somebody else changed { $name } since this page was opened: { $since }. It is { $amount } now. You wrote “{ $mine }”: that is not kept yet. Look, and write it again if it still holds.
shelf-gone = That was taken off the shelf meanwhile.
shelf-taken = { $name } is on the shelf already: change that line.
shelf-negative = { $amount } is below nothing. Write what is there, or 0.
shelf-bad = { $found } cannot stand there. Choose one of the kinds and units, a currency of three capitals, a day as 2026-05-31.
shelf-number = { $found } is no amount: write digits, with a point or a comma before parts.
shelf-problem = Line { $line }: { $said }
shelf-problem-place = Line { $line }, column { $column } ({ $head }): { $said }
shelf-problem-too-large = the file is larger than 4 MB: save only the table
shelf-problem-not-text = it is no text: save the table as CSV
shelf-problem-empty = there is nothing in it
shelf-problem-not-a-table = this cannot be read as a table: save it as CSV again
shelf-problem-no-column = there is no column { $found }: the first line names the columns { $known }
shelf-problem-unknown-column = the column { $found } is not known: name it one of { $known }, or take it out
shelf-problem-too-many = more than 10 000 lines: keep fewer in one table
shelf-problem-too-wide = more cells than there are heads: put a text with commas in quotes
shelf-problem-twice = { $found } is there twice: keep one line of it
shelf-problem-kind = `{ $found }` is no kind: write one of { $known }
shelf-problem-unit = `{ $found }` is no unit: write one of { $known }
shelf-problem-name = a name is missing, or too long: write 1 to 200 letters
shelf-problem-nothing = nothing cannot be bought for a price: leave the cell empty, or write how much
shelf-problem-currency = `{ $found }` is no currency: write three capitals, such as GBP
shelf-problem-color = `{ $found }` is no colour: write # and six digits, such as #66834f
shelf-problem-day = `{ $found }` is no day: write it as 2026-05-31
shelf-problem-no-number = `{ $found }` is no amount: write digits, with a point or a comma before parts
shelf-problem-negative = `{ $found }` is below nothing: write what is there, or 0
shelf-problem-two-separators = `{ $found }` could be read in two ways: leave out what parts the thousands
shelf-problem-too-much = `{ $found }` is too much, or too fine: at most 100 million, six digits behind the point

## Class

class-title = Class
class-lead = Kits, days and money of a class for the cards of one batch.
class-none = No class is planned yet, or no batch is shared out over kits. Write down how many seats are booked.
class-kits = { $kits } kits: { $seats } seats, { $demonstrators } to show how, { $spare } spare.
class-kits-cut = { $cut } are cut already and stay as they are; { $to-cut } are still to cut.
class-kits-beyond = { $beyond } are cut beyond what is needed: spare ones.
class-left = { $left ->
    [0] No left-hander is told of.
    [one] One left-hander: print one handout for the left hand, and turn one trimmer.
   *[other] { $left } left-handers: print { $left } handouts for the left hand, and turn a trimmer for them.
}
class-cards = { $same ->
    [yes] { $least ->
        [one] 1 card in each kit, all kits alike.
       *[other] { $least } cards in each kit, all kits alike.
    }
   *[no] { $least } to { $most } cards in each kit: no kit has more than one card more than another.
}
class-more = For the kits that come on top: { $sheets }.
class-more-one = { $sheets } of { $letter }
class-contents = What goes into a kit
class-content = { $count } × { $what }
class-content-base = base, scored and not folded
class-content-strip-spare = spare strip
class-content-envelope = envelope
class-content-handout = handout
class-content-foam = foam squares
class-content-ribbon = { $length } of { $name }
class-mix = How even the kits are
class-mix-print = Print
class-mix-each = Cards in each kit
class-mix-even = { $by ->
    [0] Every kit has as many of each print as every other.
    [one] No kit has more than { $by } card of a print more than another; { $swaps ->
        [one] { $swaps } pair of neighbours
       *[other] { $swaps } pairs of neighbours
    } can swap to their liking.
   *[other] No kit has more than { $by } cards of a print more than another; { $swaps ->
        [one] { $swaps } pair of neighbours
       *[other] { $swaps } pairs of neighbours
    } can swap to their liking.
}
class-ahead = Cut before the class
class-ahead-lead = { $kits ->
    [one] For { $kits } kit that is not cut yet:
   *[other] For { $kits } kits that are not cut yet:
}
class-not-included = Not included: scissors, adhesive.
class-timetable = The days before
class-due = What
class-day = Day
class-over = over
class-due-sample = design, and make a sample
class-due-buy = buy
class-due-cut = cut
class-due-stamp = stamp what all share
class-due-bag = fill the bags
class-due-print = print handouts, and try one on somebody who has not seen it
class-due-pack = pack the tools
class-due-class = the class
weekday = { $day ->
    [1] Monday
    [2] Tuesday
    [3] Wednesday
    [4] Thursday
    [5] Friday
    [6] Saturday
   *[7] Sunday
}
class-on-the-day = { $hours } for { $cards ->
    [one] { $cards } card.
   *[other] { $cards } cards.
}
class-the-day = The day itself
class-when = When
class-takes = Takes
class-no-start = Write down when the class begins, and every part has its time.
class-part-welcome = arrive, welcome
class-part-card = card { $card }
class-part-pause = pause
class-part-end = to spare, and to tidy up
class-part-minutes = { $minutes } min
class-starts = Begins at
class-welcome-minutes = Minutes to arrive
class-pause-minutes = Minutes of a pause
class-end-minutes = Minutes to spare
class-hours = { $hours } h { $minutes } min
class-money = Money
class-money-kit = One kit
class-money-kits = { $kits } kits
class-money-room = Room
class-money-teacher = Teacher
class-money-shared = Shared by all
class-money-total = All of it
class-money-seat = A seat must cost, at { $seats } seats
class-money-price = Price of a seat
class-money-brings = { $seats } seats bring
class-money-over = Left over
class-labels = Kit labels
class-labels-lead = One label for each kit, on plain paper or on label sheets.
class-labels-plain = plain paper, to cut
class-labels-three-ten = label sheet, Letter, 3 × 10, 2 5/8 × 1 in
class-labels-two-five = label sheet, Letter, 2 × 5, 4 × 2 in
class-labels-two-seven = label sheet, A4, 2 × 7, 99.1 × 38.1 mm
class-label-kit = Kit { $number } of { $all }
class-label-cards = Cards { $numbers }
class-own = Your class
class-seats = Seats booked
class-date = Day
class-batch = Batch
class-demonstrators = To show how
class-spare = Spare kits
class-left-handed = Left-handers
class-cut = Kits cut already
class-minutes = Minutes a card
class-room = Room
class-own-hours = Your hours
class-hour = An hour costs
class-shared = Shared by all
class-break-even = Pays for itself at seats
class-price = Price of a seat
class-caution-lever = Lever cutters can take a fingertip. One person at a time, guard fitted, arm latched down when unused, never lifted by children.
class-caution-heat = Heat tools burn skin and scorch or light paper: tongs, no ribbon or solvents near, the nozzle cooled on a stand, never left plugged in unattended.
class-caution-solvent = Solvent inks, cleaners and alcohol markers give off vapours: open a window, keep them from flames, close the caps. Children, pregnant people and people with asthma should choose water-based ink.
class-caution-glue = Low-temperature glue guns for classes; adults only with children in the room.
class-caution-parts = A card for a child under 3 should carry nothing that pulls off and could be swallowed: no buttons, beads, gems, brads, bells.
class-caution-minors = In a class with minors an adult does or watches all cutting and heating. Local rules for working with minors apply.
class-caution-photos = Ask before photographing people or their work; a class list is personal data. Octavo keeps both on this computer only.

cards-caution-magnets = Small magnets and button cells (light or sound cards) are dangerous if swallowed: do not use them on cards for children, and ask the operator before posting a battery.

## On the way

way-supplies = Supplies
way-post = Post
way-class = Class
share-caution-rights = Patterned paper, stamped images, greetings and fonts are other people’s works: whether you may teach with them or show them in a handout depends on each maker’s terms and on your country’s law. This is not legal advice.
share-caution-own = Copying a layout idea is one thing, passing on someone’s instructions or pictures another; these handouts contain only your own data and Octavo’s own drawings.
share-caution-photos = Ask before you show people or their work in a picture; a class list is personal data. Octavo keeps both on this computer only.

share-templates = Save the templates
share-one-page = The handout on one page
share-markdown = The handout as Markdown
share-markdown-note = for a page on the web or a mail that shows headings and tables
share-plain = The handout as plain text
share-plain-note = for a video description or a mail

## Command line

help-post = Say what the cards weigh and measure, and which class of letter they are
    .examples =
        Examples:
          octavo post my-cards.toml
          octavo post my-cards.toml --envelope envelope.pdf
    .envelope = Write the template of an envelope to make as PDF into this file
    .json = Print it as JSON
help-supplies = Say what the batch needs, what to buy in whole packs, and what it costs
    .examples =
        Example:
          octavo supplies my-cards.toml --shelf shelf.csv
    .shelf = A table of what is on the shelf (CSV)
    .swapped = Write the project with the colours changed, so that packs are saved, into this new file
    .json = Print it as JSON
help-class = Say kits, days and money of the class in the project file
    .examples =
        Example:
          octavo class my-cards.toml --labels labels.pdf
    .today = The day it is taken for, as 2026-05-31 (left out: today)
    .labels = Write kit labels as PDF into this file
    .on = On what: plain, three-ten, two-five or two-seven
    .json = Print it as JSON
refused-no-swap = no swap of colours saves a pack
    .remedy = leave out --swapped
refused-no-class = this project holds no class
    .remedy = write how many seats are booked under [class], and share a batch out over kits
refused-shelf = { $path }: { $said }
refused-day = `{ $found }` is not a day: write it as 2026-05-31
