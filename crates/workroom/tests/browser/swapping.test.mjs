// @ts-check
// A piece dragged onto another card in a real browser: by mouse and by finger, seen before it is let go, refused with the
// reason, undone; in the line-up too. OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { soon, story, undo, workroom } from "./driver.mjs";

let room;
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

const count = (eye, css) => eye.run(`return document.querySelectorAll(arguments[0]).length`, [css]);

/** The middle of a card's piece as it lies in the window: of the last one that can be taken hold of, the band of a Twin. */
const band = (eye, card) =>
  eye.run(`
    const item = document.querySelector('[data-card="' + arguments[0] + '"]');
    const box = item.querySelector("img").getBoundingClientRect();
    const [, left, top, right, bottom] = item.dataset.holds.split(";").at(-1).split(" ").map(Number);
    return [box.left + box.width * (left + right) / 2000, box.top + box.height * (top + bottom) / 2000]`, [card]);

/** The page with its cards at hand. */
async function cards(eye, query = "") {
  await eye.open(`${room.address}/w/1/batch${query}`);
  await soon(async () => assert.equal(await count(eye, "main.by-hand .of-sheet li"), 48));
  await eye.run(`document.querySelector(".of-sheet").scrollIntoView()`);
}

/** The band that a card has, by the opened card. */
async function has(eye, card, face) {
  await eye.open(`${room.address}/w/1/batch?card=${card}`);
  await soon(async () => assert.match(await eye.text(".piece-of:nth-of-type(2) .shows"), face));
}

for (const pointer of ["mouse", "touch"]) {
  for (const query of ["", "?side=line-up"]) {
    test(`a band is dragged to another card by ${pointer}${query && ", in the line-up"}, and undone`, () =>
      story({}, async (eye) => {
        await cards(eye, query);
        const [from, to] = [await band(eye, 1), await band(eye, 9)];
        await eye.hold(from, pointer);
        await eye.move(to, pointer);
        await soon(async () => assert.match(await eye.text(".hold-told"), /cards 1 and 9 swap their band/));
        // Both cards are seen as they would be, before anything is kept.
        const seen = await eye.runAsync(`
          const all = [1, 9].map((card) => document.querySelector('[data-card="' + card + '"] img'));
          Promise.all(all.map((image) => image.decode())).then(() => arguments[0](all.map((image) => image.src)))`);
        for (const source of seen) assert.match(source, /\?card=1&part=\d&with=9$/);
        assert.match(await eye.text(".foot"), /The demo was laid out/);
        await eye.release(pointer);
        await soon(async () => assert.match(await eye.text(".chosen"), /Cards 1 and 9 swapped their band/));
        assert.equal(await eye.run(`return location.search`), query, "the cards are seen as before");
        await soon(async () => assert.equal(await eye.run(`return document.activeElement.closest("[data-card]")?.dataset.card`), "9"));
        await has(eye, 1, /large leaves/);
        await undo(eye);
        await has(eye, 1, /dots/);
      }));
  }
}

test("a card that may not have the piece is pale, says why, and nothing is changed", () =>
  story({}, async (eye) => {
    await cards(eye);
    const pale = async () => count(eye, ".holding [data-card].not");
    const from = await band(eye, 1);
    await eye.hold(from, "mouse");
    await eye.move([from[0] + 20, from[1]], "mouse");
    // Of the 47 others 39 may have it, as the page without a hand says too.
    await soon(async () => assert.equal(await pale(), 8));
    const other = await eye.run(`return document.querySelector("[data-card].not").dataset.card`);
    await eye.run(`document.querySelector("[data-card].not").scrollIntoView({ block: "center" })`);
    await eye.move(await band(eye, other), "mouse");
    await soon(async () => assert.match(await eye.text(".hold-told.stays"), /./));
    const why = await eye.text(".hold-told.stays");
    await eye.release("mouse");
    await soon(async () => assert.equal(await pale(), 0));
    assert.equal(await eye.text(".hold-told.stays"), why);
    assert.match(await eye.text(".foot"), /The demo was laid out/);
    assert.equal(await eye.run("return location.search"), "", "the end of a drag opens no card");
    await eye.keys("\uE00C");
    assert.equal(await count(eye, ".hold-told"), 0);
    // The same words as in the answer to a form.
    const refused = await eye.runAsync(`
      const form = document.querySelector("#by-hand");
      const fields = new URLSearchParams([...new FormData(form), ["card", "1"], ["part", "1"], ["with", arguments[0]]].filter(([, value]) => value));
      fetch(form.action, { method: "POST", body: new URLSearchParams([["seen", fields.get("seen")], ["page", "batch"], ["card", "1"], ["layer", "band"], ["with", arguments[0]]]) })
        .then((answer) => answer.text()).then((text) => arguments[1](new DOMParser().parseFromString(text, "text/html").querySelector(".refused p").textContent))`, [other]);
    assert.equal(refused.trim(), why.trim());
  }, (message) => message.includes("status of 422")));

test("Esc puts the piece back, a click opens the card", () =>
  story({}, async (eye) => {
    await cards(eye);
    const [from, to] = [await band(eye, 1), await band(eye, 9)];
    await eye.hold(from, "mouse");
    await eye.move(to, "mouse");
    await soon(async () => assert.match(await eye.text(".hold-told"), /Let go/));
    await eye.keys("\uE00C");
    await eye.release("mouse");
    assert.equal(await count(eye, ".in-hand, .hold-told"), 0);
    assert.equal(await eye.run(`return document.querySelectorAll('img[src*="with="]').length`), 0);
    assert.match(await eye.text(".foot"), /The demo was laid out/);
    await eye.click('[data-card="1"] a');
    await soon(async () => assert.match(await eye.text("#card-name"), /Card 1/));
  }));

test("a finger that moves at once scrolls the page, and takes nothing up", () =>
  story({ width: 360, height: 740 }, async (eye) => {
    await cards(eye);
    const from = await band(eye, 3);
    const before = await eye.run("return scrollY");
    await eye.drag(from, [from[0], from[1] - 150], 6, "touch");
    await soon(async () => assert.ok((await eye.run("return scrollY")) > before + 50));
    assert.equal(await count(eye, ".in-hand, .hold-told"), 0);
    assert.match(await eye.text(".foot"), /The demo was laid out/);
  }));

for (const query of ["", "?side=line-up"]) {
  test(`by keyboard a piece is taken up, carried, seen on another card, let go, and undone${query && ", in the line-up"}`, () =>
    story({}, async (eye) => {
      const [right, enter, escape] = ["\uE014", "\uE007", "\uE00C"];
      await cards(eye, query);
      await eye.run(`document.querySelector('[data-card="8"] a').focus()`);
      await eye.keys(" ");
      await soon(async () => assert.match(await eye.text(".hold-told"), /The band of card 8/));
      // The space bar once more: the piece below.
      await eye.keys(" ");
      await soon(async () => assert.match(await eye.text(".hold-told"), /The panel of card 8/));
      await eye.keys(escape);
      assert.equal(await count(eye, ".in-hand, .hold-told"), 0);
      assert.equal(await eye.run(`return document.activeElement.closest("[data-card]")?.dataset.card`), "8");
      await eye.keys(" ");
      await soon(async () => assert.match(await eye.text(".hold-told"), /The band of card 8/));
      await eye.keys(right);
      await soon(async () => assert.match(await eye.text(".hold-told"), /cards 8 and 9 swap their band/));
      const seen = await eye.run(`return [8, 9].map((card) => document.querySelector('[data-card="' + card + '"] img').getAttribute("src"))`);
      for (const source of seen) assert.match(source, /\?card=8&part=\d&with=9$/);
      assert.match(await eye.text(".foot"), /The demo was laid out/);
      await eye.keys(enter);
      await soon(async () => assert.match(await eye.text(".chosen"), /Cards 8 and 9 swapped their band/));
      assert.equal(await eye.run(`return location.search`), query, "the cards are seen as before, and none was opened");
      await soon(async () => assert.equal(await eye.run(`return document.activeElement.closest("[data-card]")?.dataset.card`), "9"));
      await undo(eye);
      await has(eye, 9, /large leaves/);
    }));
}

test("by keyboard arrows go to the row below and back, and Enter over a card that may not have the piece says why", () =>
  story({}, async (eye) => {
    await cards(eye, "?side=line-up");
    await eye.run(`document.querySelector('[data-card="1"] a').focus()`);
    await eye.keys(" ");
    await soon(async () => assert.match(await eye.text(".hold-told"), /The band of card 1/));
    const on = () => eye.run(`return document.activeElement.closest("[data-card]").dataset.card`);
    await eye.keys("\uE015");
    const below = await on();
    assert.ok(Number(below) > 5, below);
    await eye.keys("\uE013");
    assert.equal(await on(), "1");
    // Which cards may not have it is said by the cards themselves.
    const not = await eye.run(`return Number(document.querySelector("[data-card].not").dataset.card)`);
    for (let card = 1; card < not; card += 1) await eye.keys("\uE014");
    assert.equal(await on(), String(not));
    const why = await eye.text(".hold-told.stays");
    await eye.keys("\uE007");
    await soon(async () => assert.equal(await count(eye, ".holding"), 0));
    assert.equal(await eye.text(".hold-told.stays"), why);
    assert.match(await eye.text(".foot"), /The demo was laid out/);
  }));
