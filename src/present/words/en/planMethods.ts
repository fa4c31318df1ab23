import type { Method } from '../methods.ts';

/** Methods behind next season's plan. */
export const planMethods: readonly Method[] = [
  {
    id: 'plan',
    title: 'Next season’s plan',
    words: [
      'The list is grown with two plants at least, newcomers with one plant each: one place in ten, and two for each spot that the list leaves free, at most half of the places. What is left goes one by one to the variety with the largest share in relation to the plants it has, nobody above a third of the class’s places before all have theirs. Wishes are exact.',
      'Plants of a variety stand apart, in blocks along the bed of about as many places as there are varieties, up to 20. Varieties are given to blocks so that differences between them have the least variance on average; within a block plants are moved until no two of a variety stand side by side, rows are shared and neighbours change. Clumps are two halves of the bed with a clump of every variety in each.',
      'The last frost is taken as normal, its spread from spring to spring as 13 days with the weight of ten springs, a stated day as worth ten. A spring of which the record shows no frost counts with the day before its record. First ripe fruit is the expected days after planting out; a newcomer is its class’s middle.',
      'Seeds to sow give the plants and a spare for every four in 95 of 100, with four of five seeds coming up loosely assumed and every counted sowing added. Ballots have codes; where everyone tastes everything each sample comes as often in each place and after each other, else varieties are shared among tasters like varieties among blocks.',
    ],
    assumes: 'Newcomers as good as those tried before; plants that differ next year as they did.',
    limits:
      'Rows of a bed are not in the analysis: with a slope across it intervals are up to 15 % too wide. 13 days is a continental spread. The gain of newcomers comes after several seasons.',
    source:
      'Federer (1956) and Cullis, Smith & Coombes (2006) J. Agric. Biol. Environ. Stat. 11:381 for partly replicated trials; John & Williams (1995) Cyclic and Computer Generated Designs; Williams (1949) Aust. J. Sci. Res. A 2:149; Illinois State Water Survey for the spread of frosts',
  },
  {
    id: 'rankings',
    title: 'What members of a club preferred',
    words: [
      'Best and worst of what a member was sent is an order, read in stages: the best among all, the next among the rest. A choice of several that are alike is as likely as the worth of a tie of that size times the mean of their worths on the logarithmic scale. Every variety has half a win and half a loss against one of worth 1, so that no worth runs away. Where more than one stands in the middle only the best is taken as before the others.',
      'A worth is shown as the share in which its variety stands before a middling one; its interval is by quasi-variances, so that any two may be set beside each other. As a goal it enters what is expected as the logarithm of the worth with its quasi-variance, like a rating, with a prior of 1 for how much varieties differ; its points are that share of 100.',
    ],
    assumes: 'Members answer independently of one another and of what their garden suits.',
    limits: 'Those who did not answer may think otherwise. Answers of fewer than five members are not told.',
    source:
      'Plackett (1975) Appl. Stat. 24:193; Davidson (1970) J. Am. Stat. Assoc. 65:317; Firth & de Menezes (2004) Biometrika 91:65',
  },
  {
    id: 'gardens',
    title: 'Many gardens',
    words: [
      'Where several gardens keep records, a variety in a garden is the unit: its plantings there are added up, and three plants in one garden are one look. The garden stands in the model beside the variety, with an effect of its own that nothing is assumed of, so that better gardens do not lend their yields to what they happen to grow. An estimate is for a middling garden: every garden counts alike. Gardens with one variety of a class, and those that gave nothing of it, tell no difference and are left out; a yield of nothing beside others counts. Varieties that no chain of gardens joins are compared with nothing across the gap. Days to ripe fruit and scores are taken in the same way, the garden being the taster.',
      'What is expected adds two spreads: of a variety from garden to garden, and what garden, season and spot make together. Their posterior is worked out on a grid of all four spreads; with more than 250 varieties times seasons in a class their likeliest values, found by average information with random traces, stand for all (how variety and season share what the records tell only together is left to the prior); with more than 800 what is unsure is drawn 200 times, each draw with its opposite. The club’s verdict is for a garden of the club on average; a garden’s own adds what it showed itself and the chance of its spot. Squared CV of plants in a garden, where fewer than ten differences of plants are recorded: 0.128.',
      'A figure of a region or setting is shown where five gardens or more stand behind it and none has over half of its plants; where one group is hidden, so is the next smallest.',
    ],
    assumes:
      'Members give every variety the same care, and what they send does not depend on how it did; gardens differ on the logarithmic scale; spreads are the same in all gardens.',
    limits:
      'Nothing is said of those who sent no sheet but the range that they could bring a share to. In simulations intervals for a garden of the club held in 94 to 95 of 100. One garden decides nothing in general, the club alone nothing about one garden.',
    source:
      'Yates (1936) Ann. Eugen. 7:121 for incomplete blocks; Gilmour, Thompson & Cullis (1995) Biometrics 51:1440, Hutchinson (1990) Commun. Stat. Simul. 19:433 and García-Cortés et al. (1992) J. Anim. Breed. Genet. 109:358 for very many; Patterson & Thompson (1971) Biometrika 58:545; Wilson (1927) J. Am. Stat. Assoc. 22:209; Manski (1989) J. Hum. Resour. 24:343 for the silent',
  },
];
