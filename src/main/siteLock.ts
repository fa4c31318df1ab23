import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { isRunning, lockName, thisProcess } from './ownNames.ts';

// A lock by process, not by age: the packages that have one let it go stale by time, which a loaded machine loses.

const WAIT_MS = 50;
const LONGEST_WAIT_MS = 300_000;
/** A lock of another machine cannot be asked for its process, and one without words may be half written. */
const OTHER_MACHINE_MS = 600_000;
const WORDLESS_MS = 10_000;

function isHeld(lock: string): boolean {
  let text: string;
  let age: number;
  try {
    age = Date.now() - statSync(lock).mtimeMs;
    text = readFileSync(lock, 'utf8');
  } catch {
    return false;
  }
  const [machine, pid] = text.split(' ');
  if (pid === undefined) return age < WORDLESS_MS;
  if (machine !== thisProcess.machine) return age < OTHER_MACHINE_MS;
  return Number(pid) !== thisProcess.pid && isRunning(Number(pid));
}

/** Makes a lock; false where it is there. */
function take(lock: string): boolean {
  try {
    writeFileSync(lock, `${thisProcess.machine} ${thisProcess.pid}`, { flag: 'wx' });
    return true;
  } catch (fault) {
    if (fault instanceof Error && 'code' in fault && fault.code === 'EEXIST') return false;
    throw fault;
  }
}

/** Takes away a lock whose process is gone; one at a time, so that none takes away the lock of who was quicker. */
function clear(lock: string): void {
  const clearing = `${lock}-clearing`;
  if (!take(clearing)) {
    if (!isHeld(clearing)) rmSync(clearing, { force: true });
    return;
  }
  try {
    if (!isHeld(lock)) rmSync(lock, { force: true });
  } finally {
    rmSync(clearing, { force: true });
  }
}

/**
 * Does something while no other build does the same to this site.
 *
 * @throws Error if another build holds the site for five minutes
 */
export async function whileAlone<T>(out: string, what: () => T): Promise<T> {
  const lock = join(dirname(out), lockName(out));
  for (let waited = 0; !take(lock); waited += WAIT_MS) {
    if (!isHeld(lock)) clear(lock);
    else if (waited > LONGEST_WAIT_MS) throw new Error(`another build is writing ${out} (its lock is ${lock})`);
    await new Promise((later) => setTimeout(later, WAIT_MS));
  }
  try {
    return what();
  } finally {
    rmSync(lock, { force: true });
  }
}
