import { win32 } from 'node:path';
import { expect, it, vi } from 'vitest';

it('a folder is found within another with the separators of Windows too', async () => {
  vi.doMock('node:path', () => ({ ...win32, default: win32 }));
  vi.resetModules();
  const { isIn } = await import('../../src/main/siteFolder.ts');
  expect(isIn('C:\\club\\_site', 'C:\\club')).toBe(true);
  expect(isIn('C:\\club', 'C:\\club')).toBe(true);
  expect(isIn('C:\\clubs', 'C:\\club')).toBe(false);
  vi.doUnmock('node:path');
});
