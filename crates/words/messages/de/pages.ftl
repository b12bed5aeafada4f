### Texte auf den gezeichneten Seiten.

page-number = Seite { $number } von { $count }

## Fertige Karten

page-card-alt = Eine fertige Karte, { $recipe }, im Muster { $letter }, { $name }
page-card-alt-words = Eine fertige Karte, { $recipe }, im Muster { $letter }, { $name }, mit dem Spruch „{ $words }“
page-more-cards = Weitere fertige Karten
page-batch-cards = { $name }: { $count ->
    [one] eine fertige Karte
   *[other] { $count } fertige Karten
}
page-of-batch = { $title } · { $name }
page-no-cards = Dieser Plan ergibt noch keine Karten. Sehen Sie die Hinweise auf der letzten Seite an.
page-caption-count = { $count ->
    [one] { $count } Karte
   *[other] { $count } Karten
}
page-caption-mat = auf { $name }
page-caption-partner = Querstreifen { $letter }
page-fact-cards = { $count ->
    [one] fertige Karte
   *[other] fertige Karten
}
page-fact-sheets = { $count ->
    [one] Bogen Designpapier
   *[other] Bögen Designpapier
}
page-fact-finished = { $unit ->
    [in] Zoll
   *[other] { $unit }
}, fertige Größe
page-fact-settings = { $count ->
    [one] Einstellung
   *[other] Einstellungen
}, { $cuts ->
    [one] { $cuts } Schnitt
   *[other] { $cuts } Schnitte
} je Bogen

## Der Bogen Designpapier

page-sheet-title = So wird jeder Bogen Designpapier geschnitten
page-sheet-title-numbered = Designpapier, Schnittplan { $number }
page-sheet-lead = { $pack }, { $size }. So { $sheets ->
    [one] wird 1 Bogen
   *[other] werden { $sheets } Bögen
} geschnitten; jeder ergibt { $cards ->
    [one] 1 Karte
   *[other] { $cards } Karten
}. Der Pfeil zeigt, wo oben ist.
page-sheet-alt = Schnittplan { $number } auf einem Bogen von { $size }. { $pieces }.
page-sheet-key = Durchgezogene Linien: schneiden. Schräge Linien: bleibt übrig. Gekreuzte Linien: unbrauchbare Kante. Schreiben Sie mit Bleistift auf die Rückseite jedes Teils zuerst den Buchstaben seines Musters, dann die Nummer.
page-sheet-key-whole = Durchgezogene Linien: schneiden. Nichts bleibt übrig. Schreiben Sie mit Bleistift auf die Rückseite jedes Teils zuerst den Buchstaben seines Musters, dann die Nummer.
page-sheet-use = { $letter }: { $count ->
    [one] 1 Bogen
   *[other] { $count } Bögen
}
page-piece-kind = { $name }, { $size }, { $count } auf jedem Bogen
page-sheet-first = Messen Sie einen Bogen, bevor Sie den Anschlag einstellen: Papier fällt verschieden aus, und feuchtes Papier dehnt sich. Machen Sie eine Karte ganz fertig, bevor Sie die übrigen schneiden.

page-placed-plain = In schlichter Reihenfolge: { $whole } von { $pictures } Bildern auf einem Teil.
page-placed-now = So wird geschnitten: { $whole } von { $pictures } Bildern auf einem Teil.
page-placed-print = Muster { $letter }.

## Das Papier und seine Farben

page-colored-title = Das Papier und seine Farben
page-colored-lead = Jedes Muster, sein Oben nach oben, mit seinen Farben nach ihrem Anteil an der Fläche, und was ihm am nächsten ist. Ein Pfeil zeigt sein Oben; zwei Pfeile: aufrecht oder kopfüber, nicht quer. Die Zahlen sind ΔE₀₀: Unter 1 sieht es niemand, über 10 ist es eine andere Farbe.
page-colored-screen = Farben eines Bildschirms, einer Kamera oder einer gedruckten Seite sind nicht die des Papiers. Halten Sie den Bogen selbst bei Tageslicht an Tonkarton, Band und Stempelfarbe, bevor Sie schneiden.
page-colored-front = Vorderseite
page-colored-back = Rückseite
page-colored-goes-on = { $heading } (Fortsetzung)
page-colored-face = { $side }: { $name }
page-colored-unseen = { $side }, { $name }: auf diesen Karten nicht zu sehen.
page-colored-cardstock = Nächster Tonkarton: „{ $name }“, { $near } (ΔE { $delta })
page-colored-ribbon = Nächstes Band: „{ $name }“, { $near } (ΔE { $delta })
page-colored-ink = Nächste Stempelfarbe: die von „{ $name }“, { $near } (ΔE { $delta })
page-colored-alt = { $title }, { $way }. Farben nach Anteil: { $colors }

## Schneideschritte

page-steps-title = Schnitt für Schnitt
page-steps-title-numbered = Schnittplan { $number }, Schnitt für Schnitt
page-steps-lead = Der dunkle Balken ist der Anschlag; dicke Linien sind Schnitte; der Pfeil zeigt, wo beim Muster oben ist. { $sheets ->
    [one] Ein Bogen
   *[other] { $sheets } Bögen
}, { $cuts ->
    [one] { $cuts } Schnitt
   *[other] { $cuts } Schnitte
} auf jedem, zusammen { $strokes ->
    [one] { $strokes } Zug
   *[other] { $strokes } Züge
} der Klinge.
page-steps-as = Geschnitten wird wie bei Schnittplan { $number }: Folgen Sie den Schritten dort.
page-steps-right = Der Anschlag liegt links von der Klinge: Die rechte Hand schneidet, die linke hält das Papier fest.
page-steps-left = Für die linke Hand: Drehen Sie den Papierschneider so, dass der Anschlag rechts von der Klinge liegt. Die linke Hand schneidet, die rechte hält das Papier fest. Die Teile bleiben gleich.
page-step-set = Anschlag auf { $length } stellen
page-step-stays = Anschlag auf { $length } lassen
page-step-take-sheet = Nehmen Sie einen ganzen Bogen{ $turn ->
    [right] {" "}und drehen Sie ihn um eine Vierteldrehung nach rechts.
    [left] {" "}und drehen Sie ihn um eine Vierteldrehung nach links.
    [half] {" "}und drehen Sie ihn halb herum.
   *[none] , aufrecht.
}
page-step-take-parts = Nehmen Sie { $count ->
    [one] das getönte Teil
   *[other] die { $count } getönten Teile
}{ $turn ->
    [right] , um eine Vierteldrehung nach rechts gedreht.
    [left] , um eine Vierteldrehung nach links gedreht.
    [half] , halb herum gedreht.
   *[none] , ohne Drehung.
}
page-step-cuts = { $count ->
    [one] Schneiden Sie { $parts ->
        [one] einmal.
       *[other] jedes Teil einmal.
    }
   *[other] Schneiden Sie { $parts ->
        [one] { $count }-mal
       *[other] jedes Teil { $count }-mal
    }, und schieben Sie das Papier jedes Mal an den Anschlag.
}
page-step-rest = Der Rest ist { $length }.
page-step-rest-waste = Der Rest, { $length }, wird nicht gebraucht.
page-step-rest-edge = Der Rest, { $length }, ist die unbrauchbare Kante.
page-step-stack = { $layers ->
    [1] Schneiden Sie einzeln
   *[other] Legen Sie je { $layers } übereinander
}: { $strokes ->
    [one] 1 Zug
   *[other] { $strokes } Züge
} für { $sheets ->
    [2] beide
   *[other] alle { $sheets }
} Bögen.
page-step-label = Fertig: { $marks }; schreiben Sie mit Bleistift { $count ->
    [one] die Nummer auf die Rückseite.
   *[other] die Nummern auf die Rückseiten.
}
page-step-label-letter = Fertig: { $marks }; schreiben Sie mit Bleistift { $count ->
    [one] den Buchstaben des Musters und die Nummer auf die Rückseite
   *[other] auf jede Rückseite den Buchstaben des Musters und die Nummer
}, zum Beispiel { $such }.
page-step-stock = „{ $name }“, { $count ->
    [one] 1 Bogen
   *[other] { $count } Bögen
}.
page-step-score = Bei { $length } von { $side ->
    [top] oben
   *[left] links
} falzen.
page-step-score-parts = { $strokes ->
    [one] Eine Linie
   *[other] { $strokes } Linien
} zu falzen, auf: { $marks }.
page-step-short = { $turn ->
    [right] Vierteldrehung nach rechts.{" "}
    [left] Vierteldrehung nach links.{" "}
    [half] Halb herum drehen.{" "}
   *[none] {""}
}{ $same ->
    [yes] Anschlag auf { $length } lassen.
   *[no] Anschlag auf { $length }.
} { $count ->
    [one] { $parts ->
        [one] Einmal schneiden.
       *[other] { $parts } Teile je einmal schneiden.
    }
   *[other] { $parts ->
        [one] { $count }-mal schneiden.
       *[other] { $parts } Teile je { $count }-mal schneiden.
    }
}
page-step-long = Vorsicht: Dieser Schnitt ist { $length } lang, länger als der Papierschneider. Zeichnen Sie ihn an beiden Enden an, und schneiden Sie von beiden Seiten.
page-step-narrow = Vorsicht: Ein schmaler Streifen fällt ab. Halten Sie den breiten Teil, { $length }, nie den Streifen.
page-step-narrow-rest = Vorsicht: Der Rest ist nur { $length }. Halten Sie ihn mit einem Lineal fest, nicht mit den Fingern.
page-step-map = Stelle
page-step-alt = Schritt { $number }: { $head }

## Was zu schneiden ist

page-needs-title = Was zu schneiden und bereitzulegen ist
page-needs-piece = Teil
page-needs-size = Größe
page-needs-from = Farbe oder Muster
page-needs-count = Wie viele
page-needs-what = Was
page-needs-how = Näheres
page-needs-base = Grundkarte
page-needs-inside = Einlegeblatt
page-needs-prints = { $name }, Muster { $letters }
page-needs-scored = { $size }, gefalzt bei { $at } von { $side ->
    [top] oben
   *[left] links
}
page-needs-small = Kleinmaterial
page-needs-ribbon-name = { $name }, { $width } breit
page-needs-ribbon = { $length }, { $each } für jede Karte
page-needs-spools = { $count ->
    [one] 1 Spule
   *[other] { $count } Spulen
}
page-needs-rolls = { $count ->
    [one] 1 Rolle
   *[other] { $count } Rollen
}
page-needs-packs = { $count ->
    [one] 1 Packung
   *[other] { $count } Packungen
}
page-needs-strips = Streifen zum Stempeln
page-needs-foam = Abstandspads
page-needs-envelopes = Umschläge
page-cost-title = Verbrauchtes Material
page-cost-what = Was
page-cost-date = Preis vom
page-cost-used = Verbraucht
page-cost-unknown = unbekannt
page-cost-total = Zusammen
page-cost-each = Für jede Karte
page-cost-at-least = mindestens { $amount }

## Tonkarton

page-stock-title = Tonkarton, Bogen für Bogen
page-stock-lead = Durchgezogene Linien werden geschnitten, gestrichelte gefalzt; was schräge Linien hat, bleibt übrig: Heben Sie es für Anhänger auf.
page-stock-edges = Gekreuzte Linien sind eine unbrauchbare Kante: Schneiden Sie sie zuerst ab.
page-stock-color = { $name }: { $count ->
    [one] 1 Bogen
   *[other] { $count } Bögen
}
page-stock-best = Kein Plan kommt mit weniger Bögen aus.
page-stock-found = Der beste Plan, der gefunden wurde; der Fläche nach { $bound ->
    [one] ist mindestens 1 Bogen
   *[other] sind mindestens { $bound } Bögen
} nötig.
page-stock-stopped = Nicht zu Ende gerechnet: Prüfen Sie die Zahlen, bevor Sie einkaufen.
page-stock-times = So { $count ->
    [one] wird 1 Bogen
   *[other] werden { $count } Bögen
} geschnitten
page-stock-piece = { $marks }: { $name }, { $size }
page-stock-alt = Ein Bogen Tonkarton, { $size }, geschnitten in { $count ->
    [one] 1 Teil
   *[other] { $count } Teile
}

## Bevor Sie anfangen

page-before-title = Gut zu wissen
page-findings-title = Was aufgefallen ist
page-findings-none = Es ist nichts aufgefallen, worum Sie sich kümmern müssten.
page-finding-serious = Muss geändert werden
page-finding-warning = Sehen Sie hier nach
page-finding-note = Hinweis
page-finding-ways = Eines davon hilft:
page-finding-layout = Schnittplan { $number }
page-rule-title = Den Drucker prüfen
page-rule-square = 1 Zoll
page-rule-square-alt = Ein Quadrat von genau einem Zoll
page-rule-inches = 4 Zoll
page-rule-mm = 100 mm
page-cautions-cutting = Achten Sie auf Ihre Finger
page-supply = { $key ->
    [tape] Klebeband
    [foam] Abstandspads
    [envelopes] Umschläge
    [ink-pad] Stempelkissen
    [stamps] Stempel
   *[own] { $name }
}
page-label-more = … und { $count } mehr: siehe die Inhaltsliste.
page-cautions-title = Vorsicht

page-caution-blade = In jedem Papierschneider steckt eine scharfe Klinge. Schließen oder sperren Sie sie, wenn sie nicht schneidet. Zum Wechseln der Klinge nehmen Sie den Streifen von der Schiene, und wickeln Sie die alte Klinge ein, bevor sie weggeworfen wird.
page-caution-lever = Ein Hebelschneider kann eine Fingerkuppe abtrennen. Immer nur eine Person, Schutz angebracht, Hebel eingerastet, wenn er nicht gebraucht wird; Kinder heben ihn nie an.
page-caution-strips = Halten Sie einen schmalen Streifen nie mit der Hand nahe der Klinge: Schneiden Sie ihn zuletzt, von einem Stück, das Sie sicher halten können.
page-caution-stack = Ein Stapel, der dicker ist, als der Schneider verträgt, verrutscht und kann die Klinge ausschlagen lassen. Die Anleitung des Schneiders geht den Stapelhöhen hier vor.
page-caution-knife = Mit dem Bastelmesser: ein Metalllineal mit erhöhter Kante, eine Schneidematte, eine frische Klinge, und die Klinge weg von der Hand, die hält.
page-caution-sample = Machen Sie eine Karte ganz fertig, bevor Sie die Serie schneiden.
page-caution-paper = Papiergrößen schwanken um ein, zwei Millimeter, Blöcke können einen bedruckten Streifen haben, und feuchtes Papier dehnt sich quer zur Laufrichtung. Messen Sie einen Bogen.
page-caution-colors = Farben auf einem Bildschirm oder einer gedruckten Seite sind nur Anhaltspunkte. Vergleichen Sie Papier, Tonkarton und Stempelfarbe bei Tageslicht, bevor Sie für eine Serie einkaufen.
page-caution-heat = Heißluftgeräte blasen Luft, die heiß genug ist, um Haut zu verbrennen und Papier anzusengen oder anzuzünden. Halten Sie die Karte mit einer Zange, halten Sie Band, Alkohol und Lösungsmittel fern, lassen Sie die Düse auf einem Ständer abkühlen, und lassen Sie das Gerät nie unbeaufsichtigt eingesteckt.
page-caution-solvent = Lösungsmittelhaltige Stempelfarben und Reiniger sowie Alkoholmarker geben Dämpfe ab: Öffnen Sie ein Fenster, halten Sie sie von Flammen und Heißluftgeräten fern, schließen Sie die Kappen, lesen Sie das Etikett. Kinder, Schwangere und Menschen mit Asthma sollten Stempelfarbe auf Wasserbasis nehmen.
page-caution-glue = Heißkleber verbrennt die Haut. Sprühkleber, loser Glitter und Embossingpulver schweben in der Luft: Arbeiten Sie nah an der Unterlage, in einem gelüfteten Raum, nicht bei Lebensmitteln.
page-caution-children = Eine Karte für ein Kind unter 3 Jahren sollte nichts tragen, was sich abreißen und verschlucken lässt. Sind Kinder im Raum, schneidet und erhitzt ein Erwachsener oder sieht dabei zu.
page-caution-ribbon = Lange Bänder und Kordeln gehören an nichts, was in der Nähe eines Säuglings hängt.
page-caution-post = Messen und wiegen Sie eine fertige Karte im geschlossenen Umschlag, und fragen Sie am Postschalter, bevor die Serie verschickt wird: Schleifen, Abstandspads und dicke Lagen kosten oft mehr, und Grenzen ändern sich.
page-caution-rights = Designpapier, Stempelmotive und Verse sind Werke anderer. Ob Sie damit verkaufen oder unterrichten dürfen, hängt von den Bedingungen der Urheber und vom Recht Ihres Landes ab. Das ist keine Rechtsberatung.
page-caution-scale = Drucken Sie diese Seite mit 100 % („tatsächliche Größe“), und messen Sie das Quadrat und die Linien, bevor Sie gutes Papier schneiden.
page-caution-costs = Die Kosten rechnen mit den Preisen, die Sie eingetragen haben, vom jeweiligen Tag; Porto, Gebühren und Steuern sind nur dabei, wenn Sie sie eingetragen haben.

## Maße in anderen Ausgaben

page-edition-mm = Die Maße stehen hier in Millimetern, auf halbe genau; wo das nicht ganz stimmt, steht „etwa“ oder ≈. Geplant wurde das Projekt in Zoll, und die Teile sind dieselben.
page-edition-inches = Die Maße stehen hier in Zoll, auf Sechzehntel genau; wo das nicht ganz stimmt, steht „etwa“ oder ≈. Geplant wurde das Projekt in Millimetern, und die Teile sind dieselben.
page-about = etwa { $measure }
page-length-words = { $length } ({ $words })
page-size-words = { $size } ({ $width } mal { $height })
page-fraction-after = { $whole } und { $fraction }
page-fraction = { $under ->
    [2] ein halb
    [4] { $over ->
        [1] ein Viertel
       *[other] drei Viertel
    }
    [8] { $over ->
        [1] ein Achtel
       *[other] { $count } Achtel
    }
    [16] { $over ->
        [1] ein Sechzehntel
       *[other] { $count } Sechzehntel
    }
    [32] { $over ->
        [1] ein Zweiunddreißigstel
       *[other] { $count } Zweiunddreißigstel
    }
   *[other] { $over ->
        [1] ein Vierundsechzigstel
       *[other] { $count } Vierundsechzigstel
    }
}
page-number-words = { $number ->
    [0] null
    [1] eins
    [2] zwei
    [3] drei
    [4] vier
    [5] fünf
    [6] sechs
    [7] sieben
    [8] acht
    [9] neun
    [10] zehn
    [11] elf
    [12] zwölf
    [13] dreizehn
    [14] vierzehn
    [15] fünfzehn
    [16] sechzehn
    [17] siebzehn
    [18] achtzehn
    [19] neunzehn
    [20] zwanzig
    [21] einundzwanzig
    [22] zweiundzwanzig
    [23] dreiundzwanzig
    [24] vierundzwanzig
    [25] fünfundzwanzig
    [26] sechsundzwanzig
    [27] siebenundzwanzig
    [28] achtundzwanzig
    [29] neunundzwanzig
    [30] dreißig
    [31] einunddreißig
   *[other] { $number }
}

## Eine Karte zusammensetzen

page-assembly-title = Eine Karte zusammensetzen
page-assembly-title-named = Eine Karte zusammensetzen: { $name }
page-assembly-lead = Die Lagen in der Reihenfolge, in der sie liegen, die Grundkarte zuerst. Ein gestrichelter Rahmen zeigt, wohin die nächste kommt; der blasse Rahmen ist die Kante der Karte.
page-assembly-alt = Die Lagen auseinandergezogen, von der Grundkarte nach oben: { $layers }
page-assembly-print = Muster { $letter }
page-assembly-borders = Die Ränder
page-assembly-left = { $length } „{ $below }“ links neben „{ $name }“
page-assembly-steps = Ein Handgriff nach dem anderen
page-border-round = Ringsum sieht man { $length } von „{ $below }“.
page-border-each = { $sides }; oben sieht man { $top } davon, unten { $bottom }.
page-border-flush = An den Seiten bündig mit „{ $below }“
page-border-even = Links und rechts sieht man { $length } von „{ $below }“
page-border-sides = Von „{ $below }“ sieht man links { $left }, rechts { $right }
page-act-stamp = Stempeln Sie „{ $words }“ mitten auf jedes Teil „{ $name }“. Lassen Sie links und rechts { $margin } frei. Probieren Sie es zuerst auf einem Reststück; der Anlegewinkel bei den Vorlagen hilft.
page-act-stamp-at = Stempeln Sie „{ $words }“ auf jedes Teil „{ $name }“: Die Farbe beginnt { $margin } von der linken Kante und { $above } von der oberen. Probieren Sie es zuerst auf einem Reststück; der Anlegewinkel bei den Vorlagen hilft.
page-act-flat = Legen Sie die Grundkarte so vor sich, wie sie gelesen wird.
page-act-fold = Falten Sie die Grundkarte an der Falzlinie, und streichen Sie die Faltung mit einem Falzbein glatt.
page-act-folds = Falten Sie die Grundkarte an beiden Falzlinien, und streichen Sie die Faltungen mit einem Falzbein glatt.
page-act-glue = Kleben Sie „{ $name }“ auf „{ $below }“.
page-act-foam = Kleben Sie { $count ->
    [one] ein Abstandspad
   *[other] { $count } Abstandspads
} unter „{ $name }“, und setzen Sie es auf „{ $below }“.
page-act-ribbon = Legen Sie „{ $name }“ quer über alles, was bis jetzt geklebt ist.
page-act-ribbon-ends = Schlagen Sie die Enden von „{ $name }“ nach hinten um, und befestigen Sie sie dort mit Klebeband.
page-act-bow-right = Binden Sie die Schleife: eine Schlaufe in jede Hand, die rechte über die linke, darunter durch und festziehen.
page-act-bow-left = Binden Sie die Schleife: eine Schlaufe in jede Hand, die linke über die rechte, darunter durch und festziehen.
page-act-inside = Kleben Sie das Einlegeblatt entlang seiner Faltung in die Karte.
page-act-press = Wischen Sie ausgetretenen Klebstoff ab, und lassen Sie die Karte unter einem Buch trocknen.

## Farben, andere Größen, Notizen

page-colors-title = Die Farben, jede mit Buchstaben und Schraffur
page-others-title = Wenn Ihr Papier eine andere Größe hat
page-others-lead = Wie viele Teile ein Bogen ergibt, wenn alle gleich geschnitten werden, nebeneinander, das Muster aufrecht. Für gemischte Teile machen Sie das Projekt noch einmal mit Ihrem Bogen.
page-others-sheet = Bogen
page-notes-title = Notizen
page-notes-lead = Ihre eigenen: was Sie geändert haben, was beim nächsten Mal anders wird.

## Vorlagen

page-template-true = Wahre Größe: mit 100 % („tatsächliche Größe“) drucken.
page-template-part = Wahre Größe, Teil { $number } von { $count }: Reihe { $row }, Spalte { $column }. Schneiden Sie von jedem Paar gestrichelter Linien an einer entlang, legen Sie die Kreuze aufeinander, und kleben Sie alles zusammen.
page-template-mm = 25 mm
page-template-mm-alt = Ein Quadrat von genau 25 Millimetern
page-template-check = Messen Sie das linke Quadrat, bevor Sie diese Seite benutzen. Ist es nicht { $measured }, machen Sie das Projekt noch einmal mit --square-measured und dem, was Sie gemessen haben.
page-template-corrected = Gezeichnet für einen Drucker, dessen Zoll { $measured } Zoll gemessen hat: Auf ihm ist das linke Quadrat jetzt 1 Zoll.
page-jig-title = Ein Anlegewinkel für „{ $words }“
page-jig-note = Drucken Sie ihn auf Tonkarton, schneiden Sie die zwei Laschen aus, und falten Sie sie an der dicken Ecke hoch; oder kleben Sie dort ein L aus Tonkarton fest. Legen Sie das leere Teil, { $strip }, hinein; der Spruch kommt in den gestrichelten Kasten, { $inked }: links { $side } und oben { $above } von der Ecke. Probieren Sie es einmal auf einem Reststück.
page-place-title = Wohin die Lagen kommen: { $name }
page-place-note = Der dicke Rahmen ist die Vorderseite der gefalteten Karte, { $size }. Legen Sie eine Karte darauf, oder halten Sie sie damit an ein Fenster, und zeichnen Sie die Ecken leicht an.
page-gauge-title = Falzlehre: { $name }
page-gauge-note = Legen Sie die Grundkarte, { $size }, mit der linken Kante an das linke Ende, und falzen Sie dort, wo die gestrichelte Linie ist.
page-gauge-note-top = Legen Sie die Grundkarte, { $size }, quer hin, mit der oberen Kante an das linke Ende, und falzen Sie dort, wo die gestrichelte Linie ist.
page-gauge-score = falzen bei { $length }
page-full-title = Schnittplan { $number } in voller Größe: { $pack }
page-full-note = Der ganze Bogen, { $size }, mit seinen Schnitten.

## Köpfe der Tabellen für ein Tabellenprogramm

csv-piece = Teil
csv-recipe = Kartenrezept
csv-width = Breite
csv-height = Höhe
csv-unit = Einheit
csv-from = aus
csv-face = Muster
csv-scored-at = gefalzt bei
csv-how-many = wie viele
csv-color = Farbe
csv-sheets = Bögen
csv-what = was
csv-which = Näheres
csv-amount = Menge
csv-paper = Designpapier
csv-ribbon = Band
## Was kleine Fehler bewirken

page-errors-title = Was kleine Fehler bewirken
page-errors-lead = Niemand schneidet aufs Haar genau. Hier steht jede Breite so, wie sie geplant ist, und so, wie sie übrig bleibt, wenn eines so weit danebengeht wie an den meisten Tischen: die Hand oder der Anschlag um { $hand }, ein Bogen um { $rise } auf { $run } aus dem Winkel, ein Muster um { $drift } neben seinem Platz. Der Pfeil zeigt auf den schmalsten Rand jeder Karte.
page-errors-said = Der schmalste Rand ({ $border }): { $planned } nach Plan. Liegt eine Einstellung des Anschlags daneben, ist er noch { $stop } breit. Liegen alle Schnitte und das Aufkleben zufällig daneben, { $share ->
    [0] hat weniger als eine von 100 Karten
    [one] hat eine von 100 Karten
   *[other] haben { $share } von 100 Karten
} dort oder gegenüber weniger als die Hälfte davon.
page-errors-named = { $layer }, { $edge ->
    [left] links
    [right] rechts
    [top] oben
   *[bottom] unten
}
page-errors-border = Rand
page-errors-planned = Geplant
page-errors-cuts = Alle Schnitte daneben
page-errors-stop = Anschlag daneben
page-errors-placed = Versetzt geklebt
page-errors-square = Aus dem Winkel
page-errors-drift = Muster versetzt
page-errors-gone = keiner
page-errors-rest-title = Wo der Rest liegt
page-errors-rest-well = Was am Ende einer Reihe bleibt, nimmt die Fehler aller ihrer Schnitte auf. Auf diesen Schnittplänen liegt es schon dort, wo man es am wenigsten sieht.
page-errors-rest = Auf Schnittplan { $layout } ist das Letzte einer Reihe { $on } und nimmt die Fehler aller ihrer Schnitte auf. Schneiden Sie stattdessen { $better } zuletzt: Dort sieht sie niemand.

### Wie die Muster verteilt werden.

page-shares-title = Wie die Muster verteilt werden
page-shares-large = Auf einer Karte liegt höchstens ein Muster mit großen Motiven.
page-shares-only = Nur diese kommen zusammen: { $pairs }.
page-shares-never = Diese kommen nie zusammen: { $pairs }.
page-shares-rule = { $apart ->
    [designs] Keine Karte hat zwei Teile aus einem Design
    [faces] Keine Karte zeigt dasselbe Muster zweimal
   *[nothing] Alle Muster dürfen zusammenkommen
}: Ein Teil, das aus einem anderen Bogen kommt, wird so vergeben, dass jedes Teil einmal gebraucht wird und alle Muster auf möglichst vielen Karten zu sehen sind.
page-shares-partners = Partner kommen zuerst zusammen: { $pairs }.
page-shares-pair = { $one } mit { $other }
page-shares-print = Muster
page-shares-all-used = { $layer }: { $most } ist auf { $most-cards } Karten zu sehen und { $fewest } auf { $fewest-cards }, weil alle Teile aus { $fewest } verbraucht sind.
page-shares-by-partner = { $layer }: { $most } ist auf { $most-cards } Karten zu sehen und { $fewest } auf { $fewest-cards }, weil Partner zuerst zusammenkommen.
page-shares-by-rule = { $layer }: { $most } ist auf { $most-cards } Karten zu sehen und { $fewest } auf { $fewest-cards }; mehr von { $fewest } träfe auf ein Teil aus dem eigenen Design.
page-kits-title = { $count ->
        [one] Ein Materialsatz
       *[other] { $count } Materialsätze
    }
page-kits-title-of = { page-kits-title } · { $batch }
page-kits-alike = Alle { $count } Materialsätze sind gleich.
page-kits-unlike = Die Karten gehen nicht gleichmäßig auf, deshalb unterscheiden sich die Materialsätze um eine Karte. Materialsätze, die nebeneinanderliegen, können tauschen, wo jeder hat, was dem anderen fehlt: { $swaps ->
        [0] keiner kann es.
        [one] ein Paar kann es.
       *[other] { $swaps } Paare können es.
    }
page-kits-each = In jedem Materialsatz
page-kits-these = Materialsatz { $numbers }
page-kits-card = Karte

light-shows = { $face }, zu sehen
light-behind = { $face }, dahinter
lost-base = Grundkarte
lost-inside = Einlegeblatt
page-quoted = „{ $words }“
page-envelope-title = Umschlag für { $names }
page-envelope-note = { $size } entlang der durchgezogenen Linien schneiden, die gestrichelten falzen, zuerst die Seitenklappen einschlagen, die untere Klappe daraufkleben. Falzen Sie erst einen, und probieren Sie eine fertige Karte darin.
page-envelope-face = Vorderseite { $size }
page-one-rest = Für das Übrige war auf einer Seite kein Platz: Die ganze Anleitung hat es.

page-every-card = Alle Karten
page-every-card-lead = Alle Karten, wie diese Schnitte sie ergeben, mit ihrer Nummer.
