// @ts-check
// A phone photo put on a face in a real browser: corners found, moved by mouse, by the keys and by typing, then made straight.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { broken, soon, story as storyOf, undo, workroom } from "./driver.mjs";

let room;
const folder = mkdtempSync(join(tmpdir(), "octavo-photo-"));
before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

const story = (options, tell) => storyOf(options, tell, (message) => message.includes("status of 422"));

/** Draws a pale sheet askew on a dark table, with the browser's own canvas, and saves it. */
async function drawn(eye) {
  const photo = await eye.run(`
    const canvas = Object.assign(document.createElement("canvas"), { width: 900, height: 700 });
    const to = canvas.getContext("2d");
    to.fillStyle = "#463628"; to.fillRect(0, 0, 900, 700);
    const corners = [[200, 90], [730, 120], [780, 620], [150, 580]];
    to.beginPath(); for (const [x, y] of corners) to.lineTo(x, y); to.closePath();
    to.fillStyle = "#f2ecdc"; to.fill(); to.clip();
    to.fillStyle = "#7c93b5"; for (let x = 300; x < 700; x += 80) for (let y = 200; y < 520; y += 80) to.fillRect(x, y, 34, 34);
    return canvas.toDataURL("image/png").split(",")[1]`);
  const path = join(folder, "photo.png");
  writeFileSync(path, Buffer.from(photo, "base64"));
  return path;
}

const FACE = ".design figure:first-child .face-acts";
const field = (name) => `.photo-edit input[name="${name}"]`;

/** The photo sent for the first face; its corners as they were found. */
async function sent(eye, photo) {
  await eye.open(`${room.address}/w/1/paper`);
  await eye.run(`document.querySelector('${FACE} details').open = true`);
  await eye.attach(`${FACE} form[action$="/photo"] input[type="file"]`, photo);
  await eye.click(`${FACE} form[action$="/photo"] button`);
  await soon(async () => assert.equal(await eye.count(".photo-edit .corner"), 4));
}

test("corners are found, dragged, moved by keys and by typing, and the sheet made straight", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/w/1/paper`);
    const photo = await drawn(eye);
    await sent(eye, photo);
    const near = async (name, wanted) => assert.ok(Math.abs(Number(await eye.value(field(name))) - wanted) <= 3, `${name}: ${await eye.value(field(name))}`);
    await near("tl-x", 200);
    await near("tl-y", 90);
    await near("br-x", 780);
    await near("br-y", 620);
    await soon(async () => assert.equal(await eye.count(".photo-edit.by-hand"), 1));
    const from = await eye.run(`
      const corner = document.querySelector('.corner[data-corner="tr"]');
      corner.scrollIntoView({ block: "center" });
      const box = corner.getBoundingClientRect();
      return [box.x + box.width / 2, box.y + box.height / 2]`);
    const before = Number(await eye.value(field("tr-x")));
    await eye.drag(from, [from[0] - 40, from[1]]);
    await soon(async () => assert.ok(Number(await eye.value(field("tr-x"))) < before - 20));
    await eye.keys("\uE014", "\uE014", "\uE015");
    const moved = Number(await eye.value(field("tr-x")));
    await eye.fill(field("tr-x"), "730");
    await soon(async () => assert.equal(await eye.run(`return document.querySelector('.corner[data-corner="tr"]').getAttribute("cx")`), "730"));
    assert.notEqual(moved, 730);
    await eye.fill(field("tr-y"), "120");
    await eye.click(".photo-edit button.main");
    await soon(async () => assert.match(await eye.text(".foot"), /photo made straight was put on/));
    // Undone, the face has its print again; done again, the photo is there to be made straight anew.
    const shown = () => eye.run(`return document.querySelector('.design figure:first-child image, .design figure:first-child img')?.outerHTML ?? ""`);
    const straight = await shown();
    const again = 'a[href*="/photo?"]';
    assert.equal(await eye.count(again), 1);
    await undo(eye);
    await soon(async () => assert.equal(await eye.count(again), 0));
    assert.notEqual(await shown(), straight);
    await eye.click('button[data-key="redo"]');
    await soon(async () => assert.equal(await eye.count(again), 1));
    assert.equal(await shown(), straight);
    await undo(eye);
  }));

test("the same by a form alone, without scripts; crossed corners are refused and nothing is lost", () =>
  story({ scripts: false }, async (eye) => {
    await sent(eye, join(folder, "photo.png"));
    const [x, y] = [await eye.value(field("tr-x")), await eye.value(field("tr-y"))];
    await eye.fill(field("tr-x"), "780");
    await eye.fill(field("tr-y"), "620");
    await eye.fill(field("br-x"), x);
    await eye.fill(field("br-y"), y);
    await eye.click(".photo-edit button.main");
    await soon(async () => assert.match(await eye.text("[role=alert]"), /crossed/));
    assert.equal(await eye.value(field("tr-x")), "780");
    await eye.fill(field("tr-x"), x);
    await eye.fill(field("tr-y"), y);
    await eye.fill(field("br-x"), "780");
    await eye.fill(field("br-y"), "620");
    await eye.click(`.photo-edit input[name="even"]`);
    await eye.fill(field("white-x"), "230");
    await eye.fill(field("white-y"), "150");
    await eye.click(".photo-edit button.main");
    await soon(async () => assert.match(await eye.text(".foot"), /photo made straight was put on/));
    assert.equal(await eye.count('a[href*="/photo?"]'), 1);
  }));
