/** Words around drawn curves, wherever they are drawn. */
export const plotTexts = { numbers: 'Numbers behind this picture' } as const;
