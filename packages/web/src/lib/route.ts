/** The addresses of the screens. */
export const patterns = {
  campaigns: '/',
  board: '/c/:code',
  piece: '/c/:code/p/:piece',
  brief: '/c/:code/brief',
  findings: '/c/:code/findings',
  ledger: '/c/:code/ledger',
  newCampaign: '/new',
  samples: '/c/:code/samples',
  gauging: '/c/:code/gauging',
  gaugingOf: '/c/:code/gauging/:piece',
  pulls: '/c/:code/pulls',
  breaks: '/c/:code/breaks',
  breakOf: '/c/:code/breaks/:pull',
  zinc: '/c/:code/zinc',
  zincOf: '/c/:code/zinc/:piece',
  kit: '/kit',
  instrument: '/kit/:instrument',
  people: '/people',
  rigs: '/rig',
  rig: '/rig/:rig',
  wires: '/rig/:rig/wires',
  rulebook: '/rulebook/:page?',
  reckoner: '/reckoner',
} as const;

export const hrefs = {
  campaigns: () => '/',
  board: (code: string) => `/c/${encodeURIComponent(code)}`,
  piece: (code: string, piece: string) => `/c/${encodeURIComponent(code)}/p/${encodeURIComponent(piece)}`,
  brief: (code: string) => `/c/${encodeURIComponent(code)}/brief`,
  findings: (code: string) => `/c/${encodeURIComponent(code)}/findings`,
  ledger: (code: string) => `/c/${encodeURIComponent(code)}/ledger`,
  newCampaign: () => '/new',
  samples: (code: string) => `/c/${encodeURIComponent(code)}/samples`,
  gauging: (code: string) => `/c/${encodeURIComponent(code)}/gauging`,
  gaugingOf: (code: string, piece: string) => `/c/${encodeURIComponent(code)}/gauging/${encodeURIComponent(piece)}`,
  pulls: (code: string) => `/c/${encodeURIComponent(code)}/pulls`,
  breaks: (code: string) => `/c/${encodeURIComponent(code)}/breaks`,
  breakOf: (code: string, pull: string) => `/c/${encodeURIComponent(code)}/breaks/${encodeURIComponent(pull)}`,
  zinc: (code: string) => `/c/${encodeURIComponent(code)}/zinc`,
  zincOf: (code: string, piece: string) => `/c/${encodeURIComponent(code)}/zinc/${encodeURIComponent(piece)}`,
  kit: () => '/kit',
  instrument: (instrument: string) => `/kit/${encodeURIComponent(instrument)}`,
  people: () => '/people',
  rigs: () => '/rig',
  wires: (rig: string) => `/rig/${encodeURIComponent(rig)}/wires`,
  rig: (rig: string) => `/rig/${encodeURIComponent(rig)}`,
  report: (code: string) => `/api/campaigns/${encodeURIComponent(code)}/report.pdf`,
  /** The list of specifications, with a query of its own or none. */
  rulebook: (query = '') => withQuery('/rulebook', query),
  /** Of a key as specification-key.ts writes it. */
  specification: (key: string) => withQuery('/rulebook/specification', `of=${encodeURIComponent(key)}`),
  comparison: (query: string) => withQuery('/rulebook/compare', query),
  ownSpecification: (from: string) => withQuery('/rulebook/own', `from=${encodeURIComponent(from)}`),
  reckoner: (query = '') => withQuery('/reckoner', query),
} as const;

function withQuery(path: string, query: string): string {
  return query === '' ? path : `${path}?${query}`;
}
