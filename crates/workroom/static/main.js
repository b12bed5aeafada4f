// @ts-check
/** Finds what a page wants enhanced and imports that module; keys for undo and redo everywhere. */

const modules = /** @type {Record<string, () => Promise<{ enhance(element: HTMLElement): void }>>} */ ({
  table: () => import("./table.js"),
  ties: () => import("./ties.js"),
});

for (const element of document.querySelectorAll("[data-enhance]")) {
  const load = modules[/** @type {HTMLElement} */ (element).dataset.enhance ?? ""];
  if (load) load().then((module) => module.enhance(/** @type {HTMLElement} */ (element)));
}

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
