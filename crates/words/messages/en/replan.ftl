### Re-planning: the same project on another sheet, in another unit, for other people.

## Help

help-replan = Make the same project anew on another sheet, in the other unit, or for another number of people or cards
    .file = The project file (TOML); it is not touched
    .demo = Re-plan the demo that comes with the program
    .sheet = The patterned sheet: `6x6`, `8 x 8 in`, `A4`, `305 x 305 mm`
    .cardstock = The sheet of every cardstock: `letter`, `A4`, or two lengths
    .unit = Design it anew in whole millimetres (`mm`), or in inches (`in`): formats, borders and papers of that unit
    .people = Seats: one kit each, one for whoever shows how, and spare ones
    .spare-kits = Spare kits; left out, 1, or 5 % of the seats if that is more
    .cards = So many cards of the batches that are not shared out over kits
    .out = The new project file; left out, it lies beside the old one under a name that says what changed
    .replace = Replace the new file if it is there already
    .json = Print the answer as JSON
    .examples =
        Examples:
          octavo replan my-cards.toml --sheet 6x6
          octavo replan my-cards.toml --cardstock a4
          octavo replan my-cards.toml --unit mm --out my-cards-metric.toml
          octavo replan my-class.toml --people 20

        There are as many cards of each recipe and design as before, at least. For each recipe it
        is said what was kept, what changed, or that it cannot be kept and what would do.

## What it tells

replan-recipe = { $fate ->
    [kept] { $recipe }: kept
    [changed] { $recipe }: changed
   *[lost] { $recipe }: cannot be kept
}
replan-line = {"  "}{ $line }
replan-written = { $cards } from { $sheets } of patterned paper, where there were { $cards-before } from { $sheets-before }; the new project is `{ $path }`
replan-replaced = { $cards } from { $sheets } of patterned paper, where there were { $cards-before } from { $sheets-before }; the new project replaced `{ $path }`

## What differs, from what to what

replan-finished = the card: { $from-width } × { $from-height } → { $width } × { $height }
replan-piece = { $layer }: { $from-width } × { $from-height } → { $width } × { $height }
replan-pieces = { $layer }: other sizes than before
replan-inside = the inside sheet: { $from-width } × { $from-height } → { $width } × { $height }
replan-border = { $layer }: border { $from } → { $to }
replan-ribbon = { $layer }: { $from } → { $to } long
replan-per-sheet = cards from one sheet: { $from } → { $to }; sheets: { $sheets-from } → { $sheets-to }
replan-cards-made = cards: { $from } → { $to }
replan-base-per-sheet = bases from one sheet of { $cardstock }: { $from } → { $to }

## Findings

finding-replan-price-left-out = The price was that of another sheet and is left out: { $names }.
    .remedy = Write the new one, and how many a pack holds.
finding-replan-edges-left-out = What could not be used at the edges of { $pack } was measured on the old sheet and is left out.
    .remedy = Measure the new sheet, and write `unusable` if a label strip or a squaring cut takes some of it.
finding-replan-collage-turned = Where design { $design } is printed as panels on the new sheet is not known, so its other side is used: { $face }.
    .remedy = To use the panels, measure them on the new sheet and write them as its `collage`.
finding-replan-collage-left-out = Where { $face } of design { $design } is printed as panels on the new sheet is not known, and it has no other side to use.
    .remedy = Measure the panels on the new sheet and write them as its `collage`, or cuts will go through them.
finding-replan-collage-too-small = The printed panels of design { $design } are too small for the new pieces, so its other side is used: { $face }.
    .remedy = To use the panels, write a recipe whose pieces fit inside one.
finding-replan-pins-left-out = Pieces were pinned at places of the old sheet; the pins are left out.
    .remedy = Pin them again on the new layout.
finding-replan-spares-left-out = Spare pieces were asked for from every old sheet and are left out.
    .remedy = Ask for them again, from every new sheet.
finding-replan-choices-left-out = What was decided by hand for single cards is left out: their numbers are others now.
    .remedy = Look at the new cards and decide again.
finding-replan-designs-lost = No cards of { $recipe } come out of the new sheets of design { $designs }, so these are left out.
    .remedy = Let its pieces be smaller, let them turn where the print allows it, or use more sheets of the other designs.
finding-replan-apart = The recipes of { $batch } no longer share a sheet well: they have sheets of their own now, in { $parts } batches.
    .remedy = Join them again by hand if you like them on one sheet.
finding-replan-sheets = Planned for: { $sheets } { $sheets ->
        [one] sheet
       *[other] sheets
    } of { $pack }, { $width } × { $height }.
    .remedy = Count what you have, and write it as `copies`.
finding-replan-more-packs = { $pack }: { $packs } packs are needed now, { $sheets } sheets in all; the price is that of { $packs }.
    .remedy = Get them, or ask for fewer cards.
finding-replan-kits = { $batch }: { $kits } kits, where there were { $before }: { $seats } { $seats ->
        [one] seat
       *[other] seats
    }, one to show, { $spare } spare.
    .remedy = Every kit holds the same cards; what whole sheets give beyond them is spare.
finding-replan-sets = { $kits } sets of { $set }, { $cards } cards: { $seats } { $seats ->
        [one] seat
       *[other] seats
    }, one to show, { $spare } spare.
    .remedy = A set is `set_of` cards of the goal.
finding-replan-cards = { $cards } cards are planned, where there were { $before }.
    .remedy = What whole sheets give beyond them stays uncut.
finding-replan-spare-cards = { $batch }: designs that meet on one card are cut together, so { $cards } { $cards ->
        [one] card more comes
       *[other] cards more come
    } of it.
    .remedy = They are planned as spare ones, under `overs`.
finding-replan-no-kits = No batch is shared out over kits, so it is not clear which ones the people make.
    .remedy = Write `kits` into the batch of the table, or ask for a number of cards.
finding-replan-no-cards = No batch makes cards outside of kits.
    .remedy = Ask for a number of people.
finding-replan-envelope = The envelope is { $envelope } now, { $width } × { $height }.
    .remedy = Its price is still that of the old one: write the new.
finding-replan-envelope-left-out = No usual envelope is known for the new card, so there is none now.
    .remedy = Write the size of one you can get.
finding-replan-no-base = The base of { $recipe }, { $width } × { $height }, does not come out of a { $sheet-width } × { $sheet-height } sheet of { $cardstock }.
    .remedy = { $near ->
        [none] Choose a larger cardstock, another fold or a smaller card.
       *[other] The nearest card of which { $from } { $from ->
            [one] comes
           *[other] come
        } out of it is { $card-width } × { $card-height }.
    }
finding-replan-fewer-cards = { $recipe }: a sheet gives { $to }, where one gave { $from }.
    .remedy = As the cards are now, so many sheets are needed.
finding-replan-fewer-bases = The base of { $recipe }, { $width } × { $height }, comes out of a { $sheet-width } × { $sheet-height } sheet of { $cardstock } { $to ->
        [one] only once
       *[other] only { $to } times
    }, where there were { $from }.
    .remedy = { $near ->
        [none] Use a smaller card, or buy more sheets.
       *[other] The nearest card of which { $from } come out of it is { $card-width } × { $card-height }.
    }

## Refusals

refused-replan-sheet = `{ $text }` is no sheet
    .remedy = write a name, such as `A4` or `letter`, or two lengths from 1 in to 78 in, such as `6 x 6 in`
refused-replan-exists = `{ $path }` is there already
    .remedy = name another file after `--out`, or add `--replace`
refused-replan-itself = `{ $path }` is the project itself
    .remedy = name another file after `--out`, so that it stays as it is
refused-replan-nothing = no recipe can be kept, so nothing was written
    .remedy = choose one of the ways told above, or another sheet
refused-replan-unread = the new project could not be read back, so nothing was written
    .remedy = this is a mistake in Octavo, not in your project: please report it with the project file
