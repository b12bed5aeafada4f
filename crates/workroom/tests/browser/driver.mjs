// @ts-check
// A small WebDriver client (W3C WebDriver, https://www.w3.org/TR/webdriver2/) over chromedriver, and a workroom of
// its own to look at. No package is needed; Debian's `chromium` and `chromium-driver` are.
//
// AXE is the path of axe.min.js (left out: it is fetched from npm).
// Source: axe-core 4, Deque Systems (MPL-2.0), for what a page owes to people who do not see it well: WCAG 2.2 A and AA.
import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";

const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

/** Starts a program and waits for a line that says what is looked for. */
async function started(command, args, wanted) {
  const child = spawn(command, args, { stdio: ["ignore", "pipe", "inherit"] });
  const found = new Promise((resolve, reject) => {
    createInterface({ input: child.stdout }).on("line", (line) => {
      const match = wanted.exec(line);
      if (match) resolve(match[1]);
    });
    child.on("error", reject);
    child.on("exit", (code) => reject(new Error(`${command} ended with ${code}`)));
  });
  return { child, found: await found };
}

/** Asks once more where the page changed under the asking: what is answered is of the page that came. */
async function steady(asking) {
  for (let left = 5; ; left -= 1) {
    try {
      return await asking();
    } catch (error) {
      if (left === 0 || !/stale element|does not belong to the document/.test(error.message)) throw error;
    }
  }
}

/** Asserts of the page that comes: looks again for a while before it gives up. */
export async function soon(look, patience = 10000) {
  const until = Date.now() + patience;
  for (;;) {
    try {
      return await look();
    } catch (error) {
      // What is not there yet may come: the page may still be the one that says its plan is being made.
      const mayCome = error.code === "ERR_ASSERTION" || /no such element/.test(error.message);
      if (!mayCome || Date.now() > until) throw error;
      await new Promise((resolve) => setTimeout(resolve, 25));
    }
  }
}

/** Takes the last change back and waits until the page says so: a form on its way is dropped by whoever goes elsewhere. */
export async function undo(eye) {
  const seen = () => eye.run(`return document.querySelector('input[name="seen"]')?.value`);
  const before = await seen();
  await eye.click('button[data-key="undo"]');
  await soon(async () => {
    const now = await seen();
    assert.ok(now !== null && now !== before, `still revision ${before}`);
  });
}

/** A workroom with a store of its own. */
export async function workroom(binary) {
  const folder = await mkdtemp(join(tmpdir(), "octavo-browser-"));
  const data = join(folder, "octavo.db");
  const { child, found } = await started(binary, ["--no-open", "--port", "0", "--data", data], /(http:\S+)/);
  const stop = async () => {
    const gone = new Promise((resolve) => child.on("exit", resolve));
    child.kill("SIGINT");
    await gone;
    await rm(folder, { recursive: true });
  };
  return { address: found.replace(/\/$/, ""), stop };
}

/** A browser of a certain width, light or dark, with scripts or without. */
export async function browser({ width = 1280, height = 900, dark = false, scripts = true } = {}) {
  const driver = await started("chromedriver", ["--port=0"], /started successfully on port (\d+)/);
  const base = `http://127.0.0.1:${driver.found}`;
  const ask = async (method, path, body) => {
    const response = await fetch(`${base}${path}`, { method, body: body && JSON.stringify(body) });
    const { value } = await response.json();
    if (value && value.error) throw new Error(`${path}: ${value.error}: ${value.message.split("\n")[0]}`);
    return value;
  };
  const args = ["--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
    `--window-size=${width},${height}`];
  const prefs = scripts ? {} : { "profile.managed_default_content_settings.javascript": 2 };
  const made = await ask("POST", "/session", {
    capabilities: { alwaysMatch: { "goog:chromeOptions": { args, prefs }, "goog:loggingPrefs": { browser: "ALL" } } },
  });
  const path = `/session/${made.sessionId}`;
  // A plan may still be in the making when a page comes: look again for a while before giving up.
  await ask("POST", `${path}/timeouts`, { implicit: 15000 });
  const command = (cmd, params) => ask("POST", `${path}/goog/cdp/execute`, { cmd, params });
  await command("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: width < 500 });
  await command("Emulation.setEmulatedMedia", {
    features: [
      { name: "prefers-color-scheme", value: dark ? "dark" : "light" },
      { name: "prefers-reduced-motion", value: "reduce" },
    ],
  });
  const find = (css) =>
    soon(async () => (await ask("POST", `${path}/element`, { using: "css selector", value: css }))[ELEMENT]);
  /** One thing that a pointer does. chromedriver forgets fingers from one command to the next: they are told to Chromium itself. */
  const pointed = (pointer, what, [x, y] = [0, 0]) => {
    const at = { x: Math.round(x), y: Math.round(y) };
    if (pointer === "touch") {
      const type = { Down: "touchStart", Move: "touchMove", Up: "touchEnd" }[what];
      return command("Input.dispatchTouchEvent", { type, touchPoints: what === "Up" ? [] : [at] });
    }
    const go = { type: "pointerMove", duration: 40, ...at };
    const actions = what === "Move" ? [go] : what === "Down" ? [{ ...go, duration: 0 }, { type: "pointerDown", button: 0 }] : [{ type: "pointerUp", button: 0 }];
    return ask("POST", `${path}/actions`, { actions: [{ type: "pointer", id: "by-mouse", parameters: { pointerType: "mouse" }, actions }] });
  };
  return {
    open: (url) => ask("POST", `${path}/url`, { url }),
    url: () => ask("GET", `${path}/url`),
    text: (css) => steady(async () => ask("GET", `${path}/element/${await find(css)}/text`)),
    count: async (css) => (await ask("POST", `${path}/elements`, { using: "css selector", value: css })).length,
    click: (css) => steady(async () => ask("POST", `${path}/element/${await find(css)}/click`, {})),
    value: (css) => steady(async () => ask("GET", `${path}/element/${await find(css)}/property/value`)),
    fill: (css, text) =>
      steady(async () => {
        const id = await find(css);
        await ask("POST", `${path}/element/${id}/clear`, {});
        await ask("POST", `${path}/element/${id}/value`, { text });
      }),
    /** Chooses a file for an upload. */
    attach: async (css, file) => ask("POST", `${path}/element/${await find(css)}/value`, { text: file }),
    /** What is saved goes into this folder. */
    saving: (downloadPath) => command("Browser.setDownloadBehavior", { behavior: "allow", downloadPath }),
    /** Another tab, and the one that is in front. */
    tab: async () => (await ask("POST", `${path}/window/new`, { type: "tab" })).handle,
    inFront: () => ask("GET", `${path}/window`),
    bring: (handle) => ask("POST", `${path}/window`, { handle }),
    /** A key held down while another is struck. */
    chord: (held, key) =>
      ask("POST", `${path}/actions`, {
        actions: [{
          type: "key", id: "keys",
          actions: [{ type: "keyDown", value: held }, { type: "keyDown", value: key }, { type: "keyUp", value: key }, { type: "keyUp", value: held }],
        }],
      }),
    keys: (...keys) =>
      ask("POST", `${path}/actions`, {
        actions: [{
          type: "key", id: "keys",
          actions: keys.flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]),
        }],
      }),
    /** Takes hold at one place of the window, goes to another in so many moves, and lets go; by mouse or by finger. */
    drag: ([x, y], [toX, toY], moves = 5, pointer = "mouse") => {
      const at = (part) => ({ x: Math.round(x + (toX - x) * part), y: Math.round(y + (toY - y) * part) });
      const path_ = Array.from({ length: moves }, (_, i) => ({ type: "pointerMove", duration: 60, ...at((i + 1) / moves) }));
      return ask("POST", `${path}/actions`, {
        actions: [{
          type: "pointer", id: `by-${pointer}`, parameters: { pointerType: pointer },
          actions: [{ type: "pointerMove", duration: 0, ...at(0) }, { type: "pointerDown", button: 0 }, ...path_, { type: "pause", duration: 300 }, { type: "pointerUp", button: 0 }],
        }],
      });
    },
    /** Takes hold at one place of the window, and stays there for a while; by mouse or by finger. */
    hold: async (at, pointer = "mouse") => {
      await pointed(pointer, "Down", at);
      if (pointer === "touch") await new Promise((done) => setTimeout(done, 600));
    },
    /** A short touch by a finger. */
    tap: async (at) => {
      await pointed("touch", "Down", at);
      await pointed("touch", "Up");
    },
    /** Goes on to another place, in two moves. */
    move: async ([x, y], pointer = "mouse") => {
      for (const short of [24, 0]) await pointed(pointer, "Move", [x - short, y]);
    },
    release: (pointer = "mouse") => pointed(pointer, "Up"),
    run: (script, args = []) => ask("POST", `${path}/execute/sync`, { script, args }),
    runAsync: (script, args = []) => ask("POST", `${path}/execute/async`, { script, args }),
    complaints: async () => (await ask("POST", `${path}/se/log`, { type: "browser" })).filter((e) => e.level === "SEVERE"),
    /** The page from its top, at most so many pixels high, small enough for a guide. */
    view: async (most) => {
      const { cssContentSize } = await command("Page.getLayoutMetrics", {});
      const [wide, high] = [cssContentSize.width, cssContentSize.height];
      const clip = { x: 0, y: 0, width: wide, height: Math.min(high, most), scale: 1 };
      return (await command("Page.captureScreenshot", { format: "webp", quality: 78, captureBeyondViewport: true, clip })).data;
    },
    /** Runs this before the scripts of every page that is opened from now on. */
    beforehand: (source) => command("Page.addScriptToEvaluateOnNewDocument", { source }),
    /** Lays pages out as for paper of this width in pixels (96 to the inch), or for the screen again. */
    onPaper: (width) => Promise.all([
      command("Emulation.setEmulatedMedia", { media: "print", features: [{ name: "prefers-color-scheme", value: dark ? "dark" : "light" }] }),
      command("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: false }),
    ]),
    /** The page as it goes onto paper (Letter, backgrounds left out, as browsers do unless told otherwise): PDF, base64. */
    printed: async () => {
      const margin = { marginTop: .4, marginBottom: .4, marginLeft: .4, marginRight: .4 };
      return (await command("Page.printToPDF", { paperWidth: 8.5, paperHeight: 11, ...margin })).data;
    },
    /** What is seen in the window as PNG, base64. */
    shot: async () => (await command("Page.captureScreenshot", { format: "png" })).data,
    /** The whole page as PNG, base64. */
    picture: async () => (await command("Page.captureScreenshot", { format: "png", captureBeyondViewport: true })).data,
    close: async () => {
      await ask("DELETE", path);
      driver.child.kill();
    },
  };
}

/** A browser for one story; no story may leave an error behind. `asked` says which of the browser's complaints the story
 *  itself asked for, such as a refusal (left out: none). */
export async function story(options, tell, asked = (/** @type {string} */ _message) => false) {
  const eye = await browser(options);
  try {
    await tell(eye);
    assert.deepEqual((await eye.complaints()).filter(({ message }) => !asked(message)), []);
  } finally {
    await eye.close();
  }
}

const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
let axe = "";

function fetched() {
  const folder = mkdtempSync(join(tmpdir(), "octavo-axe-"));
  execFileSync("npm", ["pack", "axe-core@4", "--silent", "--pack-destination", folder]);
  execFileSync("sh", ["-c", "tar -xzf *.tgz"], { cwd: folder });
  return join(folder, "package", "axe.min.js");
}

/** What axe-core finds broken on the page that is open: nothing, or rules with the first places. */
export async function broken(eye) {
  axe ||= readFileSync(process.env.AXE || fetched(), "utf8");
  await eye.run(axe);
  return eye.runAsync(
    `axe.run({ runOnly: arguments[0] })
       .then((r) => arguments[1](r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target.join(" ")).slice(0, 3).join(" | "))))`, [RULES],
  );
}
