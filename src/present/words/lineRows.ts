/** Said → happened, of 100, as `npm run bench:lines -- 1500` printed it: rule, bands of what was said. */
export const lineRows: readonly (readonly [rule: string, saidAndHappened: string])[] = [
  ['breeds true, as assumed', '1 → 0, 35 → 35, 65 → 65, 92 → 92, 99 → 99'],
  ['one of six as wanted, as assumed', '2 → 1, 17 → 14, 56 → 54, 96 → 98, 99 → 99'],
  ['breeds true, two genes twice as common', '1 → 1, 35 → 37, 62 → 59, 92 → 87, 99 → 97'],
  ['one of six as wanted, two genes twice as common', '2 → 2, 18 → 18, 55 → 49, 96 → 97, 99 → 99'],
  ['breeds true, 8 % called wrongly', '1 → 7, 34 → 36, 63 → 54, 92 → 78, 99 → 98'],
  ['one of six as wanted, 8 % called wrongly', '2 → 2, 19 → 23, 58 → 50, 95 → 94, 99 → 97'],
  ['spread of 8 plants, 0 inherited', '95 → 95; 3'],
  ['spread of 8 plants, 0.5 inherited', '95 → 95; 22'],
  ['spread of 8 plants, 0.8 inherited', '95 → 95; 73'],
  ['truly the best, 0.1 inherited', '28 → 20; 0.41 → 0.14'],
  ['truly the best, 0.3 inherited', '32 → 32; 0.50 → 0.47'],
  ['truly the best, 0.6 inherited', '40 → 47; 0.66 → 0.90'],
  ['seeds for 6 plants next year', '90 → 98'],
  ['the same, ageing twice as fast', '90 → 80'],
];
