### Post, Material, Preis und Kurs: was Seiten und Befehlszeile davon sagen.

## Mengen

amount-sheets = { $count ->
    [one] 1 Bogen
   *[other] { $count } Bögen
}
amount-pieces = { $count ->
    [one] 1 Stück
   *[other] { $count } Stück
}
amount-uses = { $count ->
    [one] 1 Anwendung
   *[other] { $count } Anwendungen
}
amount-yards = { $count } yd
amount-metres = { $count } m
amount-packs = { $count ->
    [0] nichts
    [one] 1 Packung zu { $holds }
   *[other] { $count } Packungen zu { $holds }
}
amount-no-pack = keine Packung genannt
sum-at-least = mindestens { $amount }
sum-unknown = nicht bekannt
sum-mixed = in mehreren Währungen ({ $currencies }), nicht zusammengezählt: Schreiben Sie jeden Preis in einer davon
sum-missing = Kein Preis genannt für: { $names }.
grams-ounces = { $grams } g ({ $ounces } oz)
millimetres = { $mm } mm

## Post

post-title = Post
post-lead = Was eine fertige Karte wiegt und misst, welcher Umschlag sie fasst und zu welcher Klasse ihr Brief gehört. Preise sind Ihre eigenen.
post-kind = { $recipe }, { $cards ->
    [one] 1 Karte
   *[other] { $cards } Karten
}
post-of-batch = { $batch }: { $kind }
post-weighs = Im geschlossenen Umschlag wiegt sie etwa { $weight }.
post-weighs-at-least = Im geschlossenen Umschlag wiegt sie mindestens { $weight }: Von einem Papier ist das Flächengewicht nicht genannt.
post-thick = An der dicksten Stelle ist sie etwa { $mm } dick, { $all }, wenn alle Lagen an einer Stelle zusammenkämen.
post-size = Der Umschlag misst { $width } × { $height }.
post-fits = { $envelope } passt: Es bleiben { $width } und { $height }, { $wanted } je Richtung würden genügen.
post-fits-not = { $envelope } ist zu klein: Es bleiben { $width } und { $height }, und eine solche Karte braucht { $wanted } je Richtung.
post-no-envelope = Kein Umschlag genannt. Eine solche Karte braucht { $wanted } mehr als ihre eigene Größe, je Richtung.
post-others = Umschläge, die passen: { $names }.
post-named = { $name } ({ $width } × { $height })
post-make = Zum Selbermachen: ein Bogen von { $width } × { $height }, gefalzt für eine Vorderseite von { $face-width } × { $face-height }, mit Seitenklappen von { $side }, einer unteren Klappe von { $lower } und einer oberen von { $upper }. Eine Vorlage in wahrer Größe liegt bereit.
post-template = Der Umschlag zum Selbermachen, in wahrer Größe (PDF)
post-layers = Lage für Lage
post-layer = Lage
post-layer-thick = Dicke
post-layer-weight = Gewicht
post-layer-base = Grundkarte, gefaltet
post-layer-inside = Einlegeblatt
post-layer-foam = Abstandspads unter „{ $name }“
post-layer-extras = Klebeband, Band, Abstandspads, Kleber
post-layer-envelope = Umschlag, beide Seiten
post-measured = gemessen
post-guessed = allgemein üblich
post-with-extras = bei den Zutaten
post-unknown = nicht genannt
post-postage = Ihr Porto
post-source = Gelesen in
post-none = kein Brief: Fragen Sie nach einem Paket
post-not = { $class }: { $reasons }
post-why-too-small = kleiner als { $least }
post-why-too-long = länger als { $most }
post-why-too-high = höher als { $most }
post-why-too-thick = dicker als { $most }
post-why-too-thin = dünner als { $least }
post-why-too-heavy = schwerer als { $most }
post-why-too-square = zu nah am Quadrat: Länge ÷ Höhe liegt unter { $ratio }
post-why-too-slender = zu schmal: Länge ÷ Höhe liegt über { $ratio }
post-why-uneven = uneben, mit einer Schleife oder Ähnlichem
post-why-stiff = lässt sich nicht biegen
post-why-upright = die Anschrift läuft entlang der kurzen Kante
post-why-too-large-together = Länge, Höhe und Dicke zusammen sind über { $most }
post-why-not-over = nicht größer als ein Brief
post-doubt = Fragen Sie am Schalter: Vielleicht gilt sie als { $reasons } (aus dem Gedächtnis).
post-rate = { $price }
post-rate-dated = { $price } am { $date }
post-no-rate = keins eingetragen
post-sure = { $source }, { $year }; { $sure }
post-confirm = Fragen Sie Ihre Post, bevor eine Serie hinausgeht: Grenzen sind von Land zu Land verschieden und ändern sich. Diese wurden in den Quellen und Jahren gelesen, die daneben stehen. Kein Preis hier ist von uns.
post-others-not = Nur diese Betreiber werden hier beurteilt: Ihre Grenzen wurden in Quellen gelesen, die genannt sind. Für einen anderen halten Sie seine Grenzen für Größe, Dicke und Gewicht neben die Zahlen oben; eigene Grenzen nimmt Octavo noch nicht.
post-flat-test = Flach genug ist nicht genug: Schleifen, Perlen und Abstandspads machen einen Brief uneben oder steif, und mehrere Postunternehmen verlangen dann mehr oder behandeln ihn als Paket, auch unter der Grenze der Dicke. In Australien ist ein starrer Gegenstand ein Paket; in den USA können unebene, starre und quadratische Briefe nicht durch die Maschinen.
post-weigh-one = Messen und wiegen Sie eine fertige Karte in ihrem geschlossenen Umschlag. Eine Dicke, die aus Lagen gerechnet ist, ist eine Schätzung; Knoten und feuchter Kleber tragen auf.
post-shape = Quadratische, hochkant beschriftete, dunkle oder sehr kleine Umschläge kosten oft mehr oder werden abgelehnt.
post-abroad = Samen, gepresste Pflanzen, Flüssigkeiten, Duft und Batterien können im Ausland verboten sein; Waren brauchen vielleicht eine Zollerklärung. Fragen Sie, bevor Sie eine Batterie verschicken.
post-lighter = Leichter und flacher: die Schleife ohne Knoten binden, für die Post flaches Band legen, dünnere Abstandspads nehmen, eine steife Karte neben die Schleife legen und nicht darüber.
rates-title = Ihr eigenes Porto
rates-lead = Schreiben Sie auf, was Ihre Post oder ihre Preisliste sagt, mit dem Tag, an dem Sie es gesehen haben. Karten nehmen die erste Zeile ihres Betreibers und ihrer Klasse, die für ihr Gewicht reicht.
rates-none = Noch ist nichts aufgeschrieben.
rates-class = Betreiber und Klasse
rates-up-to = Bis
rates-all = die ganze Klasse
rates-price = Preis
rates-date = Gesehen am
rates-add = Aufschreiben
rates-take = Wegnehmen
rates-added = Porto von { $class } aufgeschrieben: { $price }
rates-taken = eine Zeile Porto weggenommen
post-own = Ihr Umschlag und Ihre Waage
post-extras = Klebeband, Band, Abstandspads und Kleber einer Karte
post-envelope-gsm = Papier des Umschlags, g/m²
post-foam = Dicke der Abstandspads
post-bow = Dicke einer Schleife
post-addressed = Die Anschrift läuft entlang
post-addressed-long = der langen Kante
post-addressed-short = der kurzen Kante
post-stiff = Etwas darin lässt sich nicht biegen
post-no = nein
post-yes = ja

## Material

supplies-title = Material
supplies-lead = Was die Serie braucht, was im Regal liegt, was in ganzen Packungen am günstigsten zu kaufen ist.
supplies-need = Gebraucht
supplies-there = Im Regal
supplies-buy = Zu kaufen
supplies-cost = Kosten
supplies-left = Übrig
supplies-name = Was
supplies-line = { $name }: { $need } ({ $rule }); im Regal { $there }; zu kaufen { $buy }; { $cost }; übrig { $left }
need-rule-paper = Bögen, geschnitten für { $cards } Karten
need-rule-cardstock = Bögen für { $pieces }
need-of-bases = { $count ->
    [one] 1 Grundkarte
   *[other] { $count } Grundkarten
}
need-of-mats = { $count ->
    [one] 1 Mattung oder anderes Teil
   *[other] { $count } Mattungen und andere Teile
}
need-of-strips = { $count ->
    [one] 1 Spruchstreifen
   *[other] { $count } Spruchstreifen
}
need-of-inside = { $count ->
    [one] 1 Einlegeblatt
   *[other] { $count } Einlegeblätter
}
need-rule-ribbon = { $wraps } umwickelt, { $bows } mit Schleife
need-rule-tape = zwei Bahnen auf einer Lage, die mindestens { $from } breit ist, eine auf einer schmaleren
need-rule-foam = Pads unter jedem erhabenen Streifen
need-rule-envelopes = einer für jede Karte
need-rule-ink-pad = ein Abdruck für jeden Spruch
need-rule-stamps = ein Abdruck für jeden Spruch
supplies-swap = { $saved } gespart: Geben Sie { $moved ->
    [one] einem Teil ({ $piece })
   *[other] { $moved } Teilen ({ $piece })
} eine andere Farbe, und kaufen Sie { $after } statt { $before } Packungen.
supplies-swap-one = { $name }: aus { $now } werden { $then }
supplies-swap-do = Farben ändern
supplies-swap-how = Die letzten Karten einer Farbe ändern sich; Karten in Materialsätzen nur, wo die anderen nicht reichen. Auf der Seite Serie sind sie zu sehen und einzeln zurückzunehmen; oder Sie machen alles rückgängig.
supplies-dark-base = „{ $recipe }“: Ein schwarzer Stift ist auf „{ $base }“ nur mit { $contrast } : 1 zu lesen. Kleben Sie ein helleres Blatt zum Schreiben ein: Geben Sie dem Kartenrezept auf der Seite Karten ein Einlegeblatt.
supplies-figures = Drei Zahlen, nie vermischt
supplies-used = Verbraucht
supplies-used-says = was in den Karten steckt
supplies-bought = Gekauft
supplies-bought-says = ganze Packungen für diese Serie, nach dem, was im Regal liegt
supplies-next = Nächste Serie
supplies-next-says = ganze Packungen für dasselbe noch einmal, mit dem, was übrig ist
supplies-figure = Zahl
supplies-total = Zusammen
supplies-each = Je Karte
supplies-shared-rule = Der Anteil einer Karte ist, was ihre Teile verbrauchen. Die Summe wird zuerst auf Serien und Kartenrezepte verteilt, dann in jedem auf seine Karten. Anteile werden auf die Münze abgeschnitten; die Münzen, die übrig bleiben, gehen einzeln an die, die am meisten verloren haben, sodass die Karten zusammen die Summe ergeben.
supplies-by-kind = Die Zahlen nach Serie und Kartenrezept
supplies-cards = Karten
supplies-all-cards = { $cards ->
    [one] 1 Karte
   *[other] alle { $cards } Karten
}
supplies-of-each = { $each } je Karte
supplies-each-card = Der Anteil jeder Karte, auf die Münze
supplies-share-line = { $cards }: verbraucht { $used }, gekauft { $bought }, nächste Serie { $next }
supplies-figure-line = { $name }: { $total }, { $each } je Karte ({ $says })
supplies-price = Zeit und Preis
supplies-batch = Serie
supplies-material = Material je Karte
supplies-minutes = Minuten je Karte
supplies-asked = Verlangter Preis
supplies-leaves = Lässt
supplies-wage = Für eine Stunde
supplies-wished = Preis nach Ihrem Wunsch
supplies-price-line = { $batch }: { $material } und { $minutes } Minuten je Karte; { $asked } lässt { $leaves }, { $wage } die Stunde; nach Ihrem Wunsch { $wished }
supplies-no-price = kein Preis verlangt
supplies-nothing-stays = Gebühren, Steuer und Gewinn lassen von keinem Preis etwas übrig
supplies-work = Wohin die Minuten gehen
work-piece = Musterteile schneiden
work-base = Grundkarten schneiden, falzen, falten
work-mat = Mattungen und anderen Tonkarton schneiden
work-strip = Streifen stempeln
work-ribbon = mit Band umwickeln
work-bow = Schleifen binden
work-card = Karten zusammensetzen
work-layered = Karten mit Schleife zusammensetzen
work-label = Materialsätze beschriften
work-kit = Materialsätze füllen
work-line = { $what }: { $times } × { $each } = { $minutes } min
supplies-timings = Ihre eigenen Zeiten, in Minuten
supplies-selling = Was Sie verlangen, und was davon nicht bleibt
supplies-asked-label = Preis einer Karte
supplies-fees = Gebühren, Prozent
supplies-tax = Steuer, Prozent
supplies-margin = Bleiben soll, Prozent
supplies-hour = Eine Stunde von Ihnen
supplies-caution-costs = Die Kosten nehmen die Preise, die Sie eingetragen haben, an ihrem Datum; Porto, Gebühren und Steuer sind nur dabei, wenn Sie sie eingetragen haben.
supplies-caution-tax = Einnahmen aus Karten oder Kursen können steuerpflichtig sein, und was verkauft wird, braucht vielleicht Namen und Anschrift oder einen Sicherheitshinweis. Der Preis ist Rechnen, kein Rat.
supplies-caution-rights = Designpapier, Stempelbilder, Sprüche, Verse und Schriften sind Werke anderer. Ob Sie Karten damit verkaufen dürfen, hängt von den Bedingungen der Hersteller und vom Recht Ihres Landes ab: Lesen Sie die Bedingungen, und bewahren Sie eine Notiz dazu beim Material auf. Dies ist keine Rechtsberatung.
supplies-caution-label = Aufschriften wie „ungiftig“ folgen in verschiedenen Ländern verschiedenen Regeln; es gilt die Aufschrift des Mittels in Ihrer Hand.
supplies-shelf = Das Regal
supplies-shelf-lead = Ein Regal für alle Projekte. Ein Plan legt beiseite, was er braucht; der letzte Schritt eines Teils am Tisch verbraucht es, das Häkchen wegnehmen gibt es zurück.
supplies-shelf-empty = Noch liegt nichts im Regal.
shelf-kind = Art
shelf-name = Name
shelf-amount = Menge
shelf-unit = Einheit
shelf-price = Preis
shelf-buys = kauft
shelf-currency = Währung
shelf-priced-on = am
shelf-place = Wo es liegt
shelf-color = Seine Farbe, etwa #66834f
shelf-held = Beiseitegelegt
shelf-held-here = { $amount } hier
shelf-held-others = { $amount } für „{ $project }“
shelf-ledger = Warum es so ist
shelf-counted = gezählt
shelf-bought = gekauft
shelf-used = verbraucht
shelf-returned = zurückgegeben
shelf-entry = { $why }: { $amount }
shelf-entry-day = { $day }: { $said }; { $there } da
shelf-entry-of = { $day }: { $said } ({ $part }, „{ $project }“); { $there } da
shelf-part-sheet = Designpapier geschnitten
shelf-part-stock = Tonkarton geschnitten
shelf-part-card = Karten zusammengesetzt
shelf-entry-short = { $why }: { $amount }; { $short } mehr wären gebraucht worden und waren nicht da
shelf-add = Etwas ins Regal legen
shelf-save = Behalten
shelf-why = Weil es
shelf-remove = Aus dem Regal nehmen
shelf-import = Eine Tabelle lesen (CSV)
shelf-import-do = Lesen
shelf-export = Das Regal als Tabelle sichern (CSV)
shelf-kind-name = { $kind ->
    [paper] gemustertes Papier
    [cardstock] Karton
    [ribbon] Band
    [adhesive] Kleber
    [foam] Abstandspads
    [envelope] Umschläge
    [ink] Stempelfarbe
    [stamp] Stempel
   *[other] etwas anderes
}
shelf-unit-name = { $unit ->
    [sheet] Bögen
    [piece] Stück
    [roll] Rollen
    [use] Anwendungen
   *[other] { $unit }
}
shelf-there = { $unit ->
    [sheet] { $amount } { $one ->
        [yes] Bogen
       *[no] Bögen
    }
    [piece] { $amount } Stück
    [roll] { $amount } { $one ->
        [yes] Rolle
       *[no] Rollen
    }
    [use] { $amount } { $one ->
        [yes] Anwendung
       *[no] Anwendungen
    }
   *[other] { $amount } { $unit }
}
shelf-stale = Jemand hat „{ $name }“ geändert, seit diese Seite geöffnet wurde: { $since }. Jetzt sind es { $amount }. Sie schrieben „{ $mine }“: Das ist noch nicht behalten. Sehen Sie nach, und schreiben Sie es noch einmal, wenn es noch gilt.
shelf-gone = Das wurde inzwischen aus dem Regal genommen.
shelf-taken = „{ $name }“ liegt schon im Regal: Ändern Sie diese Zeile.
shelf-negative = { $amount } ist weniger als nichts. Schreiben Sie, was da ist, oder 0.
shelf-bad = „{ $found }“ kann hier nicht stehen. Wählen Sie eine der Arten und Einheiten, eine Währung aus drei Großbuchstaben, einen Tag wie 2026-05-31.
shelf-number = „{ $found }“ ist keine Menge: Schreiben Sie Ziffern, mit Punkt oder Komma vor den Teilen.
shelf-problem = Zeile { $line }: { $said }
shelf-problem-place = Zeile { $line }, Spalte { $column } ({ $head }): { $said }
shelf-problem-too-large = die Datei ist größer als 4 MB: sichern Sie nur die Tabelle
shelf-problem-not-text = das ist kein Text: sichern Sie die Tabelle als CSV
shelf-problem-empty = es steht nichts darin
shelf-problem-not-a-table = das lässt sich nicht als Tabelle lesen: sichern Sie es noch einmal als CSV
shelf-problem-no-column = es gibt keine Spalte „{ $found }“: die erste Zeile nennt die Spalten { $known }
shelf-problem-unknown-column = die Spalte „{ $found }“ ist nicht bekannt: nennen Sie sie wie eine von { $known }, oder nehmen Sie sie heraus
shelf-problem-too-many = mehr als 10 000 Zeilen: behalten Sie weniger in einer Tabelle
shelf-problem-too-wide = mehr Zellen als Überschriften: setzen Sie einen Text mit Kommas in Anführungszeichen
shelf-problem-twice = „{ $found }“ steht zweimal da: behalten Sie eine Zeile davon
shelf-problem-kind = `{ $found }` ist keine Art: schreiben Sie eine von { $known }
shelf-problem-unit = `{ $found }` ist keine Einheit: schreiben Sie eine von { $known }
shelf-problem-name = ein Name fehlt oder ist zu lang: schreiben Sie 1 bis 200 Zeichen
shelf-problem-nothing = nichts lässt sich nicht für einen Preis kaufen: lassen Sie die Zelle leer, oder schreiben Sie, wie viel
shelf-problem-currency = `{ $found }` ist keine Währung: schreiben Sie drei Großbuchstaben, etwa EUR
shelf-problem-color = `{ $found }` ist keine Farbe: schreiben Sie # und sechs Ziffern, etwa #66834f
shelf-problem-day = `{ $found }` ist kein Tag: schreiben Sie ihn als 2026-05-31
shelf-problem-no-number = `{ $found }` ist keine Menge: schreiben Sie Ziffern, mit Punkt oder Komma vor den Teilen
shelf-problem-negative = `{ $found }` ist weniger als nichts: schreiben Sie, was da ist, oder 0
shelf-problem-two-separators = `{ $found }` lässt sich auf zwei Arten lesen: lassen Sie weg, was die Tausender trennt
shelf-problem-too-much = `{ $found }` ist zu viel oder zu fein: höchstens 100 Millionen, sechs Stellen hinter dem Komma

## Kurs

class-title = Kurs
class-lead = Materialsätze, Tage und Geld eines Kurses für die Karten einer Serie.
class-none = Noch ist kein Kurs geplant, oder keine Serie ist auf Materialsätze verteilt. Schreiben Sie auf, wie viele Plätze gebucht sind.
class-kits = { $kits } Materialsätze: { $seats } Plätze, { $demonstrators } zum Vorführen, { $spare } Ersatz.
class-kits-cut = { $cut } sind schon geschnitten und bleiben, wie sie sind; { $to-cut } sind noch zu schneiden.
class-kits-beyond = { $beyond } sind mehr geschnitten, als gebraucht werden: Ersatz.
class-left = { $left ->
    [0] Von Linkshändern ist nichts gesagt.
    [one] Ein Linkshänder: Drucken Sie eine Anleitung für die linke Hand, und drehen Sie einen Papierschneider um.
   *[other] { $left } Linkshänder: Drucken Sie { $left } Anleitungen für die linke Hand, und drehen Sie einen Papierschneider für sie um.
}
class-cards = { $same ->
    [yes] { $least ->
        [one] 1 Karte in jedem Materialsatz, alle Sätze gleich.
       *[other] { $least } Karten in jedem Materialsatz, alle Sätze gleich.
    }
   *[no] { $least } bis { $most } Karten in jedem Materialsatz: Kein Satz hat mehr als eine Karte mehr als ein anderer.
}
class-more = Für die Materialsätze, die dazukommen: { $sheets }.
class-more-one = { $sheets } von { $letter }
class-contents = Was in einen Materialsatz kommt
class-content = { $count } × { $what }
class-content-base = Grundkarte, gefalzt und nicht gefaltet
class-content-strip-spare = Ersatzstreifen
class-content-envelope = Umschlag
class-content-handout = Anleitung
class-content-foam = Abstandspads
class-content-ribbon = { $length } von „{ $name }“
class-mix = Wie gleich die Materialsätze sind
class-mix-print = Muster
class-mix-each = Karten in jedem Materialsatz
class-mix-even = { $by ->
    [0] Jeder Materialsatz hat von jedem Muster so viele wie jeder andere.
    [one] Kein Materialsatz hat von einem Muster mehr als { $by } Karte mehr als ein anderer; { $swaps ->
        [one] { $swaps } Paar Nachbarn kann
       *[other] { $swaps } Paare Nachbarn können
    } nach Wunsch tauschen.
   *[other] Kein Materialsatz hat von einem Muster mehr als { $by } Karten mehr als ein anderer; { $swaps ->
        [one] { $swaps } Paar Nachbarn kann
       *[other] { $swaps } Paare Nachbarn können
    } nach Wunsch tauschen.
}
class-ahead = Vor dem Kurs zuschneiden
class-ahead-lead = { $kits ->
    [one] Für { $kits } Materialsatz, der noch nicht zugeschnitten ist:
   *[other] Für { $kits } Materialsätze, die noch nicht zugeschnitten sind:
}
class-not-included = Nicht dabei: Schere, Kleber.
class-timetable = Die Tage davor
class-due = Was
class-day = Tag
class-over = vorbei
class-due-sample = entwerfen und ein Muster machen
class-due-buy = einkaufen
class-due-cut = schneiden
class-due-stamp = stempeln, was alle bekommen
class-due-bag = Tüten füllen
class-due-print = Anleitungen drucken und an jemandem erproben, der sie nicht kennt
class-due-pack = Werkzeug einpacken
class-due-class = der Kurs
weekday = { $day ->
    [1] Montag
    [2] Dienstag
    [3] Mittwoch
    [4] Donnerstag
    [5] Freitag
    [6] Samstag
   *[7] Sonntag
}
class-on-the-day = { $hours } für { $cards ->
    [one] { $cards } Karte.
   *[other] { $cards } Karten.
}
class-the-day = Der Tag selbst
class-when = Wann
class-takes = Dauert
class-no-start = Schreiben Sie auf, wann der Kurs beginnt: Dann hat jeder Teil seine Zeit.
class-part-welcome = ankommen, begrüßen
class-part-card = Karte { $card }
class-part-pause = Pause
class-part-end = übrige Zeit, und aufräumen
class-part-minutes = { $minutes } min
class-starts = Beginnt um
class-welcome-minutes = Minuten zum Ankommen
class-pause-minutes = Minuten Pause
class-end-minutes = Minuten übrig
class-hours = { $hours } h { $minutes } min
class-money = Geld
class-money-kit = Ein Materialsatz
class-money-kits = { $kits } Materialsätze
class-money-room = Raum
class-money-teacher = Kursleitung
class-money-shared = Gemeinsam für alle
class-money-total = Alles zusammen
class-money-seat = Ein Platz muss kosten, bei { $seats } Plätzen
class-money-price = Preis eines Platzes
class-money-brings = { $seats } Plätze bringen
class-money-over = Übrig
class-labels = Aufkleber für die Materialsätze
class-labels-lead = Ein Aufkleber für jeden Materialsatz, auf Papier oder auf Etikettenbögen.
class-labels-plain = Papier, zum Schneiden
class-labels-three-ten = Etikettenbogen, Letter, 3 × 10, 2 5/8 × 1 Zoll
class-labels-two-five = Etikettenbogen, Letter, 2 × 5, 4 × 2 Zoll
class-labels-two-seven = Etikettenbogen, A4, 2 × 7, 99,1 × 38,1 mm
class-label-kit = Materialsatz { $number } von { $all }
class-label-cards = Karten { $numbers }
class-own = Ihr Kurs
class-seats = Gebuchte Plätze
class-date = Tag
class-batch = Serie
class-demonstrators = Zum Vorführen
class-spare = Ersatz
class-left-handed = Linkshänder
class-cut = Schon geschnittene Materialsätze
class-minutes = Minuten je Karte
class-room = Raum
class-own-hours = Ihre Stunden
class-hour = Eine Stunde kostet
class-shared = Gemeinsam für alle
class-break-even = Trägt sich bei Plätzen
class-price = Preis eines Platzes
class-caution-lever = Hebelschneider können eine Fingerkuppe kosten. Immer nur eine Person, der Schutz angebracht, der Arm unten verriegelt, wenn er nicht gebraucht wird; Kinder heben ihn nie.
class-caution-heat = Heißluftgeräte verbrennen Haut und versengen oder entzünden Papier: Zange benutzen, kein Band und keine Lösungsmittel in der Nähe, die Düse auf einem Ständer abkühlen lassen, nie unbeaufsichtigt eingesteckt.
class-caution-solvent = Lösungsmittelfarben, Reiniger und Alkoholstifte geben Dämpfe ab: Öffnen Sie ein Fenster, halten Sie sie von Flammen fern, schließen Sie die Kappen. Kinder, Schwangere und Menschen mit Asthma sollten wasserbasierte Farbe nehmen.
class-caution-glue = Im Kurs Heißklebepistolen mit niedriger Temperatur; sind Kinder im Raum, nur in Erwachsenenhand.
class-caution-parts = Eine Karte für ein Kind unter 3 Jahren sollte nichts tragen, was sich abreißen und verschlucken lässt: keine Knöpfe, Perlen, Steinchen, Klammern, Glöckchen.
class-caution-minors = Im Kurs mit Minderjährigen macht oder beaufsichtigt ein Erwachsener alles Schneiden und Erhitzen. Es gelten die örtlichen Regeln für die Arbeit mit Minderjährigen.
class-caution-photos = Fragen Sie, bevor Sie Menschen oder ihre Arbeiten fotografieren; eine Kursliste enthält persönliche Daten. Octavo behält beides nur auf diesem Rechner.

cards-caution-magnets = Kleine Magnete und Knopfzellen (Licht- oder Tonkarten) sind gefährlich, wenn sie verschluckt werden: Nehmen Sie sie nicht für Kinderkarten, und fragen Sie die Post, bevor Sie eine Batterie verschicken.

## Unterwegs

way-supplies = Material
way-post = Post
way-class = Kurs
share-caution-rights = Designpapier, Stempelbilder, Sprüche und Schriften sind Werke anderer: Ob Sie damit unterrichten oder sie in einer Anleitung zeigen dürfen, hängt von den Bedingungen der Hersteller und vom Recht Ihres Landes ab. Dies ist keine Rechtsberatung.
share-caution-own = Die Idee eines Schnittplans zu übernehmen ist das eine, fremde Anleitungen oder Bilder weiterzugeben das andere; diese Anleitungen enthalten nur Ihre eigenen Angaben und Octavos eigene Zeichnungen.
share-caution-photos = Fragen Sie, bevor Sie Menschen oder ihre Arbeiten in einem Bild zeigen; eine Teilnehmerliste besteht aus persönlichen Daten. Octavo behält beides nur auf diesem Rechner.

share-templates = Vorlagen sichern
share-markdown = Die Anleitung als Markdown
share-markdown-note = für eine Webseite oder eine Mail, die Überschriften und Tabellen zeigt
share-plain = Die Anleitung als reiner Text
share-plain-note = für die Beschreibung eines Films oder eine Mail

## Befehlszeile

help-post = Sagen, was die Karten wiegen und messen und zu welcher Briefklasse sie gehören
    .examples =
        Beispiele:
          octavo post my-cards.toml
          octavo post my-cards.toml --envelope envelope.pdf
    .envelope = Die Vorlage eines Umschlags zum Selbermachen als PDF in diese Datei schreiben
    .json = Als JSON ausgeben
help-supplies = Sagen, was die Serie braucht, was in ganzen Packungen zu kaufen ist und was es kostet
    .examples =
        Beispiel:
          octavo supplies my-cards.toml --shelf shelf.csv
    .shelf = Eine Tabelle dessen, was im Regal liegt (CSV)
    .swapped = Das Projekt mit geänderten Farben, sodass Packungen gespart werden, in diese neue Datei schreiben
    .json = Als JSON ausgeben
help-class = Materialsätze, Tage und Geld des Kurses in der Projektdatei sagen
    .examples =
        Beispiel:
          octavo class my-cards.toml --labels labels.pdf
    .today = Der Tag, für den gerechnet wird, als 2026-05-31 (ohne Angabe: heute)
    .labels = Aufkleber für die Materialsätze als PDF in diese Datei schreiben
    .on = Worauf: plain, three-ten, two-five oder two-seven
    .json = Als JSON ausgeben
refused-no-swap = kein Tausch der Farben spart eine Packung
    .remedy = lassen Sie --swapped weg
refused-no-class = dieses Projekt enthält keinen Kurs
    .remedy = schreiben Sie unter [class], wie viele Plätze gebucht sind, und verteilen Sie eine Serie auf Materialsätze
refused-shelf = { $path }: { $said }
refused-day = `{ $found }` ist kein Tag: schreiben Sie ihn als 2026-05-31
share-one-page = Die Anleitung auf einer Seite
