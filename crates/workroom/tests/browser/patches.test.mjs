// @ts-check
// Patches of a photo whose colours are known, in a real browser: marked by a click, a finger or without scripts, moved, taken
// away, put back, tried and applied; undo and redo. OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { broken, soon, story, undo, workroom } from "./driver.mjs";

let room;
const folder = mkdtempSync(join(tmpdir(), "octavo-patches-"));
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

/** A sheet on a table, and a card of four greys beside it, under a warm lamp. Each grey's middle is 60, 100 + 80 n. */
const GREYS = ["#404040", "#707070", "#a0a0a0", "#d0d0d0"];
const at = (n) => `60,${100 + 80 * n}`;

/** Draws that photo with the browser's own canvas, and saves it; each story has a table of its own, as a photo that was there
 *  before has its patches again. */
let tables = 0;
async function drawn(eye) {
  tables += 1;
  await eye.open(`${room.address}/w/1/paper`);
  const photo = await eye.run(`
    const canvas = Object.assign(document.createElement("canvas"), { width: 900, height: 700 });
    const to = canvas.getContext("2d");
    to.fillStyle = "#4636" + (20 + arguments[0]); to.fillRect(0, 0, 900, 700);
    for (const [n, color] of ["#403a30", "#706655", "#a0917a", "#d0bd9f"].entries()) { to.fillStyle = color; to.fillRect(30, 70 + 80 * n, 60, 60); }
    const corners = [[200, 90], [730, 120], [780, 620], [150, 580]];
    to.beginPath(); for (const [x, y] of corners) to.lineTo(x, y); to.closePath();
    to.fillStyle = "#f2e0bc"; to.fill(); to.clip();
    to.fillStyle = "#7c8a90"; for (let x = 300; x < 700; x += 80) for (let y = 200; y < 520; y += 80) to.fillRect(x, y, 34, 34);
    return canvas.toDataURL("image/png").split(",")[1]`, [tables]);
  const path = join(folder, "photo.png");
  writeFileSync(path, Buffer.from(photo, "base64"));
  return path;
}

const FACE = ".design figure:first-child .face-acts";
const ROW = (n) => `.photo-edit .rows > li:nth-child(${n})`;
const PLACE = (n) => `${ROW(n)} [name="patch-place"]`;
const COLOR = (n) => `${ROW(n)} [name="patch-color"]`;
const RINGS = ".photo-edit .patches .ring";
const AGAIN = 'a[href*="/photo?"]';

/** The photo sent for the first face, and its patches open. */
async function sent(eye, scripts = true) {
  const photo = await drawn(eye);
  if (scripts) await eye.run(`document.querySelector('${FACE} details').open = true`);
  else await eye.click(`${FACE} details summary`);
  await eye.attach(`${FACE} form[action$="/photo"] input[type="file"]`, photo);
  await eye.click(`${FACE} form[action$="/photo"] button`);
  await soon(async () => assert.equal(await eye.count(".photo-edit .corner"), 4));
  if (scripts) await soon(async () => assert.equal(await eye.count(".photo-edit.by-hand"), 1));
  await eye.click(".photo-edit details.known > summary");
}

/** Where a place of the photo is in the window. */
const shown = (eye, x, y) => eye.run(`
  const photo = document.querySelector(".photo-edit svg.lined");
  photo.scrollIntoView({ block: "start", behavior: "instant" });
  const box = photo.getBoundingClientRect();
  return [box.x + box.width * arguments[0] / 900, box.y + box.height * arguments[1] / 700]`, [x, y]);

const number = async (eye, n, axis) => Number((await eye.value(PLACE(n))).split(",")[axis]);
const near = async (eye, n, x, y, by = 4) => {
  const place = await eye.value(PLACE(n));
  const [gotX, gotY] = place.split(",").map(Number);
  assert.ok(Math.abs(gotX - x) <= by && Math.abs(gotY - y) <= by, `${n}: ${place} and not ${x},${y}`);
};

test("a click marks a patch; it is tried, spoilt, put right and applied; undo and redo bring pictures and patches back", () =>
  story({}, async (eye) => {
    await sent(eye);
    // Made straight without any patch first: this is what undo comes back to.
    await eye.click(".photo-edit button.main");
    await soon(async () => assert.match(await eye.text(".foot"), /photo made straight was put on/));
    const face = () => eye.run(`return fetch(document.querySelector('.design figure:first-child img').src).then((got) => got.text())`);
    const raw = await face();
    await eye.open(await eye.run(`return document.querySelector('${AGAIN}').href`));
    await soon(async () => assert.equal(await eye.count(".photo-edit.by-hand"), 1));
    await eye.click(".photo-edit details.known > summary");
    for (const n of [0, 1]) {
      const middle = await shown(eye, 60, 100 + 80 * n);
      await eye.drag(middle, middle);
      await near(eye, n + 1, 60, 100 + 80 * n);
      assert.equal(await eye.run("return document.activeElement.name"), "patch-color", "the colour is typed next");
      await eye.keys(...GREYS[n]);
    }
    assert.equal(await eye.count(RINGS), 2);
    assert.equal(await eye.text(`${ROW(2)} legend`), "Patch 2");
    assert.equal(await eye.text(`${ROW(3)} legend`), "New patch");
    // A slip: the first is said to be white.
    await eye.fill(COLOR(1), "white");
    await eye.click(".photo-edit .known > button");
    await soon(async () => assert.match(await eye.text(`${ROW(1)} .said`), /“white” is no colour that can be read/));
    assert.match(await eye.text(".photo-edit .known .off"), /look at patch 1: what is wrong/);
    await eye.fill(COLOR(1), "#ffffff");
    await soon(async () => assert.equal(await eye.run(`return document.querySelectorAll("${ROW(1)} .said").length`), 0));
    await eye.click(".photo-edit .known > button");
    await soon(async () => assert.match(await eye.text(`${ROW(1)} .said`), /Patch 1 at .* too far apart/));
    // Enter in a field tries them, and takes none away.
    await eye.fill(COLOR(1), GREYS[0]);
    await eye.keys("\uE007");
    await soon(async () => assert.match(await eye.text(".photo-edit .known .off"), /In the mean: ΔE/));
    assert.equal(await eye.count(RINGS), 2);
    assert.match(await eye.text(`${ROW(2)} .said`), /as photographed, .* put right/);
    assert.deepEqual(await broken(eye), []);
    await eye.click(".photo-edit button.main");
    await soon(async () => assert.match(await eye.text(".foot"), /photo made straight was put on/));
    const right = await face();
    assert.notEqual(right, raw);
    const marked = async () => {
      await eye.open(await eye.run(`return document.querySelector('${AGAIN}').href`));
      await soon(async () => assert.equal(await eye.count(".photo-edit.by-hand"), 1));
      const all = await eye.run(`return [...document.querySelectorAll('[name="patch-color"]')].map((field) => field.value)`);
      await eye.open(`${room.address}/w/1/paper`);
      return all;
    };
    assert.deepEqual(await marked(), [GREYS[0], GREYS[1], ""]);
    await undo(eye);
    assert.equal(await face(), raw);
    assert.deepEqual(await marked(), [""]);
    await eye.click('button[data-key="redo"]');
    await soon(async () => assert.equal(await face(), right));
    assert.deepEqual(await marked(), [GREYS[0], GREYS[1], ""]);
    await undo(eye);
    await undo(eye);
  }));

test("rings are dragged and moved by the keys; one patch is taken away and put back", () =>
  story({}, async (eye) => {
    await sent(eye);
    // Several at once, as lines.
    await eye.click(".photo-edit details.several > summary");
    await eye.fill('textarea[name="patches"]', GREYS.map((color, n) => `${at(n)} ${color}`).join("\n"));
    await eye.click(".photo-edit .known > button");
    await soon(async () => assert.equal(await eye.count(RINGS), 4));
    await soon(async () => assert.match(await eye.text(".photo-edit .known .off"), /In the mean: ΔE/));
    const from = await shown(eye, 60, 180);
    // Taken hold of beside its middle, it does not jump.
    const off = [from[0] + 5, from[1] + 3];
    await eye.drag(off, [off[0] + 4, off[1] + 6]);
    await soon(async () => assert.notEqual(await eye.value(PLACE(2)), at(1)));
    assert.equal(await eye.count(RINGS), 4, "a ring that is dragged is no new patch");
    await soon(async () => assert.equal(await eye.run(`return document.querySelectorAll(".photo-edit .known .off").length`), 0), 3000);
    const moved = [await number(eye, 2, 0), await number(eye, 2, 1)];
    const scale = await eye.run(`return 900 / document.querySelector(".photo-edit svg.lined").getBoundingClientRect().width`);
    await near(eye, 2, 60 + 4 * scale, 180 + 6 * scale, 2);
    // Right, right, up; with Shift twenty at once.
    await eye.keys("\uE014", "\uE014", "\uE013");
    assert.equal(await eye.value(PLACE(2)), `${moved[0] + 2},${moved[1] - 1}`);
    await eye.chord("\uE008", "\uE012");
    assert.equal(await eye.value(PLACE(2)), `${moved[0] - 18},${moved[1] - 1}`);
    const ring = (what) => eye.run(`return document.querySelector(".ring:focus").getAttribute("${what}")`);
    assert.equal(await ring("transform"), `translate(${moved[0] - 18} ${moved[1] - 1})`);
    assert.equal(await ring("aria-label"), `Patch 2 at ${moved[0] - 18},${moved[1] - 1}`);
    await eye.fill(PLACE(2), at(1));
    assert.equal(await eye.run(`return document.querySelectorAll(".ring")[1].getAttribute("transform")`), "translate(60 180)");
    // The third goes; the fourth is the third then.
    assert.equal(await eye.text(`${ROW(3)} button`), "Take away patch 3");
    await eye.click(`${ROW(3)} button`);
    await soon(async () => assert.equal(await eye.count(RINGS), 3));
    assert.match(await eye.text(".photo-edit .known .notice"), /Patch 3 \(60,260 #a0a0a0\) was taken away/);
    assert.equal(await eye.value(COLOR(3)), GREYS[3]);
    assert.match(await eye.text(".photo-edit .known .off"), /3 patches/);
    const top = await eye.run(`return document.querySelector("#patches-told").getBoundingClientRect().top`);
    assert.ok(top > -50 && top < 300, `the list is still in sight: ${top}`);
    assert.deepEqual(await broken(eye), []);
    await eye.click(".photo-edit .known .notice button");
    await soon(async () => assert.equal(await eye.count(RINGS), 4));
    assert.equal(await eye.value(COLOR(4)), GREYS[2]);
    // A row written by hand is a patch like any other, and can be taken away before anything was sent.
    await eye.fill(PLACE(5), "500,300");
    await eye.fill(COLOR(5), "#7c8a90");
    assert.equal(await eye.count(RINGS), 5);
    await eye.click(`${ROW(5)} button`);
    await soon(async () => assert.match(await eye.text(".photo-edit .known .notice"), /Patch 5 \(500,300 #7c8a90\)/));
    assert.equal(await eye.count(RINGS), 4);
  }));

test("without scripts: a click on the small picture marks a patch, and the form does all else", () =>
  story({ scripts: false }, async (eye) => {
    await sent(eye, false);
    for (const n of [0, 3]) {
      const spot = await eye.run(`
        const photo = document.querySelector(".photo-edit input.spot");
        photo.scrollIntoView({ block: "center", behavior: "instant" });
        const box = photo.getBoundingClientRect();
        return [box.x + box.width * 60 / 900, box.y + box.height * arguments[0] / 700, box.width]`, [100 + 80 * n]);
      assert.equal(spot[2], 280);
      const row = n ? 2 : 1;
      await eye.drag(spot.slice(0, 2), spot.slice(0, 2));
      await soon(async () => near(eye, row, 60, 100 + 80 * n, 7));
      assert.match(await eye.text(`${ROW(row)} .said`), /a place but no colour/);
      await eye.fill(COLOR(row), GREYS[n]);
    }
    await eye.click(".photo-edit .known > button");
    await soon(async () => assert.match(await eye.text(".photo-edit .known .off"), /2 patches/));
    assert.equal(await eye.count(RINGS), 2);
    await eye.click(`${ROW(1)} button`);
    await soon(async () => assert.match(await eye.text(".photo-edit .known .off"), /One patch/));
    await eye.click(".photo-edit .known .notice button");
    await soon(async () => assert.match(await eye.text(".photo-edit .known .off"), /2 patches/));
    await eye.click(".photo-edit button.main");
    await soon(async () => assert.match(await eye.text(".foot"), /photo made straight was put on/));
    await undo(eye);
  }));

test("on a phone, with a finger: numbers can be read, rings can be taken hold of, nothing is wider than the screen", () =>
  story({ width: 360, height: 740 }, async (eye) => {
    await sent(eye);
    const touched = async (from, to) => {
      await eye.hold(from, "touch");
      if (to) await eye.move(to, "touch");
      await eye.release("touch");
    };
    // A tap, quickly.
    const tap = async (n) => {
      const middle = await shown(eye, 60, 100 + 80 * n);
      await eye.run("window.scrollBy(0, -20)");
      middle[1] += 20;
      await eye.tap(middle);
      await soon(async () => near(eye, n + 1, 60, 100 + 80 * n, 6));
      await eye.fill(COLOR(n + 1), GREYS[n]);
    };
    for (const n of [0, 1, 2]) await tap(n);
    await eye.click(".photo-edit .known > button");
    await soon(async () => assert.equal(await eye.count(`${ROW(3)} .said`), 1));
    assert.equal(await eye.run("return document.documentElement.scrollWidth"), 360);
    assert.deepEqual(await broken(eye), []);
    // Three in a row leave each other room; the one whose row is written in is as large as one alone.
    const high = () => eye.run(`return [...document.querySelectorAll("${RINGS} text")].map((text) => text.getBoundingClientRect().height)`);
    await eye.run("document.activeElement.blur()");
    const [one, two] = await high();
    assert.ok(one < 20 && one > 12, `${one}`);
    await eye.click(COLOR(2));
    await soon(async () => assert.ok((await high())[1] > two + 2, `${two}: ${await high()}`));
    // One alone is as large as it may be; so is the one in hand.
    const tall = (css) => eye.run(`return document.querySelector(arguments[0]).getBoundingClientRect().height`, [css]);
    for (const n of [3, 2]) {
      await eye.click(`${ROW(n)} button`);
      await soon(async () => assert.equal(await eye.count(RINGS), n - 1));
    }
    const letters = await tall(`${RINGS} text`);
    assert.ok(letters >= 18, `the number is ${letters} px high`);
    const target = await tall(`${RINGS} .touch`);
    assert.ok(target > 43.9, `a finger has ${target} px`);
    const from = await shown(eye, await number(eye, 1, 0), await number(eye, 1, 1));
    await touched(from, [from[0] + 60, from[1]]);
    const scale = await eye.run(`return 900 / document.querySelector(".photo-edit svg.lined").getBoundingClientRect().width`);
    await soon(async () => near(eye, 1, 60 + 60 * scale, 100, 6));
    assert.equal(await eye.count(RINGS), 1);
    // A corner too.
    const corner = await shown(eye, Number(await eye.value('[name="tr-x"]')), Number(await eye.value('[name="tr-y"]')));
    const was = Number(await eye.value('[name="tr-x"]'));
    await touched(corner, [corner[0] + 40, corner[1]]);
    await soon(async () => assert.ok(Math.abs(Number(await eye.value('[name="tr-x"]')) - was - 40 * scale) < 6, await eye.value('[name="tr-x"]')));
  }));
