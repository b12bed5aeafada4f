// @ts-check
/** Says on the page that the program does not answer, or takes that back: the page stays as it is.
 *  @param {boolean} [is] */
export function gone(is = true) {
  const told = document.querySelector("main > .gone");
  if (!(told instanceof HTMLElement)) return;
  // It is an alert only while it says something.
  if (is) told.setAttribute("role", "alert");
  else told.removeAttribute("role");
  told.hidden = !is;
}
