/** True for a loop that found no end: where zeros or unseen events leave a fit without a maximum. */
export const isNotConverged = (fault: unknown): boolean => fault instanceof Error && fault.name === 'NotConverged';

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
