### Was die Seiten der Werkstatt sagen.

## Auf jeder Seite

skip = Zum Inhalt der Seite
way = Die Arbeit, Schritt für Schritt
way-paper = Papier
way-cards = Karten
way-layout = Schnittplan
way-batch = Serie
way-cardstock = Tonkarton
way-background = Hintergrund
way-table = Tisch
way-share = Weitergeben
undo = Rückgängig
redo = Wiederholen
change = Ändern
to-hand = Zu den laufenden Arbeiten
last-change = Letzte Änderung: { $what }.
refused-title = Das kann so nicht aufbewahrt werden
gone = Octavo läuft nicht oder antwortet nicht. Was Sie zuletzt getan haben, ist noch nicht gespeichert. Starten Sie Octavo wieder, und tun Sie es dann noch einmal.
mistake-line = Zeile { $line }: { $said }.{" "}
mend-below = Der Text steht unten. Tippen Sie oben auf eine Zeile, um zu ihrer Stelle zu kommen, verbessern Sie sie und senden Sie ihn noch einmal.
graveness-serious = Halt:
graveness-warning = Vorsicht:
graveness-note = Hinweis:
working-title = Es wird gerechnet
working = Dieser Plan braucht einen Augenblick. Die Seite kommt von selbst; oder halten Sie an, und sehen Sie das Beste, was bis jetzt gefunden ist.
working-so-far = { $nodes ->
    [0] Bisher { $seconds } s.
   *[other] Bisher { $seconds } s, { $nodes } Schnittwege angesehen.
}
working-before = Wie es vorher war
working-stop = Anhalten und das Beste bis jetzt zeigen
working-back = Zurück zur Seite
working-refused = Dafür braucht es den Plan, der noch gerechnet wird; es wurde nicht getan. Gehen Sie zurück zur Seite: Sie kommt, sobald der Plan da ist. Machen Sie es dann noch einmal.
broken-title = Octavo konnte das nicht ausrechnen
broken = Octavo selbst hat bei diesem Plan einen Fehler gemacht. Sie haben nichts falsch gemacht, und nichts ist verloren. Kommt es wieder vor, bewahren Sie die Projektdatei auf: Sie hilft denen, die Octavo in Ordnung bringen.
broken-kept = Die letzte Änderung ist aufbewahrt: { $what }.
broken-refused = Was Sie eben wollten, braucht den Plan; es wurde nicht getan.
broken-undo = Die letzte Änderung zurücknehmen
broken-again = Noch einmal versuchen
broken-text = Die Projektdatei von Hand ändern
lost-title = Hier ist nichts
lost = Diese Adresse führt nirgendwohin: Vielleicht wurde das Projekt weggelegt, oder die Adresse ist verschrieben.
card-alt = Karte { $number }, { $recipe }, im Muster { $print }
area-inches = { $area } Quadratzoll
area-centimetres = { $area } Quadratzentimeter

## Zwei Seiten zu einem Projekt offen

stale-title = Das Projekt ist schon weiter
stale = Während diese Seite offen war, wurde das Projekt anderswo geändert. Nichts ist verloren: Wählen Sie, wie es weitergeht.
stale-theirs = Was sich inzwischen geändert hat
stale-undone = Eine Änderung wurde rückgängig gemacht.
stale-mine = Was Sie gerade ändern wollten
stale-on-top = Meine Änderung am neueren Stand machen
stale-both = Beides behalten: Mein Stand wird eine Kopie
stale-theirs-only = Meine Änderung lassen, den neueren Stand zeigen
stale-both-told = Wenn Sie beides behalten, bleibt das Projekt, wie es anderswo geändert wurde, und eine Kopie enthält es so, wie Sie es hatten, mit Ihrer Änderung.

## Wo alles aufbewahrt wird

store-title = Das konnte nicht aufbewahrt werden
store-full = Der Datenträger ist voll. Schaffen Sie Platz, und machen Sie es dann noch einmal.
store-unwritten = Der Datenträger nahm nichts mehr an ({ $reason }): Der Platz, Ihr Anteil daran oder die größte Länge einer Datei ist verbraucht, oder er ist beschädigt. Schaffen Sie Platz, und machen Sie es dann noch einmal.
store-read-only = Die Datei mit Ihren Projekten darf nur gelesen werden. Erlauben Sie das Schreiben in die Datei und ihren Ordner, und machen Sie es dann noch einmal.
store-in-use = Die Datei mit Ihren Projekten ist anderswo geöffnet. Schließen Sie das andere Octavo, und machen Sie es dann noch einmal.
store-damaged = Die Datei mit Ihren Projekten ist beschädigt ({ $reason }). Holen Sie eine Sicherung zurück.
store-other = Die Datei mit Ihren Projekten war nicht zu gebrauchen: { $reason }.
store-kept = Alles, was vorher aufbewahrt war, ist noch da.
asked-title = Darauf gibt es keine Antwort
asked-slowly = Die Anfrage kam nicht rechtzeitig an. Versuchen Sie es noch einmal.
asked-broken = In Octavo ist etwas kaputtgegangen. Nichts Aufbewahrtes ist verloren; gehen Sie zurück, und versuchen Sie es anders.
asked-long = Es hat zu lange gedauert. Machen Sie das Projekt kleiner, oder fragen Sie noch einmal.
asked-host = Diese Adresse gehört nicht zu Octavo. Öffnen Sie die, die Octavo ausgegeben hat.
asked-method = Seiten kann man ansehen oder absenden, sonst nichts.
asked-origin = Das kam von einer fremden Seite und wurde nicht getan. Öffnen Sie die Seite von Octavo, und tun Sie es dort.
asked-form = Das Formular kam nicht ganz an. Gehen Sie zurück, und senden Sie es noch einmal.
asked-large = Das ist zu groß: 64 MB sind das Höchste.

## Laufende Arbeiten

hand-title = Laufende Arbeiten
hand-empty = Der Tisch ist leer. Fangen Sie unten etwas an.
hand-facts = { $cards ->
    [one] 1 Karte
   *[other] { $cards } Karten
} aus { $sheets ->
    [one] 1 Bogen
   *[other] { $sheets } Bögen
}, { $left ->
    [none] nichts bleibt übrig
   *[some] etwas bleibt übrig
}.
hand-open = Öffnen
hand-copy = Kopieren
hand-export = Als Datei speichern
hand-away = Weglegen
hand-unreadable = Die Datei enthält Fehler. Öffnen Sie sie, um sie zu berichtigen.
hand-working = Der Plan wird noch gerechnet.
hand-broken = Octavo konnte den Plan nicht ausrechnen. Öffnen Sie das Projekt, um zu sehen, was hilft.
no-name = Ein Projekt ohne Namen
progress = { $done } von { $all } { $all ->
    [one] Schritt
   *[other] Schritten
} fertig
progress-label = Am Tisch erledigte Schritte
hand-was-put-away = „{ $name }“ ist weggelegt. Nichts davon ist verloren.
away-title = Weggelegt
take-back = Zurückholen
size-name = { $slug ->
    [s-quarter-sheet-side-fold] Viertelbogen Letter, seitlich gefalzt
    [s-quarter-sheet-tent-fold] Viertelbogen Letter, oben gefalzt
    [s-5-x-7-side-fold] 5 × 7, seitlich gefalzt
    [s-5-x-7-tent-fold] 5 × 7, oben gefalzt
    [s-3-5-x-5-side-fold] 3,5 × 5, seitlich gefalzt
    [s-3-5-x-5-tent-fold] 3,5 × 5, oben gefalzt
    [s-4-5-x-6-25-tent-fold] 4,5 × 6,25, oben gefalzt
    [s-4-5-x-6-25] 4,5 × 6,25
    [s-127-x-178] 127 × 178
    [s-133-x-184] 133 × 184
    [s-half-sheet] halber Bogen Letter
    [s-slim] lang und schmal
    [s-square-4-25] quadratisch 4,25
    [s-square-5-25] quadratisch 5,25
    [s-square-5-75] quadratisch 5,75
    [s-a6-side-fold] A6, seitlich gefalzt
    [s-a6-tent-fold] A6, oben gefalzt
    [s-a6-side-fold-from-half-an-a4] A6 aus einem halben A4, seitlich gefalzt
    [s-a5-from-a4] A5 aus A4
    [s-dl-slim] DL, lang und schmal
    [s-square-148] quadratisch 148
    [s-square-148-tent-fold] quadratisch 148, oben gefalzt
    [s-square-144] quadratisch 144
    [s-127-x-178-tent-fold] 127 × 178, oben gefalzt
    [s-square-130] quadratisch 130
    [s-square-155] quadratisch 155
    [s-square-160] quadratisch 160
    [s-square-220] quadratisch 220
    [s-slimline-a-long] lang und schmal
    [s-square-5] quadratisch 5
    [s-square-5-5] quadratisch 5,5
    [s-square-6] quadratisch 6
    [s-square-6-5] quadratisch 6,5
    [s-square-7] quadratisch 7
    [s-square-8] quadratisch 8
   *[other] { $name }
}
copy-name = { $name }, Kopie
backup-title = Sicher aufbewahren
backup-lead = Alles in einer Datei: Projekte mit jeder Änderung, Bilder, Häkchen. Wird eine Sicherung zurückgeholt, ersetzt sie, was hier ist; was hier war, bleibt in einer Datei daneben.
backup-take = Sicherung speichern
restore-file = Eine Sicherung
restore = Zurückholen
restore-refused = Diese Sicherung wurde nicht verwendet: { $reason }. Alles ist, wie es war.
restore-title = Diese Sicherung zurückholen?
restore-goes = { $count ->
    [one] Ein Projekt, das hier liegt, ginge fort:
   *[other] { $count } Projekte, die hier liegen, gingen fort:
}
restore-comes = { $count ->
    [one] Ein Projekt der Sicherung käme:
   *[other] { $count } Projekte der Sicherung kämen:
}
restore-kept = Was hier liegt, bleibt in einer Datei daneben und kommt mit einem Klick zurück.
restore-leave = Alles lassen, wie es ist
restore-nothing = Es wurde keine Datei gewählt. Zuerst eine Sicherung wählen.
restore-again = Diese Sicherung ist nicht mehr zur Hand. Bitte noch einmal wählen.
restored = Zurückgeholt. Was hier war, liegt in der Datei { $file }.

## Etwas Neues

new-title = Etwas anfangen
new-pack = Mit einer Packung Papier
new-pack-name = Wie die Packung heißt
new-sheet = Größe eines Bogens, gemessen
new-designs = Designs
new-copies = Bögen von jedem
new-format = Fertige Größe einer Karte
new-begin = Anfangen
new-example = Mit einem Beispiel
new-which = Welches
new-open = Öffnen
new-file = Mit einer Projektdatei
new-file-file = Die Datei
new-file-text = Oder ihr Text
new-nothing = Wählen Sie ein Beispiel oder eine Datei, oder schreiben Sie ihren Text.
new-bad-size = { $label }: `{ $typed }` ist keine Größe ({ $why }). Schreiben Sie Breite × Höhe, zum Beispiel 12 x 12 in.
new-bad-number = { $label }: `{ $typed }` geht nicht. Schreiben Sie eine ganze Zahl von 1 bis { $most }.
new-too-small = Eine Karte von `{ $format }` ist zu klein für Mattung und Aufleger mit Rändern. Schreiben Sie eine größere, zum Beispiel 3 1/2 x 5 in.
new-unnamed = Eine neue Packung
new-design = Design { $letter }
new-base-color = Farbe der Grundkarte
new-mat-color = Farbe der Mattung
new-recipe = Einfacher Aufleger
new-mat = Mattung
new-panel = Aufleger

## Änderungen, wie sie aufbewahrt werden

edit-demo = Die Demo wurde bereitgelegt
edit-begun = Angefangen
edit-copy = Kopiert
edit-text = Die Projektdatei wurde neu geschrieben
edit-changed = { $key } von { $from } auf { $to }
edit-nothing = nichts
edit-pinned = „{ $layer }“ festgesteckt, { $left } von links, { $top } von oben
edit-unpinned = Eine Nadel wurde herausgenommen
edit-taken = Ein anderer Schnittplan wurde genommen
refused-place = Diese Stelle gibt es in der Projektdatei nicht mehr. Sehen Sie die Seite an, wie sie jetzt ist, und ändern Sie es dort.

## Felder

field-name = Name
field-format = Fertige Größe
field-fold = Faltung
field-base = Grundkarte
field-width = Breite, die gut aussieht
field-height = Höhe, die gut aussieht
field-prefer = Beste Größe
field-size = Größe
field-border = Rand
field-inside = Einlegeblatt, Größe
field-inside-of = Einlegeblatt aus
field-mat-for = Mattung für { $letter }
field-cardstock = Tonkarton
field-foam = Abstandspads
field-length = Länge
field-right = Nach rechts rücken
field-down = Nach unten rücken
field-cards-per-sheet = Karten aus einem Bogen
field-mark = Feinste Teilung
field-left = Von links
field-top = Von oben
field-cards = Karten insgesamt
field-overs = Zusätzliche Karten
field-set-of = Karten in einem Set
field-partners = Muster, die auf einer Karte zusammenkommen
field-price = Preis der Packung
field-copies = Vorhandene Bögen
field-use = Bögen, die gebraucht werden
field-up = Seite, die zu sehen ist
field-way-front = Vorderseite: wo ist oben
field-way-back = Rückseite: wo ist oben
hint-as-many = so viele wie möglich
hint-all = alle
choice-only = der einzige, oder wie es ist
fold-as-is = Wie es ist
fold-side = Seitlich, wie ein Buch
fold-top = Oben, wie ein Zelt
fold-gate = Zwei Türen
fold-z = Eine Faltung in jede Richtung
fold-flat = Keine: eine flache Karte

## Papier

paper-title = Papier
paper-lead = { $designs ->
    [one] 1 Design
   *[other] { $designs } Designs
}, { $sheets ->
    [one] 1 Bogen
   *[other] { $sheets } Bögen
}. Von einem Teil ist nur eine Seite zu sehen: Wählen Sie vor dem Schneiden, welche oben liegt.
paper-missing = Diese Bilder sind nicht hier, deshalb sind ihre Seiten leer: { $names }.
paper-face-alt = { $name }, eine Seite von { $design }
paper-price = { $sheets ->
    [one] Ein Bogen wird gebraucht
   *[other] { $sheets } Bögen werden gebraucht
}; die Packung kostet { $price }.
paper-price-date = Gefragt am { $date }.
paper-no-price = { $sheets ->
    [one] Ein Bogen wird gebraucht
   *[other] { $sheets } Bögen werden gebraucht
}; was die Packung kostet, ist noch nicht angegeben.
paper-show = Diese Seite zeigen
paper-up = diese Seite oben
paper-copies = { $use } von { $copies ->
    [one] 1 Bogen
   *[other] { $copies } Bögen
}
paper-change = „{ $name }“ ändern
paper-pack-change = Die Packung „{ $name }“ ändern
paper-front = Die Vorderseite
paper-back = Die Rückseite
way-any = darf beliebig liegen
way-one = hat ein Oben
way-two = aufrecht oder kopfüber, nicht quer

## Karten

cards-title = Karten
cards-count = { $count ->
    [one] 1 Karte
   *[other] { $count } Karten
}
cards-apart = Lage auf Lage
cards-base = Grundkarte
cards-score = gefalzt bei { $at }
cards-change = „{ $name }“ ändern
cards-whole = Die Karte

## Schnittplan

layout-title = Schnittplan
layout-several = Schnittpläne
layout-number = Schnittplan { $number }
layout-none = Es gibt noch keinen Schnittplan. Sehen Sie nach, was im Weg steht.
layout-sentence = { $left ->
    [none] Nichts übrig
   *[some] { $area } übrig
}, { $settings ->
    [one] 1 Einstellung
   *[other] { $settings } Einstellungen
}, { $cuts ->
    [one] 1 Schnitt
   *[other] { $cuts } Schnitte
}, { $cards ->
    [one] 1 Karte
   *[other] { $cards } Karten
} aus einem Bogen.
layout-grade = { $grade ->
    [best] Kein Schnittplan ist besser.
    [found] Der beste, der gefunden wurde.
   *[stopped] Die Suche wurde angehalten, bevor sie sicher war.
}
layout-hint-move = Ziehen Sie eine Linie an ihrem Griff: Das Übrige folgt, und wo Sie loslassen, bleibt sie. Mit der Tastatur: Pfeiltasten, dann Eingabe; Esc setzt sie zurück. Tippen Sie ein Teil an, um seine Karte zu sehen oder es festzustecken.
layout-grip = Schnittlinie
layout-line-upright = senkrecht, { $at } von links, von { $from } bis { $to } nach unten
layout-line-level = waagerecht, { $at } von oben, von { $from } bis { $to } nach rechts
layout-move = Einen Schnitt verschieben: eintippen, wo er liegen soll
layout-which = Welcher Schnitt
layout-to = Wie weit von links oder von oben
layout-move-it = Verschieben
layout-spare = Ersatz
layout-stops = Senkrechte Schnitte bei { $upright }; waagerechte bei { $level }.
layout-no-pins = Nichts ist festgesteckt. Tippen Sie ein Teil auf dem Bogen an, um es festzustecken.
edit-arrow = Der Pfeil von „{ $name }“ wurde gedreht
edit-face = Auf „{ $name }“ kam ein Bild
edit-face-turned = Das Bild auf „{ $name }“ wurde um eine Vierteldrehung gedreht
paper-arrow = Den Pfeil drehen
paper-turn = Das Bild um eine Vierteldrehung drehen
paper-picture = Ein Bild darauf setzen
paper-picture-file = PNG oder JPEG der ganzen Seite „{ $name }“, von Kante zu Kante
paper-picture-put = Darauf setzen
face-no-picture = Auf dieser Seite ist kein Bild, das sich drehen ließe. Setzen Sie zuerst eins darauf.
face-wrong-kind = Das ist weder PNG noch JPEG noch WebP. Speichern Sie das Bild in einem dieser Formate, und wählen Sie es noch einmal. Telefone, die HEIC schreiben, haben eine Einstellung „maximale Kompatibilität“ für JPEG.
face-too-large = Das Bild ist zu groß: keine Seite darf mehr als { $side } Pixel haben, das Ganze nicht mehr als { $millions } Millionen. Verkleinern Sie es, und wählen Sie es noch einmal.
face-damaged = Das Bild ist beschädigt ({ $why }). Speichern Sie es neu, und wählen Sie es noch einmal.
face-cut-off = Das Bild ist abgeschnitten: Die Datei endet vor dem Bild. Kopieren Sie es noch einmal von der Kamera oder dem Telefon, und wählen Sie es noch einmal.
face-same = Dieses Bild ist schon auf der Seite.
edit-moved-upright = Ein Schnitt wurde von { $from } nach { $to } verschoben, von links gemessen
edit-moved-level = Ein Schnitt wurde von { $from } nach { $to } verschoben, von oben gemessen
stays-no-line = Diesen Schnitt gibt es nicht mehr. Sehen Sie den Bogen an, wie er jetzt ist.
stays-printed = Dieser Bogen wird an seinen gedruckten Linien geschnitten, und die bleiben, wo sie sind.
stays-no-pins = Schnitte lassen sich nur auf den Bögen der ersten Packung verschieben, in einem Projekt ohne Serien.
stays-off-sheet = Der Schnitt läge nicht mehr auf dem Bogen.
stays-range = „{ $layer }“ ({ $recipe }) würde { $wanted } { $side ->
    [width] breit
   *[height] hoch
}; erlaubt ist { $least } bis { $most }. Für mehr weiten Sie die Spanne auf der Seite „Karten“.
stays-size = „{ $layer }“ ({ $recipe }) würde { $wanted } { $side ->
    [width] breit
   *[height] hoch
}; es hat nur eine Größe, { $least }. Für mehr geben Sie auf der Seite „Karten“ eine Spanne an.
stays-no-layout = { $proven ->
    [yes] Mit dem Schnitt dort ergeben keine geraden Schnitte { $cards } { $cards ->
        [one] Karte
       *[other] Karten
    }.
   *[no] Mit dem Schnitt dort wurde kein Weg zu { $cards } { $cards ->
        [one] Karte
       *[other] Karten
    } gefunden.
}
stays-pinned = Die festgesteckten Teile bleiben, wo sie sind; steckt eines nicht mehr fest, ist mehr möglich.
stays-nearest = Er könnte bei { $at } liegen.
layout-card = Karte { $number }
layout-pieces = aus { $marks }
layout-piece = Teil { $mark }, { $layer }
layout-cuts = Ein Schnitt nach dem anderen
layout-walk = Schnitte
cut-before = Zurück
cut-after = Weiter
layout-others = Andere Arten, ihn zu schneiden
layout-no-others = Kein anderer Schnittplan wurde gefunden, der sich wirklich unterscheidet.
layout-take = Diesen nehmen
layout-pins = Nadeln
layout-pinned-mark = festgesteckt
layout-pins-lead = Ein festgestecktes Teil bleibt, wo es ist; das Übrige wird darum herum geplant.
layout-pinned = { $layer }, { $size }, { $left } von links, { $top } von oben
layout-unpin = Nicht mehr feststecken
layout-unpin-all = Keines mehr feststecken
layout-pin-more = An anderem Platz oder in anderer Größe
layout-pin = Hier feststecken
layout-wish = Was ein Bogen ergeben soll

## Serie

batch-title = Serie
batch-sides = Welche Seite
batch-up = Die Seite, die oben liegt
batch-other = Die andere Seite jedes Bogens
batch-shares = Wie viele von jedem
batch-wish = Wie viele, und welche Muster zusammenkommen
batch-sheet = { $name }, Bogen { $sheet }: { $count ->
    [one] 1 Karte
   *[other] { $count } Karten
}
batch-partner = { $layer } aus { $letter }

## Tonkarton

stock-title = Tonkarton
stock-lead = { $count ->
    [one] 1 Bogen insgesamt
   *[other] { $count } Bögen insgesamt
}.
stock-best = Mit weniger Bögen geht es nicht; das ist bewiesen.
stock-found = Die wenigsten, die gefunden wurden; weniger als { $bound } geht nicht.
stock-stopped = Die Suche wurde angehalten, bevor sie sicher war.
stock-inside = Einlegeblatt
stock-cut = { $count } × { $name }, { $width } × { $height }
stock-times = So { $times ->
    [one] 1 Bogen
   *[other] { $times } Bögen
}, je { $count ->
    [one] 1 Teil
   *[other] { $count } Teile
}
stock-sheet-alt = Ein Bogen „{ $name }“ mit seinen Schnitten, { $count ->
    [one] { $count } Teil
   *[other] { $count } Teile
}

## Tisch

table-title = Tisch
table-of = Schritt { $number } von { $all }
table-done = Fertig, weiter
table-not-done = Doch noch nicht fertig
table-left-hand = Für die linke Hand
table-right-hand = Für die rechte Hand
table-read = Vorlesen
table-full = Bildschirm füllen
table-keys = Die Leertaste hakt den Schritt ab; mit den Pfeiltasten blättern Sie; F füllt den Bildschirm.
table-earlier = { $count ->
    [one] 1 Häkchen gehört
   *[other] { $count } Häkchen gehören
} zu einem früheren Plan: Seine Schritte hatten andere Maße oder Zahlen, die Schritte hier sind neu. Die Anzahlen gelten für alle Bögen: Ziehen Sie ab, was schon geschnitten ist, und haken Sie ab, was fertig ist.
table-mute = Dieser Browser hat keine Stimme zum Vorlesen: Es wird nichts zu hören sein. Wie der Rechner eine Stimme für Ihre Sprache bekommt, steht in seinen Einstellungen, wenn er es kann.
table-awake = Der Bildschirm bleibt an, solange diese Seite offen ist.
table-sleeps = Dieser Browser hält den Bildschirm nicht an: Er kann nach einer Weile dunkel werden, und Ihr Schritt bleibt vermerkt.
table-nothing = Es ist noch nichts zu tun: Der Plan ergibt keine Karten.
table-all = Alle Schritte
table-ticked = fertig
table-short-sheet = Designpapier, Schnittplan { $sheet }, Schnitt { $number }
table-short-stock = { $name }, Schnittplan { $sheet }, Schnitt { $number }
table-short-card = { $name }: { $layer }
lay-base = { $count ->
    [one] 1 Grundkarte
   *[other] { $count } Grundkarten
} falten
lay-score = Falzen Sie bei { $at }, und falten Sie dann mit der Laufrichtung.
lay-scored = Falten Sie an der Falzlinie bei { $at }, mit der Laufrichtung.
lay-fold-alt = Die Grundkarte liegt offen; die Faltung ist die gestrichelte Linie, { $at } von der Kante.
lay-head = Auflegen: { $layer }
lay-where = Auf der Vorderseite liegt die linke obere Ecke { $left } von links und { $top } von oben.
lay-strip = Stempeln Sie ihn zuerst, und lassen Sie ihn trocknen.
lay-count = Für { $count ->
    [one] 1 Karte
   *[other] alle { $count } Karten
}. Machen Sie eine ganz fertig, bevor Sie mit den anderen weitermachen.

## Weitergeben

share-title = Weitergeben
share-lead = Sehen Sie es zuerst hier an, dann speichern oder drucken Sie es. Tippen Sie eine Seite an, um sie groß zu sehen.
share-paper = Gedruckt auf
share-letter = Letter
share-a4 = A4
share-print = Schrift
share-normal = Übliche Größe
share-large = Großdruck
share-hand = Hand an der Klinge
share-right = Rechts
share-left = Links
share-units = Maße
share-inches = Zoll
share-mm = Millimeter
share-see = So zeigen
share-handout = Die Anleitung speichern ({ $pages ->
    [one] 1 Seite
   *[other] { $pages } Seiten
})
share-page = Seite { $number }: { $title }
share-files = Dateien
share-project = Die Projektdatei
share-project-note = alles, was Sie angegeben haben, zum Aufbewahren oder Verschicken
share-plan = Der ganze Plan
share-plan-note = für andere Programme
share-sheet = Zeichnung von Bogen { $number } Designpapier
share-true-size = In wahrer Größe
share-true-size-lead = Lehren, Rilllehren und ganze Bögen zum Unterlegen. Drucken Sie sie ohne Skalierung und messen Sie zuerst das Quadrat nach.
share-save = Sichern
share-drawings = Zeichnungen der Bögen
share-pieces = Teile
share-cardstock = Tonkarton
share-supplies = Material
share-tables-note = als Tabellen zum Rechnen (CSV)
share-page-plain = Seite { $number }
share-text = Die Projektdatei selbst
share-text-lead = Auch hier lässt sich alles ändern. Kommentare bleiben stehen.
share-text-label = Projektdatei
unreadable-title = Diese Projektdatei enthält Fehler
language-choice = Sprache der Seiten
share-language = Sprache

layout-placed = Bilder, die ganz bleiben
layout-placed-lead = { $after } der { $pictures } Bilder auf diesen Bögen bleiben ganz auf einem Teil, und nichts liegt darüber; mit den Schnitten in schlichter Reihenfolge wären es { $before }. Schnitte, Einstellungen und Karten sind dieselben.
layout-placed-proven = Keine andere Reihenfolge dieser Schnitte, bei der der Anschlag gleich oft gestellt wird, ist besser.
layout-placed-best = Es ist die beste Reihenfolge, die gefunden wurde.
layout-placed-stays = { $whole } der { $pictures } Bilder auf diesen Bögen bleiben auf einem Teil ganz. Keine andere Folge dieser Schnitte erhält so viele mehr, dass sich eine weniger ordentliche Aufteilung lohnt.
layout-placed-plain = In schlichter Reihenfolge
layout-placed-now = So wird geschnitten
layout-placed-part = { $whole } von { $pictures } Bildern auf einem Teil
layout-placed-see = Sehen, welche Bilder zerschnitten werden
layout-placed-print = { $whole } von { $pictures } Bildern ganz auf jedem Bogen ({ $plain } in schlichter Reihenfolge).
layout-placed-regions = Von den { $regions } markierten Stellen bleiben { $kept } ganz.
layout-placed-key = Schwarzer Rahmen: Das Bild liegt auf einem Teil. Unterbrochener Rahmen und Kreuz: Ein Schnitt geht hindurch oder näher als 3 mm daran vorbei.
placed-alt = Das Muster, wie es geschnitten wird: { $whole } seiner { $pictures } Bilder sind ganz
placed-plain-alt = Das Muster mit den Schnitten in schlichter Reihenfolge: { $whole } seiner { $pictures } Bilder sind ganz

regions-title = { $count ->
    [0] Stellen von „{ $face }“, auf die es Ihnen ankommt
    [one] { $count } Stelle von „{ $face }“, auf die es Ihnen ankommt
   *[other] { $count } Stellen von „{ $face }“, auf die es Ihnen ankommt
}
regions-what = Ziehen Sie einen Rahmen auf dem Muster, oder tippen Sie, wo er liegt: was ganz auf einem Teil bleiben muss, oder was nicht zu sehen sein soll. Die Schnitte liegen dann danach, soweit es die Teile zulassen; wo nicht, sagt es die Seite Schnittplan.
regions-collage = Diese Seite wird auf ihren gedruckten Linien geschnitten; markierte Stellen werden nicht beachtet.
regions-wanted = Was Sie wünschen
regions-keep = ganz lassen
regions-avoid = soll nicht zu sehen sein
regions-show = Auf welchem Teil
regions-any = auf irgendeinem
regions-add = Diese Stelle markieren
regions-keys = Oder mit der Tastatur: Pfeiltasten legen einen Rahmen und schieben ihn, mit Umschalt ändern sie seine Größe, mit Strg in größeren Schritten; Eingabe führt zum Knopf.
regions-change = Stelle { $number } ändern
regions-change-it = Ändern
edit-regions-changed = Eine markierte Stelle von „{ $face }“ wurde geändert.
regions-remove = Wegnehmen
regions-kept = bleibt ganz: { $width } × { $height }, { $left } von links, { $top } von oben
regions-kept-on = bleibt ganz auf „{ $piece }“: { $width } × { $height }, { $left } von links, { $top } von oben
regions-avoided = soll nicht zu sehen sein: { $width } × { $height }, { $left } von links, { $top } von oben
edit-regions = Eine Stelle von „{ $face }“ wurde markiert.
edit-regions-gone = Eine markierte Stelle von „{ $face }“ wurde weggenommen.
field-placing = Beim Legen der Schnitte auf die Muster sehen
placing-alike = ja, dieselben Schnitte für jedes Design
placing-each = ja, jedes Design für sein eigenes Muster
placing-plain = nein, immer die ordentlichste Folge

paper-photo-file = Oder ein schräg aufgenommenes Foto der ganzen Seite „{ $name }“: JPEG, PNG oder WebP
paper-photo-put = Das Foto gerade machen
paper-colors = Seine Farben, und was dazu passt
paper-colors-alt = Farben von „{ $name }“ nach ihrem Anteil
paper-photo-again = Das Foto berichtigen: Ecken, Licht, Farben
edit-photo = Auf „{ $name }“ kam ein gerade gemachtes Foto
photo-title = Das Foto von „{ $name }“
photo-lead = Die vier Ecken des Bogens sind markiert. Setzen Sie jede zurecht, die nicht stimmt; dann wird der Bogen gerade gemacht und auf die Seite gesetzt.
photo-hint = Ziehen Sie an einer Ecke. Mit der Tastatur: Pfeiltasten, mit der Umschalttaste in größeren Schritten. Oder tippen Sie die Stelle ein.
photo-found = Die Ecken wurden gefunden. Sehen Sie jede an.
photo-doubted = Ecken wurden gefunden, aber sie sind zweifelhaft: Sehen Sie jede genau an.
photo-none = Im Foto wurde kein Bogen gefunden. Ziehen Sie die Ecken dorthin, wo sie sind, oder fotografieren Sie auf einem Tisch in anderer Farbe.
photo-tl = Ecke links oben
photo-tr = Ecke rechts oben
photo-br = Ecke rechts unten
photo-bl = Ecke links unten
photo-right = Pixel von links
photo-down = Pixel von oben
photo-light = Licht
photo-even = Das Licht einer Lampe behutsam ausgleichen
photo-white = Ist eine Stelle im Foto in Wahrheit weiß oder grau, so geben Sie an, wo: Die Farbe der Lampe wird herausgenommen. Lassen Sie es sonst leer.
photo-make = Gerade machen und darauf setzen
photo-kept = Das Foto bleibt, wie es kam: Es lässt sich neu gerade machen, und alles rückgängig.
photo-eight = Schreiben Sie die Stelle jeder Ecke als zwei Zahlen.
photo-two = Schreiben Sie die weiße oder graue Stelle als zwei Zahlen, oder lassen Sie beide leer.
share-contact = Alle auf einem Bild (PNG)
batch-png = Diese Karte als Bild sichern (PNG)
share-every-card = Alle Karten auf wenigen Seiten
share-every-card-lead = Alle { $count } Karten, wie die Schnitte sie ergeben, klein und mit ihrer Nummer: zum Aufhängen, Sortieren oder Zeigen.
