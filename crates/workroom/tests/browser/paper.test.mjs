// @ts-check
// Pages as a browser prints them: no forms, no ways about, nothing wider than the paper, black on white also where the
// screen is dark, no heading over nothing. OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { story, workroom } from "./driver.mjs";

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

/** What must be there on paper, by its page. */
const KEPT = {
  paper: ".faces img", cards: ".apart svg", layout: ".sheet svg", batch: ".of-sheet img", cardstock: ".stock img",
  supplies: "table", background: ".jig svg", table: ".drawing img", post: ".operators li", class: ".findings li", share: ".pages img",
};
/** Letter less margins of 0.4 in, at 96 to the inch. */
const WIDE = Math.floor((8.5 - 0.8) * 96);

for (const dark of [false, true]) {
  test(`every page goes onto paper, from a ${dark ? "dark" : "light"} screen`, () =>
    story({ dark }, async (eye) => {
      await eye.onPaper(WIDE);
      for (const [page, kept] of Object.entries(KEPT)) {
        await eye.open(`${room.address}/w/1/${page}`);
        const seen = await eye.run(`
          const shown = (css) => [...document.querySelectorAll(css)].filter((one) => one.checkVisibility());
          const style = getComputedStyle(document.body);
          const heading = (one) => {
            const [own, ...rest] = shown("h1, h2, h3, h4, p, li, table, figure, svg, img").filter((other) => other === one || one.compareDocumentPosition(other) & 4);
            const deep = (other) => /^H[1-4]$/.test(other.tagName) ? Number(other.tagName[1]) : 9;
            return own === one && rest.length > 0 && deep(rest[0]) > deep(one);
          };
          return {
            used: shown("button, input, select, textarea, nav, .top .steps, .hint, a.button").map((one) => one.outerHTML.slice(0, 80)),
            kept: shown(arguments[0]).length,
            heading: shown("h1").length,
            bare: shown("main :is(h2, h3)").filter((one) => !heading(one)).map((one) => one.textContent),
            colors: [style.color, style.backgroundColor],
            wide: shown("main *").filter((one) => !one.closest("svg svg, g") && one.getBoundingClientRect().right > ${WIDE} + 1).map((one) => one.tagName + "." + one.getAttribute("class")).slice(0, 3),
          }`, [kept]);
        const { kept: many, ...rest } = seen;
        assert.ok(many > 0, `${page} keeps no ${kept}`);
        assert.deepEqual(rest, { used: [], heading: 1, bare: [], colors: ["rgb(0, 0, 0)", "rgb(255, 255, 255)"], wide: [] }, page);
      }
    }));
}
