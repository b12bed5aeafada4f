### Fehler in einer Projektdatei: was gefunden wurde, und in `.remedy`, was hilft.
### `problem-<code>`: Tatsachen mit Namen; `near` zählt die Namen in `nearest`, `there` die in `known`.
### Zeile und Spalte schreibt davor, wer spricht: klein angefangen, ohne Punkt.

## Die Datei

problem-empty-file = die Datei ist leer
    .remedy = schreiben Sie ein Projekt hinein, oder kopieren Sie eins der Beispiele und ändern Sie es
problem-too-large-file = die Datei ist { $bytes } Bytes lang; eine Projektdatei hat höchstens { $most }
    .remedy = geben Sie die Projektdatei selbst an; Bilder liegen daneben und werden darin nur genannt
problem-not-utf8 = ab hier ist das kein Text in UTF-8
    .remedy = speichern Sie die Datei als reinen Text in UTF-8
problem-syntax = das ist nicht als TOML lesbar: { $message }
    .remedy = schreiben Sie ein `key = value` je Zeile, setzen Sie jeden Text, jeden Bruch und jede Größe in Anführungszeichen ("4 3/4", "3 x 5"), und suchen Sie weiter oben nach einer Klammer, die nicht geschlossen ist

## Schlüssel und Arten

problem-unknown-key = der Schlüssel `{ $found }` bedeutet hier nichts
    .remedy = { $near ->
        [0] die Schlüssel hier sind: { $known }
        [one] meinten Sie `{ $nearest }`?
       *[other] meinten Sie einen von diesen: { $nearest }?
    }
problem-missing-key = `{ $key }` fehlt
    .remedy = { $wanted ->
        [size-or-ranges] schreiben Sie `size`, zum Beispiel "3 x 4 1/2", oder `width` und `height`, zum Beispiel "2 3/4 to 3 1/4"
        [text] ergänzen Sie `{ $key } = "…"` mit einem Namen oder einem Text
        [length] ergänzen Sie `{ $key } = "…"` mit einer Länge, zum Beispiel "4 3/4" oder "121 mm"
        [size] ergänzen Sie `{ $key } = "…"` mit einer Größe, zum Beispiel "3 1/2 x 5" oder "105 x 148 mm"
        [range] ergänzen Sie `{ $key } = "…"` mit einer Spanne, zum Beispiel "2 3/4 to 3 1/4", oder einer Länge
        [color] ergänzen Sie `{ $key } = "#rrggbb"`, zum Beispiel "#f6f0e2"
        [amount] ergänzen Sie `{ $key } = "…"` mit einem Betrag, zum Beispiel "4.80"
        [lengths] ergänzen Sie `{ $key } = ["…", "…"]` mit Längen
        [tables] ergänzen Sie einen Abschnitt, der mit `[[{ $key }]]` anfängt
       *[other] ergänzen Sie `{ $key } = …`
    }
problem-pick-one = das geht nicht zusammen: { $found }
    .remedy = { $first ->
        [size] behalten Sie `size` allein oder `width` und `height`
       *[other] behalten Sie eins davon: { $choices }
    }
problem-wrong-type = hier steht { $found ->
        [text] ein Text
        [number] eine Zahl
        [yes-no] true oder false
        [date] ein Datum
        [list] eine Liste
       *[table] eine Tabelle
    }, und es sollte etwas anderes sein
    .remedy = { $wanted ->
        [text] schreiben Sie einen Text in Anführungszeichen
        [letter] schreiben Sie einen bis vier Buchstaben oder Ziffern in Anführungszeichen, zum Beispiel "A"
        [length] schreiben Sie eine Länge, zum Beispiel "4 3/4", "121 mm" oder 6
        [size] schreiben Sie eine Größe in Anführungszeichen, zum Beispiel "3 1/2 x 5", oder den Namen einer Größe
        [range] schreiben Sie eine Spanne in Anführungszeichen, zum Beispiel "2 3/4 to 3 1/4", oder eine Länge
        [count] schreiben Sie eine ganze Zahl ohne Anführungszeichen, zum Beispiel 4
        [yes-no] schreiben Sie true oder false ohne Anführungszeichen
        [color] schreiben Sie eine Farbe in Anführungszeichen, zum Beispiel "#f6f0e2"
        [date] schreiben Sie einen Tag, zum Beispiel 2026-05-31
        [price] schreiben Sie einen Betrag, zum Beispiel "4.80", oder eine Tabelle mit amount, currency und date
        [amount] schreiben Sie einen Betrag, zum Beispiel "4.80"
        [choice] schreiben Sie eins der bekannten Wörter in Anführungszeichen
        [lengths] schreiben Sie eine Liste von Längen, zum Beispiel ["3", "3", "4"]
        [names] schreiben Sie eine Liste von Namen, zum Beispiel ["Zwilling", "Breiter Rand"]
        [pairs] schreiben Sie Paare aus zwei Buchstaben, zum Beispiel [["A", "C"], ["B", "F"]]
        [by-letter] schreiben Sie den Namen eines Tonkartons oder eine Tabelle mit einem für jeden Buchstaben: { "{" } A = "Ziegel", B = "Hecke" { "}" }
        [table] schreiben Sie eine Tabelle: { "{" } … { "}" }, oder einen Abschnitt, der mit ihrem Namen in eckigen Klammern anfängt
        [size-or-table] schreiben Sie eine Größe in Anführungszeichen, zum Beispiel "4 3/8 x 5 3/4", oder eine Tabelle mit name und size
        [sizes-or-tables] schreiben Sie eine Größe in Anführungszeichen, eine Tabelle oder eine Liste davon
       *[tables] beginnen Sie jede mit ihrem Namen in doppelten eckigen Klammern, wie in [[recipe]]
    }
problem-bad-text = dieser Text ist leer, länger als 200 Zeichen oder enthält Zeichen, die sich nicht drucken lassen
    .remedy = schreiben Sie einen kurzen Text in einer Zeile
problem-empty-list = diese Liste ist leer
    .remedy = schreiben Sie mindestens einen Eintrag, oder lassen Sie den Schlüssel weg
problem-list-too-long = diese Liste hat { $entries } Einträge; höchstens { $most } werden gelesen
    .remedy = teilen Sie das Projekt auf zwei Dateien auf

## Längen, Größen und Zahlen

problem-bad-length = { $why ->
        [empty] hier fehlt eine Länge
        [missing-unit] `{ $found }` hat keine Einheit
        [unknown-unit] `{ $found }` ist keine Einheit, die hier gelesen wird
        [not-a-number] `{ $found }` ist keine Zahl
        [trailing] `{ $found }` ist hier zu viel
        [ambiguous-comma] `{ $found }` kann ein Tausender oder ein Dezimalbruch sein
        [fraction-too-large] der Bruch in `{ $found }` ist eins oder mehr
        [zero-denominator] `{ $found }` teilt durch null
        [too-fine] `{ $found }` ist feiner, als sich genau festhalten lässt
        [too-large] `{ $found }` ist länger als 100 m
       *[negative] `{ $found }` ist kleiner als null
    }
    .remedy = { $why ->
        [ambiguous-comma] schreiben Sie den Dezimalbruch mit einem Punkt
        [too-fine] schreiben Sie einen Bruch in Zoll oder Hundertstelmillimeter
       *[other] schreiben Sie eine Länge, zum Beispiel "4 3/4", "4.75 in" oder "121 mm"; ohne Einheit gilt die des Projekts
    }
problem-bad-size = { $why ->
        [not-two-lengths] `{ $found }` ist keine Größe, die hier bekannt ist
        [negative] `{ $found }` ist kleiner als null
        [too-large] `{ $found }` ist länger als 100 m
        [zero-denominator] `{ $found }` teilt durch null
        [unknown-unit] `{ $found }` ist keine Einheit, die hier gelesen wird
       *[other] `{ $found }` ist nicht als eine Seite einer Größe lesbar
    }
    .remedy = { $near ->
        [0] schreiben Sie Breite und Höhe: "3 1/2 x 5" oder "105 x 148 mm"
        [one] meinten Sie `{ $nearest }`? Oder schreiben Sie Breite und Höhe: "3 1/2 x 5"
       *[other] meinten Sie eine von diesen: { $nearest }? Oder schreiben Sie Breite und Höhe: "3 1/2 x 5"
    }
problem-out-of-bounds = { $found } kann hier nicht gemeint sein
    .remedy = zwischen { $least } und { $most } ginge es; prüfen Sie, ob die Einheit stimmt
problem-count-out-of-bounds = { $found } kann hier nicht gemeint sein
    .remedy = eine ganze Zahl von { $least } bis { $most } ginge
problem-least-above-most = die Spanne steht verkehrt herum: { $least } ist mehr als { $most }
    .remedy = schreiben Sie die kleinere Länge zuerst
problem-fewest-above-most = mindestens { $least } und höchstens { $most } Karten davon aus einem Bogen geht nicht beides
    .remedy = machen Sie `least` kleiner oder `most` größer
problem-prefer-outside = die Größe, die Sie am liebsten hätten, { $prefer-width } × { $prefer-height }, liegt außerhalb dessen, was gut aussieht
    .remedy = sie sollte zwischen { $least-width } × { $least-height } und { $most-width } × { $most-height } liegen; oder weiten Sie die Spannen
problem-ink-beyond-stamp = die Farbe, { $ink-width } × { $ink-height }, liegt jenseits der Kante ihres Stempels, { $stamp-width } × { $stamp-height }
    .remedy = messen Sie den Stempel an seinen äußeren Kanten und von seiner linken und oberen Kante bis zur Farbe, so wie er druckt
problem-border-without-edge = `words_border` reicht von einer Kante bis zu den Worten, aber `words_at` nennt keine Kante
    .remedy = nennen Sie eine Kante oder Ecke, etwa `words_at = "left"`, oder lassen Sie den Rand weg
problem-place-without-greeting = das sagt, wohin die Worte kommen, aber das Teil nennt keinen Spruch
    .remedy = nennen Sie den Spruch, etwa `greeting = "with thanks"`, oder lassen Sie die Stelle weg
problem-weight-without-mark = wo seine Farbe im Gleichgewicht ist, zeigt nur ein Umriss oder ein Bild davon
    .remedy = geben Sie dem Spruch `outline` oder `picture`, oder lassen Sie `middle` weg
problem-bad-mark = kein Lineal hier hat Teilstriche alle { $found }
    .remedy = nehmen Sie eins davon: { $known }

## Namen und Wörter

problem-bad-choice = `{ $found }` bedeutet hier nichts
    .remedy = { $near ->
        [0] eins davon ginge: { $choices }
       *[other] meinten Sie { $nearest }? Eins davon ginge: { $choices }
    }
problem-unknown-name = { $of ->
        [cardstock] es gibt keinen Tonkarton namens `{ $found }`
        [ribbon] es gibt kein Band namens `{ $found }`
        [greeting] es gibt keinen Spruch „{ $found }“
        [recipe] es gibt kein Kartenrezept namens `{ $found }`
        [layer] es gibt hier keine Lage namens `{ $found }`
        [supply] kein Material des Projekts heißt `{ $found }`
        [batch] es gibt keine Serie namens `{ $found }`
        [background] es gibt keinen Hintergrund namens `{ $found }`
        [stamp] es gibt hier keinen Stempel namens `{ $found }`
        [piece] kein Kartenrezept hat ein Teil aus Designpapier `{ $found }`
       *[letter] kein Design hat den Buchstaben `{ $found }`
    }
    .remedy = { $near ->
        [0] { $there ->
            [0] es gibt noch nichts: fügen Sie es hinzu
           *[other] es gibt: { $known }
        }
       *[other] meinten Sie { $nearest }? Es gibt: { $known }
    }
problem-name-needed = { $there ->
        [0] { $of ->
            [cardstock] das braucht einen Tonkarton, und es gibt keinen
            [ribbon] das braucht ein Band, und es gibt keins
            [greeting] das braucht einen Spruch, und es gibt keinen
           *[recipe] das braucht ein Kartenrezept, und es gibt keins
        }
       *[other] { $of ->
            [cardstock] es ist nicht gesagt, welcher Tonkarton
            [ribbon] es ist nicht gesagt, welches Band
            [greeting] es ist nicht gesagt, welcher Spruch
           *[recipe] es ist nicht gesagt, welches Kartenrezept
        }
    }
    .remedy = { $there ->
        [0] fügen Sie einen Abschnitt hinzu, der mit [[{ $of }]] anfängt
       *[other] nennen Sie eins davon: { $known }
    }
problem-duplicate-name = { $of ->
        [letter] der Buchstabe `{ $name }` ist vergeben: Zeile { $first-line }
        [greeting] den Spruch „{ $name }“ gibt es zweimal: zuerst in Zeile { $first-line }
       *[other] der Name `{ $name }` ist vergeben: Zeile { $first-line }
    }
    .remedy = wählen Sie hier etwas anderes
problem-bad-color = `{ $found }` ist nicht als Farbe lesbar
    .remedy = schreiben Sie # und sechs Zeichen, zum Beispiel "#a8483a"
problem-bad-date = `{ $found }` ist kein Tag
    .remedy = schreiben Sie Jahr, Monat und Tag, zum Beispiel 2026-05-31
problem-bad-price = `{ $found }` ist kein Betrag
    .remedy = schreiben Sie Ziffern und einen Dezimalpunkt, zum Beispiel "4.80"; die Währung hat einen eigenen Schlüssel
problem-bad-weight = `{ $found }` ist kein Gewicht
    .remedy = schreiben Sie Gramm oder Unzen, zum Beispiel "0.9 g" oder "3.5 oz"
problem-bad-time = `{ $found }` ist keine Uhrzeit
    .remedy = schreiben Sie Stunden und Minuten, zum Beispiel "14:00"
problem-bad-currency = `{ $found }` ist kein Währungscode
    .remedy = schreiben Sie die drei Großbuchstaben, zum Beispiel "EUR"
problem-bad-letter = `{ $found }` kann kein Design bezeichnen
    .remedy = schreiben Sie einen bis vier Buchstaben oder Ziffern, zum Beispiel "A" oder "B2"
problem-bad-picture = `{ $found }` ist kein Bild, das sich verwenden lässt
    .remedy = legen Sie ein PNG oder JPEG neben die Projektdatei, und schreiben Sie nur seinen Namen, zum Beispiel "leaves.png"

## Was nicht zusammenpasst

problem-use-above-copies = { $wanted } Bögen sollen gebraucht werden, und { $copies } { $copies ->
        [one] ist
       *[other] sind
    } da
    .remedy = erhöhen Sie `copies`, oder verringern Sie `use`
problem-nothing-left = die unbrauchbaren Kanten lassen von einem Bogen von { $sheet-width } × { $sheet-height } nichts übrig
    .remedy = schreiben Sie schmalere Kanten, oder messen Sie den Bogen noch einmal
problem-collage-too-large = die Bildfelder sind zusammen { $printed-width } × { $printed-height } groß; der Bogen ist { $sheet-width } × { $sheet-height }
    .remedy = lassen Sie weg, was über die Kante läuft, oder messen Sie noch einmal
problem-region-off-sheet = die markierte Stelle reicht { $reaches-width } weit von links und { $reaches-height } weit von oben; der Bogen ist { $sheet-width } × { $sheet-height }
    .remedy = verkleinern Sie die Stelle, oder rücken Sie sie nach innen
problem-panels-overlap = Bildfeld { $other } liegt zum Teil über Bildfeld { $one }
    .remedy = messen Sie beide noch einmal; Bildfelder dürfen sich berühren, aber nicht überlappen
problem-laid-on-later = es liegt auf `{ $layer }`, und das kommt nicht davor
    .remedy = die unterste Lage steht zuerst: setzen Sie `{ $layer }` in der Datei über diese hier
problem-follows-earlier = es folgt `{ $layer }`, und das kommt nicht danach
    .remedy = eine Mattung steht vor der Lage, die auf ihr liegt: setzen Sie `{ $layer }` in der Datei unter diese hier
problem-nothing-to-follow = diese Mattung hat nichts, dem sie folgen kann: sie nimmt ihre Größe von einer späteren Lage aus Papier oder Tonkarton
    .remedy = setzen Sie eine solche Lage dahinter, oder nennen Sie eine mit `follows`
problem-designs-without = diese Designs haben hier keinen Tonkarton: { $letters }
    .remedy = nennen Sie einen für jeden Buchstaben oder einen für alle
problem-partner-twice = das Design `{ $letter }` hat schon einen Partner
    .remedy = jedes Design kann nur in einem Paar stehen, mit einem anderen Design
problem-nothing-to-stamp = jeder Stempel hat hier den Anteil 0, also wird nichts gestempelt
    .remedy = geben Sie wenigstens einem Stempel den Anteil 1 oder mehr
problem-stamp-too-large = dieser Stempel ist { $size } lang, größer als der Bogen von { $sheet-width } × { $sheet-height }
    .remedy = machen Sie den Stempel kleiner, oder nehmen Sie einen größeren Bogen
problem-bad-outline = diese Ecken sind nicht zu lesen
    .remedy = schreiben Sie Zahlenpaare mit einem Leerzeichen dazwischen, etwa "0,0 4,0 2,3"
problem-outline-empty = zwischen { $corners } Ecken liegt keine Farbe
    .remedy = geben Sie mindestens drei Ecken an, die nicht auf einer Linie liegen
problem-outline-crosses = der Umriss kreuzt sich selbst: seine Seiten { $first } und { $second } treffen sich
    .remedy = schreiben Sie die Ecken in der Reihenfolge, in der ein Stift um das Motiv fährt
problem-outline-many = { $corners } Ecken sind zu viele; gelesen werden { $most }
    .remedy = lassen Sie Ecken weg, die dicht beieinander liegen, oder geben Sie ein Bild des Stempels an
