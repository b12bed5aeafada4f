### Mistakes in a project file: what was found, and in `.remedy` what would do.
### `problem-<code>`: facts by name; `near` counts the names in `nearest`, `there` those in `known`.
### Line and column are written in front by whoever speaks.

## The file

problem-empty-file = The file is empty.
    .remedy = Write a project into it, or copy one of the examples and change it.
problem-too-large-file = The file is { $bytes } bytes long; a project file has at most { $most }.
    .remedy = Give the project file itself. Pictures lie beside it and are only named in it.
problem-not-utf8 = From here on this is not UTF-8 text.
    .remedy = Save it as plain text in UTF-8.
problem-syntax = This cannot be read as TOML: { $message }.
    .remedy = Write one `key = value` a line, put every text, fraction and size into quotes ("4 3/4", "3 x 5"), and look for a bracket left open above.

## Keys and types

problem-unknown-key = The key `{ $found }` means nothing here.
    .remedy = { $near ->
        [0] The keys here are: { $known }.
        [one] Did you mean `{ $nearest }`?
       *[other] Did you mean one of these: { $nearest }?
    }
problem-missing-key = `{ $key }` is missing.
    .remedy = { $wanted ->
        [size-or-ranges] Write `size`, such as "3 x 4 1/2", or `width` and `height`, such as "2 3/4 to 3 1/4".
        [text] Add `{ $key } = "…"` with a name or a text.
        [length] Add `{ $key } = "…"` with a length, such as "4 3/4" or "121 mm".
        [size] Add `{ $key } = "…"` with a size, such as "3 1/2 x 5" or "105 x 148 mm".
        [range] Add `{ $key } = "…"` with a range, such as "2 3/4 to 3 1/4", or one length.
        [color] Add `{ $key } = "#rrggbb"`, such as "#f6f0e2".
        [amount] Add `{ $key } = "…"` with an amount, such as "4.80".
        [lengths] Add `{ $key } = ["…", "…"]` with lengths.
        [tables] Add a part that starts with `[[{ $key }]]`.
       *[other] Add `{ $key } = …`.
    }
problem-pick-one = These do not go together: { $found }.
    .remedy = { $first ->
        [size] Keep `size` alone, or `width` and `height`.
       *[other] Keep one of them: { $choices }.
    }
problem-wrong-type = Here stands { $found ->
        [text] a text
        [number] a number
        [yes-no] true or false
        [date] a date
        [list] a list
       *[table] a table
    }, and it should be something else.
    .remedy = { $wanted ->
        [text] Write a text in quotes.
        [letter] Write one to four letters or digits in quotes, such as "A".
        [length] Write a length, such as "4 3/4", "121 mm" or 6.
        [size] Write a size in quotes, such as "3 1/2 x 5", or the name of one.
        [range] Write a range in quotes, such as "2 3/4 to 3 1/4", or one length.
        [count] Write a whole number without quotes, such as 4.
        [yes-no] Write true or false without quotes.
        [color] Write a colour in quotes, such as "#f6f0e2".
        [date] Write a day, such as 2026-05-31.
        [price] Write an amount, such as "4.80", or a table with amount, currency and date.
        [amount] Write an amount, such as "4.80".
        [choice] Write one of the known words in quotes.
        [lengths] Write a list of lengths, such as ["3", "3", "4"].
        [pairs] Write pairs of two letters, such as [["A", "C"], ["B", "F"]].
        [by-letter] Write the name of a cardstock, or a table with one for each letter: { "{" } A = "Brick", B = "Hedge" { "}" }.
        [table] Write a table: { "{" } … { "}" }, or a part that starts with its name in square brackets.
        [size-or-table] Write a size in quotes, such as "4 3/8 x 5 3/4", or a table with name and size.
        [sizes-or-tables] Write a size in quotes, a table, or a list of either.
       *[tables] Start each with its name in double square brackets, as in [[recipe]].
    }
problem-bad-text = This text is empty, longer than 200 signs, or has signs in it that cannot be printed.
    .remedy = Write a short text on one line.
problem-empty-list = This list is empty.
    .remedy = Write at least one entry, or leave the key out.
problem-list-too-long = This list has { $entries } entries; at most { $most } are read.
    .remedy = Split the project into two files.

## Lengths, sizes and numbers

problem-bad-length = { $why ->
        [empty] A length is missing here.
        [missing-unit] `{ $found }` has no unit.
        [unknown-unit] `{ $found }` is not a unit that is read here.
        [not-a-number] `{ $found }` is not a number.
        [trailing] `{ $found }` is too much here.
        [ambiguous-comma] `{ $found }` may be a thousand or a decimal.
        [fraction-too-large] The fraction of `{ $found }` is one or more.
        [zero-denominator] `{ $found }` divides by zero.
        [too-fine] `{ $found }` is finer than can be kept exactly.
        [too-large] `{ $found }` is longer than 100 m.
       *[negative] `{ $found }` is below zero.
    }
    .remedy = { $why ->
        [ambiguous-comma] Write the decimal with a point.
        [too-fine] Write it as a fraction of an inch or in hundredths of a millimetre.
       *[other] Write a length such as "4 3/4", "4.75 in" or "121 mm"; without a unit it is in the project's own.
    }
problem-bad-size = { $why ->
        [not-two-lengths] `{ $found }` is not a size that is known here.
       *[other] `{ $found }` cannot be read as one side of a size.
    }
    .remedy = { $near ->
        [0] Write width and height: "3 1/2 x 5" or "105 x 148 mm".
        [one] Did you mean `{ $nearest }`? Else write width and height: "3 1/2 x 5".
       *[other] Did you mean one of these: { $nearest }? Else write width and height: "3 1/2 x 5".
    }
problem-out-of-bounds = { $found } cannot be meant here.
    .remedy = Between { $least } and { $most } would do. Look whether the unit is right.
problem-count-out-of-bounds = { $found } cannot be meant here.
    .remedy = A whole number from { $least } to { $most } would do.
problem-least-above-most = The range is upside down: { $least } is more than { $most }.
    .remedy = Write the smaller length first.
problem-fewest-above-most = At least { $least } and at most { $most } cards of it from a sheet cannot both be.
    .remedy = Make `least` smaller or `most` larger.
problem-prefer-outside = The size you like best, { $prefer-width } × { $prefer-height }, is outside what looks right.
    .remedy = It should lie between { $least-width } × { $least-height } and { $most-width } × { $most-height }; or widen the ranges.
problem-bad-mark = No rule here is marked every { $found }.
    .remedy = Take one of these: { $known }.

## Names and words

problem-bad-choice = `{ $found }` means nothing here.
    .remedy = { $near ->
        [0] One of these would do: { $choices }.
       *[other] Did you mean { $nearest }? One of these would do: { $choices }.
    }
problem-unknown-name = { $of ->
        [cardstock] There is no cardstock called `{ $found }`.
        [ribbon] There is no ribbon called `{ $found }`.
        [greeting] There is no greeting “{ $found }”.
        [recipe] There is no recipe called `{ $found }`.
        [layer] There is no layer here called `{ $found }`.
       *[letter] No design has the letter `{ $found }`.
    }
    .remedy = { $near ->
        [0] { $there ->
            [0] There is none yet: add it.
           *[other] There are: { $known }.
        }
       *[other] Did you mean { $nearest }? There are: { $known }.
    }
problem-name-needed = { $there ->
        [0] { $of ->
            [cardstock] This needs a cardstock, and there is none.
            [ribbon] This needs a ribbon, and there is none.
            [greeting] This needs a greeting, and there is none.
           *[recipe] This needs a recipe, and there is none.
        }
       *[other] { $of ->
            [cardstock] It is not said which cardstock.
            [ribbon] It is not said which ribbon.
            [greeting] It is not said which greeting.
           *[recipe] It is not said which recipe.
        }
    }
    .remedy = { $there ->
        [0] Add a part that starts with [[{ $of }]].
       *[other] Name one of these: { $known }.
    }
problem-duplicate-name = { $of ->
        [letter] The letter `{ $name }` is taken: line { $first-line }.
        [greeting] The greeting “{ $name }” is there twice: first in line { $first-line }.
       *[other] The name `{ $name }` is taken: line { $first-line }.
    }
    .remedy = Choose another one here.
problem-bad-color = `{ $found }` is not a colour that can be read.
    .remedy = Write # and six digits, such as "#a8483a".
problem-bad-date = `{ $found }` is not a day.
    .remedy = Write year, month and day, such as 2026-05-31.
problem-bad-price = `{ $found }` is not an amount.
    .remedy = Write digits and a decimal point, such as "4.80"; the currency has a key of its own.
problem-bad-currency = `{ $found }` is not a currency code.
    .remedy = Write its three capitals, such as "GBP".
problem-bad-letter = `{ $found }` cannot mark a design.
    .remedy = Write one to four letters or digits, such as "A" or "B2".
problem-bad-picture = `{ $found }` is not a picture that can be used.
    .remedy = Put a PNG or JPEG beside the project file and write its plain name, such as "leaves.png".

## What does not fit together

problem-use-above-copies = { $wanted } sheets are to be used, and there are { $copies }.
    .remedy = Raise `copies` or lower `use`.
problem-nothing-left = The edges that cannot be used leave nothing of a sheet of { $sheet-width } × { $sheet-height }.
    .remedy = Write smaller edges, or measure the sheet again.
problem-collage-too-large = The printed panels are { $printed-width } × { $printed-height } in all; the sheet is { $sheet-width } × { $sheet-height }.
    .remedy = Leave out what runs over the edge, or measure again.
problem-laid-on-later = It is laid on `{ $layer }`, which does not come before it.
    .remedy = Layers are listed bottom first: put `{ $layer }` above this one in the file.
problem-follows-earlier = It follows `{ $layer }`, which does not come after it.
    .remedy = A mat comes before the layer that lies on it: put `{ $layer }` below this one in the file.
problem-nothing-to-follow = There is nothing for this mat to follow: it takes its size from a later layer of paper or cardstock.
    .remedy = Put such a layer after it, or name one with `follows`.
problem-designs-without = These designs have no cardstock here: { $letters }.
    .remedy = Name one for each letter, or one for all.
problem-partner-twice = The design `{ $letter }` has a partner already.
    .remedy = Each design can be in one pair only, with another design.
