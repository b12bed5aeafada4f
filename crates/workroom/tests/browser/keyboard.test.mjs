// @ts-check
// The whole job by keyboard alone, in a real browser: nothing is clicked, and the focus is moved by Tab only.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { soon, story, workroom } from "./driver.mjs";

const [TAB, ENTER, UP, CONTROL] = ["\uE004", "\uE007", "\uE013", "\uE009"];
/** Most strokes of Tab to anything: twice round the longest page would be more. */
const MOST = 260;

let room, folder;
before(async () => {
  folder = mkdtempSync(join(tmpdir(), "octavo-saved-"));
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(async () => {
  await room.stop();
  rmSync(folder, { recursive: true });
});

/** Tab until something that matches has the focus, and can be seen to have it. */
async function reach(eye, css) {
  for (let strokes = 0; strokes < MOST; strokes += 1) {
    await eye.keys(TAB);
    const there = await eye.run(`
      const on = document.activeElement;
      if (!on?.matches(arguments[0])) return "no";
      const marked = [on, ...on.querySelectorAll("*")].some((part) => {
        const style = getComputedStyle(part);
        return (style.outlineStyle !== "none" && style.outlineWidth !== "0px") || style.strokeWidth > "1";
      });
      return marked ? "seen" : "unseen"`, [css]);
    assert.notEqual(there, "unseen", `${css} does not show that it has the focus`);
    if (there === "seen") return;
  }
  assert.fail(`${css} is not reached by ${MOST} strokes of Tab`);
}

/** To another page by the way through the job. */
async function go(eye, page, heading) {
  await reach(eye, `.way a[href$="/${page}"]`);
  await eye.keys(ENTER);
  await soon(async () => assert.equal(await eye.text("h1"), heading));
}

const foot = (eye, said) => soon(async () => assert.match(await eye.text(".foot"), said));

test("the whole job by keyboard alone", () =>
  story({}, async (eye) => {
    await eye.saving(folder);
    await eye.open(`${room.address}/`);
    await soon(async () => assert.equal(await eye.text("h1"), "Work in hand"));
    await reach(eye, 'article.project h2 a[href^="/w/1/"]');
    await eye.keys(ENTER);
    await soon(async () => assert.equal(await eye.text("h1"), "Cards"));

    // A recipe is changed.
    await reach(eye, ".recipe summary");
    await eye.keys(ENTER);
    await reach(eye, 'input[name="set:recipe.0.layer.0.border"]');
    await eye.chord(CONTROL, "a");
    await eye.keys("1", "/", "1", "6", ENTER);
    await foot(eye, /Twin, mat: border from/);
    await eye.chord(CONTROL, "z");
    // Ctrl+Z in a line that is typed in belongs to the line.
    await soon(async () => {
      if (!/The demo was laid out/.test(await eye.text(".foot"))) {
        await reach(eye, 'button[data-key="undo"]');
        await eye.keys(ENTER);
      }
      await foot(eye, /The demo was laid out/);
    });

    // A cut is moved.
    await go(eye, "layout", "Layout");
    await soon(async () => assert.ok((await eye.count(".by-hand .grip")) > 0));
    await reach(eye, '.grip[data-axis="y"]');
    await eye.keys(UP);
    await soon(async () => assert.match(await eye.text(".moved"), /4⅜ in.*Nothing left over/));
    await eye.keys(ENTER);
    await foot(eye, /A cut was moved/);

    // Two pieces are swapped, one is turned over.
    await go(eye, "batch", "Batch");
    await reach(eye, '[data-card="1"] a');
    await eye.keys(ENTER);
    await soon(async () => assert.match(await eye.text("#card-name"), /Card 1/));
    await reach(eye, '.piece-of:nth-of-type(2) a.button');
    await eye.keys(ENTER);
    await reach(eye, 'button.pick[value="9"]');
    await eye.keys(ENTER);
    await foot(eye, /Cards 1 and 9 swapped their band/);
    await soon(async () => assert.equal(await eye.count('.piece-of:nth-of-type(2) button[name="turn"]'), 1));
    await reach(eye, '.piece-of:nth-of-type(2) button[name="turn"]');
    await eye.keys(ENTER);
    await foot(eye, /band of card 1 turned over/);

    // Steps are ticked.
    await go(eye, "table", "Table");
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 1 of/));
    await eye.keys(" ");
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 2 of/));
    await eye.keys(" ");
    await soon(async () => assert.match(await eye.text("main .facts"), /^2 of/));

    // Undone, all three.
    await go(eye, "batch", "Batch");
    for (const said of [/swapped their band/, /A cut was moved/, /The demo was laid out/]) {
      await eye.chord(CONTROL, "z");
      await foot(eye, said);
    }

    // The handout is saved.
    await go(eye, "share", "Share");
    await reach(eye, 'a[href*="/file/handout.pdf"]');
    await eye.keys(ENTER);
    const file = () => readdirSync(folder).find((name) => name.endsWith("handout.pdf"));
    await soon(async () => assert.ok(file()));
    assert.equal(readFileSync(join(folder, file() ?? "")).subarray(0, 5).toString(), "%PDF-");
  }));
