// @ts-check
import { pointIn } from "./asking.js";

/** A print on which a frame can be drawn with the mouse, a pen or a finger: it fills in the form beside it.
 *  @param {HTMLElement} element  holds the drawing and the forms; says points a unit and points a mark */
export function enhance(element) {
  const sheet = element.querySelector(".sheet > svg");
  const form = element.querySelector("form:has(input[name=left])");
  if (!(sheet instanceof SVGSVGElement) || !(form instanceof HTMLFormElement)) return;
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
    const field = form.elements.namedItem(name);
    if (field instanceof HTMLInputElement) field.value = value;
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
    const { x, y, w, h } = box(event);
    for (const [name, value] of Object.entries({ x, y, width: w, height: h })) frame.setAttribute(name, String(value));
  });
  sheet.addEventListener("pointerup", (event) => {
    if (!from) return;
    const { x, y, w, h } = box(event);
    from = null;
    if (w === 0 || h === 0) return frame.remove();
    fill("left", told(x));
    fill("top", told(y));
    fill("size", `${told(w)} x ${told(h)}`);
    const button = form.querySelector("button");
    if (button) button.focus();
  });
  sheet.addEventListener("pointercancel", () => {
    from = null;
    frame.remove();
  });
}
