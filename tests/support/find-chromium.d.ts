export function findChromium(): string | null;
export function ensureChromium(log?: (text: string) => void): string | null;
