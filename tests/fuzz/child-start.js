/** A thread does not take over the loader that runs TypeScript: it brings its own. */
import { register } from 'tsx/esm/api';

register();
await import('./child.ts');
