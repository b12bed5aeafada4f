// @ts-check
import { gone } from "./gone.js";
import { wake } from "./wake.js";

/** Sends a form as a browser would and puts the page that comes back in this one's place: no flash, no jump.
 *  @param {HTMLFormElement} form
 *  @param {string} [focus]  what to focus on the page that comes */
export async function send(form, focus) {
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (typeof value === "string") fields.append(name, value);
  try {
    const answer = await fetch(form.action, { method: "POST", body: fields });
    gone(false);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    await ready(page);
    for (const part of [".top", "main", ".foot"]) {
      const [old, fresh] = [document.querySelector(part), page.querySelector(part)];
      if (old && fresh) old.replaceWith(document.importNode(fresh, true));
      // Another kind of page came: go there as usual.
      else if (fresh || old) return form.submit();
    }
    document.title = page.title;
    wake(document);
    const wanted = focus ? document.querySelector(focus) : null;
    if (wanted instanceof SVGElement || wanted instanceof HTMLElement) wanted.focus({ preventScroll: true });
    document.querySelector("main [role=alert]")?.scrollIntoView({ block: "nearest" });
  } catch {
    // Sent as usual, the form would leave the browser's own error page, and what was typed would be lost.
    gone();
  }
}

/** How long a page that is ready waits for its pictures, in milliseconds. */
const PICTURES = 600;

/** Fetches the pictures that will stand where pictures are seen now, so that none is blank for a moment.
 *  @param {Document} page */
async function ready(page) {
  const fresh = [...page.querySelectorAll("main img")];
  const seen = (/** @type {Element} */ image) => {
    const box = image.getBoundingClientRect();
    return box.bottom > 0 && box.top < innerHeight;
  };
  const fetched = [...document.querySelectorAll("main img")].map((old, index) => {
    const source = seen(old) && fresh[index]?.getAttribute("src");
    if (!source) return null;
    const image = new Image();
    image.src = source;
    return image.decode().catch(() => {});
  });
  await Promise.race([Promise.all(fetched), new Promise((done) => setTimeout(done, PICTURES))]);
}
