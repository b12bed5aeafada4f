### What the pages of the workroom say.

## On every page

skip = To the page itself
way = The job, step by step
way-paper = Paper
way-cards = Cards
way-layout = Layout
way-batch = Batch
way-cardstock = Cardstock
way-background = Background
way-table = Table
way-share = Share
undo = Undo
redo = Redo
change = Change it
to-hand = To the work in hand
language-choice = Language of the pages
last-change = Last change: { $what }.
refused-title = That cannot be kept as it is
gone = Octavo is not running, or does not answer. What you did last is not kept yet. Start Octavo again, then do it once more.
mistake-line = Line { $line }: { $said }.{" "}
mend-below = The text stands below. Touch a line above to come to its place, mend it, and send it again.
graveness-serious = Stop:
graveness-warning = Take care:
graveness-note = Note:
working-title = Working it out
working = This plan takes a moment. The page comes by itself; or stop, and see the best found so far.
working-so-far = { $nodes ->
    [0] { $seconds } s so far.
   *[other] { $seconds } s so far, { $nodes } ways of cutting looked at.
}
working-before = As it was before
working-stop = Stop and show the best so far
working-back = Back to the page
working-refused = That needs the plan, which is still being worked out, so it was not done. Go back to the page: it comes once the plan is there. Then do it again.
broken-title = Octavo could not work this out
broken = Octavo itself made a mistake with this plan. It is no fault of yours, and nothing is lost. If it happens again, keep the project file: it helps whoever mends Octavo.
broken-kept = The last change is kept: { $what }.
broken-refused = What you just asked for needs the plan, so it was not done.
broken-undo = Take the last change back
broken-again = Try once more
broken-text = Change the project file by hand
lost-title = There is nothing here
lost = This address leads nowhere: the project may have been put away, or the address was mistyped.
card-alt = Card { $number }, { $recipe }, in print { $print }
area-inches = { $area } square inches
area-centimetres = { $area } square centimetres

## Two pages open on one project

stale-title = The project has moved on
stale = While this page was open, the project was changed elsewhere. Nothing is lost: choose how to go on.
stale-theirs = What changed meanwhile
stale-undone = A change was undone.
stale-mine = What you were about to change
stale-on-top = Make my change to the newer one
stale-both = Keep both: mine becomes a copy
stale-theirs-only = Leave mine, show the newer one
stale-both-told = If you keep both, the project stays as it was changed elsewhere, and a copy holds it as you had it, with your change.

## Where everything is kept

store-title = That could not be kept
store-full = The disk is full. Make room, then do it again.
store-unwritten = The disk took nothing more ({ $reason }): its room, your share of it or the longest that a file may be is used up, or it is damaged. Make room, then do it again.
store-read-only = The file with your projects may only be read. Allow writing to it and its folder, then do it again.
store-in-use = The file with your projects is open elsewhere. Close the other Octavo, then do it again.
store-damaged = The file with your projects is damaged ({ $reason }). Bring back a backup.
store-other = The file with your projects could not be used: { $reason }.
store-kept = Everything that was kept before is still there.
asked-title = This cannot be answered
asked-slowly = The request did not arrive in time. Try it again.
asked-broken = Something in Octavo broke. Nothing that was kept is lost; go back and try another way.
asked-long = It took too long. Make the project smaller, or ask again.
asked-host = This address is not ours. Open the one that Octavo printed.
asked-method = Pages are looked at or sent, nothing else.
asked-origin = This came from another page than ours and was not done. Open Octavo's own page and do it there.
asked-form = The form did not arrive whole. Go back and send it again.
asked-large = That is too large: 64 MB is the most.

## Work in hand

hand-title = Work in hand
hand-empty = The table is empty. Begin something below.
hand-facts = { $cards ->
    [one] 1 card
   *[other] { $cards } cards
} from { $sheets ->
    [one] 1 sheet
   *[other] { $sheets } sheets
}, { $left ->
    [none] nothing left over
   *[some] something left over
}.
hand-open = Open
hand-copy = Copy
hand-export = Save as a file
hand-away = Put away
hand-unreadable = Its file has mistakes. Open it to mend them.
hand-working = Its plan is still being worked out.
hand-broken = Octavo could not work out its plan. Open it to see what would do.
no-name = A project without a name
progress = { $done } of { $all } steps done
progress-label = Steps done at the table
hand-was-put-away = “{ $name }” was put away. Nothing of it is lost.
away-title = Put away
take-back = Take back
size-name = { $slug ->
   *[other] { $name }
}
copy-name = { $name }, a copy
backup-title = Keep it safe
backup-lead = Everything in one file: projects with every change, pictures, ticks. Bringing one back replaces what is here; what was here is kept in a file beside it.
backup-take = Save a backup
restore-file = A backup
restore = Bring it back
restore-refused = That backup was not used: { $reason }. Everything is as it was.
restore-title = Bring this backup back?
restore-goes = { $count ->
    [one] One project that lies here would go:
   *[other] { $count } projects that lie here would go:
}
restore-comes = { $count ->
    [one] One project of the backup would come:
   *[other] { $count } projects of the backup would come:
}
restore-kept = What lies here is kept in a file beside it, and comes back at one click.
restore-leave = Leave everything as it is
restore-nothing = No file was chosen. Choose a backup first.
restore-again = That backup is no longer at hand. Choose it once more.
restored = Brought back. What was here lies aside in the file { $file }.

## Something new

new-title = Begin something
new-pack = From a pack of paper
new-pack-name = What the pack is called
new-sheet = Size of a sheet, as measured
new-designs = Designs
new-copies = Sheets of each
new-format = Finished size of a card
new-begin = Begin
new-example = From an example
new-which = Which
new-open = Open it
new-file = From a project file
new-file-file = The file
new-file-text = Or its text
new-nothing = Choose an example, a file, or write its text.
new-bad-size = { $label }: `{ $typed }` is no size ({ $why }). Write width × height, such as 12 x 12 in.
new-bad-number = { $label }: `{ $typed }` will not do. Write a whole number from 1 to { $most }.
new-too-small = A card of `{ $format }` is too small for a mat and a panel with borders. Write a larger one, such as 3 1/2 x 5 in.
new-unnamed = A new pack
new-design = Design { $letter }
new-base-color = Base colour
new-mat-color = Mat colour
new-recipe = Plain panel
new-mat = mat
new-panel = panel

## Changes, as they are kept

edit-demo = The demo was laid out
edit-begun = Begun
edit-copy = Copied
edit-text = The project file was written anew
edit-changed = { $key } from { $from } to { $to }
edit-nothing = nothing
edit-pinned = { $layer } pinned { $left } from the left, { $top } from the top
edit-unpinned = A pin was taken out
edit-taken = Another layout was taken
refused-place = The project file has no such place any more. Look at the page as it is now and change it there.

## Fields

field-name = Name
field-format = Finished size
field-fold = Fold
field-base = Base
field-width = Width that looks right
field-height = Height that looks right
field-prefer = Best size
field-size = Size
field-border = Border
field-inside = Inside sheet, its size
field-inside-of = Inside sheet of
field-mat-for = Mat for { $letter }
field-cardstock = Cardstock
field-foam = Foam squares
field-length = Length
field-right = Shift right
field-down = Shift down
field-cards-per-sheet = Cards from one sheet
field-mark = Finest mark
field-left = From the left
field-top = From the top
field-cards = Cards in all
field-overs = Extra cards
field-set-of = Cards in a set
field-partners = Prints that meet on one card
field-price = Price of the pack
field-copies = Sheets there are
field-use = Sheets to use
field-up = Side that shows
field-way-front = Front: which way up
field-way-back = Back: which way up
hint-as-many = as many as can be
hint-all = all
choice-only = the only one, or as it is
fold-as-is = As it is
fold-side = Side, like a book
fold-top = Top, like a tent
fold-gate = Two doors
fold-z = One fold each way
fold-flat = None: a flat card

## Paper

paper-title = Paper
paper-lead = { $designs ->
    [one] 1 design
   *[other] { $designs } designs
}, { $sheets ->
    [one] 1 sheet
   *[other] { $sheets } sheets
}. A piece can show one side only: choose which side is up before you cut.
paper-missing = These pictures are not here, so their faces are plain: { $names }.
paper-face-alt = { $name }, a side of { $design }
paper-price = { $sheets ->
    [one] One sheet is used
   *[other] { $sheets } sheets are used
}; the pack costs { $price }.
paper-price-date = Asked on { $date }.
paper-no-price = { $sheets ->
    [one] One sheet is used
   *[other] { $sheets } sheets are used
}; what the pack costs is not told yet.
paper-show = Show this side
paper-up = this side up
paper-copies = { $use } of { $copies ->
    [one] 1 sheet
   *[other] { $copies } sheets
}
paper-change = Change { $name }
paper-pack-change = Change the pack { $name }
paper-front = The front
paper-back = The back
way-any = any way up
way-one = has a top
way-two = either way up, not sideways

## Cards

cards-title = Cards
cards-count = { $count ->
    [one] 1 card
   *[other] { $count } cards
}
cards-apart = Layer on layer
cards-base = base
cards-score = scored at { $at }
cards-change = Change { $name }
cards-whole = The card

## Layout

layout-title = Layout
layout-several = Layouts
layout-number = Layout { $number }
layout-none = There is no layout yet. See what stands in the way.
layout-sentence = { $left ->
    [none] Nothing left over
   *[some] { $area } left over
}, { $settings ->
    [one] 1 setting
   *[other] { $settings } settings
}, { $cuts ->
    [one] 1 cut
   *[other] { $cuts } cuts
}, { $cards ->
    [one] 1 card
   *[other] { $cards } cards
} from a sheet.
layout-grade = { $grade ->
    [best] No layout does better.
    [found] The best that was found.
   *[stopped] The search was stopped before it was sure.
}
layout-hint-move = Drag a line by its knob: the rest follows, and what you let go is kept. With the keyboard: arrows, then Enter; Esc puts it back. Touch a piece to see its card, or to pin it.
layout-grip = Cut line
layout-line-upright = upright, { $at } from the left, { $from } to { $to } down
layout-line-level = level, { $at } from the top, { $from } to { $to } across
layout-move = Move a cut by typing where it should lie
layout-which = Which cut
layout-to = How far from the left, or from the top
layout-move-it = Move it
layout-spare = spare
layout-stops = Upright cuts at { $upright }; level ones at { $level }.
layout-no-pins = Nothing is pinned. Touch a piece on the sheet to pin it.
edit-arrow = The arrow of { $name } was turned
edit-face = A picture was put on { $name }
edit-face-turned = The picture on { $name } was turned a quarter
paper-arrow = Turn the arrow
paper-turn = Turn the picture a quarter
paper-picture = Put a picture on it
paper-picture-file = PNG or JPEG of the whole face of { $name }, edge to edge
paper-picture-put = Put it on
face-no-picture = There is no picture on that face to turn. Put one on first.
face-wrong-kind = That is neither PNG, JPEG nor WebP. Save the picture as one of these and choose it again. Phones that write HEIC have a setting “most compatible” for JPEG.
face-too-large = The picture is too large: no side may have more than { $side } pixels, the whole no more than { $millions } million. Make it smaller and choose it again.
face-damaged = The picture is damaged ({ $why }). Save it anew and choose it again.
face-cut-off = The picture is cut off: the file ends before the picture does. Copy it from the camera or the telephone anew and choose it again.
face-same = That picture is on the face already.
edit-moved-upright = A cut was moved from { $from } to { $to } from the left
edit-moved-level = A cut was moved from { $from } to { $to } from the top
stays-no-line = That cut is not there any more. Look at the sheet as it is now.
stays-printed = This sheet is cut on its printed lines, which stay where they are.
stays-no-pins = Cuts can be moved on the sheets of the first pack, in a project without batches.
stays-off-sheet = The cut would leave the sheet.
stays-range = { $layer } ({ $recipe }) would be { $wanted } { $side ->
    [width] wide
   *[height] high
}; it may be { $least } to { $most }. To allow more, widen its range on the page Cards.
stays-size = { $layer } ({ $recipe }) would be { $wanted } { $side ->
    [width] wide
   *[height] high
}; it has one size only, { $least }. To allow more, give it a range on the page Cards.
stays-no-layout = { $proven ->
    [yes] With the cut there, no straight cuts give { $cards } cards.
   *[no] With the cut there, no way to { $cards } cards was found.
}
stays-pinned = The pinned pieces stay where they are; unpin one, and more is possible.
stays-nearest = It could lie at { $at }.
layout-card = Card { $number }
layout-pieces = from { $marks }
layout-piece = Piece { $mark }, { $layer }
layout-cuts = One cut at a time
layout-walk = Cuts
cut-before = Before
cut-after = Next
layout-others = Other ways to cut it
layout-no-others = No other layout that really differs was found.
layout-take = Take this one
layout-pins = Pins
layout-pinned-mark = pinned
layout-pins-lead = A pinned piece stays where it is; the rest is worked out round it.
layout-pinned = { $layer }, { $size }, { $left } from the left, { $top } from the top
layout-unpin = Unpin it
layout-unpin-all = Unpin all
layout-pin-more = At another place or size
layout-pin = Pin it here
layout-wish = What one sheet should give

## Batch

batch-title = Batch
batch-sides = Which side
batch-up = The side that is up
batch-other = The other side of every sheet
batch-shares = How many of each
batch-wish = How many, and which prints meet
batch-sheet = { $name }, sheet { $sheet }: { $count ->
    [one] 1 card
   *[other] { $count } cards
}
batch-partner = { $layer } from { $letter }

## Cardstock

stock-title = Cardstock
stock-lead = { $count ->
    [one] 1 sheet in all
   *[other] { $count } sheets in all
}.
stock-best = No fewer sheets would do; that is proven.
stock-found = The fewest that were found; fewer than { $bound } cannot do.
stock-stopped = The search was stopped before it was sure.
stock-inside = inside sheet
stock-cut = { $count } × { $name }, { $width } × { $height }
stock-times = { $times ->
    [one] 1 sheet
   *[other] { $times } sheets
} like this, { $count ->
    [one] 1 piece
   *[other] { $count } pieces
} each
stock-sheet-alt = A sheet of { $name } with its cuts, { $count } pieces

## Table

table-title = Table
table-of = Step { $number } of { $all }
table-done = Done, next
table-not-done = Not done after all
table-left-hand = For the left hand
table-right-hand = For the right hand
table-read = Read it aloud
table-full = Fill the screen
table-keys = Space ticks the step; the arrow keys walk; F fills the screen.
table-earlier = { $count ->
    [one] 1 tick is
   *[other] { $count } ticks are
} of an earlier plan: its steps had other sizes or numbers, and the steps here are new. The counts are for all sheets: take off what is cut already, and tick what is done.
table-mute = This browser has no voice to read with: nothing will be heard. Where the computer can be given a voice for your language, its own settings say how.
table-awake = The screen stays awake while this page is open.
table-sleeps = This browser does not keep the screen awake: it may go dark after a while, and your place is kept.
table-nothing = There is nothing to do yet: the plan makes no cards.
table-all = All steps
table-ticked = done
table-short-sheet = Patterned sheet, layout { $sheet }, cut { $number }
table-short-stock = { $name }, pattern { $sheet }, cut { $number }
table-short-card = { $name }: { $layer }
lay-base = Fold { $count ->
    [one] 1 base
   *[other] { $count } bases
}
lay-score = Score at { $at }, then fold with the grain.
lay-scored = Fold at the line scored at { $at }, with the grain.
lay-fold-alt = The base lying open; the fold is the dashed line, { $at } from the edge.
lay-head = Lay on the { $layer }
lay-where = Its top left corner lies { $left } from the left and { $top } from the top of the front.
lay-strip = Stamp it first, and let it dry.
lay-count = For { $count ->
    [one] 1 card
   *[other] all { $count } cards
}. Make one completely before you go on with the others.

## Share

share-title = Share
share-lead = Look at it here first, then save it or print it. Touch a page to see it large.
share-paper = Printed on
share-letter = Letter
share-a4 = A4
share-print = Words
share-normal = Usual size
share-large = Large print
share-hand = Blade hand
share-right = Right
share-left = Left
share-language = Language
share-units = Measures
share-inches = Inches
share-mm = Millimetres
share-see = Show it so
share-handout = Save the handout ({ $pages ->
    [one] 1 page
   *[other] { $pages } pages
})
share-page = Page { $number }: { $title }
share-files = Files
share-project = The project file
share-project-note = everything you said, to keep or to send
share-plan = The whole plan
share-plan-note = for other programs
share-sheet = Drawing of patterned sheet { $number }
share-true-size = At true size
share-true-size-lead = Jigs, score gauges and whole sheets to lay under your work. Print them without scaling, and measure the square first.
share-save = Save it
share-drawings = Drawings of the sheets
share-pieces = Pieces
share-cardstock = cardstock
share-supplies = supplies
share-tables-note = as tables for a spreadsheet (CSV)
share-page-plain = Page { $number }
share-text = The project file itself
share-text-lead = Everything can be changed here too. Comments stay.
share-text-label = Project file
unreadable-title = This project file has mistakes

layout-placed = Pictures kept whole
layout-placed-lead = { $after } of the { $pictures } pictures on these sheets stay whole on a piece, with nothing over them; with the cuts in their plain order it would be { $before }. The cuts, settings and cards are the same.
layout-placed-proven = No other order of these cuts, with the stop set as often, does better.
layout-placed-best = It is the best order that was found.
layout-placed-stays = { $whole } of the { $pictures } pictures on these sheets stay whole on a piece. No other order of these cuts keeps so many more that it would be worth giving up the tidy one.
layout-placed-plain = In plain order
layout-placed-now = As it is cut
layout-placed-part = { $whole } of { $pictures } pictures on one piece
layout-placed-see = See which pictures are cut
layout-placed-print = { $whole } of { $pictures } pictures whole on every sheet ({ $plain } in plain order).
layout-placed-regions = Of the { $regions } parts you marked, { $kept } stay whole.
layout-placed-key = Black frame: the picture lies on one piece. Broken frame and a cross: a cut goes through it or within 1/8 in (3 mm) of it.
placed-alt = The print as it is cut: { $whole } of its { $pictures } pictures are whole
placed-plain-alt = The print with the cuts in plain order: { $whole } of its { $pictures } pictures are whole

regions-title = { $count ->
    [0] Parts of { $face } that matter to you
    [one] { $count } part of { $face } that matters to you
   *[other] { $count } parts of { $face } that matter to you
}
regions-what = Draw a frame on the print, or type where it lies: what must stay whole on one piece, or what should not show. The cuts then lie so that it does, as far as the pieces allow; where they do not, the Layout page says so.
regions-collage = This side is cut on its printed lines; marked parts are not looked at.
regions-wanted = What you want
regions-keep = keep whole
regions-avoid = should not show
regions-show = On which piece
regions-any = any piece
regions-add = Mark this part
regions-keys = Or with the keyboard: arrows lay a frame and move it, with Shift they size it, with Ctrl in larger steps; Enter goes to the button.
regions-change = Change part { $number }
regions-change-it = Change it
edit-regions-changed = A marked part of { $face } was changed.
regions-remove = Take it off
regions-kept = stays whole: { $width } × { $height }, { $left } from the left, { $top } from the top
regions-kept-on = stays whole on { $piece }: { $width } × { $height }, { $left } from the left, { $top } from the top
regions-avoided = should not show: { $width } × { $height }, { $left } from the left, { $top } from the top
edit-regions = A part of { $face } was marked.
edit-regions-gone = A marked part of { $face } was taken off.
field-placing = Look at the prints when cuts are laid
placing-alike = yes, the same cuts for every design
placing-each = yes, each design cut for its own print
placing-plain = no, the tidiest order always

paper-photo-file = Or a photo of the whole face of { $name }, taken at an angle: JPEG, PNG or WebP
paper-photo-put = Make the photo straight
paper-colors = Its colours, and what goes with them
paper-colors-alt = Colours of { $name } by their share
paper-photo-again = Correct its photo: corners, light, colours
edit-photo = A photo made straight was put on { $name }
photo-title = The photo of { $name }
photo-lead = The four corners of the sheet are marked. Where one is off, put it right; then the sheet is made straight and put on the face.
photo-hint = Drag a corner. With the keyboard: arrow keys, with Shift in larger steps. Or type its place.
photo-found = The corners were found. Look at each of them.
photo-doubted = Corners were found, but they are doubtful: look at each of them with care.
photo-none = No sheet was found in the photo. Drag the corners to where they are, or take the photo on a table of another colour.
photo-tl = Top left corner
photo-tr = Top right corner
photo-br = Bottom right corner
photo-bl = Bottom left corner
photo-right = Pixels from the left
photo-down = Pixels from the top
photo-light = Light
photo-even = Even out the light of a lamp, gently
photo-white = If some place in the photo is white or grey in truth, say where: the colour of the lamp is taken out. Leave it empty otherwise.
photo-make = Make it straight and put it on
photo-kept = The photo is kept as it came: it can be made straight anew, and undone.
photo-eight = Write the place of every corner as two numbers.
photo-two = Write the white or grey place as two numbers, or leave both empty.
share-contact = All on one picture (PNG)
batch-png = Save this card as a picture (PNG)
share-every-card = Every card on a few pages
share-every-card-lead = All { $count } cards as the cuts give them, small, each with its number: to hang up, to sort by, or to show.
