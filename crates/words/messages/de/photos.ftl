## Fotos von Bögen: die Befehle `square`, `panels` und `colors`

help-square = Das Foto eines Bogens gerade und maßstäblich machen
    .photo = Ein Foto des ganzen Bogens auf einem Tisch in anderer Farbe: JPEG, PNG oder WebP
    .size = Die Größe des Bogens, etwa 12x12 oder "210 mm x 297 mm"
    .out = Die PNG-Datei, die geschrieben wird
    .corners = Die Ecken des Bogens in Pixeln des Fotos, von links oben im Uhrzeigersinn, etwa "210,95 1830,120 1905,1740 140,1690"; ohne sie werden sie gesucht
    .dots = Wie viele Pixel aus einem Zoll des Bogens werden
    .even = Das Licht einer Lampe behutsam ausgleichen
    .neutral = Eine Stelle im Foto, die in Wahrheit weiß oder grau ist, in seinen Pixeln, etwa "320,140": die Farbe der Lampe wird herausgenommen
    .patch = Eine Stelle im Foto, deren Farbe bekannt ist, und diese Farbe: "640,220 #8c8c8c", "640,220 lab 54.2 0.3 -1.1 D50" (oder D65), "640,220 grau 18%"; eine dritte Zahl nach der Stelle ist die halbe Seite des Feldes in Pixeln. Darf mehrmals stehen; am besten sind sechs oder mehr verschiedene
    .patches = Eine Textdatei mit solchen Feldern, in jeder Zeile eines
    .json = Die Ecken, und was gegen sie spricht, als JSON ausgeben
    .examples =
        Beispiele:
          octavo square rosebuds.jpg --size 12x12 --out rosebuds.png
          octavo square rosebuds.jpg --size 12x12 --out rosebuds.png --corners "210,95 1830,120 1905,1740 140,1690"
help-panels = Finden, wo ein Collagebogen in Bildfeldern gedruckt ist
    .picture = Ein gerades Bild des ganzen Bogens, von Kante zu Kante: JPEG, PNG oder WebP (`octavo square` macht eines aus einem Foto)
    .size = Die Größe des Bogens, etwa 12x12 oder "210 mm x 297 mm"
    .marks = Die Teilung Ihres Lineals, auf die die Bildfelder gebracht werden, etwa "1/16 in" oder "1 mm"
    .json = Die Bildfelder als JSON ausgeben
    .examples =
        Beispiele:
          octavo panels collage.png --size 12x12
          octavo panels collage.png --size "12 in x 12 in" --marks 1/8 --json
help-colors = Die Farben eines Bildes sagen, welche Papiere dazu passen, und ob eine Stempelfarbe darauf zu lesen ist
    .picture = Ein Bild des Musters: JPEG, PNG oder WebP; oder eine Projektdatei, für alle ihre Muster
    .paper = Die Farbe eines Papiers, das danebengehalten wird, etwa "#8fa98a"; darf mehrmals stehen
    .ink = Die Farbe einer Stempelfarbe
    .json = Die Antwort als JSON ausgeben
    .examples =
        Beispiele:
          octavo colors rosebuds.png
          octavo colors cards.toml
          octavo colors rosebuds.png --paper "#8fa98a" --paper "#f4efe2" --ink "#2d3b55"

squared = { $path }: gerade gemacht aus den Ecken { $corners }
reference-gains =
    { $count ->
        [one] Ein Feld
       *[other] { $count } Felder
    }: Rot, Grün und Blau bekamen je einen Faktor.
reference-offset = { $count } Felder: Rot, Grün und Blau bekamen je einen Faktor, und Streulicht wurde herausgenommen.
reference-matrix = { $count } Felder: Rot, Grün und Blau wurden neu gemischt; an weggelassenen Feldern war das besser als Faktoren allein.
reference-patch = Feld { $number } bei { $place }: ΔE { $before } vorher, { $after } nachher: { $near }
reference-mean = Im Mittel: ΔE { $before } vorher, { $after } nachher: { $near }
reference-suspect = Feld { $number } passt nicht zu den anderen: Liegt ein Glanz oder ein Schatten darauf, oder ist seine Farbe vertippt?
reference-limits = Eine Kamera sieht nicht wie Augen: Farben, die den Feldern nicht gleichen, glänzende Papiere und eine andere Lampe können weiter abweichen. Halten Sie das Papier selbst an den Karton.
reference-off = ΔE { $before } wie fotografiert, { $after } berichtigt: { $near }
patch-of-the-command = --patch Nummer { $number }
patch-of-a-file = Zeile { $number }
refused-patch-place = { $whose } („{ $line }“): „{ $found }“ ist keine Stelle. Schreiben Sie Pixel von links, ein Komma, Pixel von oben, dann die Farbe: 640,220 #8c8c8c
refused-patch-no-color = { $whose } („{ $line }“) hat eine Stelle, aber keine Farbe. Schreiben Sie die Farbe hinter die Stelle: 640,220 #8c8c8c oder 640,220 lab 54.2 0.3 -1.1 D50 oder 640,220 grau 18%
refused-patch-color = { $whose } („{ $line }“): „{ $found }“ ist keine lesbare Farbe. Schreiben Sie #8c8c8c oder lab 54.2 0.3 -1.1 D50 (oder D65) oder grau 18%
refused-patch-hex = { $whose } („{ $line }“): „{ $found }“ ist keine Farbe. Nach # kommen sechs Zeichen, 0 bis 9 und a bis f: #8c8c8c
refused-patch-lab = { $whose } („{ $line }“): „{ $found }“ ist nicht vollständig. Nach lab kommen die Helligkeit (0 bis 100), zwei Zahlen bis 128 und D50 oder D65, je nachdem, was Ihre Karte angibt: lab 54.2 0.3 -1.1 D50
refused-patch-grey = { $whose } („{ $line }“): „{ $found }“ ist nicht vollständig. Nach grau kommt der Anteil des Lichts, den es zurückwirft, über 0% und bis 100%: grau 18%
refused-reference-many = Es sind mehr als { $most } Felder, oder die Datei ist zu groß.
refused-reference-file = die Felder in `{ $path }` sind nicht zu lesen: { $reason }
    .remedy = nennen Sie eine Textdatei mit einem Feld in jeder Zeile
refused-reference-outside = Feld { $number } bei { $place } reicht über das Foto hinaus. Schieben Sie es hinein, oder machen Sie es mit einer dritten Zahl nach der Stelle kleiner.
refused-reference-small = Feld { $number } bei { $place } hat zu wenige Pixel. Schreiben Sie seine halbe Seite in Pixeln als dritte Zahl nach der Stelle (mindestens 3), oder gehen Sie mit der Kamera näher heran.
refused-reference-clipped = Feld { $number } bei { $place } ist zu hell oder zu dunkel für die Kamera. Fotografieren Sie mit weniger oder mehr Licht, ohne Glanz, oder lassen Sie dieses Feld weg.
refused-reference-uneven = Feld { $number } bei { $place } hat nicht eine Farbe: Eine Kante, ein Schatten oder ein Glanz geht hindurch. Verschieben Sie es, oder machen Sie es mit einer dritten Zahl nach der Stelle kleiner.
refused-reference-unreal = Feld { $number } bei { $place } soll eine Farbe haben, die kein Papier hat. Sehen Sie seine Zahlen an.
refused-reference-extreme = Feld { $number } bei { $place } und seine wahre Farbe liegen zu weit auseinander (über das Vierfache des Lichts). Sehen Sie Stelle und Farbe an, oder fotografieren Sie bei besserem Licht.
doubt-faint-side = sehen Sie die Ecken an: ein Teil einer Kante hebt sich kaum vom Tisch ab; geben Sie sie mit --corners an, wenn sie nicht stimmen, oder fotografieren Sie auf einem dunkleren Tisch
doubt-goes-on = sehen Sie die Ecken an: eine Kante scheint über eine Ecke hinauszugehen; geben Sie sie mit --corners an, wenn sie nicht stimmen
doubt-margin = sehen Sie die Ecken an: es können die eines gedruckten Randes sein und nicht die des Bogens; geben Sie sie mit --corners an, wenn sie nicht stimmen
doubt-proportion = sehen Sie die Ecken an: ein Bogen dieser Größe sieht von nirgendwo so aus; geben Sie sie mit --corners an, wenn sie nicht stimmen, oder eine andere --size
doubt-rival = sehen Sie die Ecken an: andere Linien wären fast ebenso gut; geben Sie sie mit --corners an, wenn sie nicht stimmen
doubt-small = sehen Sie die Ecken an: der Bogen nimmt wenig vom Foto ein; gehen Sie für ein schärferes Bild näher heran
doubt-at-edge = sehen Sie die Ecken an: der Bogen reicht bis an den Rand des Fotos; fotografieren Sie mit etwas Tisch auf jeder Seite

panels-one-print = Keine Trennlinie gefunden: Der Bogen ist ein einziges Muster.
panels-found = { $count } Bildfelder, auf Teilstrichen von { $mark }: Halten Sie sie gegen den Bogen, bevor Sie schneiden. Diese Zeile gehört in die Seite einer Projektdatei.

colors-share = { $color }  { $share } % des Bildes
colors-paper = { $paper }: am nächsten { $nearest }, ΔE { $delta }, { $near }; { $goes }
near-same = kaum zu unterscheiden
near-good = passt gut
near-close = nah
near-family = aus derselben Familie
near-other = eine andere Farbe
goes-match = wiederholt eine Farbe des Musters
goes-tone = geht Ton in Ton
goes-contrast = hebt sich vom Muster ab
goes-neutral = ruhig neben jedem Muster
goes-none = passt auf keine einfache Weise
colors-ink = { $ink } als Stempelfarbe: Kontrast { $worst } an der schlechtesten Stelle, { $median } an der Hälfte der Stellen; unter 3 auf { $below } % des Musters
colors-daylight = Farben auf einem Bildschirm sind nicht die des Papiers: halten Sie es bei Tageslicht an das Papier

refused-photo-missing = das Bild `{ $picture }` ist nicht zu finden
    .remedy = sehen Sie nach, ob der Name stimmt
refused-photo-kind = `{ $picture }` ist weder PNG noch JPEG noch WebP
    .remedy = sichern Sie es als eines davon (Telefone, die HEIC schreiben, haben eine Einstellung „maximale Kompatibilität“ für JPEG)
refused-photo-large = das Bild `{ $picture }` ist zu groß
    .remedy = machen Sie es kleiner: keine Seite über { $side } Pixel, nicht mehr als { $millions } Millionen Pixel, keine Datei über 64 MB
refused-no-sheet = in `{ $picture }` wurde kein Bogen gefunden
    .remedy = geben Sie seine Ecken mit --corners an, oder fotografieren Sie auf einem Tisch in anderer Farbe
refused-corners-crossed = die Ecken sind überkreuzt
    .remedy = geben Sie sie der Reihe nach um den Bogen herum an: links oben, rechts oben, rechts unten, links unten
refused-corners-mirrored = die Ecken laufen verkehrt herum
    .remedy = geben Sie sie im Uhrzeigersinn an: links oben, rechts oben, rechts unten, links unten
refused-corners-hollow = die Ecken ergeben keinen Bogen
    .remedy = geben Sie vier Ecken an, die weit auseinanderliegen, keine innerhalb der anderen
refused-square-corners = schreiben Sie vier Stellen als acht Zahlen, etwa 210,95 1830,120 1905,1740 140,1690
refused-square-neutral = schreiben Sie eine Stelle als zwei Zahlen, etwa 320,140
refused-square-size = schreiben Sie Breite und Höhe des Bogens, etwa 12x12 oder 210 mm x 297 mm
refused-color = schreiben Sie eine Farbe als #rrggbb, etwa #8fa98a
refused-marks = schreiben Sie die Teilung eines Lineals, etwa 1/16 in, 1/8 in oder 1 mm

matched-title = Farben nebeneinander
matched-lead = Jedes Muster mit seinen Farben nach ihrem Anteil, und was dazu passt. Die Zahlen sind ΔE₀₀: Unter 1 sieht es niemand, über 10 ist es eine andere Farbe. Farben eines Bildschirms oder einer Kamera sind nicht die des Papiers. Stimmt eine nicht, so halten Sie das Papier an eine gedruckte oder gekaufte Farbkarte und schreiben Sie deren Farbe in die Projektdatei.
matched-palette = Farben des Musters nach Anteil: { $colors }
matched-all = Alles an dieses Muster gehalten
matched-what = Tonkarton, Band oder Stempelfarbe
matched-ink = Stempelfarbe von „{ $words }“
matched-nearest = Am nächsten im Muster
matched-how = Wie beide zusammenpassen
matched-laid = Zusammen auf
matched-straight = Gleich auf dieses Muster gestempelt hat „{ $words }“ an der schlechtesten Stelle einen Kontrast von { $contrast } zu 1: { $how }.
matched-reads = Ist der Spruch zu lesen?
matched-read = „{ $words }“ auf { $on }: Kontrast { $contrast } zu 1, { $how }
matched-on-print = Muster { $letter } ({ $name }, am schlechtesten auf Karte { $card })
matched-on-stock = „{ $name }“
matched-shelved = { $name }, im Regal
matched-shelf-ink = Nächste Stempelfarbe: „{ $name }“, { $near } (ΔE { $delta })
matched-on-shelf = { $said }, im Regal
reads-well = gut zu lesen
reads-large = nur in großen, kräftigen Buchstaben
reads-badly = schlecht zu lesen; eine dunklere Farbe oder ein hellerer Grund täte es
face-front = Vorderseite
face-back = Rückseite
sight-title = Wie Augen mit weniger Farben eine Karte sehen mögen
sight-lead = Eine Annäherung: Keine zwei Augenpaare sind gleich. Was hier noch zu unterscheiden ist, können fast alle unterscheiden.
sight-which = Welche Karte
sight-show = Diese Karte zeigen
sight-card = Karte { $number }: { $recipe }, { $design }
sight-alt = Karte { $number }, wie sie { $eyes } aussehen mag
sight-own-alt = Karte { $number }, wie sie gezeichnet ist
sight-own = wie sie gezeichnet ist
sight-protan = ohne Rot
sight-deutan = ohne Grün
sight-tritan = ohne Blau
sight-grey = ganz ohne Farbe

photo-known = Farben nach einer gedruckten oder gekauften Karte
photo-known-lead = Fotografieren Sie neben dem Bogen, im selben Licht und ohne Glanz, eine Karte mit Grautönen oder Farben, deren Werte Sie kennen. Sagen Sie dann von jedem Feld der Karte, wo es im Foto liegt und welche Farbe es in Wahrheit hat. Ein graues Feld nimmt die Farbe der Lampe heraus; am besten sind sechs oder mehr verschiedene.
photo-known-touch = Tippen oder klicken Sie im Foto auf ein Feld: Seine Stelle wird unten eingetragen, und Sie geben die Farbe ein. Ein Ring lässt sich ziehen oder mit den Pfeiltasten bewegen, mit der Umschalttaste in größeren Schritten. Am Telefon holen zwei auseinandergezogene Finger das Foto näher heran.
photo-known-colors = Schreiben Sie eine Farbe, wie Ihre Karte sie angibt: #8c8c8c oder lab 54.2 0.3 -1.1 D50 (oder D65) oder grau 18%.
photo-known-spot = Klicken Sie in diesem kleinen Bild auf ein Feld: Seine Stelle wird unten eingetragen.
photo-patch = Feld { $number }
photo-patch-new = Neues Feld
photo-patch-look =
    Bevor die Farben berichtigt werden können, sehen Sie { $count ->
        [one] Feld { $numbers } an: Was nicht stimmt, steht daneben.
       *[other] die Felder { $numbers } an: Was nicht stimmt, steht bei jedem.
    }
photo-up = Hinauf zum Foto
photo-patch-place = Stelle im Foto
photo-patch-color = Wahre Farbe
photo-patch-away = Feld { $number } wegnehmen
photo-patch-gone = Feld { $number } ({ $line }) ist weggenommen. Der Bogen folgt, sobald er wieder gerade gemacht wird.
photo-patch-back = Wieder hinstellen
photo-patch-at = Feld { $number } bei { $place }
photo-several = Mehrere auf einmal schreiben
photo-patches = Ein Feld in jeder Zeile: Stelle, dann Farbe, etwa 640,220 #8c8c8c
photo-check = Sagen, was die Felder bewirken
photo-chips = Die drei kleinen Flächen bei einem Feld, von links: wie fotografiert, berichtigt, in Wahrheit.
photo-one-way = Geben Sie entweder eine weiße oder graue Stelle an oder Felder mit ihren Farben, nicht beides.

## Was Octavo in einem Muster sieht

help-interest = Sagen, welche Bilder Octavo in einem Muster sieht, was jedes wert ist, und warum
    .picture = Ein gerades Bild des ganzen Bogens, von Kante zu Kante: JPEG, PNG oder WebP (`octavo square` macht eines aus einem Foto)
    .size = Die Größe des Bogens, etwa 12x12 oder "210 mm x 297 mm"
    .marks = Die Teilung Ihres Lineals, auf der die Schnitte liegen, etwa "1/8 in" oder "1 mm"
    .out = Eine PNG-Datei, die geschrieben wird: das Muster, umso dunkler, je mehr eine Stelle wert ist, mit Rahmen um die Bilder
    .json = Die Bilder als JSON ausgeben
    .examples =
        Beispiele:
          octavo interest rosen.png --size 12x12
          octavo interest rosen.png --size 12x12 --out rosen-gesehen.png
interest-line = { $number }: { $said } { $why }
interest-drawn = { $path }: das Muster, umso dunkler, je mehr es wert ist, eine Stelle ganz zu zeigen
interest-title = Was Octavo in „{ $face }“ sieht
interest-lead = Octavo sucht die Bilder eines Musters selbst, auf diesem Rechner, aus nichts als seinen Bildpunkten. Die Schnitte liegen so, dass so viele Bilder wie möglich ganz bleiben; was Sie selbst anzeichnen, zählt mehr als alles hier.
interest-alt = „{ $face }“, dunkel, wo es darauf ankommt; { $count ->
    [one] ein Bild hat einen Rahmen
   *[other] { $count } Bilder haben Rahmen
 }
interest-key = Je dunkler, desto mehr lohnt es, die Stelle ganz zu zeigen. Rahmen: gefundene Bilder mit ihrer Nummer.
interest-found = { $count ->
    [0] Kein Bild
    [one] Ein Bild
   *[other] { $count } Bilder
}
interest-none = Nichts hebt sich als Bild von 25 mm (1 in) oder mehr ab: Ein solches Muster darf überall geschnitten werden.
interest-picture = { $width } × { $height }, { $left } von links, { $top } von oben: { $weight } von 10 wert.
interest-reasons = Kanten { $edge } %, eigene Farben { $distinct } %, Bild { $motif } %.
interest-keep = Soll ganz bleiben
interest-why = Warum das so ist
interest-sum = Dreierlei wird in jedem Teilstrich des Bogens betrachtet und zusammengezählt: Kanten zählen drei Zehntel, eigene Farben drei Zehntel, Bilder vier Zehntel.
interest-edge = Kanten
interest-edge-what = Hier ist etwas gezeichnet: Die Farben wechseln schnell von Punkt zu Punkt.
interest-distinct = Eigene Farben
interest-distinct-what = Diese Farben sind weit von denen, die den größten Teil des Bogens bedecken.
interest-motif = Bilder
interest-motif-what = Punkte, die zusammenhängen und kein Grund sind; große Flecken in eigenen Farben zählen am meisten.
interest-collage = Diese Seite wird auf ihren gedruckten Linien geschnitten: Danach wird nicht gesehen.
interest-even = Diese Seite ist überall gleich: Danach wird nicht gesehen.
interest-plain = Auf der Seite Schnittplan steht, dass nach den Mustern nicht gesehen wird: Bis Sie das dort ändern, folgt hieraus nichts.
interest-unseen = Diese Seite ist jetzt auf keiner Karte zu sehen: Bis sie es ist, folgt hieraus nichts.
interest-mark = Selbst Stellen anzeichnen
regions-interest = Was Octavo in „{ $face }“ von selbst sieht
