import { expect, it } from 'vitest';
import { whatWillNotFit } from '../../src/main/memory.ts';
import { check } from '../sites/folder.ts';
import { SMALL } from '../sites/hostile.ts';

it('a build that may need more memory than there is says so before it starts', () => {
  const { trial } = check(SMALL);
  expect(whatWillNotFit(trial!, 2000)).toBeNull();
  expect(whatWillNotFit(trial!, 200)).toMatch(
    /may need 300 MB of memory and Node gives 200 MB: .*--max-old-space-size=600/,
  );
});
