// @ts-check
// Cards and pieces handled in a real browser: swapped, turned over, spoiled; with scripts off, by keyboard alone.
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

for (const scripts of [true, false]) {
  const how = scripts ? "with scripts" : "without scripts";

  test(`two pieces are swapped, one is turned over, both are undone, ${how}`, () =>
    story({ scripts }, async (eye) => {
      await eye.open(`${room.address}/w/1/batch`);
      await soon(async () => assert.equal(await eye.count(".of-sheet li"), 48));
      await eye.click(".of-sheet li:nth-child(1) a");
      await soon(async () => assert.match(await eye.text("#card-name"), /Card 1/));
      await soon(async () => assert.match(await eye.text(".piece-of:nth-of-type(2) .shows"), /dots/));
      await eye.click('.piece-of:nth-of-type(2) a.button');
      await soon(async () => assert.equal(await eye.count("button.pick"), 39));
      await eye.click('button.pick[value="9"]');
      await soon(async () => assert.match(await eye.text(".piece-of:nth-of-type(2) .shows"), /large leaves/));
      await soon(async () => assert.match(await eye.text(".chosen"), /Cards 1 and 9 swapped their band/));
      await eye.click('.piece-of:nth-of-type(2) button[name="turn"]');
      await soon(async () => assert.match(await eye.text(".piece-of:nth-of-type(2) .shows"), /speckle/));
      await undo(eye);
      await undo(eye);
      await soon(async () => assert.equal(await eye.count(".of-sheet li"), 48));
      await eye.open(`${room.address}/w/1/batch?card=1`);
      await soon(async () => assert.match(await eye.text(".piece-of:nth-of-type(2) .shows"), /dots/));
    }));

  test(`a spoiled piece is cut again, and taken back, ${how}`, () =>
    story({ scripts }, async (eye) => {
      await eye.open(`${room.address}/w/1/table`);
      await eye.fill('input[name="mark"]', "A7");
      await eye.click(".which button");
      await soon(async () => assert.match(await eye.text(".again .take"), /Take one more sheet of A Quince Branch/));
      await soon(async () => assert.ok((await eye.count(".again .recut svg")) >= 2));
      await eye.click('.again button[name="back"]');
      await eye.open(`${room.address}/w/1/table`);
      await soon(async () => assert.match(await eye.text("#spoiled h2"), /Spoiled one/));
      await soon(async () => assert.equal(await eye.run('return document.querySelectorAll(".again").length'), 0));
    }));
}

test("both faces lie under every card", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/batch?side=both`);
    await soon(async () => assert.equal(await eye.count('.of-sheet img[src*="light-"]'), 48));
    const drawn = await eye.runAsync(
      `const image = document.querySelector('.of-sheet img'); image.decode().then(() => arguments[0](image.naturalHeight > image.naturalWidth))`,
    );
    assert.ok(drawn);
  }));

test("a piece is turned over by the keyboard alone", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/batch?card=2`);
    await eye.run(`document.querySelector('.piece-of button[name="turn"]').focus()`);
    await eye.keys("\uE007");
    await soon(async () => assert.match(await eye.text(".chosen"), /panel of card 2 turned over/));
    await eye.run(`document.querySelector('.chosen button').focus()`);
    await eye.keys(" ");
    // The form is on its way: a browser that is sent elsewhere now would drop it.
    await soon(async () => assert.equal(await eye.run('return document.querySelectorAll(".chosen").length'), 0));
    await eye.open(`${room.address}/w/1/batch`);
    await soon(async () => assert.equal(await eye.run('return document.querySelectorAll(".chosen").length'), 0));
  }));

for (const scripts of [true, false]) {
  test(`the first card is measured, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      await eye.open(`${room.address}/w/1/table`);
      await eye.fill('input[name="w1"]', "3 1/16");
      await eye.fill('input[name="h1"]', "4 1/2");
      await eye.click(".measures .main");
      await soon(async () => assert.match(await eye.text(".measured .off"), /panel, width: .+ too much/));
      await soon(async () => assert.match(await eye.text(".measured .fine"), /is fine/));
      await soon(async () => assert.equal(await eye.value('input[name="w1"]'), "3 1/16"));
    }));
}

test("a step is ticked in place, so that a full screen stays full", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/table?step=1`);
    await eye.run("window.stays = true");
    await eye.keys(" ");
    await new Promise((done) => setTimeout(done, 900));
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 2 of 22/));
    await soon(async () => assert.equal(await eye.run("return window.stays"), true));
    await soon(async () => assert.equal(await eye.run("return document.activeElement.closest('.told') !== null"), true, "the new step has the focus"));
    await eye.keys("\uE012");
    await new Promise((done) => setTimeout(done, 900));
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 1 of 22/));
    await eye.click('#step button[type="submit"]');
    await new Promise((done) => setTimeout(done, 900));
    await soon(async () => assert.match(await eye.text(".lead .facts"), /0 of 22/));
  }));
