### Hinweise zu einem Plan: `finding-<code>`, die Abhilfe in `.remedy`; Tatsachen mit Namen.

finding-background-no-ink = Im Bild `{ $picture }` des Stempels „{ $stamp }“ wurde keine Farbe gefunden; „{ $background }“ ist so nicht zu stempeln.
    .remedy = Legen Sie das Bild neben die Projektdatei; sein Motiv muss dunkel auf hell sein oder deckend auf durchsichtig.
finding-background-no-outline = Der Stempel „{ $stamp }“ hat keinen Umriss; „{ $background }“ ist so nicht zu stempeln.
    .remedy = Geben Sie ihm eine Form, Ecken oder ein Bild.
finding-background-nothing-to-stamp = Von „{ $background }“ lässt sich so nichts stempeln.
    .remedy = Geben Sie wenigstens einem Stempel den Anteil 1 oder mehr.
finding-background-other-sheet = „{ $background }“ wird auf { $sheet-width } × { $sheet-height } gestempelt; Design { $design } zeigt es auf einem Bogen von { $width } × { $height }, von der linken oberen Ecke an.
    .remedy = Machen Sie beide Bögen gleich groß.
finding-background-short = { $placed } von { $wished } gewünschten Abdrücken haben auf „{ $background }“ Platz: Das ist der vollste Bogen, der bei diesem Abstand gefunden wurde.
    .remedy = Mit einem Abstand von { $gap } haben alle Platz; oder wünschen Sie { $placed }.
finding-background-short-at-any-gap = { $placed } von { $wished } gewünschten Abdrücken haben auf „{ $background }“ Platz: Das ist der vollste Bogen, der bei diesem Abstand gefunden wurde.
    .remedy = Auch mit kleinerem Abstand wurde kein Bogen für alle gefunden: Wünschen Sie { $placed }, oder machen Sie die Stempel kleiner.
finding-background-stamp-too-large = Der Stempel „{ $stamp }“ ist { $size } lang, größer als der Bogen von „{ $background }“, { $sheet-width } × { $sheet-height }.
    .remedy = Machen Sie den Stempel kleiner, oder nehmen Sie einen größeren Bogen.
finding-background-too-near = Auf „{ $background }“ { $count ->
        [one] kommt { $count } Abdruck, den Sie gesetzt haben,
       *[other] kommen { $count } Abdrücke, die Sie gesetzt haben,
    } einem anderen näher als { $gap } oder { $count ->
        [one] zeigt
       *[other] zeigen
    } am Rand nur einen Rest.
    .remedy = Rücken Sie sie auseinander, oder verteilen Sie die übrigen neu.
finding-base-fits-no-sheet = Die Grundkarte von „{ $recipe }“, { $width } × { $height }, passt auf keinen Bogen von „{ $cardstock }“.
    .remedy = Wählen Sie einen größeren Tonkarton, eine andere Faltung oder eine kleinere Karte.
finding-base-longer-than-trimmer = Die Grundkarte von „{ $recipe }“ ist { $long } lang; Ihr Papierschneider schneidet { $cut }.
    .remedy = Klappen Sie das Lineal aus, oder zeichnen Sie den Schnitt an beiden Enden an und schneiden Sie von beiden Seiten.
finding-batch-too-large = Mehr als { $most } Karten auf einmal werden nicht geplant; dort hört der Plan auf.
    .remedy = Planen Sie die Serie in Teilen, oder prüfen Sie die Anzahl der Bögen und Karten.
finding-border-errors = Auf „{ $recipe }“ liegt der schmalste Rand { $edge ->
    [left] links
    [right] rechts
    [top] oben
   *[bottom] unten
} an „{ $layer }“: { $planned } nach Plan, nur noch { $stop }, wenn eine Einstellung des Anschlags um { $hand } danebenliegt, und { $cuts }, wenn jeder Schnitt danebenliegt. { $share ->
    [0] Weniger als eine von 100 solchen Karten zeigt
    [one] Eine von 100 solchen Karten zeigt
   *[other] { $share } von 100 solchen Karten zeigen
} nicht einmal die Hälfte davon.
    .remedy = Schneiden Sie einen Bogen und messen Sie seine Teile nach, bevor Sie die übrigen schneiden; ein breiterer Rand verzeiht mehr.
finding-border-narrow = In „{ $recipe }“ zeigt „{ $layer }“ nur { $border } Rand.
    .remedy = Unter { $least } sieht man jeden kleinen Fehler: Machen Sie den Rand breiter.
finding-cardstock-no-sheet = Für „{ $cardstock }“ hat kein Bogen eine Größe.
    .remedy = Schreiben Sie mindestens eine Bogengröße dazu.
finding-cardstock-short = { $cardstock }: Von den Bögen { $width } × { $height } werden { $wanted } gebraucht, und { $there } sind da.
    .remedy = Besorgen Sie noch { $short }, oder nehmen Sie für einige Karten eine andere Farbe.
finding-cardstock-strip-narrow = „{ $cardstock }“: Von einem Bogen fällt ein Streifen von { $width } ab. Streifen unter { $least } lassen sich schlecht halten; ein Plan ohne solche, der nicht mehr kostet, wurde nicht gefunden.
    .remedy = Halten Sie den breiten Teil hinter der Schiene, nie den Streifen, oder kaufen Sie Bogen in einem anderen Format.
finding-cardstock-too-fine = Die Größen, die aus „{ $cardstock }“ geschnitten werden, haben keine gemeinsame Teilung, die zum Planen grob genug ist.
    .remedy = Runden Sie die Größen auf die Teilstriche Ihres Papierschneiders.
finding-cardstock-unfinished = Die Bögen von „{ $cardstock }“ konnten in der gegebenen Zeit nicht ausgerechnet werden.
    .remedy = Verlangen Sie weniger Karten auf einmal, oder geben Sie mehr Zeit.
finding-choice-both-large = Karte { $wanted } hätte zwei große Muster, { $design } und { $other }: Die Wahl für „{ $layer }“ wird nicht beachtet.
    .remedy = Nehmen Sie eine Karte mit kleinerem Muster.
finding-choice-never-together = Auf Karte { $wanted } träfen die Muster { $design } und { $other } aufeinander, die Sie getrennt halten: Die Wahl für „{ $layer }“ wird nicht beachtet.
    .remedy = Nehmen Sie eine andere Karte.
finding-choice-no-card = Eine Karte { $wanted } gibt es nicht: Die Wahl für „{ $layer }“ wird nicht beachtet.
    .remedy = Nehmen Sie die Wahl zurück, oder nennen Sie eine andere Karte.
finding-choice-no-piece = Karte { $wanted } hat kein Teil „{ $layer }“ aus Designpapier: Die Wahl wird nicht beachtet.
    .remedy = Nennen Sie eine Lage aus Designpapier, die beide Karten haben.
finding-choice-no-plain = Karte { $wanted } hat kein einfarbiges Teil „{ $layer }“: Die Wahl wird nicht beachtet.
    .remedy = Nennen Sie eine Mattung oder ein anderes einfarbiges Teil, das die Karte hat.
finding-choice-other-designs = „{ $recipe }“ wird nicht aus Design { $design } gemacht, also kann Karte { $wanted } dessen Teil „{ $layer }“ nicht bekommen.
    .remedy = Nehmen Sie eine Karte aus einem Design, das im Kartenrezept steht, oder nehmen Sie { $design } dort auf.
finding-choice-other-size = „{ $layer }“ von Karte { $card } und von Karte { $with } sind nicht gleich groß, also können sie nicht getauscht werden.
    .remedy = Nehmen Sie eine Karte, deren Teil die gleiche Größe hat.
finding-choice-same-card = Karte { $card } kann nicht mit sich selbst tauschen.
    .remedy = Nehmen Sie eine andere Karte.
finding-choice-same-ground = Auf Karte { $wanted } würden sich zwei Muster mit gleichem Grund berühren, { $design } und { $other }: Die Wahl für „{ $layer }“ wird nicht beachtet.
    .remedy = Nehmen Sie eine Karte mit anderem Grund.
finding-choice-same-print = Karte { $wanted } hätte das Muster { $design } zweimal: Die Wahl für „{ $layer }“ wird nicht beachtet.
    .remedy = Nehmen Sie eine Karte mit anderem Muster.
finding-choice-sideways = „{ $layer }“ von Karte { $card } liegt um eine Vierteldrehung gedreht auf seinem Bogen; die andere Seite, „{ $face }“, läge also quer.
    .remedy = Wenden Sie ein Teil, das auf seinem Bogen aufrecht steht, oder tragen Sie ein, dass diese Seite beliebig liegen darf.
finding-collage-fits-no-recipe = Keines der { $panels } Bildfelder auf dem Collagebogen von „{ $pack }“ ergibt die Teile einer Karte.
    .remedy = Schreiben Sie ein Kartenrezept, dessen Teile in ein Bildfeld passen, oder wenden Sie den Bogen, damit seine andere Seite zu sehen ist.
finding-collage-not-straight = Die { $panels } Bildfelder von „{ $pack }“ lassen sich nicht mit geraden Schnitten von Kante zu Kante trennen.
    .remedy = Schneiden Sie ein Bildfeld von Hand mit dem Lineal frei, oder wenden Sie den Bogen, damit seine andere Seite zu sehen ist.
finding-currencies-differ = Die Preise stehen in mehr als einer Währung, also gibt es keine Summe.
    .remedy = Schreiben Sie alle Preise in einer Währung.
finding-design-no-recipe = Kein Kartenrezept nimmt Design { $design }, deshalb { $sheets ->
        [one] bleibt { $sheets } Bogen
       *[other] bleiben { $sheets } Bögen
    } ganz.
    .remedy = Nehmen Sie den Buchstaben bei den Designs eines Kartenrezepts auf, oder lassen Sie das Design aus der Serie weg.
finding-design-short = { $batch }: Design { $design } soll { $wanted } Bögen geben, und { $there } { $there ->
        [one] ist
       *[other] sind
    } übrig: { $short } zu wenig.
    .remedy = Besorgen Sie noch { $short }, oder nehmen Sie dafür ein anderes Design. Oder verzichten Sie auf etwas: auf { $fewer } { $fewer ->
        [one] Karte
       *[other] Karten
    } aus { $design }{ $kits-left ->
        [0] { "" }
        [one] , dann bleibt { $kits-left } voller Materialsatz
       *[other] , dann bleiben { $kits-left } volle Materialsätze
    }{ $other ->
        [none] .
       *[other] ; oder auf „{ $other }“ – das nimmt { $other-sheets } Bögen davon und macht { $other-cards } Karten.
    }
finding-envelope-tight = Die Karte passt mit nur { $clearance } Luft in den Umschlag { $envelope }; mit { $wanted } geht es leichter.
    .remedy = { $next ->
        [none] Nehmen Sie einen etwas größeren Umschlag.
       *[other] Der nächste Umschlag, der gut passt, ist { $next }, { $width } × { $height }.
    }
finding-envelope-too-small = Die fertige Karte passt nicht in den Umschlag { $envelope }: { $clearance } Luft, und bei ihrer Dicke braucht sie { $wanted }.
    .remedy = { $next ->
        [none] Fertigen Sie einen Umschlag nach Maß.
       *[other] Der nächste Umschlag, der passt, ist { $next }, { $width } × { $height }.
    }
finding-goal-no-mix = Die Anzahlen, die für jedes Kartenrezept verlangt sind, können die verlangten Karten je Bogen nicht ergeben.
    .remedy = Erlauben Sie bei einem Kartenrezept weniger oder mehr, oder ändern Sie die Karten je Bogen.
finding-grain-across-fold = Das Teil { $width } × { $height } für „{ $recipe }“ passt auf „{ $cardstock }“ nur so, dass es quer zur Laufrichtung gefaltet wird.
    .remedy = Falzen Sie es vor dem Falten gut, oder nehmen Sie einen größeren Bogen.
finding-greeting-covered = In „{ $recipe }“ liegt „{ $above }“ über „{ $words }“.
    .remedy = Verschieben Sie eins davon, oder stempeln Sie die Worte anderswohin auf „{ $layer }“.
finding-greeting-tight = „{ $words }“ lässt bis zur Kante von „{ $layer }“ nur { $clear } frei.
    .remedy = Lassen Sie an jeder Seite mindestens { $least }: Nehmen Sie mindestens { $wide } × { $high }.
finding-greeting-too-large = „{ $words }“ ragt um { $over } über die Kante von „{ $layer }“.
    .remedy = Nehmen Sie für „{ $layer }“ mindestens { $wide } × { $high } oder einen kleineren Stempel.
finding-inside-fits-no-sheet = Das Einlegeblatt von „{ $recipe }“, { $width } × { $height }, passt auf keinen Bogen von „{ $cardstock }“.
    .remedy = Wählen Sie einen größeren Bogen oder ein kleineres Einlegeblatt.
finding-inside-too-large = Das Einlegeblatt von „{ $recipe }“, { $width } × { $height }, ist größer als die offene Grundkarte.
    .remedy = Machen Sie es etwas kleiner als die Grundkarte.
finding-internal-check = Eine eigene Prüfung ist fehlgeschlagen, deshalb wird dieser Teil des Plans nicht gezeigt.
    .remedy = Das ist ein Fehler in Octavo, nicht in Ihrem Projekt: Bitte melden Sie ihn zusammen mit der Projektdatei.
finding-kits-too-many = { $cards } Karten füllen keine { $kits } Materialsätze: Einige blieben leer.
    .remedy = Machen Sie weniger Materialsätze, oder schneiden Sie für diese Serie mehr Bögen.
finding-kits-unequal = Die { $kits } Materialsätze sind nicht gleich. Nicht gleichmäßig verteilen lassen sich: { $odd }. Tauschen können Nachbarn, deren Materialsätze sich unterscheiden: { $swaps ->
        [0] hier kein Paar.
        [one] hier ein Paar.
       *[other] hier { $swaps } Paare.
    }
    .remedy = { $aside ->
        [0] { "" }
        [one] Legen Sie { $aside } Karte beiseite, dann sind die Materialsätze gleich.{ " " }
       *[other] Legen Sie { $aside } Karten beiseite, dann sind die Materialsätze gleich.{ " " }
    }{ $fewer ->
        [0] { $more ->
            [0] Oder ändern Sie die Bogenzahl der Designs, die nicht aufgehen.
           *[other] { $more } Materialsätze wären gleich.
        }
       *[other] { $more ->
            [0] { $fewer } Materialsätze wären gleich.
           *[other] { $fewer } oder { $more } Materialsätze wären gleich.
        }
    }
finding-layer-hidden = In „{ $recipe }“ ist von „{ $layer }“ nichts zu sehen: Es liegt ganz unter „{ $above }“.
    .remedy = Verschieben Sie eins von beiden, oder lassen Sie „{ $layer }“ weg.
finding-layer-runs-over = In „{ $recipe }“ ragt „{ $layer }“ um { $over } über die Kante dessen, worauf es liegt.
    .remedy = Machen Sie es kleiner, verschieben Sie es, oder tragen Sie ein, dass es überstehen darf.
finding-layout-none = Bei Teilstrichen von { $mark } ergeben keine geraden Schnitte diese Teile aus einem Bogen von „{ $pack }“.
    .remedy = Weiten Sie eine Spanne um einen Teilstrich, verlangen Sie eine Karte weniger, oder erlauben Sie einem Teil, sich zu drehen.
finding-layout-piece-too-large = „{ $layer }“ von „{ $recipe }“ ist größer als ein Bogen von „{ $pack }“.
    .remedy = Nehmen Sie ein kleineres Teil oder einen größeren Bogen.
finding-layout-pin = Ein festgestecktes Teil kann dort nicht liegen, wo es festgesteckt ist.
    .remedy = Prüfen Sie seinen Platz und seine Größe.
finding-layout-too-many = Ein Schnittplan fasst höchstens { $kinds } Arten von Teilen und { $pieces } von einer Art.
    .remedy = Verlangen Sie weniger Karten aus einem Bogen.
finding-layout-too-much-area = Die kleinsten Teile zusammen sind { $percent } % eines Bogens von „{ $pack }“.
    .remedy = Verlangen Sie weniger Karten aus einem Bogen, oder machen Sie die Teile kleiner.
finding-layout-unfinished = In der gegebenen Zeit wurde für „{ $pack }“ kein Schnittplan gefunden; das heißt nicht, dass es keinen gibt.
    .remedy = Verlangen Sie weniger Karten aus einem Bogen, oder geben Sie mehr Zeit.
finding-no-paper-piece = Kein Kartenrezept nimmt ein Teil aus Designpapier.
    .remedy = Geben Sie einem Kartenrezept eine Lage aus Designpapier.
finding-no-sheets = Es ist kein Bogen Designpapier zum Schneiden da.
    .remedy = Fügen Sie eine Packung mit einem Design und mindestens einem Bogen davon hinzu.
finding-pairs-short = Karten aus { $designs } brauchen { $needed } Teile aus einem anderen Design, und nur { $there } sind da.
    .remedy = Schneiden Sie mehr Bögen anderer Designs, oder nennen Sie Partner; bis dahin behalten sie ihr eigenes Muster.
finding-panels-cut = Der Schnittplan schneidet durch { $cut } von { $panels } Bildfeldern von „{ $face }“ (Design { $design }).
    .remedy = Wenden Sie den Bogen, damit seine andere Seite zu sehen ist, oder schneiden Sie dieses Design an seinen gedruckten Linien.
finding-partner-missing = Design { $design } hat keinen Partner für die Teile, die von einem Partner kommen.
    .remedy = Nennen Sie ein Paar von Designs; bis dahin nimmt es Teile aus allen anderen Designs, gleichmäßig verteilt.
finding-partner-twice = Design { $design } steht in mehr als einem Paar; das Paar mit { $partner } wird nicht beachtet.
    .remedy = Geben Sie jedem Design einen Partner.
finding-partner-uneven = Design { $design } und sein Partner { $partner } haben nicht gleich viele Bögen: { $sheets } und { $partner-sheets }.
    .remedy = Nehmen Sie von beiden gleich viele Bögen.
finding-piece-fits-no-sheet = Ein Teil { $width } × { $height } für „{ $recipe }“ passt auf keinen Bogen von „{ $cardstock }“.
    .remedy = Wählen Sie einen größeren Tonkarton oder ein kleineres Teil.
finding-piece-not-on-mark = „{ $layer }“ von „{ $recipe }“ hat auf Ihren Teilstrichen von { $mark } keine Größe, die auf die Karte passt.
    .remedy = Weiten Sie die Spanne, oder wählen Sie eine feinere Teilung.
finding-pin-dropped = Die Nadel an „{ $layer }“ von „{ $recipe }“ wurde weggelassen: Sie liegt nicht auf den Teilstrichen des nutzbaren Bogens.
    .remedy = Setzen Sie sie auf einen Teilstrich, oder wählen Sie eine feinere Teilung.
finding-price-missing = „{ $name }“ hat keinen Preis, deshalb steht bei der Summe „mindestens“.
    .remedy = Schreiben Sie dazu, was Sie bezahlt haben, mit dem Datum.
finding-print-turned = Auf Schnittplan { $layout } läge das Muster „{ $face }“ (Design { $design }) quer; es geht um die Teile { $pieces }.
    .remedy = Nehmen Sie die andere Seite, oder lassen Sie diese Teile sich nicht drehen.
finding-recipe-bounds = „{ $recipe }“ verlangt mindestens { $least } und höchstens { $most } Karten.
    .remedy = Das Mindeste darf nicht mehr sein als das Höchste.
finding-recipe-without-paper = „{ $recipe }“ nimmt kein Designpapier, also ergibt kein Bogen Karten davon.
    .remedy = Fügen Sie eine Lage aus Designpapier hinzu, oder nehmen Sie das Kartenrezept heraus.
finding-rest-matters = Auf Schnittplan { $layout } fällt der Rest von { $cuts } Schnitten auf { $on }, wo man jeden Fehler sieht.
    .remedy = Schneiden Sie stattdessen { $better } zuletzt: Dort macht es nichts aus.
finding-sets-not-whole = { $cards } Karten ergeben { $sets } Sets zu { $set }, und { $rest } { $rest ->
        [one] bleibt
       *[other] bleiben
    } übrig.
    .remedy = Ändern Sie die Anzahl der Karten, oder behalten Sie den Rest als Ersatz.
finding-share-all-used = Auf „{ $recipe }“ zeigt „{ $layer }“ das Muster { $most } auf { $most-cards } Karten und { $fewest } auf { $fewest-cards }: Alle Teile aus { $fewest } sind verbraucht.
    .remedy = Für gleiche Anteile schneiden Sie einen Bogen { $fewest } mehr und dafür einen Bogen { $most } weniger.
finding-share-by-rule = Auf „{ $recipe }“ zeigt „{ $layer }“ das Muster { $most } auf { $most-cards } Karten und { $fewest } auf { $fewest-cards }: Mehr von { $fewest } träfe auf ein Teil aus dem eigenen Design.
    .remedy = Nennen Sie andere Partner, oder lassen Sie es so.
finding-sheet-gives-fewer = Ein Bogen von „{ $pack }“ ergibt { $cards ->
    [one] { $cards } Karte
   *[other] { $cards } Karten
}, nicht { $wanted }.
    .remedy = Nehmen Sie ihn für die letzten Karten der Serie.
finding-sheet-not-on-grid = Ein Bogen von „{ $pack }“ geht in Teilstrichen von { $mark } nicht auf: { $width } in der Breite und { $height } in der Höhe fallen weg.
    .remedy = Beschneiden Sie den Bogen zuerst rechtwinklig auf Maß, oder wählen Sie eine feinere Teilung.
finding-sheet-too-large = Ein Bogen von „{ $pack }“ ist zu groß, um ihn mit Teilstrichen von { $mark } zu planen.
    .remedy = Wählen Sie eine gröbere Teilung.
finding-sheet-too-small = Von einem Bogen von „{ $pack }“ bleibt innerhalb seiner unbrauchbaren Kanten nichts.
    .remedy = Prüfen Sie seine Größe und seine Kanten.
finding-spare-unknown = Ein Teil „{ $layer }“ von „{ $recipe }“ ist nicht bekannt, also wurde kein Ersatz dafür geplant.
    .remedy = Nehmen Sie den Namen des Kartenrezepts und den seiner Lage.
finding-strip-narrow = Teil { $piece } von Schnittplan { $layout } ist nur { $width } breit; Streifen unter { $least } sind schlecht zu halten.
    .remedy = Schneiden Sie es, solange es an einem breiten Teil hängt, und lassen Sie die Finger hinter der Schiene.
finding-too-few-sheets = { $batch }: { $wanted } Karten sind gewünscht, und die Bögen ergeben { $cards }.
    .remedy = Etwa { $short } { $short ->
        [one] weiterer Bogen wird
       *[other] weitere Bögen werden
    } gebraucht, gleich von welchem Design. Oder verzichten Sie auf etwas: auf { $fewer } { $fewer ->
        [one] Karte
       *[other] Karten
    } dieser Serie{ $other ->
        [none] .
       *[other] ; oder auf „{ $other }“ – das nimmt { $other-sheets } Bögen und macht { $other-cards } Karten.
    }

### Auswege aus einem Hinweis: Satzteile für eine Liste, nach ihrem Code.

way-narrower = „{ $layer }“ von „{ $recipe }“ um { $by } schmaler machen (dann { $to } breit)
way-wider = „{ $layer }“ von „{ $recipe }“ um { $by } breiter machen (dann { $to } breit)
way-lower = „{ $layer }“ von „{ $recipe }“ um { $by } niedriger machen (dann { $to } hoch)
way-higher = „{ $layer }“ von „{ $recipe }“ um { $by } höher machen (dann { $to } hoch)
way-turn = „{ $layer }“ von „{ $recipe }“ auf dem Bogen um eine Vierteldrehung drehen
way-fewer-cards = nur { $cards } { $cards ->
    [one] Karte
   *[other] Karten
} aus einem Bogen verlangen, { $by } weniger
way-sheet = { $name ->
    [none] einen Bogen von { $width } × { $height } nehmen
   *[other] einen Bogen von { $width } × { $height } nehmen ({ $name })
}
way-and = { $first } und { $next }
way-gives-whole = { $way }: nichts bleibt übrig
way-gives = { $way }: { $percent } % des Bogens { $percent ->
    [one] bleibt
   *[other] bleiben
} übrig
way-perhaps-smaller = { $way }; vielleicht genügt auch eine kleinere Änderung

## Ein Kurs

finding-class-kits-empty = Die Serie gibt { $cards } Karten und ist auf { $planned } Materialsätze verteilt: Einige bleiben leer.
    .remedy = Verlangen Sie in der Serie mehr Karten und besorgen Sie die Bögen dafür (octavo replan --people tut beides), oder nehmen Sie weniger Materialsätze.
finding-class-kits-few = Der Kurs braucht { $kits } Materialsätze, und die Serie ist nur auf { $planned } verteilt.
    .remedy = Stellen Sie die Materialsätze der Serie auf { $kits }, oder nehmen Sie weniger Ersatz. Geschnittene Materialsätze bleiben, wie sie sind.
finding-class-kits-many = Die Serie ist auf { $planned } Materialsätze verteilt, und der Kurs braucht nur { $kits }.
    .remedy = { $more ->
        [one] Der eine, der übrig ist, ist Ersatz.
       *[other] Die { $more }, die übrig sind, sind Ersatz.
    }
finding-class-left-handers = { $left } Linkshänder passen nicht auf { $seats } { $seats ->
        [one] Platz
       *[other] Plätze
    }.
    .remedy = Berichtigen Sie die Zahl der Linkshänder oder die der Plätze.
finding-class-sheets-short = Die zusätzlichen Materialsätze brauchen { $sheets ->
        [one] einen Bogen
       *[other] { $sheets } Bögen
    } mehr von Design { $letter }, und { $short ->
        [one] { $sheets ->
            [one] er fehlt
           *[other] einer davon fehlt
        }
       *[other] { $short } davon fehlen
    }.
    .remedy = Kaufen Sie noch eine Packung, oder geben Sie den letzten Materialsätzen andere Muster.
finding-class-past-midnight = Bei { $each } Minuten je Karte dauern { $cards } Karten bis nach Mitternacht.
    .remedy = Beginnen Sie früher, machen Sie weniger Karten, oder berichtigen Sie die Minuten.
finding-class-past = Der Tag des Kurses, { $date }, ist vorbei: Heute ist { $today }.
    .remedy = Schreiben Sie den Tag des nächsten Kurses.
finding-class-late = { $days ->
        [0] Der Kurs ist heute, und manches, was davor kommt, war an Tagen fällig, die vorbei sind.
        [one] Ein Tag bleibt noch, und manches, was vor dem Kurs kommt, war an Tagen fällig, die vorbei sind.
       *[other] { $days } Tage bleiben noch, und manches, was vor dem Kurs kommt, war an Tagen fällig, die vorbei sind.
    }
    .remedy = Tun Sie zuerst, was überfällig ist, oder lassen Sie die Leute im Kurs schneiden.
finding-class-currencies = Die Preise dieses Kurses stehen in mehreren Währungen.
    .remedy = Schreiben Sie alle in einer: Was sie heute wert sind, können nur Sie sagen.
finding-region-cut = { $regions ->
        [one] Die Stelle, die ganz bleiben soll, ist auf { $face } (Design { $design }) in Schnittplan { $layout } durchgeschnitten oder verdeckt.
       *[other] { $lost } von { $regions } Stellen, die ganz bleiben sollen, sind auf { $face } (Design { $design }) in Schnittplan { $layout } durchgeschnitten oder verdeckt.
    }
    .remedy = Keine Reihenfolge derselben Schnitte erhält sie: verkleinern Sie die Stelle, oder geben Sie ihr ein größeres Teil.
finding-region-shows = Eine Stelle, die nicht zu sehen sein soll, ist auf { $face } (Design { $design }) in Schnittplan { $layout } zu sehen.
    .remedy = Keine Reihenfolge derselben Schnitte verdeckt sie ganz: decken Sie sie ab, oder stecken Sie ein Teil anderswo fest.
finding-region-not-looked-at = Die auf { $face } (Design { $design }) markierten Stellen wurden nicht beachtet: Schnittplan { $layout } wird auf gedruckten Linien geschnitten oder hat festgesteckte Teile.
    .remedy = Nehmen Sie die Nadeln heraus, oder prüfen Sie die Teile mit dem Auge.
