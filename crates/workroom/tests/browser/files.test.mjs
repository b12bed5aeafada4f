// @ts-check
// What leaves the workroom and comes back, in a real browser: the handout and templates saved, a project exported and
// imported, everything backed up and restored, two tabs on one project. OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { broken, soon, story, undo, workroom } from "./driver.mjs";

let room, folder;
before(async () => {
  folder = mkdtempSync(join(tmpdir(), "octavo-saved-"));
  room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
});
after(async () => {
  await room.stop();
  rmSync(folder, { recursive: true });
});

const OVERS = 'input[name="set:goal.overs"]';
const count = (eye, css) => eye.run(`return document.querySelectorAll(arguments[0]).length`, [css]);
const wish = async (eye, overs) => {
  await eye.fill(OVERS, overs);
  await eye.click("main .change button");
};

/** A file that is saved by a click, once it is there whole; its name ends so, and is that afterwards. */
async function saved(eye, css, name) {
  const all = () => readdirSync(folder).filter((file) => file.endsWith(name)).map((file) => join(folder, file));
  for (const file of all()) rmSync(file);
  await eye.click(css);
  await soon(async () => assert.equal(all().length, 1, `${name} was not saved`));
  renameSync(all()[0], join(folder, name));
  return readFileSync(join(folder, name));
}

/** The pages of a PDF: objects that say they are one. Those of packed streams are not seen. */
const pages = (bytes) => [...bytes.toString("latin1").matchAll(/\/Type\s*\/Page\b/g)].length;

test("the handout and the templates are saved, with the pages that were seen", () =>
  story({}, async (eye) => {
    await eye.saving(folder);
    await eye.open(`${room.address}/w/1/share`);
    await soon(async () => assert.ok((await count(eye, 'img[src*="/page-"]')) > 4));
    for (const [kind, name] of [["page", "handout.pdf"], ["template", "templates.pdf"], ["short", "one-page.pdf"]]) {
      const seen = await count(eye, `img[src*="/${kind}-"]`);
      const drawn = await eye.runAsync(`
        const images = [...document.querySelectorAll('img[src*="/${kind}-"]')];
        for (const image of images) image.loading = "eager";
        Promise.all(images.map((image) => image.decode())).then(() => arguments[0](images.every((image) => image.naturalHeight > 100)))`);
      assert.ok(drawn, name);
      const bytes = await saved(eye, `main a[href*="/file/${name}"]`, name);
      assert.equal(bytes.subarray(0, 5).toString(), "%PDF-");
      assert.equal(pages(bytes), seen, name);
    }
    const pieces = await saved(eye, 'main a[href$="/pieces.csv"]', "pieces.csv");
    assert.ok(pieces.toString().split("\r\n").length > 2);
    const sheet = await saved(eye, 'main a[href$="/sheet-1.svg"]', "sheet-1.svg");
    assert.match(sheet.toString(), /^<svg|^<\?xml/);
  }));

test("a project is exported, imported, and is the same", () =>
  story({}, async (eye) => {
    await eye.saving(folder);
    await eye.open(`${room.address}/`);
    const text = (await saved(eye, '#project-1 a[href$="/project.toml"]', "project.toml")).toString();
    await eye.attach('form[action="/new"] input[type="file"]', join(folder, "project.toml"));
    await eye.click('form[action="/new"]:has(input[type="file"]) button');
    await soon(async () => assert.equal(await eye.text("h1"), "Cards"));
    const address = (await eye.url()).replace(/cards$/, "");
    assert.notEqual(address, `${room.address}/w/1/`);
    await eye.open(`${address}share`);
    assert.equal((await eye.value('textarea[name="text"]')).trim(), text.trim());
    await eye.open(`${address}batch`);
    await soon(async () => assert.equal(await count(eye, ".of-sheet li"), 48));
  }));

for (const scripts of [true, false]) {
  test(`a project is copied, put away and taken back, ${scripts ? "with" : "without"} scripts`, () =>
    story({ scripts }, async (eye) => {
      const projects = async (wanted) => soon(async () => assert.equal(await count(eye, "article.project"), wanted));
      await eye.open(`${room.address}/`);
      await soon(async () => assert.equal(await eye.text("h1"), "Work in hand"));
      const before = await count(eye, "article.project");
      await eye.click('#project-1 form[action$="/copy"] button');
      await soon(async () => assert.match(await eye.text(".top .project"), /copy/i));
      const id = (await eye.url()).match(/\/w\/(\d+)\//)?.[1];
      await eye.click(".brand");
      await projects(before + 1);
      // How far each is stands on it.
      assert.equal(await count(eye, "article.project progress"), before + 1);
      await eye.click(`#project-${id} form[action$="/away"] button`);
      await projects(before);
      await soon(async () => assert.match(await eye.text(".away"), /copy/i));
      assert.match(await eye.text(".notice"), /copy” was put away/);
      await eye.click(`.notice form[action="/w/${id}/back"] button`);
      await projects(before + 1);
      await eye.click(`#project-${id} form[action$="/away"] button`);
      await projects(before);
    }));
}

test("a project is begun from an example, and from a pack whose size is no size at first", () =>
  story({}, async (eye) => {
    await eye.open(`${room.address}/`);
    await eye.click('select[name="example"] option[value="a6-from-a4"]');
    await eye.click('form:has(select[name="example"]) button');
    await soon(async () => assert.equal(await eye.text(".top .project"), "Rain on Slate"));
    await eye.open(`${room.address}/`);
    const form = 'form:has(input[name="pack"])';
    await eye.fill(`${form} input[name="pack"]`, "Meadow");
    await eye.fill(`${form} input[name="format"]`, "large");
    await eye.click(`${form} button`);
    await soon(async () => assert.match(await eye.text("[role=alert]"), /Finished size of a card: `large` is no size/));
    assert.equal(await eye.value(`${form} input[name="pack"]`), "Meadow", "what was typed is still there");
    // A size can be chosen by its name.
    const offered = await eye.run(`return [...document.querySelectorAll("#sizes-of-format option")].map((one) => one.textContent + ": " + one.value)`);
    const a6 = offered.find((/** @type {string} */ one) => one.startsWith("A6"));
    assert.ok(a6?.endsWith(": 105 mm x 148 mm"), offered.join());
    await eye.fill(`${form} input[name="format"]`, "105 mm x 148 mm");
    await eye.click(`${form} button`);
    await soon(async () => assert.equal(await eye.text(".top .project"), "Meadow"));
  }, (message) => message.includes("status of 422")));

test("a project file with mistakes is shown back, mended at its place, and opened", () =>
  story({}, async (eye) => {
    const form = 'form[action="/new"]:has(input[type="file"])';
    await eye.open(`${room.address}/`);
    const good = await eye.runAsync(`fetch("/w/1/file/project.toml").then((answer) => answer.text()).then(arguments[0])`);
    writeFileSync(join(folder, "mistaken.toml"), good.replace('prefer = "3 x 4 1/2"', 'prefer = "3 x wide"'));
    await eye.attach(`${form} input[type="file"]`, join(folder, "mistaken.toml"));
    await eye.click(`${form} button`);
    await soon(async () => assert.match(await eye.text("[role=alert]"), /Line \d+: .*wide/));
    assert.deepEqual(await broken(eye), []);
    const text = await eye.value("#text");
    assert.equal(text.trim(), good.replace('prefer = "3 x 4 1/2"', 'prefer = "3 x wide"').trim());
    // Touching the line comes to its place.
    await eye.click("[role=alert] a.quoted");
    await soon(async () => assert.equal(
      await eye.run(`const text = document.querySelector("#text"); return text.value.slice(text.selectionStart, text.selectionEnd)`),
      'prefer = "3 x wide"'));
    await eye.keys(...'prefer = "3 x 4 1/2"');
    await eye.click(`${form} button`);
    await soon(async () => assert.equal(await eye.text("h1"), "Cards"));
    await eye.open((await eye.url()).replace(/cards$/, "share"));
    assert.equal((await eye.value('textarea[name="text"]')).trim(), good.trim());
  }, (message) => message.includes("status of 422")));

test("a face gets a picture, the picture is turned, and it is on the cards and taken back", () =>
  story({}, async (eye) => {
    const [width, height] = [120, 80];
    // Red with a blue top left corner, so that a quarter turn can be told.
    const drawn = await (async () => {
      await eye.open(`${room.address}/w/1/paper`);
      return eye.run(`
        const canvas = document.createElement("canvas");
        [canvas.width, canvas.height] = [${width}, ${height}];
        const pen = canvas.getContext("2d");
        pen.fillStyle = "#d02020"; pen.fillRect(0, 0, ${width}, ${height});
        pen.fillStyle = "#2020d0"; pen.fillRect(0, 0, 40, 30);
        return canvas.toDataURL("image/png").split(",")[1]`);
    })();
    writeFileSync(join(folder, "face.png"), Buffer.from(drawn, "base64"));
    const face = "#design-0-0 .face.up";
    await eye.run(`for (const details of document.querySelectorAll("${face} details")) details.open = true`);
    await eye.attach(`${face} input[type="file"]`, join(folder, "face.png"));
    await eye.run(`document.querySelector('${face} input[type="file"]').closest("form").requestSubmit()`);
    await soon(async () => assert.match(await eye.text(".foot"), /picture/i));
    /** The colour at a place of the face, in parts of its width and height. */
    const at = async (x, y) => eye.runAsync(`
      const image = document.querySelector("${face} img");
      image.loading = "eager";
      image.decode().then(async () => {
        const text = await (await fetch(image.src)).text();
        const inside = new DOMParser().parseFromString(text, "image/svg+xml").querySelector("image");
        const picture = new Image();
        picture.src = inside.getAttribute("href") ?? inside.getAttributeNS("http://www.w3.org/1999/xlink", "href");
        await picture.decode();
        const canvas = document.createElement("canvas");
        [canvas.width, canvas.height] = [picture.naturalWidth, picture.naturalHeight];
        const pen = canvas.getContext("2d");
        pen.drawImage(picture, 0, 0);
        const [red, , blue] = pen.getImageData(Math.floor(canvas.width * ${x}), Math.floor(canvas.height * ${y}), 1, 1).data;
        arguments[0](red > blue ? "red" : "blue");
      }).catch((error) => arguments[0](String(error)))`);
    assert.deepEqual([await at(0.1, 0.1), await at(0.9, 0.1)], ["blue", "red"]);
    await eye.run(`document.querySelector('${face} input[value="turn"]').closest("form").requestSubmit()`);
    await soon(async () => assert.match(await eye.text(".foot"), /turned/i));
    await soon(async () => assert.deepEqual([await at(0.1, 0.1), await at(0.9, 0.1)], ["red", "blue"]));
    // The first card of that design shows it, on Cards and on Batch.
    for (const page of ["cards", "batch"]) {
      await eye.open(`${room.address}/w/1/${page}`);
      await soon(async () => assert.ok((await count(eye, 'main img[src*="/card-1.svg"]')) > 0));
      const text = await eye.runAsync(`fetch(document.querySelector('main img[src*="/card-1.svg"]').src).then((a) => a.text()).then(arguments[0])`);
      assert.match(text, /<image/, page);
    }
    await undo(eye);
    await undo(eye);
    await soon(async () => assert.match(await eye.text(".foot"), /The demo was laid out/));
  }));

test("everything is backed up, changed, and brought back", () =>
  story({}, async (eye) => {
    await eye.saving(folder);
    await eye.open(`${room.address}/`);
    await soon(async () => assert.equal(await eye.text("h1"), "Work in hand"));
    await saved(eye, 'a[href="/backup"]', ".db");
    await eye.open(`${room.address}/w/1/batch`);
    await wish(eye, "2");
    await soon(async () => assert.match(await eye.text(".foot"), /overs from nothing to 2/));
    await eye.open(`${room.address}/`);
    await eye.attach('form[action="/restore"] input', join(folder, ".db"));
    await eye.run(`window.before = true`);
    await eye.click('form[action="/restore"] button');
    await soon(async () => assert.match(await eye.text("main"), /projects that lie here would go/));
    await eye.click('form[action="/restore"]:has([name="offered"]) button');
    await soon(async () => assert.match(await eye.text(".notice"), /Brought back/));
    await soon(async () => assert.equal(await eye.run(`return [window.before ?? false, document.querySelector("h1")?.textContent].join()`), "false,Work in hand"));
    await eye.open(`${room.address}/w/1/batch`);
    await soon(async () => assert.equal(await eye.value(OVERS), ""));
  }));

test("of two tabs on one project the later is told what changed, and both can be kept", () =>
  story({}, async (eye) => {
    const first = await eye.inFront();
    await eye.open(`${room.address}/w/1/batch`);
    await soon(async () => assert.equal(await count(eye, ".of-sheet li"), 48));
    await eye.bring(await eye.tab());
    await eye.open(`${room.address}/w/1/batch`);
    await wish(eye, "2");
    await soon(async () => assert.match(await eye.text(".foot"), /overs from nothing to 2/));
    await eye.bring(first);
    await wish(eye, "3");
    await soon(async () => assert.match(await eye.text("main ul"), /overs from nothing to 2/));
    assert.match(await eye.text("main"), /overs from nothing to 3/);
    assert.deepEqual(await broken(eye), []);
    await eye.click('form[action="/w/1/copy"] button');
    // The copy opens on the page where the change was made.
    await soon(async () => assert.match(await eye.url(), /\/w\/(?!1\/)\d+\/batch/));
    await soon(async () => assert.equal(await eye.value(OVERS), "3"));
    await eye.open(`${room.address}/w/1/batch`);
    assert.equal(await eye.value(OVERS), "2");
    await undo(eye);
    assert.equal(await eye.value(OVERS), "");
  }, (message) => message.includes("status of 409")));
