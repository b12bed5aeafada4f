// @ts-check
import { wake } from "./wake.js";

/** Sends a form as a browser would and puts the page that comes back in this one's place: no flash, no jump.
 *  @param {HTMLFormElement} form
 *  @param {string} [focus]  what to focus on the page that comes */
export async function send(form, focus) {
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (typeof value === "string") fields.append(name, value);
  try {
    const answer = await fetch(form.action, { method: "POST", body: fields });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
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
    form.submit();
  }
}
