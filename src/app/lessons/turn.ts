/** Angles that go round. */

/** An angle moved on, kept from 0 to below 360 degrees. */
export const turned = (angleDeg: number, byDeg: number): number => (((angleDeg + byDeg) % 360) + 360) % 360;
