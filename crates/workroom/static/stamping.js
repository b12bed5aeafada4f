// @ts-check
import { asking, pointIn } from "./asking.js";
import { send } from "./swap.js";

/** A stamped background that can be tried: while a slider moves the workroom sets the sheet out anew, a motif that is
 *  dragged makes the others move aside, and let go, it is kept. By mouse, by touch, and by the keys.
 *  @param {HTMLElement} element  holds the sheet, what is said of it, and the forms */
export function enhance(element) {
  const sheet = element.querySelector("svg.stamped");
  const told = element.querySelector(".moved");
  const sliders = element.querySelector("form.act-change");
  const typing = document.querySelector("form.act-move");
  const locking = document.querySelector("form.act-lock");
  if (!told || !(sliders instanceof HTMLFormElement)) return;
  element.classList.add("by-hand");
  const address = element.dataset.ask ?? "";

  /** @type {{ number: string, from: [number, number], place: [number, number], moved: boolean, to: DOMStringMap | null } | null} */
  let held = null;
  const first = sheet?.querySelector(".over")?.cloneNode(true);
  const words = told.textContent ?? "";

  /** Puts a sheet in place of the one that is shown. @param {Node} over */
  const show = (over) => {
    const had = document.activeElement instanceof Element && sheet?.contains(document.activeElement);
    sheet?.querySelector(".over")?.replaceWith(over);
    const mine = held ? sheet?.querySelector(`[data-number="${held.number}"]`) : null;
    mine?.classList.add("held");
    if (had && mine instanceof SVGElement) mine.focus({ preventScroll: true });
  };

  const { ask, drop, settled } = asking((page) => {
    const over = page.querySelector("svg > .over");
    const said = page.querySelector(".said, .stays");
    if (over && sheet) show(document.importNode(over, true));
    if (held && said instanceof HTMLElement) held.to = said.className === "said" ? said.dataset : null;
    for (const set of page.querySelectorAll("data.set")) {
      const field = sliders.elements.namedItem(`set:${set.getAttribute("data-place")}`);
      if (field instanceof HTMLInputElement) field.value = set.getAttribute("value") ?? "";
    }
    told.classList.toggle("stays", said?.className === "stays");
    told.textContent = said?.textContent ?? "";
  });

  for (const slide of /** @type {NodeListOf<HTMLInputElement>} */ (sliders.querySelectorAll("input.slide"))) {
    slide.hidden = false;
    slide.disabled = false;
    slide.addEventListener("input", () => {
      const query = new URLSearchParams();
      for (const [name, value] of new FormData(sliders)) {
        if (name.startsWith("set:") && typeof value === "string") query.append(name, value);
      }
      query.append(slide.name, slide.value);
      ask(`${address}&${query}`);
    });
    // Let go, it is kept: undone like every change.
    slide.addEventListener("change", () => settled(() => send(sliders)));
  }

  if (!(sheet instanceof SVGSVGElement)) return;

  /** Where a pointer is on the sheet. @param {PointerEvent} event @returns {[number, number]} */
  const place = (event) => {
    const at = pointIn(sheet, event);
    return [at.x, at.y];
  };
  /** @param {EventTarget | null} target */
  const motif = (target) => target instanceof Element ? target.closest(".impression") : null;
  /** @param {Element} one @returns {[number, number]} */
  const stands = (one) => [Number(one.getAttribute("data-x")), Number(one.getAttribute("data-y"))];

  /** Asks what comes of it there. @param {number} x @param {number} y */
  const try_ = (x, y) => {
    if (!held) return;
    held.moved = true;
    ask(`${address}&number=${held.number}&x=${x.toFixed(1)}&y=${y.toFixed(1)}`);
  };

  const putBack = () => {
    held = null;
    drop();
    if (first) show(first.cloneNode(true));
    told.textContent = words;
    told.classList.remove("stays");
  };

  const keep = () => settled(() => {
    const mine = held;
    held = null;
    if (!mine?.to?.x || !(typing instanceof HTMLFormElement)) return mine?.moved ? putBack() : undefined;
    for (const [name, value] of [["number", mine.number], ["x", mine.to.x], ["y", mine.to.y ?? ""], ["turn", mine.to.turn ?? "0"]]) {
      const field = typing.elements.namedItem(name);
      if (field instanceof HTMLInputElement) field.value = value;
    }
    send(typing, "svg.stamped .impression");
  });

  /** Locks one, or frees it again. @param {Element} one */
  const lock = (one) => {
    if (!(locking instanceof HTMLFormElement)) return;
    const numbers = locking.elements.namedItem("numbers");
    const how = one.classList.contains("locked") ? "free" : "lock";
    const hidden = document.createElement("input");
    Object.assign(hidden, { type: "hidden", name: "how", value: how });
    locking.append(hidden);
    if (numbers instanceof HTMLInputElement) numbers.value = one.getAttribute("data-number") ?? "";
    send(locking, `svg.stamped [data-number="${one.getAttribute("data-number")}"]`);
  };

  sheet.addEventListener("touchstart", (event) => {
    if (motif(event.target)) event.preventDefault();
  }, { passive: false });
  sheet.addEventListener("pointerdown", (event) => {
    const one = motif(event.target);
    if (!one) return;
    event.preventDefault();
    if (one instanceof SVGElement) one.focus({ preventScroll: true });
    held = { number: one.getAttribute("data-number") ?? "", from: place(event), place: stands(one), moved: false, to: null };
    sheet.setPointerCapture(event.pointerId);
    sheet.dataset.dragging = "yes";
  });
  sheet.addEventListener("pointermove", (event) => {
    if (!held || sheet.dataset.dragging !== "yes") return;
    const [x, y] = place(event);
    const [dx, dy] = [x - held.from[0], y - held.from[1]];
    // A hand that only taps does not mean to move it.
    if (held.moved || Math.hypot(dx, dy) > 4) try_(held.place[0] + dx, held.place[1] + dy);
  });
  sheet.addEventListener("pointerup", () => {
    if (sheet.dataset.dragging !== "yes") return;
    delete sheet.dataset.dragging;
    if (held?.moved) keep();
    else held = null;
  });
  sheet.addEventListener("pointercancel", () => {
    delete sheet.dataset.dragging;
    putBack();
  });
  sheet.addEventListener("dblclick", (event) => {
    const one = motif(event.target);
    if (one) lock(one);
  });

  /** Steps through the impressions. @param {Element} one @param {number} by */
  const step = (one, by) => {
    const number = Number(one.getAttribute("data-number")) + by;
    const other = sheet.querySelector(`[data-number="${number}"]`);
    if (!(other instanceof SVGElement)) return;
    one.setAttribute("tabindex", "-1");
    other.setAttribute("tabindex", "0");
    other.focus({ preventScroll: true });
  };
  sheet.addEventListener("keydown", (event) => {
    const one = motif(event.target);
    if (!one) return;
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way && event.shiftKey) {
      event.preventDefault();
      const number = one.getAttribute("data-number") ?? "";
      held ??= { number, from: [0, 0], place: stands(one), moved: false, to: null };
      // Shift and an arrow: three points, about a millimetre.
      held.place = [held.place[0] + way[0] * 3, held.place[1] + way[1] * 3];
      try_(...held.place);
    } else if (way) {
      event.preventDefault();
      step(one, way[0] + way[1]);
    } else if (event.key === "Enter" && held) {
      event.preventDefault();
      keep();
    } else if (event.key === "Escape" && held) {
      event.preventDefault();
      putBack();
    } else if (event.key === " " || event.key === "Enter") {
      event.preventDefault();
      lock(one);
    }
  });
}
