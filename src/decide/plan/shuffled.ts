import { nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';
import { below } from './varietyBlocks.ts';

/** Items in an order at random. */
export function shuffled<T>(items: readonly T[], stream: RandomStream): T[] {
  const own = [...items];
  for (let i = own.length - 1; i > 0; i--) {
    const j = below(stream, i + 1);
    [own[i], own[j]] = [nth(own, j), nth(own, i)];
  }
  return own;
}
