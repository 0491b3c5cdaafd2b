/** A bench result as text that can be read aloud: headed blocks, numbers against limits, notes, cautions. */
import { CAUTIONS } from '../../core/cautions.ts';
import type { JudgedNumber } from '../../core/driveline/limits/limit.ts';
import type { ProcedureId } from '../../core/driveline/procedures.ts';
import { procedureOf } from '../../core/driveline/procedures.ts';
import type { Note } from '../../core/note.ts';
import { judgedText } from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { wrap } from '../../core/report/wrap.ts';
import type { Io } from '../io.ts';

const STANDING =
  'Figures and limits guide; they do not clear a vehicle as safe. Local codes, the maker’s procedure and licensed practice come first.';

/** Builds the text block by block. */
export class Sheet {
  readonly #blocks: string[] = [];
  readonly #width: number;
  readonly #emphasis: boolean;
  readonly #units: UnitSystem;

  constructor(io: Io, units: UnitSystem) {
    this.#width = Math.min(io.terminalColumns ?? 96, 110);
    this.#emphasis = io.emphasis;
    this.#units = units;
  }

  /** A heading and the lines under it; a line may be a ready-made table. Nothing where there are no lines. */
  block(heading: string, lines: readonly string[]): this {
    if (lines.length === 0) return this;
    const head = this.#emphasis ? `\u001b[1m${heading}\u001b[0m` : heading;
    const body = lines.map((line) => (line.includes('\n') ? line : wrap(line, this.#width, '  ')));
    this.#blocks.push([head, ...body].join('\n'));
    return this;
  }

  /** @param loud false for numbers that do not decide */
  judged(heading: string, numbers: readonly JudgedNumber[], loud = true): this {
    return this.block(
      heading,
      numbers.map((number) => judgedText(number, this.#units, loud)),
    );
  }

  notes(notes: readonly Note[]): this {
    if (notes.length === 0) return this;
    const mark = ({ severity }: Note): string => (severity === 'warning' ? '  ! ' : '  · ');
    this.#blocks.push(notes.map((note) => wrap(note.text, this.#width, mark(note))).join('\n'));
    return this;
  }

  cautions(...procedures: readonly ProcedureId[]): this {
    const ids = new Set(procedures.flatMap((id) => procedureOf(id).cautions));
    const sentences = [...[...ids].map((id) => CAUTIONS[id]), STANDING];
    const body = sentences.map((sentence) => wrap(sentence, this.#width, '  - ')).join('\n');
    this.#blocks.push(`Cautions\n${body}`);
    return this;
  }

  text(): string {
    return `${this.#blocks.join('\n\n')}\n`;
  }
}
