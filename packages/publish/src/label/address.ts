import { InputError } from '@provinghouse/core';

/**
 * What a phone reads off a label: the address of the piece in the record, or its bare code where the record has no address or
 * the code is one that no address can name (`.` and `..` mean folders there).
 *
 * @throws InputError `report/label-origin` when the origin is no http or https address without a path
 */
export function labelText(label: {
  readonly origin: string | null;
  readonly campaign: string;
  readonly piece: string;
}): string {
  const { origin, campaign, piece } = label;
  if (origin === null || /^\.{1,2}$/.test(piece)) return piece;
  return `${requireOrigin(origin)}/c/${encodeURIComponent(campaign)}/p/${encodeURIComponent(piece)}`;
}

function requireOrigin(origin: string): string {
  const url = URL.canParse(origin) ? new URL(origin) : null;
  if (url === null || !/^https?:$/.test(url.protocol) || url.pathname !== '/' || url.search !== '' || url.hash !== '') {
    throw new InputError(
      'report/label-origin',
      `"${origin}" is not where a record is served; write it like http://bench:8080, without a path.`,
      { origin },
    );
  }
  return url.origin;
}
