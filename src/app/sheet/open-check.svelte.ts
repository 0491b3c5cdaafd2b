/** Which check is open, by id; the first proposed one where none was chosen. */
class OpenCheck {
  id = $state<string | null>(null);
}

export const openedCheck = new OpenCheck();

/** Opens a check and takes the reader there. */
export function openCheck(id: string): void {
  openedCheck.id = id;
  document.getElementById('next-check')?.focus();
}
