// @ts-check
/** Ties each piece of a sheet to its card: pointing at one, or focusing it, shows the other. What lies inside may change.
 *  @param {HTMLElement} element  holds the sheet and its cards */
export function enhance(element) {
  /** @param {string[]} marks */
  const tie = (marks) => {
    for (const piece of element.querySelectorAll("[data-piece]")) {
      piece.classList.toggle("tied", marks.includes(piece.getAttribute("data-piece") ?? ""));
    }
    for (const card of element.querySelectorAll("[data-pieces]")) {
      const own = (card.getAttribute("data-pieces") ?? "").split(" ");
      card.classList.toggle("tied", own.some((mark) => marks.includes(mark)));
    }
  };
  /** @param {Event} event */
  const come = (event) => {
    const on = event.target instanceof Element ? event.target.closest("[data-piece], [data-pieces]") : null;
    tie((on?.getAttribute("data-piece") ?? on?.getAttribute("data-pieces") ?? "").split(" ").filter(Boolean));
  };
  element.addEventListener("pointerover", come);
  element.addEventListener("focusin", come);
  element.addEventListener("pointerleave", () => tie([]));
  element.addEventListener("focusout", () => tie([]));
}
