/**
 * How much a person feels of a true order: ISO 2631-1:1997 weightings Wk (up and down) and Wd (sideways, lengthwise)
 * from the formulas of its Annex A, over the perception threshold of 0.015 m/s² peak (Annex C, from memory). Written
 * here anew, in complex numbers, so that the program's own weighting is not its own judge.
 */
interface Z {
  readonly re: number;
  readonly im: number;
}
const over = (a: Z, b: Z): Z => {
  const d = b.re ** 2 + b.im ** 2;
  return { re: (a.re * b.re + a.im * b.im) / d, im: (a.im * b.re - a.re * b.im) / d };
};
const times = (a: Z, b: Z): Z => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
/** 1 + s/(Q·w0) + s²/w0² */
const second = (w: number, hz: number, q: number): Z => {
  const r = w / (2 * Math.PI * hz);
  return { re: 1 - r * r, im: r / q };
};

const weighting = (hz: number, cornerHz: number, stepped: boolean): number => {
  const w = 2 * Math.PI * hz;
  const low = w / (2 * Math.PI * 0.4);
  const highPass = over({ re: -low * low, im: 0 }, second(w, 0.4, Math.SQRT1_2));
  const lowPass = over({ re: 1, im: 0 }, second(w, 100, Math.SQRT1_2));
  const turn = over({ re: 1, im: w / (2 * Math.PI * cornerHz) }, second(w, cornerHz, 0.63));
  let all = times(times(highPass, lowPass), turn);
  if (stepped) {
    const step = over(second(w, 2.37, 0.91), second(w, 3.35, 0.91));
    const k = (2.37 / 3.35) ** 2;
    all = times(all, { re: step.re * k, im: step.im * k });
  }
  return Math.hypot(all.re, all.im);
};

export const verticalWeight = (hz: number): number => weighting(hz, 12.5, true);
export const horizontalWeight = (hz: number): number => weighting(hz, 2, false);

const THRESHOLD_MPS2 = 0.015;

/** @param axisMps2 0-to-peak on x, y (horizontal) and z (up), body axes. */
export const feltOf = (hz: number, axisMps2: readonly [number, number, number]): number => {
  const h = horizontalWeight(hz);
  const v = verticalWeight(hz);
  return Math.hypot(h * axisMps2[0], h * axisMps2[1], v * axisMps2[2]) / THRESHOLD_MPS2;
};
