### Von Hand gestempelte Hintergründe: die Anleitung, der Befehl und die Seite.

background-alt = „{ $name }“, ein Bogen mit { $count } Abdrücken
guide-title = Hintergrund: { $name }
guide-lead = Ein Bogen von { $size } mit { $count } { $count ->
        [one] Abdruck
       *[other] Abdrücken
    } von { $stamps } { $stamps ->
        [one] Stempel
       *[other] Stempeln
    }. Die Nummern sind die Reihenfolge.
guide-order = In dieser Reihenfolge
guide-order-right = Ein Stempel nach dem anderen, der größte zuerst; lassen Sie seine Farbe trocknen, bevor der nächste kommt. Arbeiten Sie mit jedem Stempel in Reihen, vom fernen Rand zu sich hin, und in jeder Reihe von links nach rechts: So liegt die Hand nie auf nasser Farbe.
guide-order-left = Ein Stempel nach dem anderen, der größte zuerst; lassen Sie seine Farbe trocknen, bevor der nächste kommt. Arbeiten Sie mit jedem Stempel in Reihen, vom fernen Rand zu sich hin, und in jeder Reihe von rechts nach links: So liegt die Hand nie auf nasser Farbe.
guide-stamp = Stempel
guide-numbers = Nummern
guide-first = erste
guide-second = blassere
guide-inkings = Einfärben
guide-off = über den Rand
guide-all = alle
guide-paler = Ein blasserer Abdruck kommt sofort nach dem davor, ohne neu einzufärben.
guide-paler-one = { $which ->
        [2] zweiter, blasser
       *[other] dritter, am blassesten
    }
guide-edge = Am Rand
guide-edge-mat = { $count } { $count ->
        [one] Abdruck läuft
       *[other] Abdrücke laufen
    } über den Bogen hinaus: { $numbers }. Legen Sie die weiche Unterlage so, dass sie unter den Rand reicht, und Schmierpapier darauf für den Rest; ohne sie hört die Farbe vor dem Rand auf.
guide-sure = Was eine Hand mit den Abständen macht
guide-sure-lead = Geplant liegen die beiden nächsten Abdrücke { $planned } auseinander. Zwanzig Bogen, von einer unsicheren Hand gestempelt, gerechnet:
guide-sure-row = Bis zu { $place } und { $turn }° daneben: Der kleinste Abstand ist auf einem üblichen Bogen { $usual }, auf dem schlechtesten { $worst }; { $touch ->
        [0] keiner berührt einen anderen
       *[other] { $touch } von 100 berühren einen anderen
    }.
guide-askew = Der schlechteste der zwanzig Bogen, bis zu { $place } und { $turn }° daneben: { $count ->
        [0] keiner berührt einen anderen
       [one] einer berührt einen anderen: der im Ring
       *[other] { $count } von ihnen berühren einen anderen: die in Ringen
    }.
guide-sure-none = null
guide-colored = Ausgemalt
guide-colored-lead = Nehmen Sie Stempelfarbe, die nass nicht verläuft, und lassen Sie sie trocknen. Eine Farbe nach der anderen über den ganzen Bogen, die hellste zuerst. Probieren Sie es auf einem Rest desselben Papiers.
guide-marker = Filzstift
guide-near = gegen die gewünschte Farbe
guide-how-many = wie viele
guide-no-marker = kein Filzstift genannt
guide-places = Jede Stelle
guide-places-lead = Gemessen vom linken und vom oberen Rand bis zum Kreuz in der Mitte des Motivs, in Feldern von { $field }; die Uhrzeit sagt, wohin die Oberseite des Motivs zeigt.
guide-number = Nr.
guide-field = Feld
guide-right = rechts
guide-down = hinunter
guide-turn = oben bei
guide-which = Abdruck
guide-clock = { $hour } Uhr ({ $turn }°)
guide-true-title = „{ $name }“ in wahrer Größe
guide-true-note = Der Bogen von { $size } mit allen Abdrücken und ihren Nummern; Felder von { $field }. Der Pfeil im Motiv zeigt zu seiner Oberseite. Dicker Umriss: läuft über den Rand. Gestrichelt: der blassere Abdruck, ohne neu einzufärben. Legen Sie es neben den Bogen, oder am Fenster darunter.
guide-light-box = „{ $name }“ für den Leuchttisch, wahre Größe: ohne Anpassung drucken
guide-see-guide = Jede Stelle und der Bogen in wahrer Größe mit seinen Nummern stehen in der eigenen Anleitung: background-1.pdf und so weiter.

help-background = Eigenes Hintergrundpapier stempeln: sein Bild und die Anleitung dazu
    .examples =
        Beispiele:
          octavo background my-cards.toml --out background/
          octavo background --demo --seed 12
    .demo = Den gestempelten Hintergrund nehmen, der dem Programm beiliegt
    .out = Anleitung, Leuchttischbogen und Bild in diesen Ordner schreiben
    .sheet = Die Seite, auf die die Anleitung gedruckt wird: letter oder a4 (ohne Angabe: passend zur Einheit des Projekts)
    .seed = Ein anderer Startwert: alles, was nicht festgesteckt ist, wird neu verteilt
    .square = Was ein gedrucktes Prüfquadrat von einem Zoll misst
    .left = Für die linke Hand: Reihen laufen von rechts nach links
    .json = Jeden Abdruck als JSON ausgeben
refused-no-background = dieses Projekt enthält keinen Hintergrund
    .remedy = fügen Sie ein [[background]] mit mindestens einem [[background.stamp]] hinzu, oder probieren Sie octavo background --demo
background-written = Anleitung, Leuchttischbogen und Bild liegen in { $path }.
background-told = { $name }: { $count } { $count ->
        [one] Abdruck
       *[other] Abdrücke
    }, { $off } über den Rand{ $closest ->
        [none] { "" }
       *[other] ; die nächsten { $closest } auseinander
    }; Farbe deckt { $cover } % des Bogens.
background-told-stamp = { $stamp }: { $first } erste, { $paler } blassere; { $inkings ->
        [one] einmal
       *[other] { $inkings }-mal
    } einfärben
background-told-slip = eine Hand bis zu { $place } und { $turn }° daneben: schlechtestenfalls { $worst } auseinander, { $touch } von 100 berühren sich

stamped-which = Hintergründe
stamped-begin = Einen Hintergrund beginnen
stamped-begin-other = Noch einen Hintergrund beginnen
stamped-begin-it = Beginnen
stamped-name = Name
stamped-sheet = Bogen
stamped-none = So lässt er sich nicht stempeln.
stamped-by-hand = Ziehen Sie ein Motiv, und die anderen machen Platz. Doppelklick steckt eines fest oder löst es. Tasten: Pfeile gehen zum nächsten, Umschalt und Pfeil verschiebt es, Eingabe behält es, Escape legt es zurück, die Leertaste steckt es fest.
stamped-gap = Abstand der Farbe
stamped-size = Größe
stamped-share = Anteil
stamped-arrangement = Anordnung
stamped-toss = gleichmäßig gestreut
stamped-grid = im Gitter
stamped-brick = im Ziegelverband
stamped-half-drop = im halben Versatz
stamped-diagonal = schräg
stamped-edge = Am Rand
stamped-run-off = manche laufen hinaus
stamped-inside = keines läuft hinaus
stamped-wrap = wiederholt sich ohne Naht
stamped-count = Abdrücke
stamped-count-all = so viele Platz haben
stamped-seed = Startwert
stamped-told = { $count } { $count ->
        [one] Abdruck
       *[other] Abdrücke
    }, { $off } über den Rand, { $inkings }-mal einfärben{ $closest ->
        [none] { "." }
       *[other] ; die nächsten { $closest } auseinander.
    } Farbe deckt { $cover } % des Bogens.
stamped-density = Oder Farbe auf dem Bogen, in Prozent
stamped-short = Von { $wished } gewünschten haben { $placed } Platz: Das ist der vollste Bogen, der gefunden wurde.
stamped-stand = Alle stehen, wo sie von Hand hingesetzt wurden.
stamped-gone = { $count } { $count ->
        [one] findet
       *[other] finden
    } keinen Platz mehr.
stamped-one = { $number }, { $stamp }
stamped-one-locked = { $number }, { $stamp }, festgesteckt
stamped-hand = Von Hand
stamped-stands = Einige wurden von Hand verschoben oder festgesteckt, deshalb stehen alle, wo sie sind. Wird der Bogen neu verteilt, bleiben nur die festgesteckten.
stamped-locked-are = Festgesteckt: { $numbers }.
stamped-toss-anew = Den Rest neu streuen
stamped-toss-hint = Ein anderer Startwert: Alle außer den festgesteckten werden neu verteilt.
stamped-numbers = Nummern, etwa 3, 12-15
stamped-lock = Feststecken
stamped-free = Lösen
stamped-number = Nummer
stamped-degrees = Drehung in Grad
stamped-move = Verschieben
stamped-bad-number = Einen Abdruck mit dieser Nummer gibt es nicht. Schreiben Sie Nummern mit Kommas dazwischen, etwa 3, 12-15.
stamped-stays-edge = Er bleibt: Dort bliebe am Rand nur ein Rest, oder der Rand verbietet es.
stamped-stays-locked = Er bleibt: Abdruck { $number } ist festgesteckt und im Weg.
stamped-print = Zum Drucken und Aufheben
stamped-guide = Anleitung
stamped-light-box = Für den Leuchttisch
stamped-picture = Bild
stamped-svg = Zeichnung
stamped-stamps = Stempel
stamped-more = Form, Drehung und Farbe von „{ $name }“
stamped-shape = Form
stamped-outline = Ecken
stamped-turn = Drehung
stamped-free-turn = frei
stamped-upright = aufrecht
stamped-within = Oder bis zu so vielen Grad
stamped-ink = Stempelfarbe
stamped-fill = Ausgemalt mit
stamped-per-inking = Abdrücke mit einmal Einfärben
stamped-from-picture = Ein Bild des Stempels
stamped-take-picture = Seine Farbe übernehmen
stamped-take-away = „{ $name }“ wegnehmen
stamped-marker = Ausgemalt mit dem Filzstift „{ $marker }“: { $near }.
stamped-no-marker = Ausgemalt; kein Filzstift genannt.
stamped-markers-shelf = { $count ->
        [0] Marker zum Ausmalen kommen aus Ihrem Regal, sobald dort welche mit ihren Farben liegen:
        [one] Ein Marker mit seiner Farbe liegt in Ihrem Regal:
       *[other] { $count } Marker mit ihren Farben liegen in Ihrem Regal:
    }
stamped-add = Noch ein Stempel
stamped-add-it = Hinzufügen
stamped-shown = Wo er sich zeigt
stamped-shown-nowhere = Noch zeigt ihn keine Seite.
stamped-face = { $letter } { $design }: { $face }
stamped-show-on = Eine Seite ihn zeigen lassen
stamped-show = Dort zeigen
stamped-remove = Diesen Hintergrund wegnehmen
stamped-name-first = Geben Sie ihm einen Namen.
stamped-bad-picture = Das ist kein lesbares Bild: PNG, JPEG oder WebP sind richtig.
stamped-empty-picture = In diesem Bild ist keine Farbe: Das Motiv muss dunkel auf hell sein oder deckend auf durchsichtig.
shape-dot = Punkt
shape-ring = Ring
shape-leaf = Blatt
shape-sprig = Zweig
shape-drop = Tropfen
shape-flower = Blüte
shape-star = Stern
shape-heart = Herz
shape-diamond = Raute
edit-stamped-begun = Hintergrund „{ $name }“ begonnen
edit-stamped-gone = Hintergrund „{ $name }“ weggenommen
edit-stamped-tossed = „{ $name }“: der Rest neu gestreut
edit-stamped-locked = „{ $name }“: { $count } festgesteckt
edit-stamped-freed = „{ $name }“: { $count } gelöst
edit-stamped-moved = „{ $name }“: Abdruck { $number } verschoben, der Rest macht Platz
edit-stamped-shown = „{ $design }“ zeigt „{ $name }“
edit-stamp-added = „{ $name }“: Stempel „{ $stamp }“ hinzugefügt
edit-stamp-gone = „{ $name }“: Stempel „{ $stamp }“ weggenommen
edit-stamp-pictured = ein Stempel übernimmt seine Farbe aus einem Bild
stamped-right = Vom linken Rand
stamped-down = Vom oberen Rand
