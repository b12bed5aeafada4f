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
