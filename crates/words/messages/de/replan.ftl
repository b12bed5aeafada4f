### Neu planen: dasselbe Projekt auf anderem Bogen, in anderer Einheit, für andere Leute.

## Hilfe

help-replan = Dasselbe Projekt neu machen: auf anderem Bogen, in der anderen Einheit oder für eine andere Zahl von Leuten oder Karten
    .file = Die Projektdatei (TOML); sie bleibt unberührt
    .demo = Die Demo neu planen, die zum Programm gehört
    .sheet = Der Bogen Designpapier: `6x6`, `8 x 8 in`, `A4`, `305 x 305 mm`
    .cardstock = Der Bogen für jeden Tonkarton: `letter`, `A4` oder zwei Längen
    .unit = Neu entwerfen in ganzen Millimetern (`mm`) oder in Zoll (`in`): mit Formaten, Rändern und Papieren dieser Einheit
    .people = Plätze: je ein Materialsatz, einer zum Vorführen und Ersatz
    .spare-kits = Materialsätze als Ersatz; ohne Angabe 1 oder 5 % der Plätze, wenn das mehr ist
    .cards = So viele Karten aus den Serien, die nicht auf Materialsätze verteilt werden
    .out = Die neue Projektdatei; ohne Angabe liegt sie neben der alten, und ihr Name sagt, was sich geändert hat
    .replace = Die neue Datei ersetzen, wenn es sie schon gibt
    .json = Die Antwort als JSON ausgeben
    .examples =
        Beispiele:
          octavo replan my-cards.toml --sheet 6x6
          octavo replan my-cards.toml --cardstock a4
          octavo replan my-cards.toml --unit mm --out my-cards-metric.toml
          octavo replan my-class.toml --people 20

        Von jedem Kartenrezept und jedem Design gibt es mindestens so viele Karten wie vorher. Zu jedem
        Kartenrezept steht da, was blieb, was sich geändert hat oder dass es nicht bleiben kann und was hilft.

## Was es sagt

replan-recipe = { $fate ->
    [kept] { $recipe }: bleibt
    [changed] { $recipe }: geändert
   *[lost] { $recipe }: kann nicht bleiben
}
replan-line = {"  "}{ $line }
replan-written = { $cards } aus { $sheets } Designpapier, vorher { $cards-before } aus { $sheets-before }; das neue Projekt ist `{ $path }`
replan-replaced = { $cards } aus { $sheets } Designpapier, vorher { $cards-before } aus { $sheets-before }; das neue Projekt hat `{ $path }` ersetzt

## Was anders ist, von was zu was

replan-finished = die Karte: { $from-width } × { $from-height } → { $width } × { $height }
replan-piece = { $layer }: { $from-width } × { $from-height } → { $width } × { $height }
replan-pieces = { $layer }: andere Größen als vorher
replan-inside = das Einlegeblatt: { $from-width } × { $from-height } → { $width } × { $height }
replan-border = { $layer }: Rand { $from } → { $to }
replan-ribbon = { $layer }: { $from } → { $to } lang
replan-per-sheet = Karten aus einem Bogen: { $from } → { $to }; Bögen: { $sheets-from } → { $sheets-to }
replan-cards-made = Karten: { $from } → { $to }
replan-base-per-sheet = Grundkarten aus einem Bogen „{ $cardstock }“: { $from } → { $to }

## Hinweise

finding-replan-price-left-out = Der Preis galt für einen anderen Bogen und ist weggelassen: { $names }.
    .remedy = Schreiben Sie den neuen dazu, und wie viele in einer Packung sind.
finding-replan-edges-left-out = Was an den Kanten von „{ $pack }“ unbrauchbar war, wurde am alten Bogen gemessen und ist weggelassen.
    .remedy = Messen Sie den neuen Bogen, und schreiben Sie `unusable`, wenn ein Etikettstreifen oder das rechtwinklige Beschneiden etwas davon wegnimmt.
finding-replan-collage-turned = Wo Design { $design } auf dem neuen Bogen Bildfelder hat, ist nicht bekannt, deshalb wird die andere Seite genommen: { $face }.
    .remedy = Um die Bildfelder zu verwenden, messen Sie sie auf dem neuen Bogen und schreiben Sie sie als seine `collage`.
finding-replan-collage-left-out = Wo „{ $face }“ von Design { $design } auf dem neuen Bogen Bildfelder hat, ist nicht bekannt, und es gibt keine andere Seite, die zu brauchen wäre.
    .remedy = Messen Sie die Bildfelder auf dem neuen Bogen, und schreiben Sie sie als seine `collage`, sonst gehen Schnitte hindurch.
finding-replan-collage-too-small = Die Bildfelder von Design { $design } sind zu klein für die neuen Teile, deshalb wird die andere Seite genommen: { $face }.
    .remedy = Um die Bildfelder zu verwenden, schreiben Sie ein Kartenrezept, dessen Teile in eins passen.
finding-replan-pins-left-out = Teile waren an Plätzen des alten Bogens festgesteckt; die Nadeln sind weggelassen.
    .remedy = Stecken Sie sie auf dem neuen Schnittplan neu fest.
finding-replan-spares-left-out = Ersatzteile waren aus jedem alten Bogen verlangt und sind weggelassen.
    .remedy = Verlangen Sie sie neu, aus jedem neuen Bogen.
finding-replan-choices-left-out = Was für einzelne Karten von Hand entschieden war, ist weggelassen: Sie haben jetzt andere Nummern.
    .remedy = Sehen Sie die neuen Karten an, und entscheiden Sie neu.
finding-replan-designs-lost = Aus den neuen Bögen von Design { $designs } kommen keine Karten von „{ $recipe }“, deshalb sind sie weggelassen.
    .remedy = Lassen Sie die Teile kleiner werden, lassen Sie sie sich drehen, wo das Muster es erlaubt, oder nehmen Sie mehr Bögen der anderen Designs.
finding-replan-apart = Die Kartenrezepte von „{ $batch }“ teilen sich einen Bogen nicht mehr gut: Sie haben jetzt eigene Bögen, in { $parts } Serien.
    .remedy = Fügen Sie sie von Hand wieder zusammen, wenn Sie sie auf einem Bogen mögen.
finding-replan-sheets = Geplant für: { $sheets } { $sheets ->
        [one] Bogen
       *[other] Bögen
    } von „{ $pack }“, { $width } × { $height }.
    .remedy = Zählen Sie, was Sie haben, und schreiben Sie es als `copies`.
finding-replan-more-packs = { $pack }: Jetzt werden { $packs } Packungen gebraucht, zusammen { $sheets } Bögen; der Preis ist der von { $packs }.
    .remedy = Besorgen Sie sie, oder verlangen Sie weniger Karten.
finding-replan-kits = { $batch }: { $kits ->
        [one] { $kits } Materialsatz
       *[other] { $kits } Materialsätze
    }, vorher { $before }: { $seats } { $seats ->
        [one] Platz
       *[other] Plätze
    }, einer zum Vorführen, { $spare } als Ersatz.
    .remedy = Jeder Materialsatz enthält die gleichen Karten; was ganze Bögen darüber hinaus ergeben, ist Ersatz.
finding-replan-sets = { $kits } Sets zu { $set }, { $cards } Karten: { $seats } { $seats ->
        [one] Platz
       *[other] Plätze
    }, eins zum Vorführen, { $spare } als Ersatz.
    .remedy = Ein Set sind `set_of` Karten des Ziels.
finding-replan-cards = { $cards } Karten sind geplant, vorher { $before }.
    .remedy = Was ganze Bögen darüber hinaus ergeben, bleibt ungeschnitten.
finding-replan-spare-cards = { $batch }: Designs, die auf einer Karte zusammenkommen, werden zusammen geschnitten, deshalb { $cards ->
        [one] kommt { $cards } Karte
       *[other] kommen { $cards } Karten
    } mehr heraus.
    .remedy = Sie sind als Ersatz geplant, unter `overs`.
finding-replan-no-kits = Keine Serie wird auf Materialsätze verteilt, deshalb ist nicht klar, welche die Leute machen.
    .remedy = Schreiben Sie `kits` in die Serie für den Tisch, oder verlangen Sie eine Zahl von Karten.
finding-replan-no-cards = Keine Serie macht Karten außerhalb von Materialsätzen.
    .remedy = Verlangen Sie eine Zahl von Leuten.
finding-replan-envelope = Der Umschlag ist jetzt { $envelope }, { $width } × { $height }.
    .remedy = Sein Preis ist noch der des alten: Schreiben Sie den neuen.
finding-replan-envelope-left-out = Für die neue Karte ist kein üblicher Umschlag bekannt, deshalb gibt es jetzt keinen.
    .remedy = Schreiben Sie die Größe von einem, den Sie bekommen können.
finding-replan-no-base = Die Grundkarte von „{ $recipe }“, { $width } × { $height }, passt nicht auf einen Bogen „{ $cardstock }“ von { $sheet-width } × { $sheet-height }.
    .remedy = { $near ->
        [none] Wählen Sie einen größeren Tonkarton, eine andere Faltung oder eine kleinere Karte.
       *[other] Die nächste Karte, von der { $from } { $from ->
            [one] darauf passt
           *[other] darauf passen
        }, ist { $card-width } × { $card-height }.
    }
finding-replan-fewer-cards = { $recipe }: Ein Bogen ergibt { $to }, vorher { $from }.
    .remedy = Wie die Karten jetzt sind, werden so viele Bögen gebraucht.
finding-replan-fewer-bases = Die Grundkarte von „{ $recipe }“, { $width } × { $height }, passt auf einen Bogen „{ $cardstock }“ von { $sheet-width } × { $sheet-height } { $to ->
        [one] nur einmal
       *[other] nur { $to }-mal
    }, vorher { $from }-mal.
    .remedy = { $near ->
        [none] Nehmen Sie eine kleinere Karte, oder kaufen Sie mehr Bögen.
       *[other] Die nächste Karte, von der { $from } darauf passen, ist { $card-width } × { $card-height }.
    }

## Absagen

refused-replan-sheet = `{ $text }` ist kein Bogen
    .remedy = schreiben Sie einen Namen, zum Beispiel `A4` oder `letter`, oder zwei Längen von 1 Zoll bis 78 Zoll, zum Beispiel `6 x 6 in`
refused-replan-exists = `{ $path }` gibt es schon
    .remedy = nennen Sie nach `--out` eine andere Datei, oder fügen Sie `--replace` hinzu
refused-replan-itself = `{ $path }` ist das Projekt selbst
    .remedy = nennen Sie nach `--out` eine andere Datei, damit es bleibt, wie es ist
refused-replan-nothing = kein Kartenrezept kann bleiben, also wurde nichts geschrieben
    .remedy = wählen Sie einen der Auswege, die oben stehen, oder einen anderen Bogen
refused-replan-unread = das neue Projekt ließ sich nicht wieder lesen, also wurde nichts geschrieben
    .remedy = das ist ein Fehler in Octavo, nicht in Ihrem Projekt: bitte melden Sie ihn zusammen mit der Projektdatei
