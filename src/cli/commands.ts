/** All commands, in the order help lists them. */
import { balanceCommand } from './bench/balance.ts';
import { jointsCommand } from './bench/joints.ts';
import { ringsCommand } from './bench/rings.ts';
import { runoutCommand } from './bench/runout.ts';
import { whirlCommand } from './bench/whirl.ts';
import { batchCommand } from './commands/batch.ts';
import { compareCommand } from './commands/compare.ts';
import { diagnoseCommand } from './commands/diagnose.ts';
import { ordersCommand } from './commands/orders.ts';
import { serveCommand } from './commands/serve.ts';
import { spectrumCommand } from './commands/spectrum.ts';
import type { Command } from './io.ts';

export const commands: readonly Command[] = [
  diagnoseCommand,
  batchCommand,
  compareCommand,
  ordersCommand,
  spectrumCommand,
  jointsCommand,
  ringsCommand,
  runoutCommand,
  balanceCommand,
  whirlCommand,
  serveCommand,
];
