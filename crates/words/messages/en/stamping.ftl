### Stamped greetings: where they come, and what hands do to them.

## Stamping

page-stamping-title = Stamping the greetings
page-stamping-lead = Lay each piece into the corner of its jig (among the templates), stamp, and go on to the next: the words come to the same place every time. Let the ink dry before you stack the pieces.
page-stamping-lead-several = Stamp in this order: light inks before dark ones, each stamp taken up once. Lay each piece into the corner of its jig (among the templates), stamp, and go on to the next: the words come to the same place every time. Clean the stamp before the next ink, and let the pieces dry before you stack them.
page-stamping-head = “{ $words }” on strips of { $strip }
page-stamping-head-piece = “{ $words }” on each { $piece } of { $strip }
page-stamping-print = print { $letter }, { $face }
page-stamping-alt = A piece with its measures: { $head }
page-stamping-weight = Where the ink balances comes to the middle: { $left } stays clear at the left and { $right } at the right, { $above } above and { $below } below.
page-stamping-middle = In the middle, by the ink: { $left } stays clear at the left and { $right } at the right, { $above } above and { $below } below.
page-stamping-where = By the ink: { $left } stays clear at the left and { $right } at the right, { $above } above and { $below } below.
page-stamping-over = The words run over the edge by { $over }. Use a larger piece or a smaller stamp.
page-stamping-edges = The stamp’s own edges (dotted) come { $left } { $left-way ->
    [beyond] beyond
   *[inside] inside
} the left edge of the piece and { $above } { $above-way ->
    [beyond] above
   *[inside] below
} its top edge.
page-stamping-of = { $count } of { $stock }
page-stamping-count = { $count ->
    [one] { $count } impression
   *[other] { $count } impressions
}: { $stocks }. Try on a scrap first.
page-stamping-tilt = Turned by 1°, one end of the words lies { $rise } higher than the other; up to { $degrees }° they keep { $clear } from every edge.
page-stamping-tilt-free = Turned by 1°, one end of the words lies { $rise } higher than the other; there is room for any tilt.
page-stamping-tilt-tight = Turned by 1°, one end of the words lies { $rise } higher than the other; there is less than { $clear } to spare even when the words are straight.

## The page and the command

background-title = Stamped by hand
background-lead = Background paper set out evenly and stamped by a guide; greetings in the middle of their strips or panels, straight and alike, and in which order to stamp them.
background-caution = Solvent inks, cleaners and alcohol markers give off vapours: open a window, keep them from flames and heat tools, close the caps, follow the label. Children, pregnant people and people with asthma choose water-based ink.
background-caution-heat = A heat tool blows air hot enough to burn skin and scorch paper: hold the sheet with tongs, keep alcohol and solvents away, let the nozzle cool on a stand, never leave it plugged in unattended.
greetings-none = No card of this project has a stamped greeting.
greetings-jigs = The jigs at true size, among the templates (PDF)
greetings-grow = { $recipe }: { $layer } is { $from }; its greeting asks for { $to }.
greetings-grow-all = { $count ->
    [one] Make this piece large enough
   *[other] Make these { $count } pieces large enough
}
greetings-change = Change greetings, stamps and pieces
greetings-new = Another greeting
greetings-new-add = Add it
greetings-picture = A picture of what it leaves
greetings-picture-wide = How wide the whole picture is in truth
greetings-picture-take = Take ink and size from the picture
greetings-outline = Or its corners
greetings-on = Stamped with
greetings-on-none = no greeting
greetings-its-middle = Its middle
greetings-middle-ends = halfway between the ends of its ink
greetings-middle-weight = where its ink balances
greetings-bad-wide = How wide is the whole picture in truth? From 3 mm to 40 in, such as 3 in or 76 mm.
greetings-needs-words = Write the words of the greeting and the size of its ink.
edit-greeting-added = greeting “{ $words }” added
edit-greeting-pictured = a greeting takes its ink from a picture
greetings-how = Measure the ink, not the block: stamp once on scrap and measure what it left. Where the stamp is larger than its ink, say its own size and how far in the ink begins, as it prints; “octavo greetings --stamp PICTURE --wide 3in” measures a picture of it.
greetings-words = Words
greetings-inked = Ink, width x height
greetings-ink = Colour of the ink
greetings-stamp-size = Stamp, width x height
greetings-stamp-left = From its left edge to the ink
greetings-stamp-top = From its top edge to the ink
greetings-strip = Size, width x height
greetings-at = Where the words come
greetings-border = From the edge to the words
spot-middle = in the middle
spot-left-third = on the left third
spot-right-third = on the right third
spot-upper-third = on the upper third
spot-lower-third = on the lower third
spot-upper-left-third = on the upper left third
spot-upper-right-third = on the upper right third
spot-lower-left-third = on the lower left third
spot-lower-right-third = on the lower right third
spot-left = at the left edge
spot-right = at the right edge
spot-top = at the top edge
spot-bottom = at the bottom edge
spot-top-left = in the top left corner
spot-top-right = in the top right corner
spot-bottom-left = in the bottom left corner
spot-bottom-right = in the bottom right corner

help-greetings = Say where each greeting comes on its strip or panel and in which order to stamp, or measure a stamp
    .fit = Write the project to this new file with every piece large enough for its greeting
    .stamp = A picture of a stamp's mark on a light or transparent ground: JPEG, PNG or WebP; its ink is measured
    .wide = How wide the whole picture is in truth, such as 3in or 76mm
    .json = Print the places as JSON
    .examples =
        Examples:
          octavo greetings --demo
          octavo greetings my-cards.toml --fit my-cards-fitted.toml
          octavo greetings --stamp with-thanks.png --wide 3in
greetings-fit-already = Every piece is large enough for its greeting; nothing was written.
greetings-grown = { $recipe }: { $layer } grew from { $from } to { $to }.
greetings-written = Written: { $path }
greetings-measured = Put this into your project file, and the picture beside it:
refused-stamp-wide = how wide the picture is in truth, from 3 mm to 40 in, such as `3in` or `76mm`
refused-stamp-empty = no ink in `{ $path }`: nothing is darker than its ground
    .remedy = stamp in a dark ink on white paper, and take or scan the picture close up
