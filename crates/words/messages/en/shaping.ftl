# Things shaped by hand in the workroom: printed panels, layers of a recipe.

## Printed panels

panels-title = { $face }: { $count ->
    [one] 1 printed panel
   *[other] { $count } printed panels
}
panels-none = { $face } is printed as panels?
panels-what = Say into how many columns and rows it is printed, edge to edge. Then drag the lines to where they are.
panels-columns = Columns
panels-rows = Rows
panels-begin = Draw the panels
panels-look = Look for the panels in the picture
panels-one-print-here = No dividing line was found in the picture. Say the columns and rows yourself, or leave it as one print.
panels-hint = Drag a printed line by its knob. With the keyboard: arrows, then Enter; Esc puts it back.
panels-grip = Printed line
panels-upright = upright
panels-level = level
panels-which = Which line
panels-line-upright = right of column { $number }, { $at } from the left
panels-line-level = below row { $number }, { $at } from the top
panels-edge = panel { $panel }, { $edge ->
    [left] left edge, { $at } from the left
    [top] upper edge, { $at } from the top
    [right] right edge, { $at } from the left
   *[bottom] lower edge, { $at } from the top
}
panels-panel = panel { $number }, { $size }
panels-which-panel = Which panel
panels-new-line = A new line
panels-divide = Draw it
panels-join = Take the line away
panels-add = Add a panel
panels-remove = Take the panel away
panels-widths = Widths of the columns
panels-heights = Heights of the rows
panels-free = Change each panel by itself
panels-in-rows = Back to columns and rows
panels-clear = It is one print, not panels
panels-stays = That line has no room to move.
panels-between = That line can lie between { $first } and { $last }. Type a place between them.
panels-no-divide = There is no panel there with { $least } to spare on both sides of the line. Choose another place.
panels-last = One panel must stay. To have none, say that it is one print.
edit-panels = The printed panels of { $face } were changed
edit-panels-gone = { $face } is one print again
field-front-name = Name of the front
field-back-name = Name of the back
field-print-front = Front: how large its pictures are
field-print-back = Back: how large its pictures are
print-untold = not told
print-large = large, over 2 in (50 mm)
print-medium = medium
print-small = small, under 1/2 in (12 mm)
print-solid = one tone

## Recipes and layers

recipe-new = A new recipe
recipe-new-lead = Choose a format. The mat is a border smaller than the card, the panel a border smaller than the mat.
recipe-format = Format
recipe-greeting = with a greeting strip
recipe-ribbon = with a ribbon
recipe-begin = Begin the recipe
recipe-copy = Copy this recipe
recipe-copy-of = Copy this recipe: { $name }
recipe-delete = Delete this recipe
recipe-delete-of = Delete this recipe: { $name }
recipe-order = Layers, the topmost first
recipe-refused = That recipe or layer is not there, or it is the only one. Look at the page as it is now and choose again.
layer-up = Up
layer-up-of = Up: { $layer }
layer-down = Down
layer-down-of = Down: { $layer }
layer-gone = Take away
layer-gone-of = Take away: { $layer }
new-ribbon = ribbon
new-strip = greeting
edit-recipe-new = The recipe { $name } was begun
edit-recipe-copy = The recipe { $name } was copied
edit-recipe-gone = The recipe { $name } was deleted
edit-layer-moved = { $name }: the layer { $layer } changed places with its neighbour
edit-layer-gone = { $name }: the layer { $layer } was taken away
recipe-unused = No card is made of this recipe: the others use the whole sheet. Change its sizes, ask for another number of cards from one sheet, or delete a recipe.

## A layer in hand

hold-title = Shape a layer by hand
hold-which = Choose a layer to move it or to make it larger or smaller on the card.
hold-hint = Drag the layer in hand to move it, or a knob on its edge to make it larger or smaller. With Tab and the arrow keys it moves by one mark; Enter keeps, Esc puts back.
hold-alt = The front of the card, with handles on { $layer }
hold-what = What of { $layer } is moved
hold-left = left edge
hold-top = top edge
hold-right = right edge
hold-bottom = bottom edge
hold-whole = the whole of it
hold-edges = Places are counted from the left and the top of the card’s front; the whole is typed as two: “1/4, 3 1/2”. What lies in the middle stays in the middle.
hold-range = Places are counted from the left and the top of the card’s front; the whole is typed as two: “1/4, 3 1/2”. Drawn by an edge, this layer gets the one size where you let go. To let the sheet choose a size that wastes nothing, type a range for it below, such as “2 3/4 to 3 1/4”.
hold-card = the card
hold-said = { $layer }: { $size }. Of { $on } show { $left } at the left, { $right } at the right, { $above } above, { $below } below.
hold-sheet = The sheet: { $sentence }
hold-no-size = { $layer } has no size of its own: it can only be moved.
hold-too-small = { $layer } would be smaller than { $least }.
hold-no-layout = With that no sheet can be cut into these cards.
hold-bad-place = “{ $typed }” is no place: type two lengths with a comma between, from the left and from the top, such as 1/4, 3 1/2.
hold-bad-length = “{ $typed }” is no length: type where the edge is to lie, such as 1/4 or 3 1/2 in.

## One layer more

layer-new = Add this layer
layer-new-kind = A new layer
layer-new-on = On, or for a mat under
layer-new-mat = a mat of cardstock
layer-new-panel = a panel of patterned paper
layer-new-band = a band of patterned paper
layer-new-plain = a piece of cardstock
layer-new-strip = a strip with a greeting
layer-new-ribbon = ribbon
new-band = band
new-plain = piece
edit-layer-new = { $name }: { $layer } was added
hold-ranges = It may be { $width } wide and { $height } high.
hold-range-told = { $least } to { $most }
layer-new-across = a strip of cardstock across it
layer-new-no-room = There is no room for that there: it would be a border smaller than what it lies on, and nothing would be left. A mat goes behind paper or cardstock, not behind a ribbon. Choose another layer, or make that one larger first.
new-across = strip
apart-alone = { $layer }, { $size }: { $borders }
apart-border-all = border { $border } all round
apart-borders = border left { $left }, right { $right }, above { $top }, below { $bottom }
