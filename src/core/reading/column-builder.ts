const BLOCK = 65536;

/** A growing column of doubles in blocks, so that growing never copies and memory stays near what is kept. */
export class ColumnBuilder {
  #full: Float64Array[] = [];
  #block = new Float64Array(BLOCK);
  #used = 0;

  push(value: number): void {
    if (this.#used === BLOCK) {
      this.#full.push(this.#block);
      this.#block = new Float64Array(BLOCK);
      this.#used = 0;
    }
    this.#block[this.#used++] = value;
  }

  get length(): number {
    return this.#full.length * BLOCK + this.#used;
  }

  /** The column in one piece. The builder is empty afterwards. */
  finish(): Float64Array {
    const whole = new Float64Array(this.length);
    this.#full.forEach((block, i) => whole.set(block, i * BLOCK));
    whole.set(this.#block.subarray(0, this.#used), this.#full.length * BLOCK);
    this.#full = [];
    this.#block = new Float64Array(BLOCK);
    this.#used = 0;
    return whole;
  }
}
