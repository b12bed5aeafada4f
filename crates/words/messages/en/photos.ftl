## Photos of sheets: the commands `square`, `panels` and `colors`

help-square = Make a photo of one sheet straight and true to scale
    .photo = A photo of the whole sheet on a table of another colour: JPEG, PNG or WebP
    .size = The sheet's own size, such as 12x12 or "210 mm x 297 mm"
    .out = The PNG file to write
    .corners = The sheet's corners in pixels of the photo, from the top left clockwise, such as "210,95 1830,120 1905,1740 140,1690"; without them they are looked for
    .dots = How many pixels an inch of the sheet becomes
    .even = Even out the light of a lamp, gently
    .neutral = A place in the photo that is white or grey in truth, in its pixels, such as "320,140": the colour of the lamp is taken out
    .patch = A place in the photo whose colour is known, and that colour: "640,220 #8c8c8c", "640,220 lab 54.2 0.3 -1.1 D50" (or D65), "640,220 grey 18%"; a third number after the place is half the patch's side in pixels. May be said several times; six or more that differ do best
    .patches = A text file of such patches, a line each
    .json = Print the corners and what speaks against them as JSON
    .examples =
        Examples:
          octavo square rosebuds.jpg --size 12x12 --out rosebuds.png
          octavo square rosebuds.jpg --size 12x12 --out rosebuds.png --corners "210,95 1830,120 1905,1740 140,1690"
help-panels = Find where a collage sheet is printed as panels
    .picture = A straight picture of the whole sheet, edge to edge: JPEG, PNG or WebP (`octavo square` makes one from a photo)
    .size = The sheet's own size, such as 12x12 or "210 mm x 297 mm"
    .marks = The marks of your rule that the panels are brought to, such as "1/16 in" or "1 mm"
    .json = Print the panels as JSON
    .examples =
        Examples:
          octavo panels collage.png --size 12x12
          octavo panels collage.png --size "12 in x 12 in" --marks 1/8 --json
help-colors = Tell the colours of a picture, which papers go with it, and whether an ink can be read on it
    .picture = A picture of the print: JPEG, PNG or WebP; or a project file, for all its prints
    .paper = The colour of a paper to hold against it, such as "#8fa98a"; may be said several times
    .ink = The colour of an ink to stamp on it
    .json = Print the answer as JSON
    .examples =
        Examples:
          octavo colors rosebuds.png
          octavo colors cards.toml
          octavo colors rosebuds.png --paper "#8fa98a" --paper "#f4efe2" --ink "#2d3b55"

squared = { $path }: made straight from the corners { $corners }
reference-gains =
    { $count ->
        [one] One patch
       *[other] { $count } patches
    }: each of red, green and blue was given a factor.
reference-offset = { $count } patches: each of red, green and blue was given a factor, and stray light was taken out.
reference-matrix = { $count } patches: red, green and blue were mixed anew, which did better on patches left out than factors alone.
reference-patch = Patch { $number } at { $place }: ΔE { $before } before, { $after } after: { $near }
reference-mean = In the mean: ΔE { $before } before, { $after } after: { $near }
reference-suspect = Patch { $number } does not fit the others: look for a shine or a shadow on it, or a slip in its colour.
reference-limits = A camera does not see as eyes do: colours unlike the patches, shiny papers and another lamp can still be off. Hold the paper itself against the cardstock.
reference-off = ΔE { $before } as photographed, { $after } put right: { $near }
patch-of-the-command = --patch number { $number }
patch-of-a-file = Line { $number }
refused-patch-place = { $whose } (“{ $line }”): “{ $found }” is no place. Write pixels from the left, a comma, pixels from the top, then the colour: 640,220 #8c8c8c
refused-patch-no-color = { $whose } (“{ $line }”) has a place but no colour. Write the colour after the place: 640,220 #8c8c8c, or 640,220 lab 54.2 0.3 -1.1 D50, or 640,220 grey 18%
refused-patch-color = { $whose } (“{ $line }”): “{ $found }” is no colour that can be read. Write #8c8c8c, or lab 54.2 0.3 -1.1 D50 (or D65), or grey 18%
refused-patch-hex = { $whose } (“{ $line }”): “{ $found }” is no colour. After # come six signs, 0 to 9 and a to f: #8c8c8c
refused-patch-lab = { $whose } (“{ $line }”): “{ $found }” is not whole. After lab come lightness (0 to 100), two numbers up to 128, and D50 or D65, whichever your card says: lab 54.2 0.3 -1.1 D50
refused-patch-grey = { $whose } (“{ $line }”): “{ $found }” is not whole. After grey comes the share of light that it gives back, over 0% and up to 100%: grey 18%
refused-reference-many = There are more than { $most } patches, or the file is too large.
refused-reference-file = cannot read the patches in `{ $path }`: { $reason }
    .remedy = name a text file with a patch on each line
refused-reference-outside = Patch { $number } at { $place } reaches beyond the photo. Move it in, or make it smaller by a third number after its place.
refused-reference-small = Patch { $number } at { $place } has too few pixels. Write half its side in pixels as a third number after its place (3 at least), or go nearer with the camera.
refused-reference-clipped = Patch { $number } at { $place } is too bright or too dark for the camera. Take the photo with less or more light, without shine, or leave this patch out.
refused-reference-uneven = Patch { $number } at { $place } is not of one colour: an edge, a shadow or a shine runs through it. Move it, or make it smaller by a third number after its place.
refused-reference-unreal = Patch { $number } at { $place } is said to have a colour that no paper has. Look at its figures.
refused-reference-extreme = Patch { $number } at { $place } and what it should be are too far apart (over four times the light). Look at its place and its colour, or take the photo in better light.
doubt-faint-side = look at the corners: part of an edge can hardly be told from the table; give them with --corners if they are off, or take the photo on a darker table
doubt-goes-on = look at the corners: an edge seems to go on past a corner; give them with --corners if they are off
doubt-margin = look at the corners: they may be those of a printed margin and not of the sheet; give them with --corners if they are off
doubt-proportion = look at the corners: a sheet of that size does not look so from anywhere; give them with --corners if they are off, or another --size
doubt-rival = look at the corners: other lines would do nearly as well; give them with --corners if they are off
doubt-small = look at the corners: the sheet takes up little of the photo; go nearer for a sharper picture
doubt-at-edge = look at the corners: the sheet reaches the photo's edge; take the photo with some table on every side

panels-one-print = No dividing line was found: the sheet is one print.
panels-found = { $count } panels, on marks of { $mark }: hold them against the sheet before you cut. This line goes into the face of a project file.

colors-share = { $color }  { $share } % of the picture
colors-paper = { $paper }: nearest { $nearest }, ΔE { $delta }, { $near }; { $goes }
near-same = hardly to be told apart
near-good = a good match
near-close = close
near-family = of the same family
near-other = another colour
goes-match = repeats a colour of the print
goes-tone = goes tone on tone
goes-contrast = stands out against the print
goes-neutral = quiet beside any print
goes-none = no plain pairing
colors-ink = { $ink } as ink: contrast { $worst } at the worst place, { $median } at half of the places; below 3 on { $below } % of the print
colors-daylight = colours on a screen are not the paper's: hold it against the paper in daylight

refused-photo-missing = cannot find the picture `{ $picture }`
    .remedy = look whether its name is right
refused-photo-kind = `{ $picture }` is neither PNG, JPEG nor WebP
    .remedy = save it as one of them (phones that write HEIC have a setting "most compatible" for JPEG)
refused-photo-large = the picture `{ $picture }` is too large
    .remedy = make it smaller: no side over { $side } pixels, no more than { $millions } million pixels, no file over 64 MB
refused-no-sheet = no sheet was found in `{ $picture }`
    .remedy = give its corners with --corners, or take the photo on a table of another colour
refused-corners-crossed = the corners are crossed
    .remedy = give them one after the other round the sheet: top left, top right, bottom right, bottom left
refused-corners-mirrored = the corners run the wrong way round
    .remedy = give them clockwise: top left, top right, bottom right, bottom left
refused-corners-hollow = the corners make no sheet
    .remedy = give four corners well apart, none inside the others
refused-square-corners = write four places as eight numbers, such as 210,95 1830,120 1905,1740 140,1690
refused-square-neutral = write one place as two numbers, such as 320,140
refused-square-size = write the sheet's width and height, such as 12x12 or 210 mm x 297 mm
refused-color = write a colour as #rrggbb, such as #8fa98a
refused-marks = write the marks of a rule, such as 1/16 in, 1/8 in or 1 mm

matched-title = Colours side by side
matched-lead = Each print with its colours by their share, and what goes with it. The numbers are ΔE₀₀: under 1 nobody sees it, over 10 it is another colour. Colours of a screen or a camera are not the paper's. If one is off, hold the paper against a printed or bought colour card and write that colour in the project file.
matched-palette = Colours of the print by share: { $colors }
matched-all = Everything held against this print
matched-what = Cardstock, ribbon or ink
matched-ink = ink of “{ $words }”
matched-nearest = Nearest in the print
matched-how = How the two go together
matched-laid = Together on
matched-straight = Stamped straight on this print, “{ $words }” has a contrast of { $contrast } to 1 at its worst place: { $how }.
matched-reads = Can the greeting be read?
matched-read = “{ $words }” on { $on }: contrast { $contrast } to 1, { $how }
matched-on-print = print { $letter } ({ $name }, worst on card { $card })
matched-on-stock = { $name }
matched-shelved = { $name }, on your shelf
matched-shelf-ink = Nearest ink: { $name }, { $near } (ΔE { $delta })
matched-on-shelf = { $said }, on your shelf
reads-well = easy to read
reads-large = only in large, bold letters
reads-badly = hard to read; a darker ink or a paler ground would do
face-front = front
face-back = back
sight-title = As eyes with fewer colours may see a card
sight-lead = An approximation: no two pairs of eyes are the same. What can still be told apart here can be told apart by nearly everyone.
sight-which = Which card
sight-show = Show this card
sight-card = Card { $number }: { $recipe }, { $design }
sight-alt = Card { $number } as it may look { $eyes }
sight-own-alt = Card { $number } as it is drawn
sight-own = as it is drawn
sight-protan = without red
sight-deutan = without green
sight-tritan = without blue
sight-grey = without any colour

photo-known = Colours by a printed or bought card
photo-known-lead = Photograph a card of greys or colours whose values you know beside the sheet, in the same light, without shine. Then say of each patch of the card where it lies in the photo, and what colour it is in truth. One grey patch takes out the colour of the lamp; six or more that differ do best.
photo-known-touch = Touch or click on a patch in the photo: its place is written below, and you type its colour. A ring can be dragged, or moved by the arrow keys, with Shift in larger steps. On a phone, spread two fingers to come nearer.
photo-known-colors = Write a colour as your card gives it: #8c8c8c, or lab 54.2 0.3 -1.1 D50 (or D65), or grey 18%.
photo-known-spot = Click on a patch in this small picture: its place is written below.
photo-patch = Patch { $number }
photo-patch-new = New patch
photo-patch-look =
    Before the colours can be put right, look at { $count ->
        [one] patch { $numbers }: what is wrong stands beside it.
       *[other] patches { $numbers }: what is wrong stands beside each.
    }
photo-up = Up to the photo
photo-patch-place = Place in the photo
photo-patch-color = Colour in truth
photo-patch-away = Take away patch { $number }
photo-patch-gone = Patch { $number } ({ $line }) was taken away. The sheet follows as soon as it is made straight again.
photo-patch-back = Put it back
photo-patch-at = Patch { $number } at { $place }
photo-several = Write several at once
photo-patches = A patch on each line: place, then colour, such as 640,220 #8c8c8c
photo-check = Say what the patches would do
photo-chips = The three small fields beside a patch, from the left: as photographed, put right, in truth.
photo-one-way = Give either a white or grey place or patches with their colours, not both.

## What Octavo sees in a print

help-interest = Tell the pictures that Octavo sees in a print, what each is worth, and why
    .picture = A straight picture of the whole sheet, edge to edge: JPEG, PNG or WebP (`octavo square` makes one from a photo)
    .size = The sheet's own size, such as 12x12 or "210 mm x 297 mm"
    .marks = The marks of your rule on which the cuts lie, such as "1/8 in" or "1 mm"
    .out = A PNG file to write, where the print is darker the more a place is worth, with the pictures framed
    .json = Print the pictures as JSON
    .examples =
        Examples:
          octavo interest rosebuds.png --size 12x12
          octavo interest rosebuds.png --size 12x12 --out rosebuds-seen.png
interest-line = { $number }: { $said } { $why }
interest-drawn = { $path }: the print, darker where it is worth more to show it whole
interest-title = What Octavo sees in { $face }
interest-lead = Octavo looks for the pictures of a print by itself, on this computer, from nothing but its pixels. Cuts are laid so that as many pictures as can be stay whole; what you mark yourself counts more than anything here.
interest-alt = { $face }, shaded where its interest lies; { $count ->
    [one] one picture has a frame
   *[other] { $count } pictures have frames
 }
interest-key = The darker, the more it is worth to show it whole. Frames: pictures that were found, with their number.
interest-found = { $count ->
    [0] No picture
    [one] One picture
   *[other] { $count } pictures
}
interest-none = Nothing stands out as a picture of an inch (25 mm) or more: such a print may be cut anywhere.
interest-picture = { $width } × { $height }, { $left } from the left, { $top } from the top: worth { $weight } of 10.
interest-reasons = Edges { $edge } %, colours of its own { $distinct } %, picture { $motif } %.
interest-keep = Keep it whole
interest-why = Why it is so
interest-sum = Three things are looked at in every mark of the sheet, and added: edges count three tenths, colours of their own three tenths, pictures four tenths.
interest-edge = Edges
interest-edge-what = Something is drawn here: colours change fast from one dot to the next.
interest-distinct = Colours of their own
interest-distinct-what = These colours are far from those that cover most of the sheet.
interest-motif = Pictures
interest-motif-what = Dots that hang together and are not ground; large patches in colours of their own count most.
interest-collage = This side is cut on its printed lines: its interest is not looked at.
interest-even = This side is even all over: its interest is not looked at.
interest-plain = The Layout page says that prints are not looked at: nothing comes of this until you change it there.
interest-unseen = This side does not show on any card now: nothing comes of this until it does.
interest-mark = Mark parts yourself
regions-interest = What Octavo sees in { $face } by itself
