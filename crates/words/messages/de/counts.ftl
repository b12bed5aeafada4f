### Gezähltes. Von jedem Raum gebraucht, der spricht.
###
### Die Wörter dieser Übersetzung; ein Ding, ein Wort. Leserin und Leser werden mit Sie angesprochen.
### Überschriften von Arbeitsschritten und Knöpfe stehen im Infinitiv.
### Namen, die aus dem Projekt kommen, stehen in Sätzen in „…“: Ihr Geschlecht ist nicht bekannt.
###
### base            Grundkarte (auch offen, beim Schneiden)
### mat             Mattung
### panel           Aufleger
### band            Querstreifen
### strip           Streifen
### greeting strip  Spruchstreifen
### greeting        Spruch
### inside sheet    Einlegeblatt
### ribbon, bow     Band, Schleife
### foam square     Abstandspad
### tape            Klebeband
### envelope        Umschlag
### layer           Lage; wo eine einzelne gemeint ist: Teil
### piece           Teil
### border          Rand (was von der Lage darunter zu sehen ist)
### sheet           Bogen
### patterned paper Designpapier
### pack            Packung
### design          Design (ein bedruckter Bogen mit zwei Seiten)
### print           Muster
### side, face      Seite (Vorderseite, Rückseite)
### cardstock       Tonkarton
### collage sheet   Collagebogen
### printed panel   Bildfeld
### recipe          Kartenrezept
### batch           Serie
### set             Set
### kit, seat       Materialsatz, Platz
### spare           Ersatz, Ersatzteil, Ersatzkarte
### layout          Schnittplan
### plan            Plan (das Ganze)
### trimmer         Papierschneider
### stop, setting   Anschlag, Einstellung (am Anschlag)
### cut, stroke     Schnitt, Zug (der Klinge)
### turn            Drehung
### score, fold     falzen und Falzlinie, falten und Faltung
### grain           Laufrichtung
### rest            Rest (was nach dem letzten Schnitt bleibt)
### offcut, waste   Reststück, Abfall
### left over       übrig
### mark            Teilung, Teilstrich (des Lineals)
### range           Spanne
### pin             Nadel, feststecken
### partner         Partner
### jig, gauge      Anlegewinkel, Falzlehre
### template        Vorlage
### finding         Hinweis
### step            Schritt
### spoiled         misslungen
### workroom        Werkstatt
### class           Kurs
### supply          Material
### background      Hintergrund (selbst gestempelt)
### stamp, motif    Stempel, Motiv
### impression      Abdruck
### inking          Einfärben
### marker          Filzstift

count-sheets = { $count ->
    [one] { $count } Bogen
   *[other] { $count } Bögen
}
count-cards = { $count ->
    [one] { $count } Karte
   *[other] { $count } Karten
}
