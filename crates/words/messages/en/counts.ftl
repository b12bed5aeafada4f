### Things counted. Used by every room that speaks.

count-sheets = { $count ->
    [one] { $count } sheet
   *[other] { $count } sheets
}
count-cards = { $count ->
    [one] { $count } card
   *[other] { $count } cards
}
