import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Gives a run of the tests a temporary folder of its own, and takes it away with all that the tests left in it. */
export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-tests-'));
  // A test runs the command as another user, who has to come through.
  chmodSync(folder, 0o755);
  process.env['TMPDIR'] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
