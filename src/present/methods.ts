import type { Settings } from '../terms/settings.ts';

/** The methods page as Markdown, with this trial's settings. */
export function methodsText(settings: Settings): string {
  const level = `${settings.interval * 100} %`;
  return `Figures here are *seen*: what the plants of one season did, without borrowing from other seasons. A planting is one plant, or plants recorded together. Several pickings of a planting, several fruits of it and several scores of one taster for one variety are not replicates: they are added up or averaged first.

## Yield and fruits per plant
Usable weight (or fruits) of a planting over the season, divided by the plants set out. Plants that died count; plants lost by accident do not. A planting without a picking yielded 0 only where the records say so.

Scale of this trial: **${settings.scale}**. Under *ratio*, quasi-likelihood with a logarithmic link, variety + block, variance proportional to the square of the mean (weight) or to the mean (fruits); without blocks the estimate is exactly total over plants. Under *difference*, weighted least squares. One fit a season over all classes. Intervals: t on the residual degrees of freedom, level ${level}. Source: McCullagh & Nelder (1989), *Generalized Linear Models*, ch. 8-9; marginal means after Searle, Speed & Milliken (1980), Am. Stat. 34:216.

Plants side by side are alike: a spot correlation of ${settings.spotCorrelation} is assumed (a setting; 0 gives the textbook figures). Where the plants of a variety stand together, the squared standard error is multiplied by 1 + nρ/(1 − ρ).

Known limit: with a coefficient of variation of 60 % and two plants a variety, intervals called 95 % hold the truth in about 91 to 92 of 100 trials (simulation).

## Days to first ripe fruit
Days from ${settings.firstRipeFrom === 'sown' ? 'sowing' : 'planting out'} to the first ripe picking or note. A planting not ripe by the season's end counts as unripe until then, not as missing. Median and interval from the Kaplan-Meier curve (Kaplan & Meier 1958; log-log limits, Brookmeyer & Crowley 1982). A planting lost to disease, pests or weakness stays unripe to the end; one lost by accident leaves at its removal.

## Ratings
Scores of one taster for one variety are averaged; then taster + variety by least squares, so that a generous taster moves nothing. The interval is for these tasters, not for people at large.

## Shares
k of n with the interval of Wilson (1927), J. Am. Stat. Assoc. 22:209.

## Measurements
Fruits of one planting are averaged to the planting; then variety + block by least squares.
`;
}
