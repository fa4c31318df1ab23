/**
 * What a fit gives, or null where it found no end: where zeros or unseen events leave it without a maximum.
 *
 * @throws whatever else the fit throws
 */
export function ifConverged<T>(fit: () => T): T | null {
  try {
    return fit();
  } catch (fault) {
    if (fault instanceof Error && fault.name === 'NotConverged') return null;
    throw fault;
  }
}

/**
 * Ends a numeric loop that did not come to its end within its bound: a fault of the program, never a figure.
 *
 * @param what  the loop, in words
 * @throws Error always, named NotConverged
 */
export function notConverged(what: string): never {
  const fault = new Error(`${what} did not converge`);
  fault.name = 'NotConverged';
  throw fault;
}
