// @ts-check
// The job as a person does it, in a real browser: `node --test crates/workroom/tests/browser/`.
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { resolve } from "node:path";
import { after, before, test } from "node:test";
import { broken, browser, soon, undo, workroom } from "./driver.mjs";

const PAGES = [
  ["/", "Work in hand", "article.project .cards img", 9],
  ["/w/1/paper", "Paper", "article.design", 6],
  ["/w/1/cards", "Cards", ".apart li", 6],
  ["/w/1/layout", "Layout", "a.piece", 16],
  ["/w/1/batch", "Batch", ".of-sheet img", 48],
  ["/w/1/batch?card=1", "Batch", ".piece-of", 2],
  ["/w/1/batch?card=1&swap=band", "Batch", "button.pick", 39],
  ["/w/1/batch?side=both", "Batch", ".of-sheet img", 48],
  ["/w/1/batch?side=line-up", "Batch", ".line-up li", 48],
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
  ["/w/1/share", "Share", '.pages img[src*="/page-"]', null],
];

let room;

before(async () => {
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(() => room.stop());

/** Pages as they are in the middle of the work: how one comes there, its heading, something on it and how many. */
const STATES = [
  ["a piece that is spoiled, with its steps", async (eye, at) => {
    await eye.open(`${at}/w/1/table`);
    await eye.fill('input[name="mark"]', "A7");
    await eye.click(".which button");
  }, "Table", ".again .recut li", 2],
  ["a piece that is swapped and one turned over, with the card open", async (eye, at) => {
    await eye.open(`${at}/w/1/batch?card=1&swap=band`);
    await eye.click('button.pick[value="9"]');
    await soon(async () => assert.equal(await eye.run('return document.querySelectorAll(".chosen li").length'), 1));
    await eye.click('.piece-of:nth-of-type(2) button[name="turn"]');
  }, "Batch", ".chosen li", 2],
  ["a form that is refused", async (eye, at) => {
    await eye.open(`${at}/w/1/batch`);
    await eye.fill('input[name="set:goal.overs"]', "a few");
    await eye.click("main .change button");
  }, "Batch", "[role=alert] li", 1],
  ["the lines of a collage", async (eye, at) => {
    await eye.open(`${at}/w/1/paper`);
    const name = await eye.run('return document.querySelector(".panels-edit").closest("details").id');
    await eye.open(`${at}/w/1/paper?panels=${name}#${name}`);
  }, "Paper", ".panels[open] .grip", 7],
  ["a layer in hand", async (eye, at) => {
    await eye.open(`${at}/w/1/cards?hold=0-2#hands-0`);
    await eye.run(`document.querySelector('.hands .grip[data-line="4"]').focus()`);
    await eye.keys("\uE013");
    await soon(async () => assert.match(await eye.text(".hands .moved"), /./));
  }, "Cards", ".hands .grip.held", 1],
  ["a cut that cannot go there", async (eye, at) => {
    await eye.open(`${at}/w/1/layout`);
    await eye.click(".by-typing summary");
    await eye.fill('.by-typing input[name="to"]', "99");
    await eye.click(".by-typing button");
  }, "Layout", "[role=alert] p", 1],
  ["steps that are done", async (eye, at) => {
    await eye.open(`${at}/w/1/table`);
    await eye.click('button[data-key=" "]');
  }, "Table", ".all-steps li.done", 1],
  ["a background that is stamped, with one impression locked", async (eye, at) => {
    await eye.open(`${at}/`);
    await eye.run(`const s = document.querySelector('select[name="example"]'); s.value = "stamped-background"; s.closest("form").requestSubmit()`);
    await soon(async () => assert.match(await eye.url(), /cards/));
    await eye.open((await eye.url()).replace(/\/cards.*/, "/background"));
    await eye.fill('.act-lock input[name="numbers"]', "3");
    await eye.click('.act-lock button[value="lock"]');
  }, "Stamped by hand", ".impression.locked", 1],
  ["a project that is put away", async (eye, at) => {
    await eye.open(`${at}/`);
    await eye.click('form[action="/w/1/away"] button');
  }, "Work in hand", ".away li", 1],
];

for (const [dark, width] of [[false, 1280], [true, 1280], [false, 360]]) {
  test(`no page in the middle of the work keeps anybody out, ${dark ? "dark" : "light"}, ${width} px`, async () => {
    // In a room of its own: what is done here is not taken back.
    const own = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
    const eye = await browser({ dark, width });
    try {
      for (const [what, come, heading, items, count] of STATES) {
        await come(eye, own.address);
        await soon(async () => assert.equal(await eye.run("return document.querySelectorAll(arguments[0]).length", [items]), count, what));
        assert.equal(await eye.text("h1"), heading, what);
        assert.deepEqual(await broken(eye), [], what);
      }
      const asked = (/** @type {{ message: string }} */ { message }) => message.includes("status of 422");
      assert.deepEqual((await eye.complaints()).filter((complaint) => !asked(complaint)), []);
    } finally {
      await eye.close();
      await own.stop();
    }
  });
}

for (const [dark, width] of [[false, 1280], [true, 1280], [false, 360], [true, 360]]) {
  test(`no page keeps anybody out, ${dark ? "dark" : "light"}, ${width} px`, async () => {
    const eye = await browser({ dark, width });
    try {
      for (const [path, heading, items, count] of PAGES) {
        await eye.open(room.address + path);
        await soon(async () => assert.equal(await eye.text("h1"), heading));
        const found = await eye.count(items);
        assert.ok(count === null ? found > 4 : found === count, `${path}: ${found} × ${items}`);
        assert.deepEqual(await broken(eye), [], path);
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
      await soon(async () => assert.match(await eye.text(".foot"), /A cut was moved from 4½ in to 4¼ in from the top/));
      await soon(async () => assert.equal(await eye.count("a.piece"), 16));
      // Far out of range: the reason is told, and nothing is kept.
      const [left, top] = await knob(eye, "x");
      await eye.drag([left, top], [left + 90, top], 3, pointer);
      await settled();
      await soon(async () => assert.match(await eye.text(".moved.stays"), /it may be 2¾ in to 3¼ in/));
      await soon(async () => assert.match(await eye.text(".foot"), /from 4½ in to 4¼ in/));
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
    await soon(async () => assert.match(await eye.text(".moved"), /4⅜ in.*Nothing left over/));
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
    // The page listens once it offers what only scripts can do.
    await soon(async () => assert.equal(await eye.count("[data-full]:not([hidden])"), 1));
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
    await soon(async () => assert.match(await eye.text(".foot"), /foam squares from 2 to 3/));
    assert.equal(await eye.value('input[name="set:recipe.0.layer.4.foam_squares"]'), "3");
    await eye.open(`${room.address}/w/1/batch`);
    await eye.fill('input[name="set:goal.overs"]', "2");
    await eye.click("main .change button");
    await soon(async () => assert.match(await eye.text(".foot"), /overs from nothing to 2/));
    assert.equal(await eye.value('input[name="set:goal.overs"]'), "2");
    await eye.open(`${room.address}/w/1/layout`);
    await eye.click(".by-typing summary");
    await eye.click('.by-typing select option[value="3"]');
    await eye.fill('.by-typing input[name="to"]', "4 3/8");
    await eye.click(".by-typing button");
    await soon(async () => assert.match(await eye.text(".foot"), /A cut was moved from/));
    await eye.open(`${room.address}/w/1/table`);
    const done = async () => (await eye.text("main .facts")).match(/^(\d+) of (\d+)/)?.slice(1).map(Number) ?? [];
    const step = async () => Number((await eye.text(".where-it-is")).match(/Step (\d+) of/)?.[1]);
    const [[ticked, all], at] = [await done(), await step()];
    assert.ok(all >= 22 && at >= 1 && ticked < all, `${ticked} of ${all}, step ${at}`);
    await eye.click('button[data-key=" "]');
    await soon(async () => assert.deepEqual([await done(), await step()], [[ticked + 1, all], at + 1]));
    await eye.open(`${room.address}/w/1/table?step=${at}`);
    await soon(async () => assert.equal(await step(), at));
    assert.equal(await eye.run('return document.querySelectorAll(".all-steps li.done").length'), ticked + 1);
    await eye.click('#step .tick button[type="submit"]');
    await soon(async () => assert.deepEqual(await done(), [ticked, all]));
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
    await soon(async () => assert.match(await eye.text("#shelf .item summary"), /Milk: 120 sheets \(Laid aside: 96 here\)/));
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
