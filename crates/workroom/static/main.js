// @ts-check
/** Wakes what a page wants enhanced; keys for undo and redo everywhere. */
import { wake } from "./wake.js";

wake(document);

/** True if a key belongs to what is being typed in.
 *  @param {EventTarget | null} target */
function typing(target) {
  return target instanceof Element && target.closest("input, textarea, select") !== null;
}

document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || typing(event.target)) return;
  const verb = event.shiftKey ? "redo" : "undo";
  const button = document.querySelector(`button[data-key="${verb}"]`);
  if (button instanceof HTMLButtonElement && !button.disabled) {
    event.preventDefault();
    button.click();
  }
});
