// @ts-check
/** Ties each piece of a sheet to its card: pointing at one, or focusing it, shows the other.
 *  @param {HTMLElement} element  holds the sheet and its cards */
export function enhance(element) {
  const pieces = /** @type {SVGAElement[]} */ ([...element.querySelectorAll("[data-piece]")]);
  const cards = /** @type {HTMLElement[]} */ ([...element.querySelectorAll("[data-pieces]")]);
  /** @param {string[]} marks */
  const tie = (marks) => {
    for (const piece of pieces) piece.classList.toggle("tied", marks.includes(piece.dataset.piece ?? ""));
    for (const card of cards) {
      const own = (card.dataset.pieces ?? "").split(" ");
      card.classList.toggle("tied", own.some((mark) => marks.includes(mark)));
    }
  };
  /** @param {Element} on @param {() => string[]} marks */
  const listen = (on, marks) => {
    for (const come of ["pointerenter", "focusin"]) on.addEventListener(come, () => tie(marks()));
    for (const go of ["pointerleave", "focusout"]) on.addEventListener(go, () => tie([]));
  };
  for (const piece of pieces) listen(piece, () => [piece.dataset.piece ?? ""]);
  for (const card of cards) listen(card, () => (card.dataset.pieces ?? "").split(" "));
}
