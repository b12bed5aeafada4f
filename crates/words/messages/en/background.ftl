### Backgrounds stamped by hand: the guide, the command and the page.

background-alt = “{ $name }”, a sheet with { $count } impressions
guide-title = Background: { $name }
guide-lead = A sheet of { $size } with { $count } { $count ->
        [one] impression
       *[other] impressions
    } of { $stamps } { $stamps ->
        [one] stamp
       *[other] stamps
    }. The numbers are the order.
guide-order = In this order
guide-order-right = One stamp after the other, the largest first; let its ink dry before the next. Of each stamp work in rows, from the far edge towards you, and in each row from left to right: so your hand never lies on wet ink.
guide-order-left = One stamp after the other, the largest first; let its ink dry before the next. Of each stamp work in rows, from the far edge towards you, and in each row from right to left: so your hand never lies on wet ink.
guide-stamp = stamp
guide-numbers = numbers
guide-first = first
guide-second = paler
guide-inkings = inkings
guide-off = over the edge
guide-all = all
guide-paler = A paler impression is made at once after the one before it, without inking again.
guide-paler-one = { $which ->
        [2] second, paler
       *[other] third, palest
    }
guide-edge = At the edge
guide-edge-mat = { $count } { $count ->
        [one] impression runs
       *[other] impressions run
    } off the sheet: { $numbers }. Lay the soft mat so that it reaches under the edge, and scrap paper on it to take the rest; without it the ink stops short of the edge.
guide-sure = What a hand does to the gaps
guide-sure-lead = As planned, the two impressions that are nearest lie { $planned } apart. Twenty sheets stamped by a hand that slips, reckoned:
guide-sure-row = Off by up to { $place } and { $turn }°: the smallest gap of a usual sheet is { $usual }, of the worst { $worst }; { $touch ->
        [0] none touches another
       *[other] { $touch } in 100 touch another
    }.
guide-askew = The worst of the twenty sheets, off by up to { $place } and { $turn }°: { $count ->
        [0] none touches another
       [one] one touches another: the one in a ring
       *[other] { $count } of them touch another: those in rings
    }.
guide-sure-none = nothing
guide-colored = Coloured in
guide-colored-lead = Use ink that does not run when it gets wet, and let it dry. One colour at a time over the whole sheet, the lightest first. Try it on a scrap of the same paper.
guide-marker = marker
guide-near = against the wished colour
guide-how-many = how many
guide-no-marker = no marker told
guide-places = Every place
guide-places-lead = Measured from the left and from the top edge to the cross in the middle of the motif, in fields of { $field }; the hour is where the top of the motif points.
guide-number = no.
guide-field = field
guide-right = right
guide-down = down
guide-turn = top at
guide-which = impression
guide-clock = { $hour } h ({ $turn }°)
guide-true-title = “{ $name }” at true size
guide-true-note = The sheet of { $size } with every impression numbered; fields of { $field }. The arrow in a motif points to its top. Thick outline: runs off the edge. Dashed: the paler impression, without inking again. Lay it beside your sheet, or under it on a window.
guide-light-box = “{ $name }” for the light box, true size: print it without scaling
guide-see-guide = Every place, and the sheet at true size with its numbers, are in the guide of its own: background-1.pdf and so on.

help-background = Stamp your own background paper: its picture and the guide to stamp it by
    .examples =
        Examples:
          octavo background my-cards.toml --out background/
          octavo background --demo --seed 12
    .demo = Take the stamped background that comes with the program
    .out = Write guide, light-box sheet and picture into this folder
    .sheet = The page to print the guide on: letter or a4 (left out: the one of the project's unit)
    .seed = Another seed: everything that is not locked is set out anew
    .square = What a printed test square of one inch measured
    .left = For the left hand: rows run from right to left
    .json = Print every impression as JSON
refused-no-background = this project holds no background
    .remedy = add a [[background]] with at least one [[background.stamp]], or try octavo background --demo
background-written = Guide, light-box sheet and picture are in { $path }.
background-told = { $name }: { $count } { $count ->
        [one] impression
       *[other] impressions
    }, { $off } over the edge{ $closest ->
        [none] { "" }
       *[other] ; nearest { $closest } apart
    }; ink covers { $cover } % of the sheet.
background-told-stamp = { $stamp }: { $first } first, { $paler } paler; inked { $inkings ->
        [one] once
       *[other] { $inkings } times
    }
background-told-slip = a hand off by up to { $place } and { $turn }°: at worst { $worst } apart, { $touch } in 100 touch

stamped-which = Backgrounds
stamped-begin = Begin a background
stamped-begin-other = Begin another background
stamped-begin-it = Begin
stamped-name = Name
stamped-sheet = Sheet
stamped-none = It cannot be stamped as it stands.
stamped-by-hand = Drag a motif and the others make room. Double-click to lock or free one. Keys: arrows go from one to the next, Shift and an arrow moves it, Enter keeps it, Escape puts it back, Space locks it.
stamped-gap = Gap between ink
stamped-size = Size
stamped-share = Share
stamped-arrangement = Arrangement
stamped-toss = even toss
stamped-grid = grid
stamped-brick = brick
stamped-half-drop = half-drop
stamped-diagonal = diagonal
stamped-edge = At the edge
stamped-run-off = some run off
stamped-inside = none runs off
stamped-wrap = repeats without a seam
stamped-count = Impressions
stamped-count-all = as many as go on
stamped-seed = Seed
stamped-told = { $count } { $count ->
        [one] impression
       *[other] impressions
    }, { $off } over the edge, { $inkings } inkings{ $closest ->
        [none] { "." }
       *[other] ; nearest { $closest } apart.
    } Ink covers { $cover } % of the sheet.
stamped-density = Or ink on the sheet, in percent
stamped-short = Of { $wished } wished, { $placed } go on: this is the fullest sheet that was found.
stamped-stand = All stand where they were put by hand.
stamped-gone = { $count } { $count ->
        [one] finds
       *[other] find
    } no place any more.
stamped-one = { $number }, { $stamp }
stamped-one-locked = { $number }, { $stamp }, locked
stamped-hand = By hand
stamped-stands = Some were moved or locked by hand, so all stand where they are. Setting the sheet out anew moves all but the locked ones.
stamped-locked-are = Locked: { $numbers }.
stamped-toss-anew = Toss the rest anew
stamped-toss-hint = Another seed: all but the locked ones are set out anew.
stamped-numbers = Numbers, such as 3, 12-15
stamped-lock = Lock them
stamped-free = Free them
stamped-number = Number
stamped-degrees = Turn in degrees
stamped-move = Move it
stamped-bad-number = There is no impression of that number. Write numbers with commas between them, such as 3, 12-15.
stamped-stays-edge = It stays: there it would leave a sliver at the edge, or the edge forbids it.
stamped-stays-locked = It stays: impression { $number } is locked and in the way.
stamped-print = To print and to keep
stamped-guide = Placing guide
stamped-light-box = For the light box
stamped-picture = Picture
stamped-svg = Drawing
stamped-stamps = Stamps
stamped-more = Shape, turn and ink of { $name }
stamped-shape = Shape
stamped-outline = Corners
stamped-turn = Turn
stamped-free-turn = free
stamped-upright = upright
stamped-within = Or up to so many degrees
stamped-ink = Ink
stamped-fill = Coloured in with
stamped-per-inking = Impressions with one inking
stamped-from-picture = A picture of the stamp
stamped-take-picture = Take its ink
stamped-take-away = Take { $name } away
stamped-marker = Coloured in with the marker { $marker }: { $near }.
stamped-no-marker = Coloured in; no marker is told.
stamped-markers-shelf = { $count ->
        [0] Markers for colouring in are taken from your shelf once it holds some with their colours:
        [one] One marker with its colour is on your shelf:
       *[other] { $count } markers with their colours are on your shelf:
    }
stamped-add = Another stamp
stamped-add-it = Add it
stamped-shown = Where it shows
stamped-shown-nowhere = No face shows it yet.
stamped-face = { $letter } { $design }: { $face }
stamped-show-on = Let a face show it
stamped-show = Show it there
stamped-remove = Take this background away
stamped-name-first = Give it a name.
stamped-bad-picture = That is no picture that can be read: PNG, JPEG or WebP will do.
stamped-empty-picture = There is no ink in that picture: the motif must be dark on light, or opaque on clear.
shape-dot = dot
shape-ring = ring
shape-leaf = leaf
shape-sprig = sprig
shape-drop = drop
shape-flower = flower
shape-star = star
shape-heart = heart
shape-diamond = diamond
edit-stamped-begun = background { $name } begun
edit-stamped-gone = background { $name } taken away
edit-stamped-tossed = { $name }: the rest tossed anew
edit-stamped-locked = { $name }: { $count } locked
edit-stamped-freed = { $name }: { $count } freed
edit-stamped-moved = { $name }: impression { $number } moved, the rest makes room
edit-stamped-shown = { $design } shows { $name }
edit-stamp-added = { $name }: stamp { $stamp } added
edit-stamp-gone = { $name }: stamp { $stamp } taken away
edit-stamp-pictured = a stamp takes its ink from a picture
stamped-right = From the left edge
stamped-down = From the top edge
