### What the command line says.
### Refusals: lower case, no full stop, the offending value in backticks, what to do in `.remedy`.

opened =
    The workroom is open at { $address }
    It listens to this computer only. Close it here with Ctrl-C; everything is kept.

## Help

help-about = Turns one pack of double-sided patterned paper into a batch of handmade cards: cuts, steps, counts and pages to print.
help-examples =
    Examples:
      octavo
      octavo make --demo --out demo-out
      octavo make my-cards.toml --out out --sheet a4
      octavo replan my-cards.toml --sheet 6x6
      octavo solve layout.json --json --seconds 5

    Start with the demo. It writes its own project file next to its pages:
    copy that file, change a size, and make it again.

    Exit codes: 0 done; 1 done, but something serious was found or the question is
    impossible; 2 could not, and nothing was written.
help-language = What to say and write in: English or German
help-port = The port of the workroom's pages; left out, the usual one
help-data = The file your projects are kept in; left out, the usual one in your home folder
help-no-open = Print the address of the workroom without opening the browser
help-make = Plan a project and write its pages, drawings and plan into a folder
    .file = The project file (TOML), written by hand
    .demo = Make the demo that comes with the program
    .out = The folder to write into; files of yours in it are left alone
    .sheet = The page you print on; left out, it follows the project's unit (inches: letter, millimetres: a4)
    .print = How large the words are: `large` is 18 points, one thing below the other
    .hand = The hand that moves the blade: for `left` the stop is at the right; the pieces are the same
    .units = The unit measures are told in; left out, the project's own. What is not exact says “about”
    .every-edition = Write the handout in every print, for either hand, in both units
    .square-measured = What the test square of 1 in measured when you printed the templates, such as 0.98; they are scaled by it
    .json = Also print the whole plan as JSON
    .examples =
        Examples:
          octavo make --demo --out demo-out
          octavo make my-cards.toml --out out --sheet letter
          octavo make my-cards.toml --out out --print large --hand left --units mm
          octavo make my-cards.toml --out out --every-edition
          octavo make my-cards.toml --out out --json > plan.json

        Every mistake in the project file is told at once, with its line and what would do.
        The folder is written whole or not at all. Made again, only files that Octavo made are replaced.
help-solve = Answer one cutting question from a file, in the layout of the cutting bench
    .file = The instance: cutbench-1 or cutbench-flex-1, as JSON
    .json = Print the answer as JSON, with the cut trees
    .nodes = Stop after so many search nodes: the same answer on every machine
    .seconds = Stop after so many seconds [default: { $default }]
    .examples =
        Examples:
          octavo solve layout.json
          octavo solve layout.json --json --nodes 1000000
          octavo solve bases.json --json --seconds 5

        Grades: proven best, best found (with a bound), impossible, stopped (before any answer was found).
help-schema = Print a JSON Schema: of a project file, of plan.json, of a question for `solve`, or of its answer
    .of = What to print the schema of; left out: `project`
    .examples =
        Examples:
          octavo schema > project.schema.json
          octavo schema plan
          octavo schema question
          octavo schema solve
help-why = Say why a sheet gives no layout, or none without waste, and the smallest changes that would
    .demo = Ask about the demo that comes with the program
    .json = Print the answer as JSON, with the layout of each change
    .examples =
        Examples:
          octavo why my-cards.toml
          octavo why my-cards.toml --json

        Small is, in this order: a piece let turn on the sheet; a range that reaches a mark or more
        further, narrower or lower or wider; a card fewer from each sheet; another sheet. Each
        change is the smallest of its sort, and works as it is told.

## Refusals: the command line itself

refused-verb = there is no command `{ $verb }`
    .remedy = the commands are `make`, `why`, `replan`, `solve`, `schema` and `help`
refused-missing-argument = something is missing: `{ $argument }`
    .remedy = add it, or see `octavo help` for examples
refused-conflict = `{ $argument }` does not go with the rest
    .remedy = give either a project file or `--demo`
refused-no-value = `{ $argument }` stands without a value
    .remedy = write one after it, or see `octavo help`
refused-value = `{ $argument }` cannot be `{ $value }`
    .remedy = see `octavo help` for what it takes
refused-value-own = `{ $argument }` cannot be `{ $value }`
    .remedy = { $why }
refused-argument = `{ $argument }` is not understood
    .remedy = see `octavo help` for examples
refused-square = a length between 0.75 and 1.25 in
refused-seconds = a number of seconds above 0
refused-output = the answer could not be written: { $reason }

## Refusals: files

refused-file-missing = cannot find `{ $path }`
    .remedy = check the name and the folder, or run `octavo make --demo --out demo-out` to see a project that works
refused-file-unreadable = cannot read `{ $path }` ({ $reason })
    .remedy = check that you may open it
refused-file-is-folder = `{ $path }` is a folder
    .remedy = name the file in it
refused-file-too-large = `{ $path }` is larger than { $limit } MB
    .remedy = check that it is the right file
refused-file-not-text = `{ $path }`, line { $line }: this is not text
    .remedy = save it as UTF-8 text, and check that it is the right file

## Refusals: projects, pictures, the folder to write into

refused-project = `{ $path }`, line { $line }, column { $column }: { $said }
refused-picture-elsewhere = the picture `{ $picture }` lies outside the project's folder
    .remedy = put it beside the project file
refused-picture-missing = cannot find the picture `{ $picture }`
    .remedy = put it beside the project file, or correct its name there
refused-picture-kind = `{ $picture }` is neither PNG nor JPEG
    .remedy = save it as one of them
refused-picture-too-large = the picture `{ $picture }` is too large
    .remedy = make it smaller: 2400 pixels along the longer side are enough
refused-picture-cut-off = the picture `{ $picture }` is cut off: the file ends before the picture does
    .remedy = copy it anew
refused-picture-damaged = the picture `{ $picture }` cannot be read ({ $reason })
    .remedy = open it in a picture program and save it again
warned-picture-shape = the picture `{ $picture }` has not the shape of its sheet and is stretched
    .remedy = crop it to the sheet's edges
refused-out-not-a-folder = `{ $path }` is a file
    .remedy = name a folder after `--out`
refused-out-theirs = `{ $path }` was not made by Octavo and is in the way
    .remedy = move it, or name another folder after `--out`
refused-out-disk = cannot write `{ $path }` ({ $reason })
    .remedy = check that you may write there and that the disk has room

refused-drawing = a page could not be drawn: { $reason }
    .remedy = this is a mistake in Octavo, not in your project: please report it with the project file

## What `make` tells

made = { $cards } from { $sheets } of patterned paper; everything is in `{ $path }`
made-list = Files made by Octavo. They are replaced when the project is made again; other files here are not touched.
made-about = { $about }: { $said }
made-note = note: { $said } { $remedy }
made-warning = warning: { $said } { $remedy }
made-serious = serious: { $said } { $remedy }
made-way = {"  "}would do: { $way }

## What `why` tells

why-whole = { $pack }: the layout uses the whole sheet; nothing needs to change.
why-waste = { $pack }: the best layout leaves { $percent } % of the sheet over.
why-none = { $pack }: no layout was found.
why-ways = What would do, the smallest change of each sort:
why-ways-whole = To leave nothing over, the smallest change of each sort:
why-way = {"  "}{ $number }. { $way }
why-no-turn = Letting pieces turn does not help, or their prints forbid it.
why-no-sizes = No piece a little narrower, lower or wider helps.
why-no-fewer-cards = No smaller number of cards helps.
why-no-sheet = No other sheet of the tables helps.
why-not-known = More may help that was not found in the time given.

## Refusals: instances

refused-instance-empty = `{ $path }` is empty
    .remedy = write one instance into it
refused-instance-several = `{ $path }` holds { $count } instances
    .remedy = keep one line of it in a file of its own
refused-instance-not-json = `{ $path }`, line { $line }, column { $column }: { $what }
    .remedy = write the instance as JSON
refused-instance-floor-plan = `{ $path }` is a floor plan (cutbench-floor-1), not a cutting question: its blocks need no edge-to-edge cuts
    .remedy = give a cutbench-1 or cutbench-flex-1 file
refused-instance-format = `{ $path }` has the unknown format `{ $format }`
    .remedy = give a cutbench-1 or cutbench-flex-1 file
refused-instance-cut-step = `{ $path }`: the sheet { $width } × { $height } is no whole number of cut steps of { $step }
    .remedy = change `cut_step`, or squarely trim the sheet to a multiple of it
refused-instance-field = `{ $path }`: { $what }
    .remedy = correct it in the file

## Answers of `solve`, for people

answer-proven-best = { $measure }: proven best
answer-best-found = { $measure }: best found; nothing better than { $bound } exists
answer-impossible = impossible: { $why }
answer-stopped = stopped before an answer was found
    .remedy = give it more time with `--seconds`, or more nodes with `--nodes`
answer-cost = { $sheets ->
    [one] { $sheets } sheet that costs { $cost }
   *[other] { $sheets } sheets that cost { $cost }
}
answer-value = pieces worth { $value }
answer-waste = { $waste } square units left over
why-no-mix = no number of cards lies within all bounds
why-too-much-area = the pieces need { $least } square units at least, the paper has { $sheet }
why-piece-too-large = piece number { $piece } (from 0) is larger than every sheet
why-no-tree = every way to cut was looked at or ruled out, and none gives the pieces
why-too-few-sheets = the sheets there are cannot give all pieces
why-minimum = the pieces that must appear do not fit on one sheet

## Progress of long work

progress-search = { $seconds } s: { $nodes } nodes, best { $best }, bound { $bound }

## Refusals: the workroom

refused-no-home = there is no home folder to keep projects in
    .remedy = say where with `--data FILE`
refused-port = port { $port } cannot be had: { $reason }
    .remedy = choose another with `--port`, or leave it out
refused-store-not-ours = `{ $path }` is no database
    .remedy = it was left as it is; move it away, or name another file with `--data`
refused-store-theirs = `{ $path }` belongs to another program
    .remedy = it was left as it is; name another file with `--data`
refused-store-newer = `{ $path }` was written by a later Octavo
    .remedy = it was left as it is; use that version, or name another file with `--data`
refused-store-in-use = `{ $path }` is open in another Octavo
    .remedy = use that one, close it, or name another file with `--data`
refused-store-read-only = `{ $path }` may only be read
    .remedy = allow writing to it and its folder, or name another file with `--data`
refused-store-full = there is no room on the disk for `{ $path }`
    .remedy = make room, or name a file on another disk with `--data`
refused-store = `{ $path }` could not be opened: { $reason }
    .remedy = name another file with `--data`

## Spoiled pieces

help-spoiled = The least that has to be cut again for spoiled pieces: from spares, from what is left over, or from as few new sheets as do
    .examples = Examples:
        {"  "}octavo spoiled project.toml A7
        {"  "}octavo spoiled project.toml 2:A7 "Milk base" "Milk base"
    .pieces = What was spoiled: the letter and number pencilled on it, with its layout before it where several have it (2:A7); or a cardstock and a layer ("Milk base")
    .json = Print the answer as JSON
refused-piece = there is no piece `{ $piece }`
    .remedy = write what is pencilled on it, such as `A7`, or a cardstock and a layer, such as `"Milk base"`
refused-piece-several = more than one layout has a piece `{ $piece }`
    .remedy = say which: { $ways }
