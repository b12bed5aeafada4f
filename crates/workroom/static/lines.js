// @ts-check
import { asking, pointIn } from "./asking.js";
import { enhance as tie } from "./ties.js";
import { send } from "./swap.js";

/** A drawing whose lines can be taken hold of (cuts, printed lines, edges of layers): while one moves, the rest is worked out anew by the workroom and the
 *  last good picture stays; let go, it is kept. By mouse, by touch, and by the arrow keys.
 *  @param {HTMLElement} element  holds the sheet, what is said of it, and its cards */
export function enhance(element) {
  tie(element);
  const sheet = element.querySelector(".sheet > svg");
  const told = element.querySelector(".moved");
  const form = element.querySelector(".by-typing form");
  if (!(sheet instanceof SVGSVGElement) || !told || !(form instanceof HTMLFormElement)) return;
  element.classList.add("by-hand");
  const address = element.dataset.ask ?? "";
  const first = sheet.querySelector(".over")?.cloneNode(true);

  /** @type {{ line: string, axis: string, from: string, to: string, marks: number, down: number, near: number | null, off: number[] } | null} */
  let held = null;

  /** Where a pointer is in the drawing. @param {PointerEvent} event @param {string} axis */
  const place = (event, axis) => {
    const at = pointIn(sheet, event);
    return axis === "y" ? [at.y, at.x] : [at.x, at.y];
  };

  /** Puts what lies over the print in place, and the focus back where it was. @param {Node} over @param {string} [line] */
  const show = (over, line = held?.line) => {
    const had = document.activeElement instanceof Element && document.activeElement.closest(".grip");
    sheet.querySelector(".over")?.replaceWith(over);
    for (const grip of sheet.querySelectorAll(".grip")) {
      grip.classList.toggle("held", held !== null && grip.getAttribute("data-line") === line);
    }
    const same = line === undefined ? null : sheet.querySelector(`.grip[data-line="${line}"]`);
    if (had && same instanceof SVGElement) same.focus({ preventScroll: true });
  };

  const { ask, drop, settled } = asking((page) => {
    if (!held) return;
    const over = page.querySelector("svg > .over");
    const said = page.querySelector(".said, .stays");
    if (over && said instanceof HTMLElement) {
      held.to = said.dataset.to ?? "";
      // Lines may join or part on the way: the one in hand keeps its number only while it is the same one.
      // It may lie elsewhere than it was put, where a range lets the layout choose.
      const shown = said.dataset.shown ?? held.to;
      const there = [...over.querySelectorAll(".grip")].filter((grip) => grip.getAttribute("data-at") === shown
        && grip.getAttribute("data-axis") === held?.axis);
      const mine = there.find((grip) => grip.getAttribute("data-line") === held?.line) ?? there[0];
      for (const grip of over.querySelectorAll(".grip")) grip.setAttribute("data-line", "-");
      mine?.setAttribute("data-line", held.line);
      show(document.importNode(over, true));
    }
    // Let go where it cannot be, it goes back to where it was.
    if (said?.className === "stays") held.to = "";
    told.classList.toggle("stays", said?.className === "stays");
    told.textContent = said?.textContent ?? "";
  });

  /** @param {string} [line] */
  const asItWas = (line) => {
    held = null;
    if (first) show(first.cloneNode(true), line);
  };
  const putBack = () => {
    drop();
    asItWas(held?.line);
    told.textContent = "";
  };

  // The last answer may still be on its way.
  const keep = () => settled(() => {
    const mine = held;
    // The reason it cannot be there stays to be read.
    if (!mine || mine.to === "" || mine.to === mine.from) return asItWas(mine?.line);
    held = null;
    const field = (/** @type {string} */ name) => form.elements.namedItem(name);
    const [line, to] = [field("line"), field("to")];
    if (line instanceof HTMLSelectElement && to instanceof HTMLInputElement) {
      line.value = mine.line;
      to.value = mine.to;
      send(form, `#${element.id} .grip[data-at="${mine.to}"][data-axis="${mine.axis}"]`);
    }
  });

  /** @param {Element} grip */
  const take = (grip) => {
    const line = grip.getAttribute("data-line") ?? "";
    if (held?.line === line || line === "-") return;
    held = { line, axis: grip.getAttribute("data-axis") ?? "x", from: grip.getAttribute("data-at") ?? "", to: "", marks: 0, down: 0, near: null, off: [0, 0] };
    grip.classList.add("held");
  };

  // A finger on a knob moves the line and not the page.
  sheet.addEventListener("touchstart", (event) => {
    if (event.target instanceof Element && event.target.closest(".grip")) event.preventDefault();
  }, { passive: false });
  sheet.addEventListener("pointerdown", (event) => {
    const grip = event.target instanceof Element && event.target.closest(".grip");
    if (!(grip instanceof SVGElement)) return;
    event.preventDefault();
    grip.focus({ preventScroll: true });
    take(grip);
    if (held) {
      const at = place(event, held.axis);
      held.near = at[1];
      // What moves both ways may be held anywhere, and does not jump into the hand.
      const knob = held.axis === "both" ? grip.querySelector(".knob") : null;
      held.off = ["x1", "y1"].map((side, index) => (knob ? at[index] - Number(knob.getAttribute(side)) : 0));
    }
    sheet.setPointerCapture(event.pointerId);
    sheet.dataset.dragging = "yes";
  });
  sheet.addEventListener("pointermove", (event) => {
    if (!held || sheet.dataset.dragging !== "yes") return;
    const at = place(event, held.axis);
    const [across, along] = [at[0] - held.off[0], at[1] - held.off[1]];
    // What moves both ways is asked for at both.
    if (held.axis === "both") held.near = along;
    ask(`${address}&line=${held.line}&point=${across.toFixed(1)}&near=${(held.near ?? 0).toFixed(1)}`);
  });
  sheet.addEventListener("pointerup", () => {
    if (sheet.dataset.dragging !== "yes") return;
    delete sheet.dataset.dragging;
    keep();
  });
  sheet.addEventListener("pointercancel", () => {
    delete sheet.dataset.dragging;
    putBack();
  });

  sheet.addEventListener("keydown", (event) => {
    const grip = event.target instanceof Element && event.target.closest(".grip");
    if (!(grip instanceof SVGElement)) return;
    const by = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1, PageUp: -4, PageDown: 4 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      take(grip);
      if (!held) return;
      const down = held.axis === "both" && !["ArrowLeft", "ArrowRight"].includes(event.key);
      if (down) held.down += by;
      else held.marks += by;
      ask(`${address}&line=${held.line}&marks=${held.marks}${held.axis === "both" ? `&down=${held.down}` : ""}`);
    } else if (event.key === "Enter" && held) {
      event.preventDefault();
      keep();
    } else if (event.key === "Escape" && held) {
      event.preventDefault();
      putBack();
    }
  });
  sheet.addEventListener("focusout", (event) => {
    // Somebody who goes on with something else means it.
    const to = event.relatedTarget;
    if (held && sheet.dataset.dragging !== "yes" && to instanceof Element && !sheet.contains(to)) keep();
  });
}
