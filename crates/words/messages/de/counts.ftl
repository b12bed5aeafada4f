### Gezähltes. Alle Räume, die sprechen, benutzen es.

count-sheets = { $count ->
    [one] { $count } Bogen
   *[other] { $count } Bogen
}
count-cards = { $count ->
    [one] { $count } Karte
   *[other] { $count } Karten
}
