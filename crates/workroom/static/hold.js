// @ts-check
import { send } from "./swap.js";

/** How far a mouse moves, in pixels, before a piece is taken up. Chosen: a click never shakes so much. */
const SHAKE = 6;
/** How long a finger rests before a piece is taken up, in milliseconds. Chosen: longer than a touch that begins to scroll. */
const REST = 350;
/** How near the edge of the window the page begins to move along, in pixels. */
const EDGE = 72;

/** A piece in hand: of which card, what would come of each other card, and the one it lies over.
 *  @typedef {{ card: Element, number: string, part: string, piece: HTMLElement, told: HTMLElement, x: number, y: number, taken: string,
 *    may: Map<string, { may: boolean, said: string }>, asked: Promise<void>, over: Element | null, keys: boolean, at?: Element }} Held */

/** Pieces that can be dragged from card to card, by mouse or by a finger that rests on one first. Over a card that may have
 *  the piece both cards are seen as they would be; over one that may not, the reason is told. By keyboard the space bar takes a
 *  piece of the card that has the focus, arrows carry it, Enter lets it go.
 *  @param {HTMLElement} element  holds the cards */
export function enhance(element) {
  const form = document.querySelector("form#by-hand");
  if (!(form instanceof HTMLFormElement)) return;
  document.querySelector("main")?.classList.add("by-hand");
  const { ask = "", pictures = "" } = element.dataset;

  /** @type {{ card: Element, part: string, x: number, y: number, box: DOMRect, place: number[], pointer: number, timer: number, keys?: boolean } | null} */
  let pressed = null;
  /** @type {Held | null} */
  let held = null;
  let dropped = false;

  /** A card's picture. @param {Element} card */
  const picture = (card) => /** @type {HTMLImageElement | null} */ (card.querySelector("img.card"));

  /** What may be taken hold of at a place: the piece that lies on top. @param {Element} card @param {number} x @param {number} y */
  const under = (card, x, y) => {
    const box = picture(card)?.getBoundingClientRect();
    if (!box || !box.width || !box.height) return null;
    const [across, down] = [((x - box.left) / box.width) * 1000, ((y - box.top) / box.height) * 1000];
    const holds = (card.getAttribute("data-holds") ?? "").split(";").filter(Boolean).map((hold) => hold.split(" ").map(Number));
    const on = holds.reverse().find(([, left, top, right, bottom]) => across >= left && across <= right && down >= top && down <= bottom);
    return on ? { part: String(on[0]), place: on.slice(1), box } : null;
  };

  /** Shows a card as it is. @param {Element | null} card */
  const asItIs = (card) => {
    const image = card && picture(card);
    if (image?.dataset.was) {
      image.src = image.dataset.was;
      delete image.dataset.was;
    }
  };

  /** Shows a card as it would be. @param {Element} card @param {string} query */
  const asItWouldBe = (card, query) => {
    const image = picture(card);
    if (!image) return;
    image.dataset.was ??= image.getAttribute("src") ?? "";
    image.src = `${pictures}/card-${card.getAttribute("data-card")}.svg?${query}`;
  };

  /** The card under the piece, and what would come of it. */
  const look = () => {
    if (!held) return;
    const there = held.keys ? held.at ?? null : document.elementFromPoint(held.x, held.y)?.closest("[data-card]") ?? null;
    const over = there && element.contains(there) && there !== held.card ? there : null;
    held.piece.style.transform = `translate(${held.x}px, ${held.y}px) translate(-50%, -50%)`;
    if (over === held.over) return;
    held.over?.classList.remove("over");
    asItIs(held.over);
    held.over = over;
    over?.classList.add("over");
    const found = over && held.may.get(over.getAttribute("data-card") ?? "");
    held.piece.classList.toggle("lies", found?.may === true);
    held.told.classList.toggle("stays", found?.may === false);
    held.told.textContent = found?.said ?? held.taken;
    if (over && found?.may) {
      const query = `card=${held.number}&part=${held.part}&with=${over.getAttribute("data-card")}`;
      asItWouldBe(over, query);
      asItWouldBe(held.card, query);
    } else {
      asItIs(held.card);
    }
  };

  /** Near the edge of the window the page moves along. */
  const along = () => {
    if (!held || held.keys) return;
    const by = held.y < EDGE ? held.y - EDGE : held.y > innerHeight - EDGE ? held.y - innerHeight + EDGE : 0;
    if (by !== 0) {
      scrollBy(0, by / 5);
      look();
    }
    requestAnimationFrame(along);
  };

  /** A line of words that stays in sight. */
  const line = () => {
    const told = document.createElement("p");
    told.className = "hold-told";
    told.setAttribute("role", "status");
    document.querySelector("main")?.append(told);
    return told;
  };
  const forget = () => document.querySelectorAll(".hold-told").forEach((told) => told.remove());

  const take = () => {
    if (!pressed || held) return;
    const { card, part, place, box, x, y, keys = false } = pressed;
    const number = card.getAttribute("data-card") ?? "";
    const piece = document.createElement("div");
    piece.className = "in-hand";
    piece.style.width = `${(box.width * (place[2] - place[0])) / 1000}px`;
    piece.style.height = `${(box.height * (place[3] - place[1])) / 1000}px`;
    forget();
    held = { card, number, part, piece, told: line(), x, y, taken: "", may: new Map(), asked: Promise.resolve(), over: null, keys };
    document.body.append(piece);
    element.classList.add("holding");
    card.classList.add("from");
    look();
    requestAnimationFrame(along);
    held.asked = whatComes(held);
  };

  /** Asks what would come of each card. @param {Held} mine */
  const whatComes = async (mine) => {
    try {
      const answer = await fetch(`${ask}?card=${mine.number}&part=${mine.part}`);
      if (!answer.ok) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      const taken = page.querySelector(".taken");
      const image = document.createElement("img");
      image.alt = "";
      image.src = taken?.getAttribute("data-picture") ?? "";
      mine.piece.append(image);
      mine.taken = mine.told.textContent = taken?.textContent ?? "";
      for (const told of page.querySelectorAll("[data-with]")) {
        mine.may.set(told.getAttribute("data-with") ?? "", { may: told.className === "may", said: told.textContent ?? "" });
      }
      if (held !== mine) return;
      for (const other of element.querySelectorAll("[data-card]")) {
        other.classList.toggle("not", mine.may.get(other.getAttribute("data-card") ?? "")?.may === false);
      }
      // What it lies over by now is looked at again.
      mine.over?.classList.remove("over");
      mine.over = null;
      look();
    } catch {
      // Without an answer nothing may have it, and nothing is changed.
      if (held === mine) putBack();
    }
  };

  const letGo = () => {
    clearTimeout(pressed?.timer);
    pressed = null;
    const mine = held;
    held = null;
    if (!mine) return null;
    mine.piece.remove();
    element.classList.remove("holding");
    for (const card of element.querySelectorAll(".not, .over, .from")) card.classList.remove("not", "over", "from");
    return mine;
  };

  const putBack = () => {
    const mine = letGo();
    asItIs(mine?.over ?? null);
    asItIs(mine?.card ?? null);
    mine?.told.remove();
  };

  const drop = async () => {
    const mine = letGo();
    if (!mine) return;
    // It may have been let go before the answer was there.
    await mine.asked;
    const other = mine.over?.getAttribute("data-card") ?? "";
    const found = mine.may.get(other);
    // A refusal stays in sight until something else is touched.
    if (found && !found.may) {
      mine.told.classList.add("stays");
      mine.told.textContent = found.said;
      return;
    }
    mine.told.remove();
    if (!found) return;
    for (const [name, value] of [["card", mine.number], ["part", mine.part], ["with", other]]) {
      const field = form.elements.namedItem(name);
      if (field instanceof HTMLInputElement) field.value = value;
    }
    send(form, `[data-card="${other}"] a`);
  };

  /** What can be taken of a card, the uppermost first. @param {Element} card */
  const pieces = (card) => {
    const holds = (card.getAttribute("data-holds") ?? "").split(";").filter(Boolean).map((hold) => hold.split(" ").map(Number));
    return holds.reverse();
  };

  /** Takes a card's piece by keyboard: its `which`-th from the top. @param {Element} card @param {number} which */
  const takeByKey = (card, which) => {
    const box = picture(card)?.getBoundingClientRect();
    const all = pieces(card);
    if (!box || all.length === 0) return;
    const [part, ...place] = all[which % all.length];
    const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
    pressed = { card, part: String(part), place, box, x, y, pointer: -1, timer: 0, keys: true };
    take();
    pressed = null;
    if (held) held.at = card;
  };

  /** The card to go to from another by an arrow key: the next in the row, or the nearest in the row above or below.
   *  @param {Element} from @param {string} key */
  const neighbour = (from, key) => {
    const all = [...element.querySelectorAll("[data-card]")];
    const at = all.indexOf(from);
    if (key === "ArrowLeft") return all[at - 1];
    if (key === "ArrowRight") return all[at + 1];
    const here = from.getBoundingClientRect();
    const down = key === "ArrowDown";
    const rows = all.filter((card) => {
      const { top } = card.getBoundingClientRect();
      return down ? top > here.top + here.height / 2 : top < here.top - here.height / 2;
    });
    const tops = rows.map((card) => card.getBoundingClientRect().top);
    const row = down ? Math.min(...tops) : Math.max(...tops);
    const far = (/** @type {Element} */ card) => Math.abs(card.getBoundingClientRect().left - here.left);
    const near = rows.filter((card) => Math.abs(card.getBoundingClientRect().top - row) < here.height / 2);
    return near.sort((one, other) => far(one) - far(other))[0];
  };

  /** A key on a card: the space bar, and once a piece is taken the arrows and Enter. @param {KeyboardEvent} event */
  const struck = (event) => {
    const card = event.target instanceof Element ? event.target.closest("[data-card]") : null;
    if (!card || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === " ") {
      event.preventDefault();
      if (held && !held.keys) return;
      const from = held?.card ?? card;
      const all = pieces(from).map((hold) => String(hold[0]));
      const next = held ? all.indexOf(held.part) + 1 : 0;
      const at = held?.at;
      putBack();
      takeByKey(from, next);
      if (held && at) held.at = at;
      look();
    } else if (held?.keys && event.key.startsWith("Arrow")) {
      event.preventDefault();
      const to = neighbour(held.at ?? held.card, event.key);
      const link = to?.querySelector("a");
      if (!to || !link) return;
      held.at = to;
      link.focus();
      const box = (picture(to) ?? to).getBoundingClientRect();
      [held.x, held.y] = [box.left + box.width / 2, box.top + box.height / 2];
      look();
    } else if (held?.keys && event.key === "Enter") {
      event.preventDefault();
      drop();
    }
  };
  element.addEventListener("keydown", struck);

  element.addEventListener("pointerdown", (event) => {
    if (held?.keys) putBack();
    forget();
    dropped = false;
    const card = event.target instanceof Element ? event.target.closest("[data-card]") : null;
    if (held || event.button !== 0 || !card || !event.isPrimary) return;
    const on = under(card, event.clientX, event.clientY);
    if (!on) return;
    const timer = event.pointerType === "mouse" ? 0 : window.setTimeout(take, REST);
    pressed = { card, ...on, x: event.clientX, y: event.clientY, pointer: event.pointerId, timer };
  });
  // Followed over the whole window: what is in hand may leave the cards.
  const calls = new AbortController();
  const { signal } = calls;
  const still = () => element.isConnected || calls.abort();
  addEventListener("pointermove", (event) => {
    still();
    if (held?.keys) return;
    if (held) {
      [held.x, held.y] = [event.clientX, event.clientY];
      look();
    } else if (pressed && event.pointerId === pressed.pointer) {
      const far = Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y);
      if (event.pointerType === "mouse" && far > SHAKE) take();
      // A finger that moves at once wants to scroll.
      else if (event.pointerType !== "mouse" && far > SHAKE * 2) letGo();
    }
  }, { signal });
  addEventListener("pointerup", () => {
    if (held?.keys) return;
    dropped = held !== null;
    drop();
    clearTimeout(pressed?.timer);
    pressed = null;
  }, { signal });
  addEventListener("pointercancel", putBack, { signal });
  addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    forget();
    const from = held?.keys ? held.card.querySelector("a") : null;
    if (held) putBack();
    from?.focus();
  }, { signal });
  // A finger that holds a piece moves it and not the page.
  element.addEventListener("touchmove", (event) => {
    if (held && event.cancelable) event.preventDefault();
  }, { passive: false });
  for (const name of ["dragstart", "contextmenu"]) {
    element.addEventListener(name, (event) => {
      if (pressed || held) event.preventDefault();
    });
  }
  // The end of a drag is no click on a card.
  element.addEventListener("click", (event) => {
    if (dropped) event.preventDefault();
    dropped = false;
  }, { capture: true });
}
