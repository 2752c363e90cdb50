import {
  type LimitSide,
  type OwnDraft,
  ownCopy,
  ownSides,
  type Quantity,
  readNumber,
  type Specification,
} from '@provinghouse/core';
import { type AddressCodec, queryPart } from '../../lib/use-address-state.ts';

/** An own specification as it stands in the form: what was typed, where it differs from the one it was copied from. */
export interface OwnForm {
  /** Key of the specification that is copied. */
  readonly from: string | null;
  readonly name: string;
  readonly title: string;
  readonly edition: string;
  /** Null: as the copied one has it. */
  readonly grade: string | null;
  /** Changed numbers as typed, by `breakingForce.lower`; blank where one is left out. */
  readonly numbers: Readonly<Record<string, string>>;
  /** Sources of the changes by quantity. */
  readonly sources: Readonly<Record<string, string>>;
}

export const emptyForm: OwnForm = {
  from: null,
  name: '',
  title: '',
  edition: '',
  grade: null,
  numbers: {},
  sources: {},
};

/** The form in the query of an address, so that it survives the page being loaded again and can be sent on. */
export const ownAddress: AddressCodec<OwnForm> = {
  read: (search) => {
    const query = new URLSearchParams(search);
    const named = (end: RegExp) =>
      Object.fromEntries(
        [...query].flatMap(([name, value]) => (end.test(name) ? [[name.replace(/\.source$/, ''), value]] : [])),
      );
    return {
      from: query.get('from'),
      name: query.get('name') ?? '',
      title: query.get('title') ?? '',
      edition: query.get('edition') ?? '',
      grade: query.get('grade'),
      numbers: named(/\.(lower|nominal|upper)$/),
      sources: named(/\.source$/),
    };
  },
  write: ({ from, name, title, edition, grade, numbers, sources }) =>
    [
      ...(from === null ? [] : [queryPart('from', from)]),
      ...Object.entries({ name, title, edition }).flatMap(([key, value]) =>
        value === '' ? [] : [queryPart(key, value)],
      ),
      ...(grade === null ? [] : [queryPart('grade', grade)]),
      ...Object.entries(numbers).map(([key, value]) => queryPart(key, value)),
      ...Object.entries(sources).flatMap(([key, value]) => (value === '' ? [] : [queryPart(`${key}.source`, value)])),
    ].join('&'),
};

/** What a field of the form shows: what was typed, else the number of the copied specification. */
export function shownNumber(
  form: OwnForm,
  at: { readonly quantity: Quantity; readonly side: LimitSide },
  base: Specification,
): string {
  const typed = form.numbers[`${at.quantity}.${at.side}`];
  if (typed !== undefined) return typed;
  const value = ownCopy(base).limits.find(({ quantity }) => quantity === at.quantity)?.[at.side] ?? null;
  return value === null ? '' : String(value);
}

/** The form with one number typed; typing the number of the copied specification again is no change. */
export function withNumber(
  form: OwnForm,
  at: { readonly quantity: Quantity; readonly side: LimitSide },
  typed: { readonly text: string; readonly base: Specification },
): OwnForm {
  const name = `${at.quantity}.${at.side}`;
  const { [name]: _before, ...others } = form.numbers;
  const untouched = shownNumber({ ...form, numbers: others }, at, typed.base);
  const isSame = typed.text.trim() === untouched || sameNumber(typed.text, untouched);
  return { ...form, numbers: isSame ? others : { ...others, [name]: typed.text } };
}

/** The form with a quantity as the copied specification has it. */
export function asPublished(form: OwnForm, quantity: Quantity): OwnForm {
  const other = ([name]: readonly [string, string]) => name.split('.')[0] !== quantity;
  return {
    ...form,
    numbers: Object.fromEntries(Object.entries(form.numbers).filter(other)),
    sources: Object.fromEntries(Object.entries(form.sources).filter(other)),
  };
}

/** The draft that a form makes, and the fields that hold no number, by `breakingForce.lower`. */
export function draftOf(
  form: OwnForm,
  base: Specification,
): { readonly draft: OwnDraft; readonly unread: ReadonlySet<string> } {
  const unread = new Set<string>();
  const limits = ownCopy(base).limits.map((start) => {
    const numbers = Object.fromEntries(
      ownSides[start.quantity].map((side) => {
        const name = `${start.quantity}.${side}`;
        const typed = form.numbers[name]?.trim();
        if (typed === undefined) return [side, start[side]];
        const value = typed === '' ? null : readNumber(typed);
        if (typed !== '' && value === null) unread.add(name);
        return [side, value];
      }),
    );
    return { ...start, ...numbers, source: form.sources[start.quantity] ?? '' };
  });
  const { name, title, edition } = form;
  const grade = gradeOf(form, base);
  return { draft: { name, title, edition, grade: grade === '' ? null : grade, limits }, unread };
}

/** The form of link is no part of a grade's name in an own specification. */
export function gradeOf(form: OwnForm, base: Specification): string {
  return (form.grade ?? base.grade ?? '').replace(/ stud(less)?$/, form.grade === null ? '' : '$&').trim();
}

function sameNumber(a: string, b: string): boolean {
  const [first, second] = [readNumber(a), readNumber(b)];
  return first !== null && first === second;
}
