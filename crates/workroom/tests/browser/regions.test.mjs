// @ts-check
// Parts of a print that matter, marked by a frame drawn with the mouse or a finger, by typing, and without scripts.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { broken, soon, story, undo, workroom } from "./driver.mjs";

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

const NAME = "parts-0-0-front";
const OPEN = `#${NAME}[open]`;
const page = () => `${room.address}/w/1/paper?panels=${NAME}#${NAME}`;
const field = (name) => `return document.querySelector('${OPEN} [name="${name}"]').value`;

for (const pointer of ["mouse", "touch"]) {
  test(`a part of a print is framed by ${pointer}, kept whole, and taken off again`, () =>
    story({}, async (eye) => {
      await eye.open(page());
      await soon(async () => assert.equal(await eye.count(`${OPEN} .parts-edit.by-hand`), 1));
      const [left, top, inch] = await eye.run(`
        const sheet = document.querySelector('${OPEN} svg.regions');
        sheet.scrollIntoView({ block: "center" });
        const box = sheet.getBoundingClientRect();
        return [box.x, box.y, box.width / 12]`);
      // From 1 in, 2 in to 2 1/2 in, 4 in: inside the first panel of the plain layout.
      await eye.drag([left + inch, top + 2 * inch], [left + 2.5 * inch, top + 4 * inch], 6, pointer);
      await soon(async () => assert.equal(await eye.run(field("left")), "1"));
      assert.equal(await eye.run(field("top")), "2");
      assert.equal(await eye.run(field("size")), "1.5 x 2");
      await eye.run(`document.querySelector('${OPEN} form:has([name="left"]) button').click()`);
      await soon(async () => assert.equal(await eye.count(`${OPEN} rect.keep`), 1));
      await soon(async () => assert.match(await eye.text(".foot"), /A part of fruit on boughs was marked/));
      assert.deepEqual(await broken(eye), []);
      await undo(eye);
      await eye.open(page());
      await soon(async () => assert.equal(await eye.count(`${OPEN} rect.keep`), 0));
    }));
}

for (const scripts of [true, false]) {
  test(`parts are marked and taken off by typing, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      await eye.open(page());
      await eye.fill(`${OPEN} [name="left"]`, "9");
      await eye.fill(`${OPEN} [name="top"]`, "9 1/2");
      await eye.fill(`${OPEN} [name="size"]`, "1 x 1");
      await eye.click(`${OPEN} [name="wanted"] option[value="avoid"]`);
      await eye.click(`${OPEN} form.panel-form:last-of-type button`);
      await soon(async () => assert.equal(await eye.count(`${OPEN} path.avoid`), 1));
      assert.match(await eye.text(`${OPEN} .told`), /should not show: 1 in × 1 in, 9 in from the left/);
      await eye.click(`${OPEN} form.panel-form:first-of-type button`);
      await soon(async () => assert.equal(await eye.count(`${OPEN} path.avoid`), 0));
    }));
}

test("by keyboard a frame is laid, moved, sized and kept; then it is changed in place", () =>
  story({}, async (eye) => {
    const [left, up, right, down, shift, enter] = ["\uE012", "\uE013", "\uE014", "\uE015", "\uE008", "\uE007"];
    await eye.open(page());
    await soon(async () => assert.equal(await eye.count(`${OPEN} .parts-edit.by-hand`), 1));
    await eye.run(`document.querySelector('${OPEN} svg.regions').focus()`);
    await eye.keys(right);
    assert.deepEqual([await eye.run(field("left")), await eye.run(field("top")), await eye.run(field("size"))], ["4.5", "4.5", "3 x 3"]);
    await eye.keys(left, left, up, down, down);
    await eye.chord(shift, left);
    await eye.chord(shift, up);
    assert.deepEqual([await eye.run(field("left")), await eye.run(field("top")), await eye.run(field("size"))], ["4.25", "4.625", "2.875 x 2.875"]);
    await eye.keys(enter, enter);
    await soon(async () => assert.match(await eye.text(`${OPEN} .told`), /stays whole: 2⅞ in × 2⅞ in, 4¼ in from the left, 4⅝ in from the top/));
    // Changed in place: drawn anew while its own form is open, and on a named piece.
    await eye.click(`${OPEN} .told > details summary`);
    await eye.run(`document.querySelector('${OPEN} svg.regions').scrollIntoView({ block: "center" })`);
    const [x, y, inch] = await eye.run(`const box = document.querySelector('${OPEN} svg.regions').getBoundingClientRect(); return [box.x, box.y, box.width / 12]`);
    await eye.drag([x + inch, y + inch], [x + 2 * inch, y + 3 * inch]);
    await eye.click(`${OPEN} .told > details option[value="Twin/panel"]`);
    await eye.click(`${OPEN} .told > details button`);
    await soon(async () => assert.match(await eye.text(".foot"), /A marked part of fruit on boughs was changed/));
    assert.match(await eye.text(`${OPEN} .told`), /stays whole on Twin\/panel: 1 in × 2 in, 1 in from the left, 1 in from the top/);
    assert.equal(await eye.count(`${OPEN} rect.keep`), 1);
    assert.deepEqual(await broken(eye), []);
    await undo(eye);
    await undo(eye);
  }));

test("what Octavo sees by itself is shown and explained; a picture it found is kept at a click, without scripts too", async () => {
  for (const [scripts, width] of [[true, 1280], [true, 360], [false, 1280]]) {
    await story({ scripts, width }, async (eye) => {
      await eye.open(page());
      await eye.click(`${OPEN} a[href^="interest"]`);
      await soon(async () => assert.match(await eye.text("h1"), /What Octavo sees in fruit on boughs/));
      assert.equal(await eye.count(".seen-in img"), 4);
      if (scripts) {
        const drawn = await eye.runAsync(`Promise.all([...document.querySelectorAll(".seen-in img")].map((i) => { i.loading = "eager"; return i.decode(); })).then(() => arguments[0](true), () => arguments[0](false))`);
        assert.ok(drawn);
        assert.deepEqual(await broken(eye), []);
        assert.ok((await eye.run("return document.documentElement.scrollWidth")) <= width);
      }
      await eye.click(".seen-in li:nth-child(5) button");
      await soon(async () => assert.equal(await eye.count(`${OPEN} rect.keep`), 1));
      await undo(eye);
    });
  }
});
