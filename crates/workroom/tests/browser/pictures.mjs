// @ts-check
// Pictures of every page at the widths of a desk and a phone, for the guide:
//     node crates/workroom/tests/browser/pictures.mjs
// OCTAVO is the program (left out: target/debug/octavo).
import assert from "node:assert/strict";
import { mkdir, writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { browser, soon, workroom } from "./driver.mjs";

/** The whole pack lies on top of the table: project 2. */
const PAGES = ["hand", "paper", "cards", "layout", "batch", "cardstock", "supplies", "background", "table", "post", "class", "share"];
const out = resolve(process.argv[2] ?? "docs/pictures");

await mkdir(out, { recursive: true });
const room = await workroom(process.env.OCTAVO ?? resolve("target/debug/octavo"));
for (const [width, height, most, name] of [[1280, 960, 1500, "desktop"], [360, 780, 1400, "phone"]]) {
  for (const dark of [false, true]) {
    const eye = await browser({ width, height, dark });
    for (const page of PAGES) {
      // In the dark one page of each kind is enough to look at.
      if (dark && page !== "layout") continue;
      await eye.open(room.address + (page === "hand" ? "/" : `/w/2/${page}`));
      await eye.runAsync(`
        const done = arguments[0];
        for (const image of document.images) image.loading = "eager";
        Promise.all([document.fonts.ready, ...[...document.images].map((image) => image.decode().catch(() => {}))]).then(() => done());`);
      const picture = await eye.view(most);
      await writeFile(join(out, `${page}-${name}${dark ? "-dark" : ""}.webp`), Buffer.from(picture, "base64"));
    }
    if (!dark) {
      // The demo stamps no background of its own: the example that does.
      await eye.open(`${room.address}/`);
      await eye.run(`const s = document.querySelector('select[name="example"]'); s.value = "stamped-background"; s.closest("form").requestSubmit()`);
      await soon(async () => assert.match(await eye.url(), /\/cards/));
      await eye.open((await eye.url()).replace(/\/cards.*/, "/background"));
      await eye.runAsync("const done = arguments[0]; document.fonts.ready.then(() => setTimeout(done, 500));");
      await writeFile(join(out, `background-stamped-${name}.webp`), Buffer.from(await eye.view(most), "base64"));
    }
    await eye.close();
  }
}
await room.stop();
