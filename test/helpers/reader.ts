/** A reader at the report: does what a person does, counts what it costs, and says so at the end. */
import type { Locator, Page } from "playwright-core";

export interface Cost {
  /** Presses of the mouse. */
  readonly clicks: number;
  /** Keys pressed, each letter of a typed text one; a key held with another counts once. */
  readonly keys: number;
  readonly seconds: number;
}

export class Reader {
  #clicks = 0;
  #keys = 0;
  readonly #start = performance.now();

  readonly #page: Page;

  constructor(page: Page) {
    this.#page = page;
  }

  async click(what: Locator): Promise<void> {
    this.#clicks++;
    await what.click();
  }

  async press(key: string): Promise<void> {
    this.#keys++;
    await this.#page.keyboard.press(key);
  }

  async type(text: string): Promise<void> {
    this.#keys += text.length;
    await this.#page.keyboard.type(text);
  }

  /** What the errand cost, printed for whoever reads the test's output. */
  cost(errand: string): Cost {
    const cost = { clicks: this.#clicks, keys: this.#keys, seconds: (performance.now() - this.#start) / 1000 };
    console.log(`${errand}: ${cost.clicks} clicks, ${cost.keys} keys, ${cost.seconds.toFixed(1)} s by a machine's hand`);
    return cost;
  }
}
