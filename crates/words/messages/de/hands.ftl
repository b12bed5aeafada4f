### Was die Seiten sagen, wo Karten und Teile in die Hand genommen werden: getauscht, gewendet, misslungen, gemessen.

## Eine Karte und ihre Teile

batch-both = Beide Seiten aller Teile
batch-touch = Tippen Sie eine Karte an, um ihre Teile zu sehen, eins zu wenden oder mit einer anderen Karte zu tauschen.
batch-drag = Oder ziehen Sie ein Teil auf eine andere Karte: Die beiden tauschen die Plätze; mit dem Finger erst einen Augenblick halten. In der Reihe sind alle Karten zu sehen. Mit der Tastatur: Auf einer Karte nimmt die Leertaste ein Stück auf, noch einmal das nächste; Pfeiltasten tragen es, Eingabe legt es ab, Esc legt es zurück.
batch-line-up = Aufgereiht, klein
batch-lit-alt = Karte { $number }, { $recipe }. { $faces }
batch-faces = { $layer }: zu sehen ist { $shows }, dahinter { $behind }
batch-walk = Von Karte zu Karte
batch-before = Vorige Karte
batch-after = Nächste Karte
batch-close = Alle Karten
batch-piece = Teil { $mark }, aus Bogen { $sheet } von { $letter }
batch-shows = Zu sehen ist: { $face }
batch-behind = Dahinter: { $face }
batch-turn = Wenden
batch-rub-out = Es wurde gewendet: Radieren Sie den Bleistiftbuchstaben aus, der jetzt zu sehen ist.
batch-swap = Mit einer anderen Karte tauschen
batch-swap-title = Von welcher Karte soll Karte { $number } das Teil „{ $layer }“ bekommen?
batch-swap-lead = Tippen Sie eine Karte an: „{ $layer }“ von dort und von Karte { $number } tauschen die Plätze. Nichts wird neu geschnitten.
batch-swap-not = So lassen, wie es ist
batch-swap-with = Mit Karte { $number } tauschen
batch-swap-why = { $why ->
    [choice-same-card] diese Karte
    [choice-other-size] hat eine andere Größe
    [choice-same-print] ein Muster zweimal
    [choice-both-large] zwei große Muster
    [choice-same-ground] ein Grund zweimal
    [choice-never-together] Muster, die getrennt bleiben
    [choice-other-designs] das Kartenrezept nimmt das Muster nicht
   *[other] hat kein solches Teil
}
hold-taken = „{ $layer }“ von Karte { $card }. Blasse Karten können es nicht bekommen.
hold-may = Loslassen: Die Karten { $card } und { $with } tauschen „{ $layer }“. Nichts wird neu geschnitten.
batch-no-card = Schreiben Sie die Nummer einer Karte.
batch-chosen = Von Hand gewählt
batch-take-back = Zurücknehmen
batch-wish-all = Alle Karten
batch-even = { $why ->
    [same] Gleichmäßig verteilt: von jedem { $most }.
    [one] Gleichmäßig verteilt: von jedem { $fewest } oder { $most }.
    [used] Von { $fewest } ({ $of-fewest }) bis { $most } ({ $of-most }), Unterschied { $apart }: Alle Teile aus { $of-fewest } sind verbraucht.
    [partners] Von { $fewest } ({ $of-fewest }) bis { $most } ({ $of-most }), Unterschied { $apart }: Partner kommen zuerst zusammen.
   *[rule] Von { $fewest } ({ $of-fewest }) bis { $most } ({ $of-most }), Unterschied { $apart }: Mehr von { $of-fewest } träfe auf das eigene Muster.
}
batch-kits = { $count ->
    [one] { $count } Materialsatz
   *[other] { $count } Materialsätze
}: { $alike ->
    [yes] alle gleich.
   *[no] sie unterscheiden sich um eine Karte.
}

## Änderungen, wie sie aufbewahrt werden

edit-swapped = Karten { $card } und { $with } haben „{ $layer }“ getauscht
edit-turned = „{ $layer }“ von Karte { $card } gewendet, zu sehen ist die { $side ->
    [front] Vorderseite
   *[back] Rückseite
}
edit-recolored = „{ $layer }“ von Karte { $card } aus „{ $name }“ geschnitten
edit-swap = { $moved } Teile („{ $piece }“) haben eine andere Farbe: Das spart Packungen
edit-choice-back = Eine Wahl wurde zurückgenommen

## Ein misslungenes Teil

spoiled-title = Etwas misslungen?
spoiled-lead = Sagen Sie, welches Teil, und sehen Sie, wie wenig neu zu schneiden ist. Sonst ändert sich nichts, und es bleibt vermerkt, bis Sie es zurücknehmen.
spoiled-this = Es ist misslungen
spoiled-paper = Was mit Bleistift auf der Rückseite steht
spoiled-hint = zum Beispiel { $name }
spoiled-layout = Von Schnittplan
spoiled-stock = Oder ein Teil aus Tonkarton
spoiled-say = Dieses ist misslungen
spoiled-none = Bitte wählen
spoiled-name = { $kind ->
    [paper] { $name }, „{ $layer }“ von „{ $recipe }“, { $size }
   *[stock] { $stock }: „{ $name }“ von „{ $recipe }“, { $size }
}
spoiled-take = { $kind ->
    [spare] Nehmen Sie das Ersatzteil { $what }: Es ist schon geschnitten.
    [paper-rest] Schneiden Sie es aus dem, was ein Bogen { $what } auf Schnittplan { $layout } übrig lässt: ein Stück von { $size }.
    [stock-rest] Schneiden Sie es aus dem, was ein Bogen „{ $what }“ übrig lässt: ein Stück von { $size }.
    [earlier] Schneiden Sie es aus dem, was beim früheren Nachschneiden übrig blieb: ein Stück von { $size }.
    [paper-sheet] Nehmen Sie noch einen Bogen { $what }, { $size }.
   *[stock-sheet] Nehmen Sie noch einen Bogen „{ $what }“, { $size }.
}
spoiled-fewest = Mit weniger Bögen geht es nicht.
spoiled-missing = Es ist nichts mehr da, woraus es sich schneiden ließe. Machen Sie eine Karte weniger, oder nehmen Sie ein anderes Muster.
spoiled-steps = So wird es geschnitten
spoiled-take-back = Doch nicht misslungen
spoiled-cut = Es ist neu geschnitten
spoiled-not-cut = Doch noch nicht geschnitten
spoiled-is-cut = neu geschnitten
spoiled-stale = { $count ->
    [one] Ein misslungenes Teil gehört
   *[other] { $count } misslungene Teile gehören
} zu einem früheren Plan und { $count ->
    [one] zählt
   *[other] zählen
} in diesem nicht.
spoiled-unknown = Ein Teil { $name } gibt es nicht. Schreiben Sie, was mit Bleistift auf der Rückseite steht, einen Buchstaben und eine Nummer.
spoiled-several = { $name } gibt es auf den Schnittplänen { $layouts }. Sagen Sie, von welchem es stammt.
spoiled-empty = Sagen Sie, welches Teil es ist: Schreiben Sie den Buchstaben und die Nummer, die mit Bleistift auf der Rückseite stehen, oder wählen Sie ein Teil aus Tonkarton.
spoiled-other-plan = Dieses Teil gehört zu einem früheren Plan. Wählen Sie es noch einmal.
spoiled-followed = Es bleibt dabei: Eines, das nach ihm misslang, ist schon neu geschnitten, aus dem, was dieses übrig ließ. Nehmen Sie dort zuerst das Häkchen weg.

## Die erste Probe

sample-title = Zuerst eine Probe
sample-lead = Schneiden Sie einen Bogen und machen Sie eine Karte, bevor Sie die übrigen schneiden. Messen Sie ihre Teile und schreiben Sie auf, was das Lineal sagt: Bis 1/32 Zoll oder 1 mm macht es nichts.
sample-which = Welches Kartenrezept
sample-planned = geplant { $width } × { $height }
sample-width = Breite
sample-height = Höhe
sample-compare = Vergleichen
sample-plan = Den Rest mit diesen Größen planen
sample-unclear = { $layer }, { $side ->
    [width] Breite
   *[height] Höhe
}: „{ $typed }“ ist keine Länge. Schreiben Sie sie so: 3 1/16 oder 78 mm.
sample-fine = { $layer }, { $side ->
    [width] Breite
   *[height] Höhe
}: { $measured } ist in Ordnung.
sample-off = { $layer }, { $side ->
    [width] Breite
   *[height] Höhe
}: { $measured } statt { $planned }, { $by } { $more ->
    [yes] zu viel.
   *[no] zu wenig.
}
sample-setting = Wo der Anschlag auf { $setting } steht ({ $sheet }, Schritt { $steps }), stellen Sie ihn auf { $corrected }.
sample-rest = Es ist der Rest seiner Reihe ({ $sheet }): Er nimmt die Fehler der Schnitte davor auf. Messen Sie die Teile, die davor geschnitten wurden, und berichtigen Sie deren Einstellung.
sample-layout = Schnittplan { $number }
sample-fewer = Mit diesen Größen ergeben die Bögen { $now } Karten statt { $before }. Berichtigen Sie lieber die Einstellung, oder ändern Sie die Größen auf der Seite „Karten“.
