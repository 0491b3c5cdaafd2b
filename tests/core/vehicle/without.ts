/** The object without one key, for tests of what happens when a datum is missing. */
export const without = <T extends object, K extends keyof T>(object: T, key: K): Omit<T, K> => {
  const copy: Partial<T> = { ...object };
  delete copy[key];
  return copy as Omit<T, K>;
};
