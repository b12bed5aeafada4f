// @ts-check
import { pointIn } from "./asking.js";

/** A print on which a frame can be drawn with the mouse, a pen or a finger, or moved and sized by the arrow keys: it fills in
 *  the form beside it, that of a marked part where it is open to be changed.
 *  @param {HTMLElement} element  holds the drawing and the forms; says points a unit and points a mark */
export function enhance(element) {
  const sheet = element.querySelector(".sheet > svg");
  const form = () => {
    const open = element.querySelector("details[open] form:has(input[name=left])");
    const found = open ?? element.querySelector(".told > form:has(input[name=left])");
    return found instanceof HTMLFormElement ? found : null;
  };
  if (!(sheet instanceof SVGSVGElement)) return;
  const per = Number(element.dataset.per) || 72;
  const mark = Number(element.dataset.mark) || 9;
  const { width, height } = sheet.viewBox.baseVal;
  /** @type {{ x: number, y: number } | null} */
  let from = null;
  const frame = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  frame.setAttribute("class", "keep drawing");

  /** Where a pointer is, on the maker's marks. @param {PointerEvent} event */
  const place = (event) => {
    const at = pointIn(sheet, event);
    const on = (/** @type {number} */ value, /** @type {number} */ most) =>
      Math.min(Math.max(Math.round(value / mark) * mark, 0), most);
    return { x: on(at.x, width), y: on(at.y, height) };
  };
  /** @param {PointerEvent} event */
  const box = (event) => {
    const to = place(event);
    const one = from ?? to;
    return { x: Math.min(one.x, to.x), y: Math.min(one.y, to.y), w: Math.abs(to.x - one.x), h: Math.abs(to.y - one.y) };
  };
  /** @param {string} name @param {string} value */
  const fill = (name, value) => {
    const field = form()?.elements.namedItem(name);
    if (field instanceof HTMLInputElement) field.value = value;
  };
  /** What the frame is, in points. */
  const now = { x: 0, y: 0, w: 0, h: 0 };
  const draw = () => {
    const { x, y, w, h } = now;
    for (const [name, value] of Object.entries({ x, y, width: w, height: h })) frame.setAttribute(name, String(value));
  };
  const filled = () => {
    fill("left", told(now.x));
    fill("top", told(now.y));
    fill("size", `${told(now.w)} x ${told(now.h)}`);
  };
  const told = (/** @type {number} */ points) => String(Math.round((points / per) * 10000) / 10000);

  element.classList.add("by-hand");
  sheet.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    from = place(event);
    sheet.setPointerCapture(event.pointerId);
    sheet.append(frame);
    event.preventDefault();
  });
  sheet.addEventListener("pointermove", (event) => {
    if (!from) return;
    Object.assign(now, box(event));
    draw();
  });
  sheet.addEventListener("pointerup", (event) => {
    if (!from) return;
    Object.assign(now, box(event));
    from = null;
    if (now.w === 0 || now.h === 0) return frame.remove();
    filled();
    form()?.querySelector("button")?.focus();
  });
  sheet.addEventListener("pointercancel", () => {
    from = null;
    frame.remove();
  });
  // By keyboard: arrows move the frame by a mark, with Shift they move its far corner, with Ctrl all goes by eight marks.
  sheet.setAttribute("tabindex", "0");
  sheet.addEventListener("keydown", (event) => {
    const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    const way = Object.entries(ways).find(([key]) => key === event.key)?.[1];
    if (event.key === "Enter" && frame.isConnected) {
      event.preventDefault();
      form()?.querySelector("button")?.focus();
    }
    if (!way) return;
    event.preventDefault();
    if (!frame.isConnected) {
      // It begins in the middle of the sheet, a quarter as large.
      const on = (/** @type {number} */ value) => Math.round(value / mark) * mark;
      Object.assign(now, { x: on((width * 3) / 8), y: on((height * 3) / 8), w: on(width / 4), h: on(height / 4) });
      sheet.append(frame);
    } else {
      const step = mark * (event.ctrlKey ? 8 : 1);
      const held = (/** @type {number} */ value, /** @type {number} */ least, /** @type {number} */ most) => Math.min(Math.max(value, least), most);
      if (event.shiftKey) {
        now.w = held(now.w + way[0] * step, mark, width - now.x);
        now.h = held(now.h + way[1] * step, mark, height - now.y);
      } else {
        now.x = held(now.x + way[0] * step, 0, width - now.w);
        now.y = held(now.y + way[1] * step, 0, height - now.h);
      }
    }
    draw();
    filled();
  });
}
