/** Which check is open, by id; the first proposed one where none was chosen. */
class OpenCheck {
  id = $state<string | null>(null);
}

export const openedCheck = new OpenCheck();

const section = (): HTMLElement | null => document.getElementById('next-check');

/** Takes the reader to the open check. */
export const standAtNextCheck = (): void => section()?.focus();

/** Whether the reader stands at the open check or in it. */
export const isAtNextCheck = (): boolean => section()?.contains(document.activeElement) ?? false;

/** Opens a check and takes the reader there. */
export function openCheck(id: string): void {
  openedCheck.id = id;
  standAtNextCheck();
}
