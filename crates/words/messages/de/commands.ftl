### Was die Befehlszeile sagt.
### Absagen: klein angefangen, ohne Punkt, der beanstandete Wert in Backticks, was zu tun ist in `.remedy`.

opened =
    Die Werkstatt ist offen unter { $address }
    Sie hört nur auf diesen Rechner. Schließen Sie sie hier mit Strg-C; alles bleibt aufbewahrt.

## Hilfe

help-about = Macht aus einer Packung beidseitig bedruckten Designpapiers eine Serie handgemachter Karten: Schnitte, Schritte, Stückzahlen und Seiten zum Drucken.
help-examples =
    Beispiele:
      octavo
      octavo make --demo --out demo-out
      octavo make my-cards.toml --out out --sheet a4
      octavo replan my-cards.toml --sheet 6x6
      octavo solve layout.json --json --seconds 5

    Fangen Sie mit der Demo an. Sie schreibt ihre eigene Projektdatei neben ihre Seiten:
    Kopieren Sie diese Datei, ändern Sie eine Größe, und lassen Sie alles neu machen.

    Rückgabewerte: 0 fertig; 1 fertig, aber etwas Ernstes ist aufgefallen oder die Frage ist
    nicht lösbar; 2 ging nicht, und nichts wurde geschrieben.
help-port = Der Port für die Seiten der Werkstatt; ohne Angabe der übliche
help-data = Die Datei, in der Ihre Projekte liegen; ohne Angabe die übliche in Ihrem persönlichen Ordner
help-no-open = Die Adresse der Werkstatt ausgeben, ohne den Browser zu öffnen
help-make = Ein Projekt planen und Seiten, Zeichnungen und Plan in einen Ordner schreiben
    .file = Die Projektdatei (TOML), von Hand geschrieben
    .demo = Die Demo machen, die zum Programm gehört
    .out = Der Ordner, in den geschrieben wird; eigene Dateien darin bleiben unberührt
    .sheet = Das Papier, auf dem Sie drucken; ohne Angabe richtet es sich nach der Einheit des Projekts (Zoll: letter, Millimeter: a4)
    .print = Wie groß die Schrift ist: `large` ist 18 Punkt, eins unter dem anderen
    .hand = Die Hand, die die Klinge führt: Bei `left` liegt der Anschlag rechts; die Teile bleiben gleich
    .units = Die Einheit der Maße; ohne Angabe die des Projekts. Vor Maßen, die nicht genau sind, steht „etwa“
    .every-edition = Die Anleitung in jeder Schriftgröße, für beide Hände und in beiden Einheiten schreiben
    .square-measured = Was das Prüfquadrat von 1 Zoll gemessen hat, als Sie die Vorlagen gedruckt haben, zum Beispiel 0.98; danach werden sie angepasst
    .json = Zusätzlich den ganzen Plan als JSON ausgeben
    .examples =
        Beispiele:
          octavo make --demo --out demo-out
          octavo make my-cards.toml --out out --sheet letter
          octavo make my-cards.toml --out out --print large --hand left --units mm
          octavo make my-cards.toml --out out --every-edition
          octavo make my-cards.toml --out out --json > plan.json

        Alle Fehler der Projektdatei werden auf einmal genannt, mit Zeile und Abhilfe.
        Der Ordner wird ganz geschrieben oder gar nicht. Beim nächsten Mal werden nur Dateien ersetzt, die Octavo gemacht hat.
help-solve = Eine Zuschnittfrage aus einer Datei beantworten, im Format des Zuschnitt-Prüfstands
    .file = Die Aufgabe: cutbench-1 oder cutbench-flex-1, als JSON
    .json = Die Antwort als JSON ausgeben, mit den Schnittbäumen
    .nodes = Nach so vielen Suchknoten aufhören: auf jedem Rechner dieselbe Antwort
    .seconds = Nach so vielen Sekunden aufhören [Vorgabe: { $default }]
    .examples =
        Beispiele:
          octavo solve layout.json
          octavo solve layout.json --json --nodes 1000000
          octavo solve bases.json --json --seconds 5

        Noten: nachweislich das Beste, das Beste, was gefunden wurde (mit Schranke), unmöglich, angehalten (bevor eine Antwort gefunden war).
help-schema = Ein JSON-Schema ausgeben: einer Projektdatei, von plan.json einer Frage an `solve` oder ihrer Antwort
    .of = Wovon das Schema ausgegeben wird; ohne Angabe: `project`
    .examples =
        Beispiele:
          octavo schema > project.schema.json
          octavo schema plan
          octavo schema question
          octavo schema solve
help-why = Sagen, warum ein Bogen keinen Schnittplan ergibt oder keinen ohne Abfall, und welche kleinsten Änderungen helfen
    .demo = Nach der Demo fragen, die zum Programm gehört
    .json = Die Antwort als JSON ausgeben, mit dem Schnittplan jeder Änderung
    .examples =
        Beispiele:
          octavo why my-cards.toml
          octavo why my-cards.toml --json

        Klein heißt, in dieser Reihenfolge: ein Teil, das sich auf dem Bogen drehen darf; eine Spanne,
        die einen oder mehrere Teilstriche weiter reicht, schmaler, niedriger oder breiter; eine Karte
        weniger aus jedem Bogen; ein anderer Bogen. Jede Änderung ist die kleinste ihrer Art und
        hilft so, wie sie dasteht.

## Absagen: die Befehlszeile selbst

refused-verb = einen Befehl `{ $verb }` gibt es nicht
    .remedy = die Befehle sind `make`, `why`, `replan`, `solve`, `schema` und `help`
refused-missing-argument = etwas fehlt: `{ $argument }`
    .remedy = ergänzen Sie es, oder sehen Sie die Beispiele in `octavo help` an
refused-conflict = `{ $argument }` passt nicht zum Rest
    .remedy = geben Sie entweder eine Projektdatei an oder `--demo`
refused-no-value = `{ $argument }` steht ohne Wert da
    .remedy = schreiben Sie einen dahinter, oder sehen Sie in `octavo help` nach
refused-value = `{ $argument }` kann nicht `{ $value }` sein
    .remedy = was möglich ist, steht in `octavo help`
refused-value-own = `{ $argument }` kann nicht `{ $value }` sein
    .remedy = { $why }
refused-argument = `{ $argument }` ist nicht verständlich
    .remedy = Beispiele stehen in `octavo help`
refused-square = eine Länge zwischen 0.75 und 1.25 Zoll
refused-seconds = eine Zahl von Sekunden über 0
refused-output = die Antwort konnte nicht ausgegeben werden: { $reason }

## Absagen: Dateien

refused-file-missing = `{ $path }` ist nicht zu finden
    .remedy = prüfen Sie Namen und Ordner, oder rufen Sie `octavo make --demo --out demo-out` auf, um ein Projekt zu sehen, das funktioniert
refused-file-unreadable = `{ $path }` ist nicht lesbar ({ $reason })
    .remedy = prüfen Sie, ob Sie die Datei öffnen dürfen
refused-file-is-folder = `{ $path }` ist ein Ordner
    .remedy = nennen Sie die Datei darin
refused-file-too-large = `{ $path }` ist größer als { $limit } MB
    .remedy = prüfen Sie, ob es die richtige Datei ist
refused-file-not-text = `{ $path }`, Zeile { $line }: das ist kein Text
    .remedy = speichern Sie die Datei als Text in UTF-8, und prüfen Sie, ob es die richtige ist

## Absagen: Projekte, Bilder, der Ordner, in den geschrieben wird

refused-project = `{ $path }`, Zeile { $line }, Spalte { $column }: { $said }
refused-picture-elsewhere = das Bild `{ $picture }` liegt nicht im Ordner des Projekts
    .remedy = legen Sie es neben die Projektdatei
refused-picture-missing = das Bild `{ $picture }` ist nicht zu finden
    .remedy = legen Sie es neben die Projektdatei, oder berichtigen Sie dort seinen Namen
refused-picture-kind = `{ $picture }` ist weder PNG noch JPEG
    .remedy = speichern Sie es in einem der beiden Formate
refused-picture-too-large = das Bild `{ $picture }` ist zu groß
    .remedy = verkleinern Sie es: 2400 Bildpunkte auf der längeren Seite genügen
refused-picture-cut-off = das Bild `{ $picture }` ist abgeschnitten: Die Datei endet vor dem Bild
    .remedy = kopieren Sie es noch einmal
refused-picture-damaged = das Bild `{ $picture }` ist nicht lesbar ({ $reason })
    .remedy = öffnen Sie es in einem Bildprogramm, und speichern Sie es neu
warned-picture-shape = das Bild `{ $picture }` hat nicht die Form seines Bogens und wird verzerrt
    .remedy = beschneiden Sie es auf die Kanten des Bogens
refused-out-not-a-folder = `{ $path }` ist eine Datei
    .remedy = nennen Sie nach `--out` einen Ordner
refused-out-theirs = `{ $path }` stammt nicht von Octavo und ist im Weg
    .remedy = verschieben Sie es, oder nennen Sie nach `--out` einen anderen Ordner
refused-out-disk = `{ $path }` kann nicht geschrieben werden ({ $reason })
    .remedy = prüfen Sie, ob Sie dort schreiben dürfen und ob auf dem Datenträger Platz ist

refused-drawing = eine Seite konnte nicht gezeichnet werden: { $reason }
    .remedy = das ist ein Fehler in Octavo, nicht in Ihrem Projekt: bitte melden Sie ihn zusammen mit der Projektdatei

## Was `make` sagt

made = { $cards } aus { $sheets } Designpapier; alles liegt in `{ $path }`
made-list = Dateien, die Octavo gemacht hat. Sie werden ersetzt, wenn das Projekt neu gemacht wird; andere Dateien bleiben hier unberührt.
made-about = { $about }: { $said }
made-note = Hinweis: { $said } { $remedy }
made-warning = Achtung: { $said } { $remedy }
made-serious = ernst: { $said } { $remedy }
made-way = {"  "}das hilft: { $way }

## Was `why` sagt

why-whole = { $pack }: Der Schnittplan nutzt den ganzen Bogen; es muss nichts geändert werden.
why-waste = { $pack }: Der beste Schnittplan lässt { $percent } % des Bogens übrig.
why-none = { $pack }: Es wurde kein Schnittplan gefunden.
why-ways = Was hilft, jeweils die kleinste Änderung ihrer Art:
why-ways-whole = Damit nichts übrig bleibt, jeweils die kleinste Änderung ihrer Art:
why-way = {"  "}{ $number }. { $way }
why-no-turn = Teile zu drehen hilft nicht, oder ihr Muster erlaubt es nicht.
why-no-sizes = Kein Teil hilft, das ein wenig schmaler, niedriger oder breiter ist.
why-no-fewer-cards = Auch weniger Karten helfen nicht.
why-no-sheet = Kein anderer Bogen aus den Tabellen hilft.
why-not-known = Vielleicht hilft noch mehr, das in der gegebenen Zeit nicht gefunden wurde.

## Absagen: Aufgaben

refused-instance-empty = `{ $path }` ist leer
    .remedy = schreiben Sie eine Aufgabe hinein
refused-instance-several = `{ $path }` enthält { $count } Aufgaben
    .remedy = behalten Sie eine Zeile davon in einer eigenen Datei
refused-instance-not-json = `{ $path }`, Zeile { $line }, Spalte { $column }: { $what }
    .remedy = schreiben Sie die Aufgabe als JSON
refused-instance-floor-plan = `{ $path }` ist ein Grundriss (cutbench-floor-1), keine Zuschnittfrage: seine Blöcke brauchen keine Schnitte von Kante zu Kante
    .remedy = geben Sie eine Datei cutbench-1 oder cutbench-flex-1 an
refused-instance-format = `{ $path }` hat das unbekannte Format `{ $format }`
    .remedy = geben Sie eine Datei cutbench-1 oder cutbench-flex-1 an
refused-instance-cut-step = `{ $path }`: der Bogen { $width } × { $height } ist kein ganzes Vielfaches des Schnittschritts { $step }
    .remedy = ändern Sie `cut_step`, oder beschneiden Sie den Bogen rechtwinklig auf ein Vielfaches davon
refused-instance-field = `{ $path }`: { $what }
    .remedy = berichtigen Sie es in der Datei

## Antworten von `solve`, für Menschen

answer-proven-best = { $measure }: nachweislich das Beste
answer-best-found = { $measure }: das Beste, was gefunden wurde; etwas Besseres als { $bound } gibt es nicht
answer-impossible = unmöglich: { $why }
answer-stopped = angehalten, bevor eine Antwort gefunden war
    .remedy = geben Sie mit `--seconds` mehr Zeit oder mit `--nodes` mehr Knoten
answer-cost = { $sheets ->
    [one] { $sheets } Bogen zum Preis von { $cost }
   *[other] { $sheets } Bögen zum Preis von { $cost }
}
answer-value = Teile im Wert von { $value }
answer-waste = { $waste } Flächeneinheiten übrig
why-no-mix = keine Anzahl von Karten liegt in allen Grenzen
why-too-much-area = die Teile brauchen mindestens { $least } Flächeneinheiten, das Papier hat { $sheet }
why-piece-too-large = Teil Nummer { $piece } (ab 0 gezählt) ist größer als jeder Bogen
why-no-tree = jede Art zu schneiden wurde geprüft oder ausgeschlossen, und keine ergibt die Teile
why-too-few-sheets = die vorhandenen Bögen können nicht alle Teile ergeben
why-minimum = die Teile, die vorkommen müssen, passen nicht auf einen Bogen

## Wie lange Arbeit vorangeht

progress-search = { $seconds } s: { $nodes } Knoten, bestes Ergebnis { $best }, Schranke { $bound }

## Absagen: die Werkstatt

refused-no-home = es gibt keinen persönlichen Ordner, in dem Projekte liegen könnten
    .remedy = sagen Sie mit `--data FILE`, wo
refused-port = Port { $port } ist nicht zu bekommen: { $reason }
    .remedy = wählen Sie mit `--port` einen anderen, oder lassen Sie ihn weg
refused-store-not-ours = `{ $path }` ist keine Datenbank
    .remedy = die Datei blieb, wie sie war; verschieben Sie sie, oder nennen Sie mit `--data` eine andere
refused-store-theirs = `{ $path }` gehört einem anderen Programm
    .remedy = die Datei blieb, wie sie war; nennen Sie mit `--data` eine andere
refused-store-newer = `{ $path }` wurde von einem neueren Octavo geschrieben
    .remedy = die Datei blieb, wie sie war; nehmen Sie jenes Octavo, oder nennen Sie mit `--data` eine andere Datei
refused-store-in-use = `{ $path }` ist in einem anderen Octavo geöffnet
    .remedy = arbeiten Sie dort weiter, schließen Sie es, oder nennen Sie mit `--data` eine andere Datei
refused-store-read-only = `{ $path }` darf nur gelesen werden
    .remedy = erlauben Sie das Schreiben in die Datei und ihren Ordner, oder nennen Sie mit `--data` eine andere Datei
refused-store-full = auf dem Datenträger ist kein Platz für `{ $path }`
    .remedy = schaffen Sie Platz, oder nennen Sie mit `--data` eine Datei auf einem anderen Datenträger
refused-store = `{ $path }` konnte nicht geöffnet werden: { $reason }
    .remedy = nennen Sie mit `--data` eine andere Datei

## Misslungene Teile

help-spoiled = Das Wenigste, was für misslungene Teile neu zu schneiden ist: aus Ersatzteilen, aus Resten oder aus so wenigen neuen Bögen wie möglich
    .examples = Beispiele:
        {"  "}octavo spoiled project.toml A7
        {"  "}octavo spoiled project.toml 2:A7 "Milk Grundkarte" "Milk Grundkarte"
    .pieces = Was misslungen ist: Buchstabe und Nummer, die mit Bleistift darauf stehen, mit dem Schnittplan davor, wo mehrere sie haben (2:A7); oder ein Tonkarton und eine Lage ("Milk Grundkarte")
    .json = Die Antwort als JSON ausgeben
refused-piece = ein Teil `{ $piece }` gibt es nicht
    .remedy = schreiben Sie, was mit Bleistift darauf steht, zum Beispiel `A7`, oder einen Tonkarton und eine Lage, zum Beispiel `"Milk Grundkarte"`
refused-piece-several = mehr als ein Schnittplan hat ein Teil `{ $piece }`
    .remedy = sagen Sie, welches: { $ways }
help-language = Worin gesprochen und geschrieben wird: Englisch oder Deutsch
