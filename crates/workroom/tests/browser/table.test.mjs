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
      await eye.click(".helps [data-hand]");
      await soon(async () => assert.equal(await eye.run(`return document.querySelectorAll("#step.for-left").length`), 1));
      assert.notEqual(await picture(), right);
      assert.match(await picture(), /left/);
      await eye.click('.tick a[rel="next"]');
      await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 2 of 22/));
      assert.match(await picture(), /left/);
      // By another page and back again: the hand is kept.
      await eye.open(`${room.address}/w/1/paper`);
      await eye.click('.way a[href$="/table"]');
      await soon(async () => assert.match(await picture(), /left/));
      await eye.click(".helps [data-hand]");
      await soon(async () => assert.equal(await eye.run(`return document.querySelectorAll("#step.for-right").length`), 1));
    }));
}

for (const [width, height] of [[360, 780], [820, 1180], [1280, 900]]) {
  for (const scripts of [true, false]) {
    test(`the buttons are seen at ${width} × ${height} without pushing the page, ${scripts ? "with" : "without"} scripts`, () =>
      story({ width, height, scripts }, async (eye) => {
        for (const step of [1, 9, 19, 22]) {
          await eye.open(`${room.address}/w/1/table?step=${step}`);
          await soon(async () => assert.match(await eye.text(".where-it-is"), new RegExp(`Step ${step} of`)));
          const seen = await eye.run(`
            return [...document.querySelectorAll(".tick .large")].map((one) => {
              const box = one.getBoundingClientRect();
              const on = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
              return box.left >= 0 && box.right <= innerWidth && box.top >= 0 && box.bottom <= innerHeight && (on === one || one.contains(on));
            })`);
          assert.ok(seen.length >= 2 && seen.every(Boolean), `step ${step}: ${seen}`);
          // The foot hides nothing for good: pushed to the end of the step, its last line stands above or below it.
          const hidden = await eye.run(`
            document.querySelector(".helps .hint").scrollIntoView({ block: "center" });
            const [line, foot] = [".helps .hint", ".tick"].map((css) => document.querySelector(css).getBoundingClientRect());
            return line.top < foot.bottom && line.bottom > foot.top`);
          assert.equal(hidden, false, `step ${step}`);
          await eye.run("scrollTo(0, 0)");
        }
      }));
  }
}

test("the space bar ticks the step wherever the focus is, but where something is typed or another button has it", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/table?step=10`);
    await soon(async () => assert.equal(await eye.count("[data-read]:not([hidden])"), 1));
    const at = (step) => soon(async () => assert.match(await eye.text(".where-it-is"), new RegExp(`Step ${step} of 22`)));
    const done = async () => Number((await eye.text(".lead")).match(/(\d+) of 22/)[1]);
    const before = await done();
    const [SPACE, ENTER] = [" ", "\uE007"];
    // After a pointer on a helper the step has the keys.
    await eye.click("[data-read]");
    assert.equal(await eye.run("return document.activeElement.tagName"), "H2");
    await eye.keys(SPACE);
    await at(11);
    assert.equal(await eye.run(`return document.querySelector("[data-read]").getAttribute("aria-pressed")`), "true");
    // By keyboard a helper is pressed with Enter, keeps the focus, and the space bar still ticks.
    await eye.run(`document.querySelector("[data-read]").focus()`);
    await eye.keys(ENTER);
    assert.equal(await eye.run(`return document.querySelector("[data-read]").getAttribute("aria-pressed")`), "false");
    assert.ok(await eye.run(`return document.activeElement.hasAttribute("data-read")`));
    await eye.keys(SPACE);
    await at(12);
    await eye.run(`document.querySelector('.tick [rel="next"]').focus()`);
    await eye.keys(SPACE);
    await at(13);
    await eye.run(`document.querySelector('input[name="mark"]').focus()`);
    await eye.keys("A", SPACE, "7");
    assert.equal(await eye.value('input[name="mark"]'), "A 7");
    await at(13);
    assert.equal(await done(), before + 3);
    for (const step of [10, 11, 12]) {
      await eye.open(`${room.address}/w/1/table?step=${step}`);
      await eye.click(".tick form button");
      await soon(async () => assert.equal(await eye.count(".tick .main[data-key]"), 1));
    }
  }));

test("without a voice it is said that nothing will be heard, and whether the screen stays awake", () =>
  story(phone, async (eye) => {
    await eye.beforehand(`speechSynthesis.getVoices = () => [];
      navigator.wakeLock.request = () => window.refuse ? Promise.reject(new Error("not now")) : Promise.resolve({});`);
    await eye.open(`${room.address}/w/1/table`);
    await soon(async () => assert.match(await eye.text("[data-awake]:not([hidden])"), /stays awake/));
    await eye.run(`window.refuse = true; document.dispatchEvent(new Event("visibilitychange"))`);
    await soon(async () => assert.match(await eye.text("[data-sleeps]:not([hidden])"), /may go dark/));
    assert.ok(await eye.run(`return ["awake", "mute"].every((one) => document.querySelector("[data-" + one + "]").hidden)`));
    await eye.click("[data-read]");
    await soon(async () => assert.match(await eye.text("[data-mute]:not([hidden])"), /no voice/));
    await eye.click("[data-read]");
    await soon(async () => assert.equal(await eye.run(`return document.querySelector("[data-mute]").hidden`), true));
  }));

test("a program that was closed leaves the step where it is and says that the tick is not kept", async () => {
  const short = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
  await story({}, async (eye) => {
    await eye.open(`${short.address}/w/1/table?step=2`);
    await soon(async () => assert.equal(await eye.count("[data-read]:not([hidden])"), 1));
    const address = await eye.url();
    await short.stop();
    await eye.keys(" ");
    await soon(async () => assert.match(await eye.text("main > .gone"), /not running[^]*not kept yet/));
    assert.match(await eye.text(".where-it-is"), /Step 2 of 22/);
    await eye.click('.tick [rel="next"]');
    assert.match(await eye.text(".where-it-is"), /Step 2 of 22/);
    assert.equal(await eye.url(), address);
  }, (message) => /ERR_CONNECTION_REFUSED/.test(message));
});

test("a refused spoiled piece comes back to the form with the reason in sight and what was typed, also loaded again", () =>
  story({ width: 1280, height: 900 }, async (eye) => {
    await eye.open(`${room.address}/w/1/table`);
    await eye.fill('input[name="mark"]', "Q77");
    await eye.click(".which button");
    for (const again of [false, true]) {
      if (again) await eye.open(await eye.url());
      await soon(async () => assert.match(await eye.text("#spoiled-why"), /There is no piece Q77/));
      assert.equal(await eye.value('input[name="mark"]'), "Q77");
      const seen = `const box = document.querySelector("#spoiled-why").getBoundingClientRect(); return box.top >= 0 && box.bottom <= innerHeight`;
      await soon(async () => assert.ok(await eye.run(seen)));
    }
  }));

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
