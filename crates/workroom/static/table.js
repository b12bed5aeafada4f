// @ts-check
/** The step at the table: space ticks it, arrows walk, it can be read aloud, and the screen stays awake.
 *  @param {HTMLElement} element  the section that holds the step */
export function enhance(element) {
  document.addEventListener("keydown", (event) => {
    const target = event.target;
    const busy = target instanceof Element && target.closest("input, textarea, select, button, a, summary");
    if (busy || event.ctrlKey || event.metaKey || event.altKey) return;
    const wanted = { " ": 'button[data-key=" "]', ArrowRight: 'a[rel="next"]', ArrowLeft: 'a[rel="prev"]' }[event.key];
    const found = wanted && element.querySelector(wanted);
    if (found instanceof HTMLElement) {
      event.preventDefault();
      found.click();
    }
  });

  const read = element.querySelector("[data-read]");
  if (read instanceof HTMLElement && "speechSynthesis" in window) {
    read.hidden = false;
    read.addEventListener("click", () => {
      speechSynthesis.cancel();
      const told = element.querySelector(".told");
      speechSynthesis.speak(new SpeechSynthesisUtterance(told?.textContent ?? ""));
    });
  }

  const awake = () => {
    // Where the browser cannot or will not, the screen sleeps as it always does.
    if (document.visibilityState === "visible") navigator.wakeLock?.request("screen").catch(() => {});
  };
  document.addEventListener("visibilitychange", awake);
  awake();
}
