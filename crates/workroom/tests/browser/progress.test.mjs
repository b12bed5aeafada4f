// @ts-check
// A plan that takes long, in a real browser: how far it is, the cards of before, the stop button; with scripts and
// without. The project is a real one: eight cards of two recipes with pieces in ranges, from a sheet that is no whole
// number of anything, at 1/64 in: several seconds of search on any machine of today. With five cards it takes none.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { broken, soon, story, undo, workroom } from "./driver.mjs";

const designs = [1, 2, 3, 4, 5, 6].map((number) => `
[[pack.design]]
name = "Meadow ${number}"
copies = 2
`);
const layers = [["2 3/4 to 3 1/4", "4 1/4 to 4 3/4"], ["3/4 to 1 1/4", "3 to 4"], ["1 to 2", "1 to 2"]];
const recipe = (/** @type {string} */ name, /** @type {number} */ pieces) => `
[[recipe]]
name = "${name}"
format = "4 1/4 x 5 1/2"
${layers.slice(0, pieces).map(([width, height], number) => `
[[recipe.layer]]
name = "piece ${number + 1}"
width = "${width}"
height = "${height}"
overlap = true
`).join("")}`;
const LONG = `name = "A long evening"
mark = "1/64"

[[pack]]
name = "Long meadow"
sheet = "11 15/16 x 11 13/16"
${designs.join("")}
[[cardstock]]
name = "Milk"
color = "#f6f0e2"
${recipe("Two pieces", 2)}${recipe("Three pieces", 3)}
[goal]
cards_per_sheet = 5
`;

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

/** A project that nobody has planned yet, begun from a file; the address of its Layout page. `name` makes it another
 *  text than those before: a plan that is there already takes no time. */
async function begun(name) {
  const body = new URLSearchParams({ kind: "file", text: LONG.replace("A long evening", name) });
  const headers = { Origin: room.address };
  const answer = await fetch(`${room.address}/new`, { method: "POST", body, headers, redirect: "manual" });
  assert.equal(answer.status, 303, await answer.text());
  return `${room.address}${(answer.headers.get("location") ?? "").replace(/cards$/, "layout")}`;
}

const FIELD = 'input[name="set:goal.cards_per_sheet"]';

/** Asks for eight cards of a sheet instead of five, on the Layout page. */
async function ask(eye) {
  await soon(async () => assert.equal(await eye.text("h1"), "Layout"));
  await eye.fill(FIELD, "8");
  await eye.click(`form:has(${FIELD}) button[type="submit"]`);
}

/** The page that says so is there, with the cards of before. */
async function waits(eye) {
  await soon(async () => assert.equal(await eye.text("h1"), "Working it out"));
  await soon(async () => assert.match(await eye.text(".so-far"), /^\d+\.\d s so far(, \d+ ways of cutting looked at)?\.$/));
  const seen = () => eye.run(`return [...document.querySelectorAll(".before img")].map((card) => card.complete && card.naturalWidth > 0)`);
  await soon(async () => assert.deepEqual(await seen(), Array(6).fill(true)));
}

/** A page may be on its way while it is asked: what counts is the one that comes. */
const title = (eye) => soon(() => eye.text("h1"));

test("a long plan tells how far it is, shows the cards of before, and is stopped", () =>
  story({}, async (eye) => {
    await eye.open(await begun("An evening to be stopped"));
    await ask(eye);
    await waits(eye);
    // It counts by itself: the browser is told, and nothing is loaded anew.
    await eye.run("window.here = true");
    const first = await eye.text(".so-far");
    await soon(async () => assert.notEqual(await eye.text(".so-far"), first));
    assert.equal(await eye.run("return window.here"), true);
    assert.deepEqual(await broken(eye), []);
    assert.equal(await eye.text("h1"), "Working it out", "it was that page that was looked at");
    const started = Date.now();
    await eye.click(".waits button");
    await soon(async () => assert.equal(await title(eye), "Layout"));
    const took = Date.now() - started;
    assert.ok(took < 5000, `stopped after ${took} ms`);
    // The edit is kept, and is taken back like any other.
    assert.equal(await eye.value(FIELD), "8");
    await undo(eye);
    await soon(async () => assert.equal(await eye.value(FIELD), "5"));
  }));

test("a long plan comes by itself", () =>
  story({}, async (eye) => {
    await eye.open(await begun("An evening to be waited for"));
    await ask(eye);
    await waits(eye);
    await soon(async () => assert.equal(await title(eye), "Layout"), 120000);
    assert.equal(await eye.value(FIELD), "8");
  }));

test("a long plan is told and stopped without scripts", () =>
  story({ scripts: false }, async (eye) => {
    await eye.open(await begun("An evening without scripts"));
    await ask(eye);
    await soon(async () => assert.equal(await eye.text("h1"), "Working it out"));
    await soon(async () => assert.match(await eye.text(".so-far"), /^\d+\.\d s so far/));
    // The page comes anew every two seconds, so it may be gone while the button is looked for.
    await eye.click(".waits button");
    await soon(async () => assert.equal(await title(eye), "Layout"));
    assert.equal(await eye.value(FIELD), "8");
  }));

test("a long plan comes by itself without scripts", () =>
  story({ scripts: false }, async (eye) => {
    await eye.open(await begun("An evening waited for without scripts"));
    await ask(eye);
    await soon(async () => assert.equal(await eye.text("h1"), "Working it out"));
    await soon(async () => assert.equal(await title(eye), "Layout"), 120000);
    assert.equal(await eye.value(FIELD), "8");
  }));
