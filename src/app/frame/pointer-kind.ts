/** Whether the reader points with a mouse or with a finger, for sentences that tell how to. */
export const pointerKind = matchMedia('(pointer: coarse)').matches ? 'touch' : 'mouse';
