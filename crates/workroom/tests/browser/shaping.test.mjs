// @ts-check
// What a maker shapes by hand in a real browser: the printed panels of a collage, with scripts and without.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { soon, story as storyOf, undo, workroom } from "./driver.mjs";

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

/** A story in which a refusal may be asked for: it is no fault, but the browser tells of it all the same. */
const story = (options, tell) => storyOf(options, tell, (message) => message.includes("status of 422"));

const OPEN = ".panels[open] .panels-edit";
const where = (line) => `return document.querySelector('${OPEN} .grip[data-line="${line}"]')?.getAttribute("data-at")`;

/** The page of the collage sheet, opened. */
async function collage(eye) {
  await eye.open(`${room.address}/w/1/paper`);
  const name = await eye.run(`return document.querySelector(".panels-edit").closest("details").id`);
  await eye.open(`${room.address}/w/1/paper?panels=${name}#${name}`);
  await soon(async () => assert.equal(await eye.count(`${OPEN} .grip`), 7));
}

for (const pointer of ["mouse", "touch"]) {
  test(`a printed line is dragged by ${pointer}, kept, and put back`, () =>
    story({}, async (eye) => {
      await collage(eye);
      await soon(async () => assert.equal(await eye.count(".panels-edit.by-hand"), 1));
      const from = await eye.run(`
        const knob = document.querySelector('${OPEN} .grip[data-line="0"] .knob');
        knob.scrollIntoView({ block: "center" });
        const box = knob.getBoundingClientRect();
        return [box.x + box.width / 2, box.y + box.height / 2]`);
      const inch = await eye.run(`return document.querySelector('${OPEN} svg.lined').getBoundingClientRect().width / 12`);
      await eye.drag(from, [from[0] + inch, from[1]], 6, pointer);
      await soon(async () => assert.equal(await eye.run(where(0)), "4 in"));
      await soon(async () => assert.match(await eye.text(".foot"), /printed panels of .+ were changed/));
      await undo(eye);
      await soon(async () => assert.match(await eye.text(".foot"), /./));
      await collage(eye);
      assert.equal(await eye.run(where(0)), "3 in");
    }));
}

test("a printed line is moved by the arrow keys", () =>
  story({}, async (eye) => {
    await collage(eye);
    await soon(async () => assert.equal(await eye.count(".panels-edit.by-hand"), 1));
    await eye.run(`document.querySelector('${OPEN} .grip[data-line="4"]').focus()`);
    await eye.keys("\uE015", "\uE015");
    await soon(async () => assert.match(await eye.text(`${OPEN} .moved`), /below row 1, 4.+ from the top/));
    await eye.keys("\uE007");
    await soon(async () => assert.equal(await eye.run(where(4)), "4 1/4 in"));
    // The line lies there before it is kept.
    await soon(async () => assert.match(await eye.text(".foot"), /printed panels of .+ were changed/));
    await undo(eye);
    await collage(eye);
    assert.equal(await eye.run(where(4)), "4 in");
  }));

for (const scripts of [true, false]) {
  test(`lines and panels by forms alone, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      const form = (act) => `${OPEN} form:has(input[name="act"][value="${act}"])`;
      const grips = (count) => soon(async () => assert.equal(await eye.count(`${OPEN} .grip`), count));
      await collage(eye);
      await eye.fill(`${form("move")} input[name="to"]`, "2 1/2");
      await eye.click(`${form("move")} button`);
      await soon(async () => assert.equal(await eye.run(where(0)), "2 1/2 in"));
      await eye.fill(`${form("move")} input[name="to"]`, "9");
      await eye.click(`${form("move")} button`);
      await soon(async () => assert.match(await eye.text("[role=alert]"), /can lie between/));
      await collage(eye);
      await eye.fill(`${form("divide")} input[name="at-place"]`, "1");
      await eye.click(`${form("divide")} button`);
      await grips(8);
      await eye.click(`${form("remove")} button`);
      await grips(7);
      await eye.click(`${form("free")} button`);
      await grips(48);
      await eye.click(`${form("remove")} button`);
      await grips(44);
      await eye.click(`${form("rows")} button`);
      await grips(7);
      for (let left = 6; left > 0; left -= 1) {
        await undo(eye);
        await eye.open(`${room.address}/w/1/paper`);
      }
      await collage(eye);
      assert.equal(await eye.run(where(0)), "3 in");
    }));
}

for (const scripts of [true, false]) {
  test(`a recipe is begun from a format, copied, deleted and brought back, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      const recipes = (count) => soon(async () => assert.equal(await eye.run('return document.querySelectorAll(".recipe").length'), count));
      await eye.open(`${room.address}/w/1/cards`);
      await recipes(1);
      await eye.click(".new-recipe button");
      await recipes(2);
      await soon(async () => assert.match(await eye.text(".foot"), /was begun/));
      await eye.click('#recipe-2 button[value="copy"]');
      await recipes(3);
      await eye.click('#recipe-3 button[value="delete"]');
      await recipes(2);
      await undo(eye);
      await recipes(3);
      for (const left of [2, 1]) {
        await undo(eye);
        await recipes(left);
      }
    }));
}

for (const scripts of [true, false]) {
  test(`printed panels are looked for in the picture, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      const form = (act) => `.panels[open] form:has(input[name="act"][value="${act}"])`;
      await collage(eye);
      await eye.click(`${form("clear")} button`);
      await soon(async () => assert.equal(await eye.count(`${form("begin")} button`), 1));
      await eye.click(`${form("find")} button`);
      // The demo's own collage has twelve panels of 3 by 4 in: all are found, so they are told as a grid again, with its seven lines.
      await soon(async () => assert.equal(await eye.count(`${OPEN} .grip`), 7));
      const places = await eye.run(`return [...document.querySelectorAll('${OPEN} .grip')].map((grip) => grip.getAttribute("data-at"))`);
      for (const place of ["3 in", "4 in", "6 in", "8 in", "9 in"]) assert.ok(places.includes(place), `${place}: ${places}`);
      await undo(eye);
      await undo(eye);
      await collage(eye);
    }));
}
