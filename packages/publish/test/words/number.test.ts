import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { acceptanceWords, limitWords } from '../../src/words/limit.ts';
import { asWritten, decimals, measured, rounded, significant } from '../../src/words/number.ts';

const force = { unit: 'kN', coverageFactor: 2, isAtLeast: false, origin: '', contributions: [] };

describe('numbers in print', () => {
  const cases: readonly { readonly law: string; readonly said: string; readonly is: string }[] = [
    { law: 'an absent number is a dash, never zero', said: decimals(null, 2), is: '–' },
    { law: 'a negative number has a minus sign, not a hyphen', said: decimals(-1.25, 1), is: '\u22121.3' },
    { law: 'what rounds to zero has no sign', said: decimals(-0.001, 2), is: '0.00' },
    { law: 'a published limit is shown as it was written', said: asWritten(0.1 + 0.2), is: '0.3' },
    { law: 'three significant digits carry over', said: significant(9.999), is: '10.0' },
    { law: 'zero has no digits to choose', said: significant(0), is: '0' },
    {
      law: 'a value is rounded by its uncertainty',
      said: measured({ ...force, value: 33.1234, expandedUncertainty: 0.2149 }),
      is: '33.12 ± 0.21',
    },
    {
      law: 'a censored value says so',
      said: measured({ ...force, isAtLeast: true, value: 31.9, expandedUncertainty: 0.3 }),
      is: 'at least 31.90 ± 0.30',
    },
    {
      law: 'an unknown uncertainty is said',
      said: measured({ ...force, value: 33.1234, expandedUncertainty: null }),
      is: '33.12, U not known',
    },
    { law: 'a limit with two sides is a span', said: limitWords({ lower: 7.6, upper: 8.4 }), is: '7.6 to 8.4' },
    {
      law: 'a limit with an upper side alone says at most',
      said: limitWords({ lower: null, upper: 8.4 }),
      is: 'at most 8.4',
    },
    {
      law: 'an acceptance limit ends where the value ends',
      said: acceptanceWords({ lower: 30.4149, upper: null }, 0.2149),
      is: 'at least 30.41',
    },
  ];
  for (const { law, said, is } of cases) test(law, () => assert.equal(said, is));

  test('an uncertainty of zero counts as unknown', () => {
    assert.equal(rounded(1, 0).uncertainty, null);
  });
});
