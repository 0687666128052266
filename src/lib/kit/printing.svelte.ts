/**
 * Printing from a button of the page, which can wait where the browser's own menu cannot: what other
 * threads work out is asked for everywhere and is there before the paper is drawn.
 */
import { tick } from 'svelte';
import { lookAtAll } from './near';

/** How whatever is under way marks itself in the page. */
const UNDER_WAY = 'main progress, main [data-busy], main [data-gathered="under way"]';
/** Between two looks, ms. One part may ask for another: nothing is under way twice in a row. */
const LOOK = 150;
const QUIET = 3;

export class Printing {
  waiting = $state(false);
  /** Places of the page that still wait. */
  left = $state(0);
  #hurry = false;

  /** Print once all is there; asked again meanwhile, at once with what is there. */
  async start(): Promise<void> {
    if (this.waiting) {
      this.#hurry = true;
      return;
    }
    [this.waiting, this.#hurry] = [true, false];
    const back = lookAtAll();
    for (let quiet = 0; quiet < QUIET && !this.#hurry;) {
      await new Promise((look) => setTimeout(look, LOOK));
      this.left = document.querySelectorAll(UNDER_WAY).length;
      quiet = this.left === 0 ? quiet + 1 : 0;
    }
    this.waiting = false;
    await tick();
    print();
    back();
  }
}
