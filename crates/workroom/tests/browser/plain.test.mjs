// @ts-check
// With scripts off: every page that takes an edit keeps it. (Paper, Cards, Layout, Batch and Table: in pages, hands and shaping.)
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { soon, story, undo, workroom } from "./driver.mjs";

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

/** A page, a place of the project file that is edited there, what is typed. */
const EDITS = [
  ["supplies", "selling.price", "3.75"],
  ["supplies", "minutes.card", "7"],
  ["post", "post.extras", "2 g"],
  ["class", "class.seats", "12"],
  ["background", "greeting.0.ink", "#224466"],
];

test("an edit on Supplies, Post, Class and Background is kept with scripts off, and undone", () =>
  story({ scripts: false }, async (eye) => {
    for (const [page, place, typed] of EDITS) {
      const field = `input[name="set:${place}"]`;
      await eye.open(`${room.address}/w/1/${page}`);
      const before = await eye.value(field);
      assert.notEqual(before, typed);
      // What is folded away is opened first, as anybody would.
      await eye.run(`for (let fold = document.querySelector(arguments[0]).closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true`, [field]);
      await eye.fill(field, typed);
      await eye.click(`form:has(${field}) button`);
      await soon(async () => assert.match(await eye.text(".foot"), new RegExp(`to ${typed}`)), 20000);
      await eye.open(`${room.address}/w/1/${page}`);
      assert.equal(await eye.value(field), typed, page);
      await undo(eye);
      await eye.open(`${room.address}/w/1/${page}`);
      assert.equal(await eye.value(field), before, page);
    }
  }));

test("the project file changed on Share is kept with scripts off; one with a mistake comes back with what was typed", () =>
  story({ scripts: false }, async (eye) => {
    const area = 'textarea[name="text"]';
    await eye.open(`${room.address}/w/1/share`);
    const text = await eye.value(area);
    await eye.fill(area, text.replace(/^name = .*$/m, 'name = "Cards for the fair"'));
    await eye.click(`form:has(${area}) button`);
    await soon(async () => assert.equal(await eye.text(".top .project"), "Cards for the fair"));
    await eye.fill(area, 'name = "Half a');
    await eye.click(`form:has(${area}) button`);
    await soon(async () => assert.match(await eye.text("[role=alert]"), /line 1/i));
    assert.match(await eye.value(area), /Half a/);
    await eye.open(`${room.address}/w/1/share`);
    assert.equal(await eye.text(".top .project"), "Cards for the fair");
    await undo(eye);
    await soon(async () => assert.notEqual(await eye.text(".top .project"), "Cards for the fair"));
  }, (message) => message.includes("status of 422")));

test("the handout is shown as asked, and an item is put on the shelf, with scripts off", () =>
  story({ scripts: false }, async (eye) => {
    await eye.open(`${room.address}/w/1/share`);
    await eye.click('select[name="sheet"] option[value="a4"]');
    await eye.click('select[name="print"] option[value="large"]');
    await eye.click(".editions button");
    await soon(async () => assert.match(await eye.url(), /sheet=a4&print=large/));
    assert.equal(await eye.value('select[name="sheet"]'), "a4");
    assert.ok((await eye.count('img[src*="/page-"][src*="sheet=a4&print=large"]')) > 4);
    // Cardstock has nothing to edit: what is counted on the shelf is.
    await eye.open(`${room.address}/w/1/cardstock`);
    assert.equal(await eye.count("section.stock"), 5);
    await eye.open(`${room.address}/w/1/supplies`);
    const form = '#shelf form.change:has(input[name="name"]):not(:has(input[name="id"]))';
    await eye.run(`for (let fold = document.querySelector(arguments[0]).closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true`, [form]);
    await eye.fill(`${form} input[name="name"]`, "Kitchen string");
    await eye.fill(`${form} input[name="amount"]`, "3");
    await eye.click(`${form} button`);
    await soon(async () => assert.match(await eye.text("#shelf"), /Kitchen string/));
    await eye.open(`${room.address}/w/1/supplies`);
    assert.match(await eye.text("#shelf"), /Kitchen string/);
  }));
