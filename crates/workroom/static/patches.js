// @ts-check
import { pointIn } from "./asking.js";

/** Pixels of the screen, whatever the photo's: height of a number, half of what a finger needs, what is no longer a touch, and
 *  how far beside a ring's middle a finger means another patch. */
const [LETTERS, FINGER, STILL, NEXT] = [20, 22, 4, 10];

/** @param {string} kind @param {string} name */
const drawn = (kind, name) => {
  const element = document.createElementNS("http://www.w3.org/2000/svg", kind);
  element.setAttribute("class", name);
  return element;
};

/** Patches of a photo whose colours are known. Each row of the list has a ring in the photo, to be dragged or moved by the
 *  arrow keys; a touch of the photo begins another row. The rows are what is sent.
 *  @param {SVGSVGElement} sheet  the photo
 *  @param {HTMLFormElement} form  holds the list */
export function patches(sheet, form) {
  const known = form.querySelector("details.known");
  const list = form.querySelector("ol.rows");
  const rings = sheet.querySelector(".patches");
  if (!(known instanceof HTMLDetailsElement) || !(list instanceof HTMLElement) || !rings) return;
  const { width, height } = sheet.viewBox.baseVal;
  const rows = () => /** @type {HTMLElement[]} */ ([...list.children]);
  const field = (/** @type {Element} */ row, /** @type {"place" | "color"} */ what) =>
    /** @type {HTMLInputElement} */ (row.querySelector(`[name="patch-${what}"]`));
  const empty = /** @type {HTMLElement} */ (list.lastElementChild).cloneNode(true);
  /** @type {Map<Element, SVGElement>} */
  const ringOf = new Map();

  // Where a touch began: what browsers then call a click they move to what they think was meant.
  let from = new DOMPoint();
  sheet.addEventListener("pointerdown", (event) => (from = pointIn(sheet, event)), { capture: true });

  /** Where a row says that its patch is. @param {Element} row */
  const place = (row) => {
    const found = /^\s*([\d.]+)\s*[,;\s]\s*([\d.]+)(.*)$/.exec(field(row, "place").value);
    return found && { x: Number(found[1]) || 0, y: Number(found[2]) || 0, rest: found[3] };
  };

  /** @param {Element} row @param {number} x @param {number} y */
  const move = (row, x, y) => {
    const within = (/** @type {number} */ value, /** @type {number} */ most) => Math.round(Math.min(Math.max(value, 0), most));
    field(row, "place").value = `${within(x, width)},${within(y, height)}${place(row)?.rest ?? ""}`;
    draw();
    old(row);
  };

  /** What was told of the patches is no longer so. @param {Element | null} row */
  const old = (row) => {
    for (const told of known.querySelectorAll(".off, .chips, .rows > li > :not(.refused) > .said")) told.remove();
    const refused = row && row.querySelector(".refused");
    if (refused) {
      refused.classList.remove("refused");
      refused.querySelector(".said")?.remove();
    }
  };

  /** A row's ring, that can be taken hold of. @param {Element} row */
  const ring = (row) => {
    const made = drawn("g", "ring");
    made.setAttribute("tabindex", "0");
    made.setAttribute("role", "button");
    made.append(drawn("circle", "touch"), drawn("rect", "looked"), drawn("circle", "patch"), drawn("text", ""));
    /** From where it was taken hold of to its middle, and whether it was drawn along. */
    let [off, drags] = [{ x: 0, y: 0 }, false];
    made.addEventListener("pointerdown", (event) => {
      const is = place(row);
      if (!is) return;
      off = { x: is.x - from.x, y: is.y - from.y };
      drags = false;
      made.setPointerCapture(event.pointerId);
      made.focus({ preventScroll: true });
      made.classList.add("held");
      event.preventDefault();
    });
    const follow = (/** @type {PointerEvent} */ event) => {
      if (!made.hasPointerCapture(event.pointerId)) return;
      const at = pointIn(sheet, event);
      drags ||= Math.hypot(at.x - from.x, at.y - from.y) > STILL * unit();
      if (drags) move(row, at.x + off.x, at.y + off.y);
    };
    made.addEventListener("pointermove", follow);
    made.addEventListener("pointerup", follow);
    // A finger's touch beside a ring is taken for one of the ring by browsers; it marks another patch.
    made.addEventListener("click", (event) => {
      // Patches of a large card lie closer than rings are wide on a phone.
      const finger = event instanceof PointerEvent && event.pointerType === "touch";
      const round = finger ? NEXT * unit() : Number(made.querySelector(".patch")?.getAttribute("r"));
      if (!drags && Math.hypot(off.x, off.y) > round) begin(from.x, from.y);
    });
    made.addEventListener("lostpointercapture", () => made.classList.remove("held"));
    made.addEventListener("keydown", (event) => {
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
      const is = place(row);
      if (!way || !is) return;
      const step = event.shiftKey ? 20 : 1;
      move(row, is.x + way[0] * step, is.y + way[1] * step);
      event.preventDefault();
    });
    const later = rows().slice(rows().indexOf(/** @type {HTMLElement} */ (row)) + 1).find((other) => ringOf.has(other));
    rings.insertBefore(made, (later && ringOf.get(later)) ?? null);
    ringOf.set(row, made);
    return made;
  };

  /** Units of the photo to a pixel of the screen. */
  const unit = () => 1 / (sheet.getScreenCTM()?.a || 1);

  /** Every ring where its row says, as large as its neighbours leave room for; the one in hand as large as it should be. */
  const draw = () => {
    const places = rows().map(place);
    const pixel = unit();
    rows().forEach((row, number) => {
      const at = places[number];
      if (!at) {
        ringOf.get(row)?.remove();
        ringOf.delete(row);
        return;
      }
      const made = ringOf.get(row) ?? ring(row);
      const apart = places.map((other, index) => (other && index !== number ? Math.hypot(other.x - at.x, other.y - at.y) : Infinity));
      const nearest = Math.min(...apart);
      const small = Math.max(Math.min(nearest / 1.7, LETTERS * pixel), LETTERS * pixel * 0.4);
      const letters = made.classList.contains("here") ? LETTERS * pixel : small;
      const half = Number(/[,;]\s*([\d.]+)/.exec(at.rest)?.[1]) || Number(list.dataset.half) || letters / 4;
      const set = (/** @type {string} */ name, /** @type {Record<string, string | number>} */ values) => {
        for (const [key, value] of Object.entries(values)) made.querySelector(name)?.setAttribute(key, String(value));
      };
      set(".patch", { r: letters * 0.85 });
      set(".touch", { r: Math.max(small * 0.85, Math.min(nearest / 2, FINGER * pixel)) });
      set(".looked", { x: -half, y: -half, width: half * 2, height: half * 2 });
      made.setAttribute("font-size", String(letters));
      made.setAttribute("transform", `translate(${at.x} ${at.y})`);
      made.setAttribute("aria-label", (list.dataset.at ?? "#").replace("#", String(number + 1)).replace("@", `${at.x},${at.y}`));
      made.querySelector("text")?.replaceChildren(String(number + 1));
    });
  };

  /** The last row is always an empty one: what was written into it makes it a patch. */
  const grow = () => {
    const last = /** @type {HTMLElement} */ (list.lastElementChild);
    if (!field(last, "place").value.trim() && !field(last, "color").value.trim()) return;
    const [named, away] = [last.querySelector("legend"), last.querySelector("button")];
    const called = (/** @type {string | undefined} */ name) => (name ?? "#").replace("#", String(rows().length));
    if (named) named.textContent = called(list.dataset.called);
    if (away) {
      away.textContent = called(list.dataset.away);
      away.value = `without ${rows().length}`;
      away.hidden = false;
    }
    list.append(empty.cloneNode(true));
  };

  /** Another patch, whose colour is typed next. @param {number} x @param {number} y */
  const begin = (x, y) => {
    const row = /** @type {HTMLElement} */ (list.lastElementChild);
    move(row, x, y);
    grow();
    draw();
    field(row, "color").focus();
  };
  sheet.addEventListener("click", (event) => {
    if (!known.open || (event.target instanceof Element && event.target.closest(".corner, .ring"))) return;
    begin(from.x, from.y);
  });
  list.addEventListener("input", (event) => {
    old(event.target instanceof Element ? event.target.closest("li") : null);
    grow();
    draw();
  });
  // The ring in hand, or of the row somebody writes in, stands out.
  const here = (/** @type {FocusEvent} */ event) => {
    const target = event.target instanceof Element ? event.target : null;
    const row = event.type === "focusin" && target?.closest("li");
    for (const [of, made] of ringOf) made.classList.toggle("here", of === row || (event.type === "focusin" && made === target));
    draw();
  };
  for (const of of [list, rings]) {
    of.addEventListener("focusin", /** @type {EventListener} */ (here));
    of.addEventListener("focusout", /** @type {EventListener} */ (here));
  }
  addEventListener("resize", draw);
  known.addEventListener("toggle", () => rings.toggleAttribute("hidden", !known.open));
  rings.toggleAttribute("hidden", !known.open);
  rings.replaceChildren();
  rings.removeAttribute("aria-hidden");
  draw();
}
