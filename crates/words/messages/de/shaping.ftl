# Was in der Werkstatt von Hand geformt wird: Bildfelder, Lagen eines Kartenrezepts.

## Bildfelder

panels-title = { $face }: { $count ->
    [one] 1 Bildfeld
   *[other] { $count } Bildfelder
}
panels-none = Ist „{ $face }“ in Bildfeldern gedruckt?
panels-what = Geben Sie an, in wie vielen Spalten und Reihen gedruckt ist, von Kante zu Kante. Ziehen Sie dann die Linien dorthin, wo sie sind.
panels-columns = Spalten
panels-rows = Reihen
panels-begin = Bildfelder einzeichnen
panels-look = Die Bildfelder im Bild suchen
panels-one-print-here = Im Bild wurde keine Trennlinie gefunden. Geben Sie Spalten und Reihen selbst an, oder lassen Sie es ein einziges Muster sein.
panels-hint = Ziehen Sie eine gedruckte Linie an ihrem Griff. Mit der Tastatur: Pfeiltasten, dann Eingabe; Esc setzt sie zurück.
panels-grip = Gedruckte Linie
panels-upright = senkrecht
panels-level = waagerecht
panels-which = Welche Linie
panels-line-upright = rechts von Spalte { $number }, { $at } von links
panels-line-level = unter Reihe { $number }, { $at } von oben
panels-edge = Bildfeld { $panel }, { $edge ->
    [left] linke Kante, { $at } von links
    [top] obere Kante, { $at } von oben
    [right] rechte Kante, { $at } von links
   *[bottom] untere Kante, { $at } von oben
}
panels-panel = Bildfeld { $number }, { $size }
panels-which-panel = Welches Bildfeld
panels-new-line = Eine neue Linie
panels-divide = Einzeichnen
panels-join = Die Linie wegnehmen
panels-add = Ein Bildfeld hinzufügen
panels-remove = Das Bildfeld wegnehmen
panels-widths = Breiten der Spalten
panels-heights = Höhen der Reihen
panels-free = Jedes Bildfeld für sich ändern
panels-in-rows = Zurück zu Spalten und Reihen
panels-clear = Es ist ein einziges Muster ohne Bildfelder
panels-stays = Diese Linie hat keinen Platz, sich zu bewegen.
panels-between = Diese Linie kann zwischen { $first } und { $last } liegen. Tippen Sie eine Stelle dazwischen ein.
panels-no-divide = Dort gibt es kein Bildfeld, das auf beiden Seiten der Linie { $least } Platz lässt. Wählen Sie eine andere Stelle.
panels-last = Ein Bildfeld muss bleiben. Soll es keins geben, sagen Sie, dass es ein einziges Muster ist.
edit-panels = Die Bildfelder von „{ $face }“ wurden geändert
edit-panels-gone = „{ $face }“ ist wieder ein einziges Muster
field-front-name = Name der Vorderseite
field-back-name = Name der Rückseite
field-print-front = Vorderseite: wie groß ihre Motive sind
field-print-back = Rückseite: wie groß ihre Motive sind
print-untold = nicht angegeben
print-large = groß, über 2 Zoll (50 mm)
print-medium = mittel
print-small = klein, unter 1/2 Zoll (12 mm)
print-solid = ein Farbton

## Kartenrezepte und Lagen

recipe-new = Ein neues Kartenrezept
recipe-new-lead = Wählen Sie ein Format. Die Mattung ist um einen Rand kleiner als die Karte, der Aufleger um einen Rand kleiner als die Mattung.
recipe-format = Format
recipe-greeting = mit einem Spruchstreifen
recipe-ribbon = mit einem Band
recipe-begin = Das Kartenrezept anfangen
recipe-copy = Dieses Kartenrezept kopieren
recipe-copy-of = Dieses Kartenrezept kopieren: { $name }
recipe-delete = Dieses Kartenrezept löschen
recipe-delete-of = Dieses Kartenrezept löschen: { $name }
recipe-order = Lagen, die oberste zuerst
recipe-refused = Dieses Kartenrezept oder diese Lage gibt es nicht, oder es gibt keine weiteren. Sehen Sie die Seite an, wie sie jetzt ist, und wählen Sie noch einmal.
layer-up = Höher
layer-up-of = Höher: { $layer }
layer-down = Tiefer
layer-down-of = Tiefer: { $layer }
layer-gone = Wegnehmen
layer-gone-of = Wegnehmen: { $layer }
new-ribbon = Band
new-strip = Spruchstreifen
edit-recipe-new = Das Kartenrezept „{ $name }“ wurde angefangen
edit-recipe-copy = Das Kartenrezept „{ $name }“ wurde kopiert
edit-recipe-gone = Das Kartenrezept „{ $name }“ wurde gelöscht
edit-layer-moved = { $name }: Die Lage „{ $layer }“ hat mit ihrer Nachbarin getauscht
edit-layer-gone = { $name }: Die Lage „{ $layer }“ wurde weggenommen
recipe-unused = Aus diesem Kartenrezept wird keine Karte: Die anderen brauchen den ganzen Bogen. Ändern Sie seine Größen, verlangen Sie eine andere Zahl von Karten aus einem Bogen, oder löschen Sie ein Kartenrezept.

## Eine Lage in der Hand

hold-title = Eine Lage von Hand formen
hold-which = Wählen Sie eine Lage, um sie auf der Karte zu verschieben oder größer oder kleiner zu machen.
hold-hint = Ziehen Sie die Lage in der Hand, um sie zu verschieben, oder einen Knopf an ihrer Kante, um sie größer oder kleiner zu machen. Mit Tabulatortaste und Pfeiltasten rückt sie um einen Teilstrich; Enter behält, Esc legt zurück.
hold-alt = Die Vorderseite der Karte, mit Griffen an „{ $layer }“
hold-what = Was von „{ $layer }“ verschoben wird
hold-left = linke Kante
hold-top = obere Kante
hold-right = rechte Kante
hold-bottom = untere Kante
hold-whole = die ganze Lage
hold-edges = Orte werden von links und von oben auf der Vorderseite der Karte gezählt; die ganze Lage wird mit zwei Maßen angegeben: „6, 90“. Was in der Mitte liegt, bleibt in der Mitte.
hold-range = Orte werden von links und von oben auf der Vorderseite der Karte gezählt; die ganze Lage wird mit zwei Maßen angegeben: „6, 90“. An einer Kante gezogen, bekommt diese Lage die eine Größe, bei der Sie loslassen. Soll der Bogen eine Größe wählen, die nichts übrig lässt, geben Sie ihr unten einen Bereich, etwa „70 to 82“.
hold-card = der Karte
hold-said = { $layer }: { $size }. Von { $on } bleiben zu sehen: links { $left }, rechts { $right }, darüber { $above }, darunter { $below }.
hold-sheet = Der Bogen: { $sentence }
hold-no-size = „{ $layer }“ hat keine eigene Größe und kann nur verschoben werden.
hold-too-small = „{ $layer }“ würde kleiner als { $least }.
hold-no-layout = So lässt sich kein Bogen in diese Karten schneiden.
hold-bad-place = „{ $typed }“ ist kein Ort: Geben Sie zwei Längen mit einem Komma dazwischen an, von links und von oben, etwa 6, 90.
hold-bad-length = „{ $typed }“ ist keine Länge: Geben Sie an, wo die Kante liegen soll, etwa 6 oder 90 mm.

## Eine Lage mehr

layer-new = Diese Lage hinzufügen
layer-new-kind = Eine neue Lage
layer-new-on = Auf, oder bei einer Mattung unter
layer-new-mat = eine Mattung aus Tonkarton
layer-new-panel = ein Aufleger aus Designpapier
layer-new-band = ein Querstreifen aus Designpapier
layer-new-plain = ein Stück Tonkarton
layer-new-strip = ein Spruchstreifen
layer-new-ribbon = Band
new-band = Querstreifen
new-plain = Teil
edit-layer-new = { $name }: { $layer } kam hinzu
hold-ranges = Sie darf { $width } breit und { $height } hoch sein.
hold-range-told = { $least } bis { $most }
layer-new-across = ein Streifen Tonkarton darüber
layer-new-no-room = Dort ist dafür kein Platz: Es wäre um einen Rand kleiner als das, worauf es liegt, und nichts bliebe übrig. Eine Mattung kommt hinter Papier oder Tonkarton, nicht hinter ein Band. Wählen Sie eine andere Lage, oder machen Sie diese erst größer.
new-across = Streifen
apart-alone = { $layer }, { $size }: { $borders }
apart-border-all = Rand ringsum { $border }
apart-borders = Rand links { $left }, rechts { $right }, oben { $top }, unten { $bottom }
