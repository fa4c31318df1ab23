import { createHash } from 'node:crypto';
import { hostname } from 'node:os';

/** What we keep beside a site while it is written: the new one, Eleventy's input, the old one, a file. */
export type OwnKind = 'new' | 'input' | 'old' | 'file';

const short = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8);
const machine = short(hostname());
let made = 0;

const start = (kind: OwnKind, target: string): string => `.keeprow-${kind}-${short(target)}-`;

/** The one name of the lock of a site. */
export const lockName = (target: string): string => `.keeprow-lock-${short(target)}`;

/** A name for something of ours beside a site or file, which says whose it is. */
export function ownName(kind: OwnKind, target: string): string {
  return `${start(kind, target)}${machine}-${process.pid}-${made++}`;
}

/** True if a process of this machine runs. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (fault) {
    return fault instanceof Error && 'code' in fault && fault.code === 'EPERM';
  }
}

/** Process and machine that a lock or folder of ours names. */
export const thisProcess = { machine, pid: process.pid } as const;

/**
 * True for something that a build left behind: its process is gone. What another machine made is left alone, but for
 * an old site: it is moved under the lock alone, so that none can be in the middle of it.
 */
export function isLeftover(name: string, kind: OwnKind, target: string): boolean {
  if (!name.startsWith(start(kind, target))) return false;
  if (kind === 'old') return true;
  const [host = '', pid = '', count = ''] = name.slice(start(kind, target).length).split('-');
  if (host !== machine || !/^\d+$/.test(pid)) return false;
  // A process of our own number was another one, unless we made the folder ourselves.
  return Number(pid) === process.pid ? Number(count) >= made : !isRunning(Number(pid));
}
