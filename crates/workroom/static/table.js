// @ts-check
import { gone } from "./gone.js";

/** How long a browser may take to find its voices, in milliseconds. Chosen: some load them only when first asked. */
const VOICES = 1500;

/** The step at the table: space ticks it, arrows walk, the next step comes in place (so that a full screen stays full),
 *  it can be read aloud, and the screen stays awake.
 *  @param {HTMLElement} element  the section that holds the step */
export function enhance(element) {
  const stage = element.closest("main") ?? element;
  const now = () => /** @type {HTMLElement} */ (document.getElementById("step") ?? element);
  let aloud = false;

  /** Shows or hides what the page says for some case. @param {string} which @param {boolean} shown */
  const tell = (which, shown) => {
    const line = now().querySelector(which);
    if (line instanceof HTMLElement) line.hidden = !shown;
  };

  const focus = () => {
    const heading = now().querySelector(".told h2");
    if (!(heading instanceof HTMLElement)) return;
    heading.tabIndex = -1;
    heading.focus({ preventScroll: Boolean(document.fullscreenElement) });
  };

  const mute = () => tell("[data-mute]", aloud && speechSynthesis.getVoices().length === 0);

  const say = () => {
    speechSynthesis.cancel();
    const told = now().querySelector(".told");
    speechSynthesis.speak(new SpeechSynthesisUtterance(told instanceof HTMLElement ? told.innerText : ""));
    setTimeout(mute, VOICES);
  };

  /** Puts another step in the place of this one; a page that is no step is gone to. Without an answer the step stays,
   *  and the page says that the tick is not kept.
   *  @param {() => Promise<Response>} ask */
  const show = async (ask) => {
    let response, text;
    try {
      response = await ask();
      text = await response.text();
    } catch {
      return gone();
    }
    gone(false);
    const page = new DOMParser().parseFromString(text, "text/html");
    const next = page.getElementById("step");
    if (!response.ok || !next) return location.assign(response.url);
    for (const part of ["#step", ".lead", ".all-steps"]) {
      const there = document.querySelector(`main ${part}`);
      const fresh = page.querySelector(`main ${part}`);
      if (there && fresh) there.replaceWith(fresh);
    }
    history.replaceState(null, "", response.url);
    ready();
    focus();
    if (aloud) say();
  };

  stage.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !now().contains(form)) return;
    event.preventDefault();
    const body = new URLSearchParams(/** @type {any} */ (new FormData(form)));
    show(() => fetch(form.action, { method: "POST", body }));
  });

  stage.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("#step a") : null;
    if (!(link instanceof HTMLAnchorElement) || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    show(() => fetch(link.href));
  });

  // What is typed or chosen in keeps its keys, and so does a button that does something of its own with the space bar.
  const OWN = "input, textarea, select, summary, [contenteditable]";
  const BUTTON = "button:not([data-read], [data-full], [data-hand])";
  /** What a key does for the step while that element has the focus. @param {KeyboardEvent} event */
  const wanted = (event) => {
    const target = event.target instanceof Element ? event.target : null;
    if (target?.closest(OWN) || event.ctrlKey || event.metaKey || event.altKey) return null;
    if (event.key === " " && target?.closest(BUTTON)) return null;
    const which = { " ": 'button[data-key=" "]', ArrowRight: 'a[rel="next"]', ArrowLeft: 'a[rel="prev"]', f: "[data-full]" }[event.key];
    const found = which && now().querySelector(which);
    return found instanceof HTMLElement ? found : null;
  };

  document.addEventListener("keydown", (event) => {
    const found = wanted(event);
    if (!found) return;
    event.preventDefault();
    // A key held down does its work once: nobody ticks ten steps with an elbow.
    if (!event.repeat) found.click();
  });
  // Some browsers press the button that has the focus only when the space bar comes up.
  document.addEventListener("keyup", (event) => {
    if (event.key === " " && wanted(event)) event.preventDefault();
  });

  /** Whether the screen stays awake; not known before the browser answers. @type {boolean | null} */
  let stays = null;
  const told = () => {
    tell("[data-awake]", stays === true);
    tell("[data-sleeps]", stays === false);
  };

  const ready = () => {
    told();
    const read = now().querySelector("[data-read]");
    if (read instanceof HTMLElement && "speechSynthesis" in window) {
      read.hidden = false;
      read.setAttribute("aria-pressed", String(aloud));
      read.addEventListener("click", (event) => {
        aloud = !aloud;
        read.setAttribute("aria-pressed", String(aloud));
        if (aloud) say();
        else speechSynthesis.cancel();
        if (!aloud) mute();
        // After a pointer the keys belong to the step again; who came by keyboard stays where she is.
        if (event.detail > 0) focus();
      });
    }
    const full = now().querySelector("[data-full]");
    if (full instanceof HTMLElement && document.fullscreenEnabled) {
      full.hidden = false;
      full.addEventListener("click", (event) => {
        if (document.fullscreenElement) document.exitFullscreen();
        else stage.requestFullscreen().catch(() => {});
        if (event.detail > 0) focus();
      });
    }
  };
  ready();

  const way = document.querySelector(".way ol");
  const here = way?.querySelector("[aria-current]");
  // On a phone the way is one line that can be pushed along: the page one is on is seen.
  if (way && here instanceof HTMLElement) way.scrollLeft = here.offsetLeft - way.clientWidth / 2;

  const awake = () => {
    if (document.visibilityState !== "visible") return;
    const asked = navigator.wakeLock ? navigator.wakeLock.request("screen") : Promise.reject(new Error("cannot"));
    asked.then(() => (stays = true), () => (stays = false)).then(told);
  };
  document.addEventListener("visibilitychange", awake);
  awake();
}
