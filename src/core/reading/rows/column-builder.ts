const FIRST_BLOCK = 1024;
const LARGEST_BLOCK = 65536;

/** A growing column of doubles in blocks, so that growing never copies and memory stays near what is kept. */
export class ColumnBuilder {
  #full: Float64Array[] = [];
  #block = new Float64Array(FIRST_BLOCK);
  #used = 0;
  #before = 0;

  push(value: number): void {
    if (this.#used === this.#block.length) this.#grow();
    this.#block[this.#used++] = value;
  }

  #grow(): void {
    this.#full.push(this.#block);
    this.#before += this.#block.length;
    this.#block = new Float64Array(Math.min(LARGEST_BLOCK, this.#block.length * 2));
    this.#used = 0;
  }

  get length(): number {
    return this.#before + this.#used;
  }

  /** The column in one piece; the last call to a builder. */
  finish(): Float64Array {
    const whole = new Float64Array(this.length);
    let at = 0;
    for (const block of this.#full) {
      whole.set(block, at);
      at += block.length;
    }
    whole.set(this.#block.subarray(0, this.#used), at);
    this.#full = [];
    this.#block = new Float64Array(0);
    return whole;
  }
}
