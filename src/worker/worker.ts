/** The worker's entry: receives requests in order, posts answers, hands over big arrays instead of copying them. */
import { RequestHandler } from './handle.ts';
import type { ToWorker } from './protocol.ts';
import { buffersOf } from './transfer.ts';

const handler = new RequestHandler((message) =>
  self.postMessage(message, { transfer: message.kind === 'answer' ? buffersOf(message.answer) : [] }),
);
let queue = Promise.resolve();

self.onmessage = (event: MessageEvent<ToWorker>): void => {
  queue = queue.then(() => handler.handle(event.data));
};
