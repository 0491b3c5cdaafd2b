/** The least or greatest value of a window that moves along, in one pass: what a later value outdoes is dropped. */
export class MovingExtreme {
  readonly #values: Float64Array;
  readonly #outdoes: (a: number, b: number) => boolean;
  /** Places of the values that may still become the extreme, in order; those before the first have left. */
  readonly #places: number[] = [];
  #first = 0;

  constructor(values: Float64Array, outdoes: (a: number, b: number) => boolean) {
    this.#values = values;
    this.#outdoes = outdoes;
  }

  /** Of what has entered and not left; there must be something. */
  get value(): number {
    return this.#values[this.#places[this.#first]!]!;
  }

  enter(place: number): void {
    const isBeaten = (last: number): boolean => !this.#outdoes(this.#values[last]!, this.#values[place]!);
    while (this.#places.length > this.#first && isBeaten(this.#places.at(-1)!)) this.#places.pop();
    this.#places.push(place);
  }

  leaveBefore(from: number): void {
    while (this.#first < this.#places.length && this.#places[this.#first]! < from) this.#first++;
  }
}
