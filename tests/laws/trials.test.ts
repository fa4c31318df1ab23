import { describe, expect, it } from 'vitest';
import { anyTrial } from './anyTrial.ts';
import { saidOfTrial } from './saidOfTrial.ts';

// A share of what `npm run bench:audit` runs over 20,000.

describe('any trial that the contract allows', () => {
  it('ends in a site or in problems with their places, with figures and sentences as they should be', () => {
    const outcomes = { site: 0, problems: 0 };
    for (let number = 1; number <= 40; number++) {
      const { outcome, faults } = saidOfTrial(anyTrial(number));
      expect(faults, `trial ${number}`).toEqual([]);
      outcomes[outcome]++;
    }
    expect(outcomes.site).toBeGreaterThan(25);
  });
  it.each([
    [242, 'looks three weeks apart from planting out to the first ripe fruit'],
    [327, 'fruit numbers alike in all plantings of a class'],
    [138, 'one planting more than varieties: an interval of days beyond any ratio'],
    [92, 'an expected yield of which nothing is known'],
  ])('trial %i, once a fault: %s', (number) => {
    expect(saidOfTrial(anyTrial(number)).faults).toEqual([]);
  });
});
