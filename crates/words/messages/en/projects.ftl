### Mistakes in a project file: what was found, and in `.remedy` what would do.
### `problem-<code>`: facts by name; `near` counts the names in `nearest`, `there` those in `known`.
### Line and column are written in front by whoever speaks: lower case, no full stop.

## The file

problem-empty-file = the file is empty
    .remedy = write a project into it, or copy one of the examples and change it
problem-too-large-file = the file is { $bytes } bytes long; a project file has at most { $most }
    .remedy = give the project file itself; pictures lie beside it and are only named in it
problem-not-utf8 = from here on this is not UTF-8 text
    .remedy = save it as plain text in UTF-8
problem-syntax = this cannot be read as TOML: { $message }
    .remedy = write one `key = value` a line, put every text, fraction and size into quotes ("4 3/4", "3 x 5"), and look for a bracket left open above

## Keys and types

problem-unknown-key = the key `{ $found }` means nothing here
    .remedy = { $near ->
        [0] the keys here are: { $known }
        [one] did you mean `{ $nearest }`?
       *[other] did you mean one of these: { $nearest }?
    }
problem-missing-key = `{ $key }` is missing
    .remedy = { $wanted ->
        [size-or-ranges] write `size`, such as "3 x 4 1/2", or `width` and `height`, such as "2 3/4 to 3 1/4"
        [text] add `{ $key } = "…"` with a name or a text
        [length] add `{ $key } = "…"` with a length, such as "4 3/4" or "121 mm"
        [size] add `{ $key } = "…"` with a size, such as "3 1/2 x 5" or "105 x 148 mm"
        [range] add `{ $key } = "…"` with a range, such as "2 3/4 to 3 1/4", or one length
        [color] add `{ $key } = "#rrggbb"`, such as "#f6f0e2"
        [amount] add `{ $key } = "…"` with an amount, such as "4.80"
        [lengths] add `{ $key } = ["…", "…"]` with lengths
        [tables] add a part that starts with `[[{ $key }]]`
       *[other] add `{ $key } = …`
    }
problem-pick-one = these do not go together: { $found }
    .remedy = { $first ->
        [size] keep `size` alone, or `width` and `height`
       *[other] keep one of them: { $choices }
    }
problem-wrong-type = here stands { $found ->
        [text] a text
        [number] a number
        [yes-no] true or false
        [date] a date
        [list] a list
       *[table] a table
    }, and it should be something else
    .remedy = { $wanted ->
        [text] write a text in quotes
        [letter] write one to four letters or digits in quotes, such as "A"
        [length] write a length, such as "4 3/4", "121 mm" or 6
        [size] write a size in quotes, such as "3 1/2 x 5", or the name of one
        [range] write a range in quotes, such as "2 3/4 to 3 1/4", or one length
        [count] write a whole number without quotes, such as 4
        [yes-no] write true or false without quotes
        [color] write a colour in quotes, such as "#f6f0e2"
        [date] write a day, such as 2026-05-31
        [price] write an amount, such as "4.80", or a table with amount, currency and date
        [amount] write an amount, such as "4.80"
        [choice] write one of the known words in quotes
        [lengths] write a list of lengths, such as ["3", "3", "4"]
        [names] write a list of names, such as ["Twin", "Wide border"]
        [pairs] write pairs of two letters, such as [["A", "C"], ["B", "F"]]
        [by-letter] write the name of a cardstock, or a table with one for each letter: { "{" } A = "Brick", B = "Hedge" { "}" }
        [table] write a table: { "{" } … { "}" }, or a part that starts with its name in square brackets
        [size-or-table] write a size in quotes, such as "4 3/8 x 5 3/4", or a table with name and size
        [sizes-or-tables] write a size in quotes, a table, or a list of either
       *[tables] start each with its name in double square brackets, as in [[recipe]]
    }
problem-bad-text = this text is empty, longer than 200 signs, or has signs in it that cannot be printed
    .remedy = write a short text on one line
problem-empty-list = this list is empty
    .remedy = write at least one entry, or leave the key out
problem-list-too-long = this list has { $entries } entries; at most { $most } are read
    .remedy = split the project into two files

## Lengths, sizes and numbers

problem-bad-length = { $why ->
        [empty] a length is missing here
        [missing-unit] `{ $found }` has no unit
        [unknown-unit] `{ $found }` is not a unit that is read here
        [not-a-number] `{ $found }` is not a number
        [trailing] `{ $found }` is too much here
        [ambiguous-comma] `{ $found }` may be a thousand or a decimal
        [fraction-too-large] the fraction of `{ $found }` is one or more
        [zero-denominator] `{ $found }` divides by zero
        [too-fine] `{ $found }` is finer than can be kept exactly
        [too-large] `{ $found }` is longer than 100 m
       *[negative] `{ $found }` is below zero
    }
    .remedy = { $why ->
        [ambiguous-comma] write the decimal with a point
        [too-fine] write it as a fraction of an inch or in hundredths of a millimetre
       *[other] write a length such as "4 3/4", "4.75 in" or "121 mm"; without a unit it is in the project's own
    }
problem-bad-size = { $why ->
        [not-two-lengths] `{ $found }` is not a size that is known here
        [negative] `{ $found }` is below zero
        [too-large] `{ $found }` is longer than 100 m
        [zero-denominator] `{ $found }` divides by zero
        [unknown-unit] `{ $found }` is not a unit that is read here
       *[other] `{ $found }` cannot be read as one side of a size
    }
    .remedy = { $near ->
        [0] write width and height: "3 1/2 x 5" or "105 x 148 mm"
        [one] did you mean `{ $nearest }`; or write width and height: "3 1/2 x 5"
       *[other] did you mean one of these: { $nearest }; or write width and height: "3 1/2 x 5"
    }
problem-out-of-bounds = { $found } cannot be meant here
    .remedy = between { $least } and { $most } would do; look whether the unit is right
problem-count-out-of-bounds = { $found } cannot be meant here
    .remedy = a whole number from { $least } to { $most } would do
problem-least-above-most = the range is upside down: { $least } is more than { $most }
    .remedy = write the smaller length first
problem-fewest-above-most = at least { $least } and at most { $most } cards of it from a sheet cannot both be
    .remedy = make `least` smaller or `most` larger
problem-prefer-outside = the size you like best, { $prefer-width } × { $prefer-height }, is outside what looks right
    .remedy = it should lie between { $least-width } × { $least-height } and { $most-width } × { $most-height }; or widen the ranges
problem-ink-beyond-stamp = the ink, { $ink-width } × { $ink-height }, lies beyond the edge of its stamp, { $stamp-width } × { $stamp-height }
    .remedy = measure the stamp on its outer edges, and from its left and top edge to the ink, as it prints
problem-border-without-edge = `words_border` is from an edge to the words, but `words_at` names no edge
    .remedy = say an edge or a corner, such as `words_at = "left"`, or leave the border out
problem-place-without-greeting = this says where words come, but the piece names no greeting
    .remedy = name the greeting, such as `greeting = "with thanks"`, or leave the place out
problem-weight-without-mark = where its ink balances is known only by an outline or a picture of it
    .remedy = add `outline` or `picture` to the greeting, or leave `middle` out
problem-bad-mark = no rule here is marked every { $found }
    .remedy = take one of these: { $known }

## Names and words

problem-bad-choice = `{ $found }` means nothing here
    .remedy = { $near ->
        [0] one of these would do: { $choices }
       *[other] did you mean { $nearest }? One of these would do: { $choices }
    }
problem-unknown-name = { $of ->
        [cardstock] there is no cardstock called `{ $found }`
        [ribbon] there is no ribbon called `{ $found }`
        [greeting] there is no greeting “{ $found }”
        [recipe] there is no recipe called `{ $found }`
        [layer] there is no layer here called `{ $found }`
        [supply] nothing that the project uses is called `{ $found }`
        [batch] there is no batch called `{ $found }`
        [background] there is no background called `{ $found }`
        [stamp] there is no stamp here called `{ $found }`
        [piece] no recipe has a piece of patterned paper `{ $found }`
       *[letter] no design has the letter `{ $found }`
    }
    .remedy = { $near ->
        [0] { $there ->
            [0] there is none yet: add it
           *[other] there are: { $known }
        }
       *[other] did you mean { $nearest }? There are: { $known }
    }
problem-name-needed = { $there ->
        [0] { $of ->
            [cardstock] this needs a cardstock, and there is none
            [ribbon] this needs a ribbon, and there is none
            [greeting] this needs a greeting, and there is none
           *[recipe] this needs a recipe, and there is none
        }
       *[other] { $of ->
            [cardstock] it is not said which cardstock
            [ribbon] it is not said which ribbon
            [greeting] it is not said which greeting
           *[recipe] it is not said which recipe
        }
    }
    .remedy = { $there ->
        [0] add a part that starts with [[{ $of }]]
       *[other] name one of these: { $known }
    }
problem-duplicate-name = { $of ->
        [letter] the letter `{ $name }` is taken: line { $first-line }
        [greeting] the greeting “{ $name }” is there twice: first in line { $first-line }
       *[other] the name `{ $name }` is taken: line { $first-line }
    }
    .remedy = choose another one here
problem-bad-color = `{ $found }` is not a colour that can be read
    .remedy = write # and six digits, such as "#a8483a"
problem-bad-date = `{ $found }` is not a day
    .remedy = write year, month and day, such as 2026-05-31
problem-bad-price = `{ $found }` is not an amount
    .remedy = write digits and a decimal point, such as "4.80"; the currency has a key of its own
problem-bad-weight = `{ $found }` is not a weight
    .remedy = write grams or ounces, such as "0.9 g" or "3.5 oz"
problem-bad-time = `{ $found }` is not a time of the day
    .remedy = write hours and minutes, such as "14:00"
problem-bad-currency = `{ $found }` is not a currency code
    .remedy = write its three capitals, such as "GBP"
problem-bad-letter = `{ $found }` cannot mark a design
    .remedy = write one to four letters or digits, such as "A" or "B2"
problem-bad-picture = `{ $found }` is not a picture that can be used
    .remedy = put a PNG or JPEG beside the project file and write its plain name, such as "leaves.png"

## What does not fit together

problem-use-above-copies = { $wanted } sheets are to be used, and there are { $copies }
    .remedy = raise `copies` or lower `use`
problem-nothing-left = the edges that cannot be used leave nothing of a sheet of { $sheet-width } × { $sheet-height }
    .remedy = write smaller edges, or measure the sheet again
problem-collage-too-large = the printed panels are { $printed-width } × { $printed-height } in all; the sheet is { $sheet-width } × { $sheet-height }
    .remedy = leave out what runs over the edge, or measure again
problem-region-off-sheet = the marked region reaches { $reaches-width } from the left and { $reaches-height } from the top; the sheet is { $sheet-width } × { $sheet-height }
    .remedy = make the region smaller, or move it inwards
problem-panels-overlap = printed panel { $other } lies partly over panel { $one }
    .remedy = measure both again; panels may touch but not overlap
problem-laid-on-later = it is laid on `{ $layer }`, which does not come before it
    .remedy = layers are listed bottom first: put `{ $layer }` above this one in the file
problem-follows-earlier = it follows `{ $layer }`, which does not come after it
    .remedy = a mat comes before the layer that lies on it: put `{ $layer }` below this one in the file
problem-nothing-to-follow = there is nothing for this mat to follow: it takes its size from a later layer of paper or cardstock
    .remedy = put such a layer after it, or name one with `follows`
problem-designs-without = these designs have no cardstock here: { $letters }
    .remedy = name one for each letter, or one for all
problem-partner-twice = the design `{ $letter }` has a partner already
    .remedy = each design can be in one pair only, with another design
problem-nothing-to-stamp = every stamp here has a share of 0, so nothing is stamped
    .remedy = give at least one stamp a share of 1 or more
problem-stamp-too-large = this stamp is { $size } long, larger than the sheet of { $sheet-width } × { $sheet-height }
    .remedy = make the stamp smaller, or take a larger sheet
problem-bad-outline = these corners cannot be read
    .remedy = write pairs of numbers with a space between them, such as "0,0 4,0 2,3"
problem-outline-empty = { $corners } corners hold no ink between them
    .remedy = give at least three corners that do not lie on one line
problem-outline-crosses = the outline crosses itself: its sides { $first } and { $second } meet
    .remedy = write the corners in the order in which a pencil would go round the motif
problem-outline-many = { $corners } corners are too many; { $most } are read
    .remedy = leave out corners that lie close together, or give a picture of the stamp instead
