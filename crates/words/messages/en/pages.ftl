### Texts on the drawn pages.
