// @ts-check
import { pointIn } from "./asking.js";

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
    for (const corner of corners) {
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
  form.addEventListener("input", drawn);

  // Patches whose colour is known: a touch of the photo writes its place at the end, and the colour is typed behind it.
  const known = form.querySelector("details.known");
  const patches = form.elements.namedItem("patches");
  sheet.addEventListener("click", (event) => {
    if (!(known instanceof HTMLDetailsElement) || !known.open || !(patches instanceof HTMLTextAreaElement)) return;
    if (event.target instanceof Element && event.target.closest(".corner")) return;
    const at = pointIn(sheet, event);
    const kept = patches.value.trimEnd();
    patches.value = `${kept}${kept ? "\n" : ""}${Math.round(at.x)},${Math.round(at.y)} `;
    patches.dispatchEvent(new Event("input", { bubbles: true }));
    patches.focus();
    patches.setSelectionRange(patches.value.length, patches.value.length);
  });

  const rings = sheet.querySelector(".patches");
  const ringed = () => {
    if (!rings || !(patches instanceof HTMLTextAreaElement)) return;
    const places = patches.value.split("\n").map((line) => /^\s*([\d.]+)[,;]([\d.]+)/.exec(line)).filter((place) => place !== null);
    const reach = Math.max(width, height) / 40;
    /** @param {string} kind @param {Record<string, string | number>} values */
    const made = (kind, values) => {
      const element = document.createElementNS("http://www.w3.org/2000/svg", kind);
      for (const [name, value] of Object.entries(values)) element.setAttribute(name, String(value));
      return element;
    };
    rings.replaceChildren(...places.flatMap(([, x, y], number) => {
      const name = made("text", { x: Number(x) + reach * 0.7, y, "font-size": reach });
      name.textContent = String(number + 1);
      return [made("circle", { class: "patch", cx: x, cy: y, r: reach / 2 }), name];
    }));
  };
  form.addEventListener("input", ringed);
}
