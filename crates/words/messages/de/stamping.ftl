### Stamped greetings: where they come, and what hands do to them.

## Stempeln

page-stamping-title = Die Sprüche stempeln
page-stamping-lead = Legen Sie jedes Teil in die Ecke seines Anlegewinkels (bei den Vorlagen), stempeln Sie, und nehmen Sie das nächste: So kommen die Worte jedes Mal an dieselbe Stelle. Lassen Sie die Farbe trocknen, bevor Sie die Teile stapeln.
page-stamping-lead-several = Stempeln Sie in dieser Reihenfolge: helle Farben vor dunklen, jeder Stempel einmal zur Hand. Legen Sie jedes Teil in die Ecke seines Anlegewinkels (bei den Vorlagen), stempeln Sie, und nehmen Sie das nächste: So kommen die Worte jedes Mal an dieselbe Stelle. Reinigen Sie den Stempel vor der nächsten Farbe, und lassen Sie die Teile trocknen, bevor Sie sie stapeln.
page-stamping-head = „{ $words }“ auf Streifen von { $strip }
page-stamping-head-piece = „{ $words }“ auf jedes Teil „{ $piece }“ von { $strip }
page-stamping-print = Muster { $letter }, „{ $face }“
page-stamping-alt = Ein Teil mit seinen Maßen: { $head }
page-stamping-weight = Wo die Farbe im Gleichgewicht ist, kommt in die Mitte: { $left } bleiben links frei und { $right } rechts, { $above } darüber und { $below } darunter.
page-stamping-middle = In der Mitte, nach der Farbe gemessen: { $left } bleiben links frei und { $right } rechts, { $above } darüber und { $below } darunter.
page-stamping-where = Nach der Farbe gemessen: { $left } bleiben links frei und { $right } rechts, { $above } darüber und { $below } darunter.
page-stamping-over = Die Worte ragen um { $over } über die Kante. Nehmen Sie ein größeres Teil oder einen kleineren Stempel.
page-stamping-edges = Die Kanten des Stempels selbst (gepunktet) liegen { $left } { $left-way ->
    [beyond] außerhalb
   *[inside] innerhalb
} der linken Kante des Teils und { $above } { $above-way ->
    [beyond] über
   *[inside] unter
} seiner oberen Kante.
page-stamping-of = { $count } aus { $stock }
page-stamping-count = { $count ->
    [one] { $count } Abdruck
   *[other] { $count } Abdrücke
}: { $stocks }. Probieren Sie es zuerst auf einem Reststück.
page-stamping-tilt = Um 1° gedreht, liegt ein Ende der Worte { $rise } höher als das andere; bis { $degrees }° bleiben an jeder Kante { $clear } frei.
page-stamping-tilt-free = Um 1° gedreht, liegt ein Ende der Worte { $rise } höher als das andere; für jede Neigung ist Platz.
page-stamping-tilt-tight = Um 1° gedreht, liegt ein Ende der Worte { $rise } höher als das andere; selbst bei geraden Worten bleiben weniger als { $clear } frei.

## Die Seite und der Befehl

background-title = Von Hand gestempelt
background-lead = Hintergrundpapier, gleichmäßig verteilt und nach Anleitung gestempelt; Sprüche mitten auf ihren Streifen oder Auflegern, gerade und alle gleich, und in welcher Reihenfolge gestempelt wird.
background-caution = Lösemittelhaltige Farben, Reiniger und Alkoholmarker dünsten aus: Öffnen Sie ein Fenster, halten Sie sie von Flammen und Heißluftgeräten fern, schließen Sie die Kappen, und beachten Sie das Etikett. Kinder, Schwangere und Menschen mit Asthma nehmen Farben auf Wasserbasis.
background-caution-heat = Ein Heißluftgerät bläst Luft, die Haut verbrennt und Papier versengt: Halten Sie den Bogen mit einer Zange, halten Sie Alkohol und Lösemittel fern, lassen Sie die Düse auf einem Ständer abkühlen, und lassen Sie es nie unbeaufsichtigt eingesteckt.
greetings-none = Keine Karte dieses Projekts hat einen gestempelten Spruch.
greetings-jigs = Die Anlegewinkel in wahrer Größe, bei den Vorlagen (PDF)
greetings-grow = { $recipe }: { $layer } misst { $from }; der Spruch braucht { $to }.
greetings-grow-all = { $count ->
    [one] Dieses Teil groß genug machen
   *[other] Diese { $count } Teile groß genug machen
}
greetings-change = Sprüche, Stempel und Teile ändern
greetings-new = Noch ein Spruch
greetings-new-add = Hinzufügen
greetings-picture = Ein Bild von seinem Abdruck
greetings-picture-wide = Wie breit das ganze Bild in Wahrheit ist
greetings-picture-take = Farbe und Größe aus dem Bild nehmen
greetings-outline = Oder seine Ecken
greetings-on = Gestempelt mit
greetings-on-none = keinem Spruch
greetings-its-middle = Seine Mitte
greetings-middle-ends = halbwegs zwischen den Enden seiner Farbe
greetings-middle-weight = wo seine Farbe im Gleichgewicht ist
greetings-bad-wide = Wie breit ist das ganze Bild in Wahrheit? Von 3 mm bis 40 in, etwa 76 mm oder 3 in.
greetings-needs-words = Schreiben Sie die Worte des Spruchs und die Größe seiner Farbe.
edit-greeting-added = Spruch „{ $words }“ hinzugefügt
edit-greeting-pictured = ein Spruch nimmt seine Farbe aus einem Bild
greetings-how = Messen Sie die Farbe und nicht den Klotz: Stempeln Sie einmal auf ein Reststück, und messen Sie den Abdruck. Ist der Stempel größer als seine Farbe, so nennen Sie seine eigene Größe und wie weit innen die Farbe beginnt, so wie er druckt; „octavo greetings --stamp BILD --wide 76mm“ misst ein Bild davon.
greetings-words = Worte
greetings-inked = Farbe, Breite x Höhe
greetings-ink = Farbton
greetings-stamp-size = Stempel, Breite x Höhe
greetings-stamp-left = Von seiner linken Kante bis zur Farbe
greetings-stamp-top = Von seiner oberen Kante bis zur Farbe
greetings-strip = Größe, Breite x Höhe
greetings-at = Wohin die Worte kommen
greetings-border = Von der Kante bis zu den Worten
spot-middle = in die Mitte
spot-left-third = auf das linke Drittel
spot-right-third = auf das rechte Drittel
spot-upper-third = auf das obere Drittel
spot-lower-third = auf das untere Drittel
spot-upper-left-third = auf das obere linke Drittel
spot-upper-right-third = auf das obere rechte Drittel
spot-lower-left-third = auf das untere linke Drittel
spot-lower-right-third = auf das untere rechte Drittel
spot-left = an die linke Kante
spot-right = an die rechte Kante
spot-top = an die obere Kante
spot-bottom = an die untere Kante
spot-top-left = in die obere linke Ecke
spot-top-right = in die obere rechte Ecke
spot-bottom-left = in die untere linke Ecke
spot-bottom-right = in die untere rechte Ecke

help-greetings = Sagen, wohin jeder Spruch auf seinem Streifen oder Aufleger kommt und in welcher Reihenfolge gestempelt wird, oder einen Stempel messen
    .fit = Das Projekt in diese neue Datei schreiben, jedes Teil groß genug für seinen Spruch
    .stamp = Ein Bild vom Abdruck eines Stempels auf hellem oder durchsichtigem Grund: JPEG, PNG oder WebP; seine Farbe wird gemessen
    .wide = Wie breit das ganze Bild in Wahrheit ist, etwa 76mm oder 3in
    .json = Die Stellen als JSON ausgeben
    .examples =
        Beispiele:
          octavo greetings --demo
          octavo greetings meine-karten.toml --fit meine-karten-passend.toml
          octavo greetings --stamp mit-dank.png --wide 76mm
greetings-fit-already = Jedes Teil ist groß genug für seinen Spruch; es wurde nichts geschrieben.
greetings-grown = { $recipe }: { $layer } wuchs von { $from } auf { $to }.
greetings-written = Geschrieben: { $path }
greetings-measured = Setzen Sie dies in Ihre Projektdatei, und legen Sie das Bild daneben:
refused-stamp-wide = wie breit das Bild in Wahrheit ist, von 3 mm bis 40 in, etwa `76mm` oder `3in`
refused-stamp-empty = keine Farbe in `{ $path }`: nichts ist dunkler als sein Grund
    .remedy = stempeln Sie mit dunkler Farbe auf weißes Papier, und nehmen Sie das Bild aus der Nähe auf
