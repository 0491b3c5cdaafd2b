/** The buffers of an object that can be handed over instead of copied. */

/** Every distinct ArrayBuffer behind the typed arrays of a plain object, each once. */
export function buffersOf(value: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  collect(value, found);
  return [...found];
}

function collect(value: unknown, found: Set<ArrayBuffer>): void {
  if (typeof value !== 'object' || value === null) return;
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
    return;
  }
  for (const member of Object.values(value)) collect(member, found);
}
