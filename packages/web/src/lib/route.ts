/** The addresses of the screens. */
export const patterns = {
  campaigns: '/',
  board: '/c/:code',
  piece: '/c/:code/p/:piece',
  brief: '/c/:code/brief',
  findings: '/c/:code/findings',
  ledger: '/c/:code/ledger',
  rig: '/rig/:rig',
} as const;

export const hrefs = {
  campaigns: () => '/',
  board: (code: string) => `/c/${encodeURIComponent(code)}`,
  piece: (code: string, piece: string) => `/c/${encodeURIComponent(code)}/p/${encodeURIComponent(piece)}`,
  brief: (code: string) => `/c/${encodeURIComponent(code)}/brief`,
  findings: (code: string) => `/c/${encodeURIComponent(code)}/findings`,
  ledger: (code: string) => `/c/${encodeURIComponent(code)}/ledger`,
  rig: (rig: string) => `/rig/${encodeURIComponent(rig)}`,
  report: (code: string) => `/api/campaigns/${encodeURIComponent(code)}/report.pdf`,
} as const;
