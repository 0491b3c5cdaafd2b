/** All commands, in the order help lists them. */
import type { Command } from './io.ts';
import { batchCommand } from './commands/batch.ts';
import { compareCommand } from './commands/compare.ts';
import { diagnoseCommand } from './commands/diagnose.ts';
import { ordersCommand } from './commands/orders.ts';
import { serveCommand } from './commands/serve.ts';
import { spectrumCommand } from './commands/spectrum.ts';

export const commands: readonly Command[] = [
  diagnoseCommand,
  batchCommand,
  compareCommand,
  ordersCommand,
  spectrumCommand,
  serveCommand,
];
