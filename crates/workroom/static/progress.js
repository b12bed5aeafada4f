// @ts-check
/** Listens how far a plan is, and shows the page once it is there.
 *  @param {HTMLElement} waits the part of the page that waits; `data-from` says where to listen */
export function enhance(waits) {
  const { from } = waits.dataset;
  const said = waits.querySelector(".so-far");
  if (!from || !said) return;
  const listening = new EventSource(from);
  listening.addEventListener("message", (event) => {
    said.textContent = event.data;
  });
  listening.addEventListener("done", () => {
    listening.close();
    location.reload();
  });
}
