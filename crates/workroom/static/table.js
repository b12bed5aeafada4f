// @ts-check
/** The step at the table: space ticks it, arrows walk, the next step comes in place (so that a full screen stays full),
 *  it can be read aloud, and the screen stays awake.
 *  @param {HTMLElement} element  the section that holds the step */
export function enhance(element) {
  const stage = element.closest("main") ?? element;
  const now = () => /** @type {HTMLElement} */ (document.getElementById("step") ?? element);
  let aloud = false;

  const say = () => {
    speechSynthesis.cancel();
    const told = now().querySelector(".told");
    speechSynthesis.speak(new SpeechSynthesisUtterance(told instanceof HTMLElement ? told.innerText : ""));
  };

  /** Puts another step in the place of this one; a page that is no step is gone to.
   *  @param {Promise<Response>} coming */
  const show = async (coming) => {
    const response = await coming;
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    const next = page.getElementById("step");
    if (!response.ok || !next) return location.assign(response.url);
    for (const part of ["#step", ".lead", ".all-steps"]) {
      const there = document.querySelector(`main ${part}`);
      const fresh = page.querySelector(`main ${part}`);
      if (there && fresh) there.replaceWith(fresh);
    }
    history.replaceState(null, "", response.url);
    ready();
    const heading = now().querySelector(".told h2");
    if (heading instanceof HTMLElement) {
      heading.tabIndex = -1;
      heading.focus({ preventScroll: Boolean(document.fullscreenElement) });
    }
    if (aloud) say();
  };

  stage.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !now().contains(form)) return;
    event.preventDefault();
    const body = new URLSearchParams(/** @type {any} */ (new FormData(form)));
    show(fetch(form.action, { method: "POST", body })).catch(() => form.submit());
  });

  stage.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("#step a") : null;
    if (!(link instanceof HTMLAnchorElement) || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    show(fetch(link.href)).catch(() => location.assign(link.href));
  });

  document.addEventListener("keydown", (event) => {
    const target = event.target;
    const busy = target instanceof Element && target.closest("input, textarea, select, button, a, summary");
    if (busy || event.ctrlKey || event.metaKey || event.altKey) return;
    const wanted = { " ": 'button[data-key=" "]', ArrowRight: 'a[rel="next"]', ArrowLeft: 'a[rel="prev"]', f: "[data-full]" }[event.key];
    const found = wanted && now().querySelector(wanted);
    if (found instanceof HTMLElement) {
      event.preventDefault();
      found.click();
    }
  });

  const ready = () => {
    const read = now().querySelector("[data-read]");
    if (read instanceof HTMLElement && "speechSynthesis" in window) {
      read.hidden = false;
      read.setAttribute("aria-pressed", String(aloud));
      read.addEventListener("click", () => {
        aloud = !aloud;
        read.setAttribute("aria-pressed", String(aloud));
        if (aloud) say();
        else speechSynthesis.cancel();
      });
    }
    const full = now().querySelector("[data-full]");
    if (full instanceof HTMLElement && document.fullscreenEnabled) {
      full.hidden = false;
      full.addEventListener("click", () => {
        if (document.fullscreenElement) document.exitFullscreen();
        else stage.requestFullscreen().catch(() => {});
      });
    }
  };
  ready();

  const awake = () => {
    // Where the browser cannot or will not, the screen sleeps as it always does.
    if (document.visibilityState === "visible") navigator.wakeLock?.request("screen").catch(() => {});
  };
  document.addEventListener("visibilitychange", awake);
  awake();
}
