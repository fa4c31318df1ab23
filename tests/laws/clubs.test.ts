import { describe, expect, it } from 'vitest';
import { anyClub } from './anyClub.ts';
import { saidOfTrial } from './saidOfTrial.ts';

describe('any club that the contract allows', () => {
  it('ends in a site or in problems with their places; no page, table or figure holds a member’s code', () => {
    const outcomes = { site: 0, problems: 0 };
    for (let number = 1; number <= 15; number++) {
      const { outcome, faults } = saidOfTrial(anyClub(number), /\bqz\d\d\b/);
      expect(faults, `club ${number}`).toEqual([]);
      outcomes[outcome]++;
    }
    expect(outcomes.site).toBeGreaterThan(6);
  });
  it.each([
    [8, 'all that was sent was alike to every member who answered'],
    [51, 'a tie’s worth without an end'],
  ])('club %i, once a fault: %s', (number) => {
    expect(saidOfTrial(anyClub(number), /\bqz\d\d\b/).faults).toEqual([]);
  });
});
