/** A menu of the frame, unfolded over the screen, that folds away by itself. */

/** Folds the menu on Esc, on a press outside and on another screen. For `{@attach foldsAway}` on a details element. */
export function foldsAway(menu: HTMLDetailsElement): () => void {
  const listening = new AbortController();
  const { signal } = listening;
  const fold = (): void => void (menu.open = false);
  const onEscape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !menu.open) return;
    fold();
    menu.querySelector('summary')?.focus();
  };
  addEventListener('keydown', onEscape, { signal });
  addEventListener('pointerdown', (event) => menu.contains(event.target as Node) || fold(), { signal });
  addEventListener('hashchange', fold, { signal });
  return () => listening.abort();
}
