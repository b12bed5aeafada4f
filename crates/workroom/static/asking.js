// @ts-check
import { gone } from "./gone.js";

/** Where a pointer is in a drawing, in the drawing's own units; its corner while the drawing is not shown.
 *  @param {SVGSVGElement} sheet @param {PointerEvent} event */
export function pointIn(sheet, event) {
  const box = sheet.getScreenCTM();
  return box ? new DOMPoint(event.clientX, event.clientY).matrixTransform(box.inverse()) : new DOMPoint();
}

/** Asks the workroom what would come of something, the newest question only: an answer that comes late is for something
 *  that was passed.
 *  @param {(page: Document) => void} take  what to do with an answer */
export function asking(take) {
  /** @type {string | null} */
  let next = null;
  let busy = false;
  const run = async () => {
    if (busy || next === null) return;
    busy = true;
    const asked = next;
    next = null;
    try {
      const answer = await fetch(asked);
      gone(false);
      if (answer.ok) take(new DOMParser().parseFromString(await answer.text(), "text/html"));
    } catch (error) {
      if (!(error instanceof TypeError)) throw error;
      gone();
    } finally {
      busy = false;
    }
    run();
  };
  /** Does something once the last answer is there. @param {() => void} then */
  const settled = (then) => void (busy || next !== null ? setTimeout(() => settled(then), 20) : then());
  return {
    /** @param {string} address */
    ask: (address) => {
      next = address;
      run();
    },
    drop: () => {
      next = null;
    },
    settled,
  };
}
