/** Dates as the reader writes them. */

export const dateText = (atMs: number, locale?: string): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(atMs);
