/** Text becomes markup in one way only: escaped, each number beside its unit. */
import { keptTogether } from './format.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text of any origin made safe for element content and quoted attributes. */
export const escapeHtml = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);

/** Markup that is already safe; only `html` and `raw` make it. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export const raw = (text: string): Markup => new Markup(text);

type Piece = string | number | Markup | null | readonly Piece[];

const render = (piece: Piece): string => {
  if (piece === null) return '';
  if (piece instanceof Markup) return piece.text;
  if (Array.isArray(piece)) return (piece as readonly Piece[]).map(render).join('');
  return escapeHtml(keptTogether(String(piece)));
};

/** Tagged template: every inserted piece is escaped unless it is Markup. */
export const html = (strings: TemplateStringsArray, ...pieces: readonly Piece[]): Markup =>
  new Markup(
    strings.reduce((out, part, index) => out + part + (index < pieces.length ? render(pieces[index] ?? null) : ''), ''),
  );
