// @ts-check
// A layer of a recipe taken hold of on the drawn card, in a real browser: by mouse, by finger, by keys, by typing.
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

const grip = (line) => `.hands .grip[data-line="${line}"]`;
const at = (line) => `return document.querySelector('${grip(line)}')?.getAttribute("data-at")`;

/** The Cards page with a layer in hand. */
async function hold(eye, layer) {
  await eye.open(`${room.address}/w/1/cards`);
  await eye.click(`.hands a[href*="hold=0-${layer}#"]`);
  await soon(async () => assert.ok((await eye.count(".hands .grip")) > 0));
}

for (const pointer of ["mouse", "touch"]) {
  test(`a layer is moved by ${pointer}, kept, and put back`, () =>
    story({ width: pointer === "touch" ? 360 : 1280 }, async (eye) => {
      await hold(eye, 2);
      await soon(async () => assert.equal(await eye.count(".hands .panels-edit.by-hand"), 1));
      assert.equal(await eye.run(at(4)), "1/4 in, 2 1/2 in");
      const from = await eye.run(`
        const knob = document.querySelector('${grip(4)} .knob');
        knob.scrollIntoView({ block: "center" });
        const box = knob.getBoundingClientRect();
        return [box.x + box.width / 2, box.y + box.height / 2]`);
      const inch = await eye.run(`return document.querySelector('.hands svg.front .base').getBoundingClientRect().width / 3.5`);
      // Held anywhere on the layer, it does not jump.
      const off = inch * 0.8;
      await eye.drag([from[0] - off, from[1]], [from[0] - off, from[1] - inch / 2], 6, pointer);
      await soon(async () => assert.equal(await eye.run(at(4)), "1/4 in, 2 in"));
      await soon(async () => assert.match(await eye.text(".foot"), /down/));
      await undo(eye);
      await hold(eye, 2);
      assert.equal(await eye.run(at(4)), "1/4 in, 2 1/2 in");
    }));
}

test("an edge is moved by the arrow keys, put back by Esc, kept by Enter", () =>
  story({}, async (eye) => {
    await hold(eye, 4);
    await soon(async () => assert.equal(await eye.count(".hands .panels-edit.by-hand"), 1));
    await eye.run(`document.querySelector('${grip(2)}').focus()`);
    await eye.keys("\uE012", "\uE012", "\uE012");
    // The strip lies in the middle: it becomes smaller on both sides, until its words are too tight.
    await soon(async () => assert.match(await eye.text(".hands .moved"), /2.*in.*or larger will do/is));
    await eye.keys("\uE00C");
    await soon(async () => assert.equal(await eye.text(".hands .moved"), ""));
    assert.equal(await eye.run(at(2)), "3 1/4 in");
    await eye.run(`document.querySelector('${grip(3)}').focus()`);
    await eye.keys("\uE015");
    await soon(async () => assert.match(await eye.text(".hands .moved"), /strip: 3/));
    await eye.keys("\uE007");
    await soon(async () => assert.match(await eye.text(".foot"), /size/));
    await undo(eye);
  }));

test("what cannot be is said while the hand moves, and nothing is kept", () =>
  story({}, async (eye) => {
    await hold(eye, 2);
    await soon(async () => assert.equal(await eye.count(".hands .panels-edit.by-hand"), 1));
    const seen = await eye.value('input[name="seen"]');
    await eye.run(`document.querySelector('${grip(4)}').focus()`);
    await eye.keys("\uE014", "\uE014");
    await soon(async () => assert.match(await eye.text(".hands .moved.stays"), /over the edge/));
    await eye.keys("\uE00C");
    assert.equal(await eye.value('input[name="seen"]'), seen);
  }));

for (const scripts of [true, false]) {
  test(`a layer is moved by typing and one is added, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      await hold(eye, 2);
      await eye.run(`document.querySelector('.hands select[name="line"]').value = "4"`);
      await eye.fill('.hands input[name="to"]', "1/4, 2");
      await eye.click(".hands .by-typing button");
      await soon(async () => assert.equal(await eye.run(at(4)), "1/4 in, 2 in"));
      await undo(eye);
      await eye.open(`${room.address}/w/1/cards`);
      const layers = await eye.count(".apart li");
      await eye.run(`document.querySelector("details:has(form.new-layer)").open = true`);
      await eye.run(`document.querySelector('.new-layer select[name="kind"]').value = "plain"`);
      await eye.click(".new-layer button");
      await soon(async () => assert.equal(await eye.count(".apart li"), layers + 1));
      await soon(async () => assert.match(await eye.text(".foot"), /piece was added/));
      await undo(eye);
    }));
}

test("a recipe of which no card is made is shaped by hand too", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/cards`);
    await eye.click(`.new-recipe button`);
    await soon(async () => assert.equal(await eye.count("section.recipe"), 2));
    await soon(async () => assert.match(await eye.text("#recipe-2 .hint"), /No card is made of this recipe/));
    await eye.click('#hands-1 a[href*="hold=1-1#"]');
    await soon(async () => assert.equal(await eye.count("#hands-1 .panels-edit.by-hand"), 1));
    const place = `return document.querySelector('#hands-1 .grip[data-line="4"]')?.getAttribute("data-at")`;
    const before = await eye.run(place);
    await eye.run(`document.querySelector('#hands-1 .grip[data-line="4"]').focus()`);
    await eye.keys("\uE014");
    await soon(async () => assert.notEqual(await eye.run(place), before));
    await eye.keys("\uE007");
    await soon(async () => assert.match(await eye.text(".foot"), /right from nothing to/));
    await undo(eye);
    await undo(eye);
  }));
