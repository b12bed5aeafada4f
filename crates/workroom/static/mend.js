// @ts-check
/** Mistakes of a text that lies below: touching one puts the mark on its line.
 *  @param {HTMLElement} element  holds the mistakes; each link says where (`data-line` and `data-column`, from 1) */
export function enhance(element) {
  element.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("a[data-line]") : null;
    if (!(link instanceof HTMLAnchorElement)) return;
    const text = document.getElementById(link.hash.slice(1));
    if (!(text instanceof HTMLTextAreaElement)) return;
    event.preventDefault();
    const lines = text.value.split("\n");
    const line = Number(link.dataset.line) - 1;
    const before = lines.slice(0, line).join("\n").length + (line > 0 ? 1 : 0);
    text.focus();
    text.setSelectionRange(before, before + (lines[line] ?? "").length);
    // A line in the middle of the field is seen.
    text.scrollTop = (text.scrollHeight / lines.length) * line - text.clientHeight / 2;
    text.scrollIntoView({ block: "nearest" });
  });
}
