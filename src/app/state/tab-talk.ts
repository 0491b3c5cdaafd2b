/** Tabs telling each other what they saved, and each tab remembering which job it has open. */

const CHANNEL = 'perrev-jobs';
const OPEN_KEY = 'perrev-open-job';

interface Saved {
  readonly id: string;
  readonly revision: number;
}

export class TabTalk {
  readonly #channel: BroadcastChannel;

  constructor(onSaved: (id: string, revision: number) => void) {
    this.#channel = new BroadcastChannel(CHANNEL);
    this.#channel.onmessage = ({ data }: MessageEvent<Saved>) => onSaved(data.id, data.revision);
  }

  saved(id: string, revision: number): void {
    this.#channel.postMessage({ id, revision } satisfies Saved);
  }

  /** The job open in this tab: kept over a reload and a restored crash, not shared with other tabs. */
  get openId(): string | null {
    return sessionStorage.getItem(OPEN_KEY);
  }

  set openId(id: string | null) {
    if (id === null) sessionStorage.removeItem(OPEN_KEY);
    else sessionStorage.setItem(OPEN_KEY, id);
  }
}
