// @ts-check
import { pointIn } from "./asking.js";
import { patches } from "./patches.js";

/** The four corners of a sheet in a photo: dragged, or moved by the arrow keys; the numbers beside them follow, and lead.
 *  @param {HTMLElement} element  holds the photo and the form */
export function enhance(element) {
  const sheet = element.querySelector("svg.lined");
  const outline = element.querySelector(".outline");
  const form = element.querySelector("form");
  if (!(sheet instanceof SVGSVGElement) || !outline || !form) return;
  element.classList.add("by-hand");
  const { width, height } = sheet.viewBox.baseVal;
  const corners = /** @type {SVGCircleElement[]} */ ([...sheet.querySelectorAll(".corner")]);

  /** @param {SVGCircleElement} corner @param {string} axis */
  const field = (corner, axis) =>
    /** @type {HTMLInputElement} */ (form.elements.namedItem(`${corner.dataset.corner}-${axis}`));

  const drawn = () => {
    // No smaller than a finger finds, whatever the screen. `Chosen:` 28 pixels across.
    const least = 14 / (sheet.getScreenCTM()?.a || 1);
    for (const corner of corners) {
      corner.setAttribute("r", String(Math.max(Math.max(width, height) / 40, least)));
      for (const axis of ["x", "y"]) corner.setAttribute(`c${axis}`, String(Number(field(corner, axis).value) || 0));
    }
    const place = (/** @type {SVGCircleElement} */ corner) => `${corner.getAttribute("cx")},${corner.getAttribute("cy")}`;
    outline.setAttribute("points", corners.map(place).join(" "));
  };

  /** @param {SVGCircleElement} corner @param {number} x @param {number} y */
  const move = (corner, x, y) => {
    field(corner, "x").value = String(Math.round(Math.min(Math.max(x, 0), width)));
    field(corner, "y").value = String(Math.round(Math.min(Math.max(y, 0), height)));
    drawn();
  };

  for (const corner of corners) {
    corner.addEventListener("pointerdown", (event) => {
      corner.setPointerCapture(event.pointerId);
      corner.focus({ preventScroll: true });
      event.preventDefault();
    });
    corner.addEventListener("pointermove", (event) => {
      if (!corner.hasPointerCapture(event.pointerId)) return;
      const at = pointIn(sheet, event);
      move(corner, at.x, at.y);
    });
    corner.addEventListener("keydown", (event) => {
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
      if (!way) return;
      const step = event.shiftKey ? 20 : 1;
      move(corner, Number(field(corner, "x").value) + way[0] * step, Number(field(corner, "y").value) + way[1] * step);
      event.preventDefault();
    });
  }
  // A finger on a corner or a ring moves it and not the page.
  sheet.addEventListener("touchmove", (event) => {
    if (event.cancelable && event.target instanceof Element && event.target.closest(".corner, .ring")) event.preventDefault();
  }, { passive: false });
  form.addEventListener("input", drawn);
  addEventListener("resize", drawn);
  drawn();

  patches(sheet, form);
}
