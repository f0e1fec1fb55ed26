/** Pairs of a row and a number of it, for the millions: eight bytes a pair. */
export class CellList {
  #pairs = new Uint32Array(64);
  #length = 0;

  add(row: number, number: number): void {
    if (this.#length === this.#pairs.length) {
      const larger = new Uint32Array(2 * this.#pairs.length);
      larger.set(this.#pairs);
      this.#pairs = larger;
    }
    this.#pairs[this.#length++] = row;
    this.#pairs[this.#length++] = number;
  }

  *each<T>(make: (row: number, number: number) => T): Generator<T> {
    for (let i = 0; i < this.#length; i += 2) yield make(this.#pairs[i] as number, this.#pairs[i + 1] as number);
  }
}
