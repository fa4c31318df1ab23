// Loaded before the command (node --import): kills the process before its nth renaming.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const rename = fs.renameSync;
let left = Number(process.env.KILL_AT_RENAME);
fs.renameSync = (from, to) => {
  if (--left === 0) process.kill(process.pid, 'SIGKILL');
  rename(from, to);
};
syncBuiltinESMExports();
