// @ts-check
// The scripts of the pages keep their types, which stand in their comments (JSDoc). By hand:
//     npx --package typescript@5.9.3 tsc --project crates/workroom/jsconfig.json
// TSC is the path of tsc (left out: TypeScript is fetched from npm). Where it cannot be fetched this says so and is left
// out, unless OCTAVO_BROWSER is `must`.
// Source: TypeScript 5.9.3, Microsoft (Apache-2.0), `checkJs` and `strict`.
import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { after, test } from "node:test";

const folder = mkdtempSync(join(tmpdir(), "octavo-types-"));
after(() => rmSync(folder, { recursive: true }));

/** The checker's path; nothing if it cannot be had here. */
function fetched() {
  if (process.env.TSC) return process.env.TSC;
  try {
    execFileSync("npm", ["pack", "typescript@5.9.3", "--silent", "--pack-destination", folder], { stdio: "ignore" });
    execFileSync("sh", ["-c", "tar -xzf typescript-*.tgz"], { cwd: folder });
    return join(folder, "package", "bin", "tsc");
  } catch (error) {
    if (process.env.OCTAVO_BROWSER === "must") throw error;
    return null;
  }
}

/** What the checker finds wrong in a project. @param {string} tsc @param {string} project */
const wrong = (tsc, project) => spawnSync(process.execPath, [tsc, "--project", project], { encoding: "utf8" }).stdout;

test("the scripts keep their types", (told) => {
  const tsc = fetched();
  if (tsc === null) {
    console.error("NOT TESTED: the types of the scripts; TypeScript could not be fetched from npm");
    return told.skip();
  }
  assert.equal(wrong(tsc, resolve("crates/workroom/jsconfig.json")), "");
  // A script that does not is found.
  const copy = join(folder, "copy");
  cpSync(resolve("crates/workroom/static"), join(copy, "static"), { recursive: true });
  cpSync(resolve("crates/workroom/jsconfig.json"), join(copy, "jsconfig.json"));
  const script = join(copy, "static", "mend.js");
  writeFileSync(script, `${readFileSync(script, "utf8")}\nenhance("a text");\n`);
  assert.match(wrong(tsc, join(copy, "jsconfig.json")), /mend\.js.*TS2345/);
});
