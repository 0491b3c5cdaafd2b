/** Hands a file to the reader. */

/** Characters no file system minds losing. */
const UNSAFE = /[\u0000-\u001f\\/:*?"<>|]+/gu;

export const safeFileName = (name: string): string => name.replaceAll(UNSAFE, '-').slice(0, 120) || 'perrev';

export function download(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = safeFileName(name);
  link.click();
  // The browser has taken the address by the time the click returns; a minute is generous.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

export const downloadText = (text: string, name: string, type: string): void =>
  download(new Blob([text], { type: `${type};charset=utf-8` }), name);
