import type { SeasonKey } from './ids.ts';

/** Addresses of the site's pages from its root, each ending in `/`; the front page has the empty one. */
export const addresses = {
  front: '',
  nextSeason: 'next-season/',
  weights: 'your-weights/',
  seasons: 'seasons/',
  data: 'data/',
  notes: 'data-notes/',
  messages: 'data-notes/messages/',
  methods: 'methods/',
  glossary: 'glossary/',
  varieties: 'varieties/',
  seed: 'seed/',
  line: (id: string): string => `lines/${id}/`,
  lineSheet: (id: string): string => `lines/${id}/sheet/`,
  season: (key: SeasonKey): string => `${key}/`,
  /** A class of a season; one that is called as another page is gets a longer address. */
  klass: (key: SeasonKey, classId: string): string => `${key}/${classId === 'handout' ? 'class-' : ''}${classId}/`,
  classFigures: (key: SeasonKey, classId: string): string => `${addresses.klass(key, classId)}figures/`,
  handout: (key: SeasonKey): string => `${key}/handout/`,
  /** A garden of a club that shows its page. */
  garden: (code: string): string => `gardens/${code}/`,
  variety: (id: string): string => `varieties/${id}/`,
  /** A page of the grower's own, by its content path without `.md`. */
  own: (contentKey: string): string => `${contentKey}/`,
  /** A table that readers can download. */
  table: (key: SeasonKey, name: string): string => `${key}/${name}.csv`,
} as const;

/** Where the grower's words for a page stand in `content/`, without `.md`. */
export const wordsOf = {
  front: 'index',
  season: (key: SeasonKey): string => `seasons/${key}`,
  variety: (id: string): string => `varieties/${id}`,
} as const;
