/** Files the reader opened, told apart into recordings and job files. */

/** A recording as the app holds it: bytes that were never changed, under a name unique in the job. */
export interface StoredRecording {
  readonly id: string;
  readonly name: string;
  readonly blob: Blob;
}

export interface OpenedFiles {
  readonly jobs: File[];
  readonly archives: File[];
  readonly recordings: File[];
}

export const ARCHIVE_ENDING = '.perrev.zip';

/** Job files end in .json, job archives in .zip; anything else is offered to the recording reader. */
export function sortFiles(files: readonly File[]): OpenedFiles {
  const ends = (file: File, ending: string): boolean => file.name.toLowerCase().endsWith(ending);
  return {
    jobs: files.filter((file) => ends(file, '.json')),
    archives: files.filter((file) => ends(file, '.zip')),
    recordings: files.filter((file) => !ends(file, '.json') && !ends(file, '.zip')),
  };
}

/** The name, or the name with a number before its ending where it is taken. */
export function freeName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  const dot = name.indexOf('.', 1);
  const [stem, ending] = dot < 0 ? [name, ''] : [name.slice(0, dot), name.slice(dot)];
  for (let number = 2; ; number++) {
    const candidate = `${stem} (${number})${ending}`;
    if (!taken.has(candidate)) return candidate;
  }
}
