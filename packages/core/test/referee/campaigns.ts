import type { Group } from '../../src/statistics/comparison/index.ts';
import { seededRandom } from '../../src/statistics/random.ts';
import { numbersFromR, withR } from './r.ts';

export const cases = campaigns(210, 20);

/** Campaigns of 2 to 6 products, 3 to 8 pieces, scatter of 2 to 6 %; every fourth is rounded to 0.5 so that ranks tie. */
function campaigns(count: number, seed: number): readonly (readonly Group[])[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, index) =>
    Array.from({ length: 2 + random.integer(5) }, (_unused, group) => {
      const mean = 40 + 2 * random.normal();
      const sd = 0.8 + 1.6 * random.uniform();
      const step = index % 4 === 0 ? 0.5 : 1e-6;
      const values = Array.from({ length: 3 + random.integer(6) }, () =>
        Number((step * Math.round((mean + sd * random.normal()) / step)).toFixed(6)),
      );
      return { name: `P${group}`, values: values.every((value) => value === values[0]) ? [...values, mean] : values };
    }),
  );
}

/** All values of all campaigns as three vectors: R splits them again. */
export const data = {
  y: cases.flatMap((groups) => groups.flatMap((group) => group.values)),
  g: cases.flatMap((groups) => groups.flatMap((group, index) => group.values.map(() => index + 1))),
  k: cases.flatMap((groups, index) => groups.flatMap((group) => group.values.map(() => index + 1))),
};

/** Numbers of `body` (an R expression of values `v` and factor `f`) for every campaign in turn, or the first `count`. */
export function everyCampaign(body: string, count = cases.length): Promise<number[]> {
  return withR((r) =>
    numbersFromR(
      r,
      `unlist(lapply(split(seq_along(y), k)[1:${count}], function(i) { v <- y[i]; f <- factor(g[i]); ${body} }))`,
      data,
    ),
  );
}
