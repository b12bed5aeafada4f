// @ts-check
// The job as a person does it, in a real browser: `node --test crates/workroom/tests/browser/`.
// OCTAVO is the program (left out: target/debug/octavo); AXE is the path of axe.min.js (left out: it is fetched from npm).
// Source: axe-core 4, Deque Systems (MPL-2.0), for what a page owes to people who do not see it well: WCAG 2.2 A and AA.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { browser, soon, undo, workroom } from "./driver.mjs";

const PAGES = [
  ["/", "Work in hand", "article.project .cards img", 9],
  ["/w/1/paper", "Paper", "article.design", 6],
  ["/w/1/cards", "Cards", ".apart li", 6],
  ["/w/1/layout", "Layout", "a.piece", 16],
  ["/w/1/batch", "Batch", ".of-sheet img", 48],
  ["/w/1/batch?card=1", "Batch", ".piece-of", 2],
  ["/w/1/batch?card=1&swap=band", "Batch", "button.pick", 39],
  ["/w/1/batch?side=both", "Batch", ".of-sheet img", 48],
  ["/w/1/cardstock", "Cardstock", "section.stock", 5],
  ["/w/1/supplies", "Supplies", ".shelf", 1],
  ["/w/1/background", "Stamped by hand", "li.jig", 1],
  ["/w/1/post", "Post", ".operators li", 8],
  ["/w/1/class", "Class", "#own form", 1],
  ["/w/2/supplies", "Supplies", "#swap button", 1],
  ["/w/2/post", "Post", ".operators li", 24],
  ["/w/2/class", "Class", "table.sums tr", 10],
  ["/w/1/table?sample=0&w1=4&h1=4+1/2", "Table", ".measured li", 2],
  ["/w/1/table", "Table", ".all-steps li", 22],
  ["/w/1/share", "Share", ".pages img", null],
];

let room, axe;

before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
  let file = process.env.AXE;
  if (!file) {
    const folder = mkdtempSync(join(tmpdir(), "octavo-axe-"));
    execFileSync("npm", ["pack", "axe-core@4", "--silent", "--pack-destination", folder]);
    execFileSync("sh", ["-c", "tar -xzf *.tgz"], { cwd: folder });
    file = join(folder, "package", "axe.min.js");
  }
  axe = readFileSync(file, "utf8");
});
after(() => room.stop());

for (const dark of [false, true]) {
  test(`no page keeps anybody out, ${dark ? "dark" : "light"}`, async () => {
    const eye = await browser({ dark });
    try {
      for (const [path, heading, items, count] of PAGES) {
        await eye.open(room.address + path);
        await soon(async () => assert.equal(await eye.text("h1"), heading));
        const found = await eye.count(items);
        assert.ok(count === null ? found > 4 : found === count, `${path}: ${found} × ${items}`);
        await eye.run(axe);
        const broken = await eye.runAsync(
          `axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })
             .then((r) => arguments[0](r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target.join(" ")).slice(0, 3).join(" | "))))`,
        );
        assert.deepEqual(broken, [], path);
      }
      assert.deepEqual(await eye.complaints(), []);
    } finally {
      await eye.close();
    }
  });
}

test("nothing runs over the edge at 360 px, nor at twice the letter size", async () => {
  const eye = await browser({ width: 360, height: 740 });
  try {
    for (const [path] of PAGES) {
      await eye.open(room.address + path);
      for (const size of ["100%", "200%"]) {
        await eye.run(`document.documentElement.style.fontSize = arguments[0]`, [size]);
        const [wide, most] = await eye.run("return [document.documentElement.scrollWidth, innerWidth]");
        assert.ok(wide <= most, `${path} at ${size}: ${wide} px`);
      }
    }
  } finally {
    await eye.close();
  }
});

test("the job by hand: change a recipe, undo, turn a sheet over, pin a piece, take another project", async () => {
  const eye = await browser();
  try {
    await eye.open(`${room.address}/`);
    await eye.click('article.project h2 a[href^="/w/1/"]');
    await eye.click(".recipe summary");
    const border = 'input[name="set:recipe.0.layer.0.border"]';
    await eye.fill(border, "1/16");
    await eye.click(".recipe .change button");
    await soon(async () => assert.match(await eye.text(".foot"), /Twin, mat: border from/));
    await undo(eye);
    await soon(async () => assert.match(await eye.text(".foot"), /The demo was laid out/));

    await eye.open(`${room.address}/w/1/paper`);
    await eye.click("#design-0-0 > details > summary");
    await eye.click('#design-0-0 select[name="set:pack.0.design.0.up"] option[value="back"]');
    await eye.click("#design-0-0 .change button");
    await soon(async () => assert.match(await eye.text("#design-0-0 .face.up"), /leaf scatter/));

    await eye.open(`${room.address}/w/1/layout`);
    await eye.click('a.piece[data-piece="1"]');
    await eye.click("#piece-1 form > button");
    await soon(async () => assert.match(await eye.text("#pins ul"), /from the left/));
    await eye.open(`${room.address}/w/1/cards`);
    await undo(eye);
    await undo(eye);
    await soon(async () => assert.match(await eye.text(".foot"), /The demo was laid out/));

    await eye.open(`${room.address}/`);
    await eye.fill('input[name="pack"]', "Meadow");
    await eye.click(".kinds form button");
    await soon(async () => assert.match(await eye.text(".top .project"), /Meadow/));
    assert.deepEqual(await eye.complaints(), []);
  } finally {
    await eye.close();
  }
});

const settled = () => new Promise((done) => setTimeout(done, 1200));
const knob = (eye, axis) => eye.run(`const grip = document.querySelector('.grip[data-axis="${axis}"]');
  grip.scrollIntoView({ block: "center" });
  const box = grip.querySelector("circle").getBoundingClientRect();
  return [box.x + box.width / 2, box.y + box.height / 2];`);

for (const pointer of ["mouse", "touch"]) {
  test(`a cut is dragged by ${pointer}, kept when it is let go, and undone`, async () => {
    const eye = await browser();
    try {
      await eye.open(`${room.address}/w/1/layout`);
      await eye.text(".by-hand .grip");
      const [x, y] = await knob(eye, "y");
      await eye.drag([x, y], [x, y - 9], 6, pointer);
      await settled();
      await soon(async () => assert.match(await eye.text(".foot"), /A cut was moved from 4 1.2 in to 4 1.4 in from the top/));
      await soon(async () => assert.equal(await eye.count("a.piece"), 16));
      // Far out of range: the reason is told, and nothing is kept.
      const [left, top] = await knob(eye, "x");
      await eye.drag([left, top], [left + 90, top], 3, pointer);
      await settled();
      await soon(async () => assert.match(await eye.text(".moved.stays"), /it may be 2 3.4 in to 3 1.4 in/));
      await soon(async () => assert.match(await eye.text(".foot"), /from 4 1.2 in to 4 1.4 in/));
      await undo(eye);
      await soon(async () => assert.match(await eye.text(".foot"), /The demo was laid out/));
      assert.deepEqual(await eye.complaints(), []);
    } finally {
      await eye.close();
    }
  });
}

test("a cut is moved by the arrow keys and put back by Esc, kept by Enter", async () => {
  const eye = await browser();
  try {
    await eye.open(`${room.address}/w/1/layout`);
    await eye.text(".by-hand .grip");
    await eye.run(`document.querySelector('.grip[data-axis="y"]').focus()`);
    await eye.keys("\uE013");
    await settled();
    await soon(async () => assert.match(await eye.text(".moved"), /4 3.8 in.*Nothing left over/));
    await eye.keys("\uE00C");
    await soon(async () => assert.equal(await eye.text(".moved"), ""));
    await soon(async () => assert.match(await eye.text(".foot"), /The demo was laid out/));
    await eye.keys("\uE013", "\uE007");
    await settled();
    await soon(async () => assert.match(await eye.text(".foot"), /A cut was moved/));
    await undo(eye);
    await soon(async () => assert.match(await eye.text(".foot"), /The demo was laid out/));
  } finally {
    await eye.close();
  }
});

test("at the table by the space bar and the arrows alone", async () => {
  const eye = await browser();
  try {
    await eye.open(`${room.address}/w/1/table`);
    await eye.keys(" ");
    await new Promise((done) => setTimeout(done, 800));
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 2 of 22/));
    await soon(async () => assert.match(await eye.text("main .facts"), /1 of 22/));
    await eye.keys("\uE014");
    await new Promise((done) => setTimeout(done, 800));
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 3 of 22/));
    await eye.open(`${room.address}/w/1/table`);
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step 2 of 22/));
  } finally {
    await eye.close();
  }
});

test("every edit is kept with scripts off", async () => {
  const eye = await browser({ scripts: false });
  try {
    await eye.open(`${room.address}/w/1/cards`);
    await eye.click(".recipe summary");
    await eye.fill('input[name="set:recipe.0.layer.4.foam_squares"]', "3");
    await eye.click(".recipe .change button");
    await soon(async () => assert.equal(await eye.value('input[name="set:recipe.0.layer.4.foam_squares"]'), "3"));
    await eye.open(`${room.address}/w/1/batch`);
    await eye.fill('input[name="set:goal.overs"]', "2");
    await eye.click("main .change button");
    await soon(async () => assert.equal(await eye.value('input[name="set:goal.overs"]'), "2"));
    await eye.open(`${room.address}/w/1/layout`);
    await eye.click(".by-typing summary");
    await eye.click('.by-typing select option[value="3"]');
    await eye.fill('.by-typing input[name="to"]', "4 3/8");
    await eye.click(".by-typing button");
    await soon(async () => assert.match(await eye.text(".foot"), /A cut was moved from/));
    await eye.open(`${room.address}/w/1/table`);
    await eye.click('button[data-key=" "]');
    await soon(async () => assert.match(await eye.text(".where-it-is"), /Step \d+ of \d+/));
    await eye.open(`${room.address}/w/2/supplies`);
    await eye.click("#swap button");
    await soon(async () => assert.match(await eye.text(".foot"), /8 pieces \(mat\) have another colour/));
    await eye.fill('input[name="set:selling.fees"]', "10");
    await eye.click("#price form button");
    await soon(async () => assert.match(await eye.text(".foot"), /fees from nothing to 10/));
    await eye.fill('#shelf details:not(.item) input[name="name"]', "Milk");
    await eye.fill('#shelf details:not(.item) input[name="amount"]', "120");
    await eye.click('#shelf details:not(.item) select[name="kind"] option[value="cardstock"]');
    await eye.click('#shelf details:not(.item) button');
    await soon(async () => assert.match(await eye.text("#shelf .item summary"), /Milk: 120 sheet \(Laid aside: 96 here\)/));
    await eye.open(`${room.address}/w/2/post`);
    await eye.fill('input[name="set:post.extras"]', "2 g");
    await eye.click("#own button");
    await soon(async () => assert.match(await eye.text(".foot"), /extras from .* to 2 g/));
    await eye.open(`${room.address}/w/2/class`);
    await eye.fill('input[name="set:class.seats"]', "11");
    await eye.click("#own button");
    await soon(async () => assert.match(await eye.text("main"), /13 kits: 11 seats/));
  } finally {
    await eye.close();
  }
});
