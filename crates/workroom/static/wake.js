// @ts-check
/** The parts of pages that scripts make handier, each in a module of its own. */
const modules = /** @type {Record<string, () => Promise<{ enhance(element: HTMLElement): void }>>} */ ({
  corners: () => import("./corners.js"),
  hold: () => import("./hold.js"),
  lines: () => import("./lines.js"),
  mend: () => import("./mend.js"),
  progress: () => import("./progress.js"),
  regions: () => import("./regions.js"),
  stamping: () => import("./stamping.js"),
  table: () => import("./table.js"),
  ties: () => import("./ties.js"),
});

/** Finds what wants enhancing and does it.
 *  @param {ParentNode} where */
export function wake(where) {
  for (const element of where.querySelectorAll("[data-enhance]")) {
    const load = modules[/** @type {HTMLElement} */ (element).dataset.enhance ?? ""];
    if (load) load().then((module) => module.enhance(/** @type {HTMLElement} */ (element)));
  }
}
