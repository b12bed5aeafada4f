// @ts-check
// The Table page at a phone's width in a real browser: large, mirrored, read aloud, the screen kept awake.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { soon, story, workroom } from "./driver.mjs";

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

const phone = { width: 360, height: 740 };

test("a step is large, can be touched, is read aloud as it stands, and the next one after it", () =>
  story(phone, async (eye) => {
    await eye.open(`${room.address}/w/1/table`);
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 1 of 22/));
    const [letters, ...sides] = await eye.run(`
      const box = (css) => [...document.querySelectorAll(css)].map((one) => Math.min(one.offsetWidth, one.offsetHeight));
      return [parseFloat(getComputedStyle(document.querySelector(".told p:not(.where-it-is)")).fontSize), ...box(".tick .large")]`);
    assert.ok(letters >= 24, `${letters} px`);
    assert.ok(sides.length >= 2 && sides.every((side) => side >= 48), `${sides} px`);
    await soon(async () => assert.equal(await eye.count("[data-read]:not([hidden])"), 1));
    // What would be heard is caught: a machine without a head has no voice.
    await eye.run(`window.heard = []; speechSynthesis.speak = (said) => heard.push(said.text)`);
    await eye.click("[data-read]");
    const heard = () => eye.run("return heard");
    assert.match((await heard())[0], /Set the stop to 6.in[^]*Cut once/);
    assert.equal(await eye.run(`return document.querySelector("[data-read]").getAttribute("aria-pressed")`), "true");
    await eye.click(".tick .main");
    await soon(async () => assert.match((await heard()).at(-1), /Step 2 of 22/));
    assert.equal((await heard()).length, 2);
    await eye.click("[data-read]");
    await eye.click(".tick [rel=prev]");
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 1 of 22/));
    assert.equal((await heard()).length, 2, "it was told to be silent");
  }));

test("the screen is asked to stay awake, and again when the page comes back into sight", () =>
  story(phone, async (eye) => {
    await eye.open(`${room.address}/w/1/table`);
    await soon(async () => assert.equal(await eye.count("[data-full]:not([hidden])"), 1));
    const asked = await eye.run(`
      const kinds = [];
      if (!("wakeLock" in navigator)) return "this browser cannot";
      navigator.wakeLock.request = (kind) => { kinds.push(kind); return Promise.reject(new Error("not now")); };
      document.dispatchEvent(new Event("visibilitychange"));
      return kinds`);
    assert.deepEqual(asked, ["screen"]);
  }));

test("a browser that cannot read aloud, fill the screen or keep awake offers none of it, and the step goes on", () =>
  story(phone, async (eye) => {
    await eye.beforehand(`
      delete window.speechSynthesis; delete Object.getPrototypeOf(window).speechSynthesis;
      Object.defineProperty(Document.prototype, "fullscreenEnabled", { get: () => undefined });
      delete Navigator.prototype.wakeLock;`);
    await eye.open(`${room.address}/w/1/table?step=5`);
    const able = `return ["speechSynthesis" in window, Boolean(document.fullscreenEnabled), "wakeLock" in navigator]`;
    assert.deepEqual(await eye.run(able), [false, false, false]);
    await eye.click(".tick .main");
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 6 of 22/));
    const offered = `return [...document.querySelectorAll("[data-read], [data-full]")].filter((one) => one.checkVisibility()).length`;
    assert.equal(await eye.run(offered), 0);
    await eye.click(".tick [rel=prev]");
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 5 of 22/));
    await eye.click(".tick button");
    await soon(async () => assert.equal(await eye.count(".tick .main[data-key]"), 1));
  }));

for (const scripts of [true, false]) {
  test(`the step is mirrored for the left hand and stays so, ${scripts ? "with" : "without"} scripts`, () =>
    story({ ...phone, scripts }, async (eye) => {
      await eye.open(`${room.address}/w/1/table?step=1`);
      const picture = () => eye.run(`return document.querySelector("#step .drawing img").src`);
      const right = await picture();
      await eye.click(".helps a");
      await soon(async () => assert.equal(await eye.run(`return document.querySelectorAll("#step.for-left").length`), 1));
      assert.notEqual(await picture(), right);
      assert.match(await picture(), /left/);
      await eye.click('.tick a[rel="next"]');
      await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 2 of 22/));
      assert.match(await picture(), /left/);
    }));
}

test("the steps of a spoiled piece stand under each other at a phone's width", () =>
  story(phone, async (eye) => {
    await eye.open(`${room.address}/w/1/table`);
    await eye.fill('input[name="mark"]', "A7");
    await eye.click(".which button");
    await soon(async () => assert.equal(await eye.run(`return document.querySelectorAll(".recut li").length`), 2));
    const lefts = await eye.run(`return [...document.querySelectorAll(".recut li")].map((step) => [step.offsetLeft, step.offsetWidth])`);
    assert.equal(lefts[0][0], lefts[1][0]);
    assert.ok(lefts[0][1] > 240, `${lefts[0][1]} px`);
  }));

test("the last step of a part uses its material up, taking the tick away gives it back, and the ledger says so", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/supplies`);
    await eye.run(`document.querySelector('[name="act"][value="save"]')?.closest("form")?.scrollIntoView()`);
    await eye.fill('form [name="name"]', "Kettle & Quince");
    await eye.fill('form [name="amount"]', "24");
    await eye.click('form:has([name="amount"]) button[type="submit"]');
    const amounts = () => eye.run(`return document.querySelector("#shelf, main").textContent.replace(/\\s+/g, " ")`);
    await soon(async () => assert.match(await amounts(), /24 sheets?/));
    for (const step of [1, 2, 3]) {
      await eye.open(`${room.address}/w/1/table?step=${step}`);
      // A test before this one has ticked the first.
      if ((await eye.count(".tick .main")) === 0) continue;
      await eye.click(".tick .main");
      await soon(async () => assert.match(await eye.text(".where-it-is"), new RegExp(`Step ${step + 1} of`)));
    }
    await eye.open(`${room.address}/w/1/supplies`);
    await soon(async () => assert.match(await amounts(), /18 sheets?/));
    await eye.open(`${room.address}/w/1/table?step=3`);
    await eye.click('.tick form button');
    await soon(async () => assert.match(await eye.text(".lead"), /2 of 22/));
    await eye.open(`${room.address}/w/1/supplies`);
    await soon(async () => assert.match(await amounts(), /24 sheets?/));
  }));
