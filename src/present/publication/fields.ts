declare const type: unique symbol;

/** A field of a published document: its JSON Schema, and the type that goes with it. */
export interface Field<T> {
  readonly schema: Readonly<Record<string, unknown>>;
  readonly isOptional?: boolean;
  readonly [type]?: T;
}

/** The type of what a field holds. */
export type Of<F> = F extends Field<infer T> ? T : never;

interface Optional<T> extends Field<T> {
  readonly isOptional: true;
}

type Shape = Readonly<Record<string, Field<unknown>>>;
type Needed<S extends Shape> = { readonly [K in keyof S as S[K] extends Optional<unknown> ? never : K]: Of<S[K]> };
type Spare<S extends Shape> = { readonly [K in keyof S as S[K] extends Optional<unknown> ? K : never]?: Of<S[K]> };

const field = <T>(schema: Readonly<Record<string, unknown>>, description: string, unit?: string): Field<T> => ({
  schema: { ...schema, description, ...(unit === undefined ? {} : { 'x-unit': unit }) },
});

/** A number; `unit` in words where it depends on the trait. */
export const number = (meaning: string, unit: string): Field<number> => field({ type: 'number' }, meaning, unit);
export const whole = (meaning: string, unit: string): Field<number> =>
  field({ type: 'integer', minimum: 0 }, meaning, unit);
/** A number from 0 to 1. */
export const fraction = (meaning: string): Field<number> =>
  field({ type: 'number', minimum: 0, maximum: 1 }, meaning, 'fraction');
export const text = (meaning: string): Field<string> => field({ type: 'string' }, meaning);
export const flag = (meaning: string): Field<boolean> => field({ type: 'boolean' }, meaning);
export const oneOf = <const W extends readonly string[]>(meaning: string, words: W): Field<W[number]> =>
  field({ enum: words }, meaning);

/** A field that may hold null. */
export const orNull = <T>(own: Field<T>): Field<T | null> => {
  const { description, 'x-unit': unit, ...schema } = own.schema;
  return field({ anyOf: [schema, { type: 'null' }] }, String(description), unit as string | undefined);
};
/** A field of one of two forms. */
export const either = <A, B>(a: Field<A>, b: Field<B>): Field<A | B> =>
  field({ anyOf: [a.schema, b.schema] }, String(a.schema['description']), a.schema['x-unit'] as string | undefined);
/** A field that may be absent. */
export const optional = <T>(own: Field<T>): Optional<T> => ({ schema: own.schema, isOptional: true });

/** An object of any keys. */
export const map = <T>(keys: string, own: Field<T>): Field<Readonly<Record<string, T>>> =>
  field({ type: 'object', additionalProperties: own.schema }, keys);
export const list = <T>(meaning: string, own: Field<T>): Field<readonly T[]> =>
  field({ type: 'array', items: own.schema }, meaning);
/** An object of named fields. Keys may be added in later versions, so that others must pass over what they do not know. */
export const object = <S extends Shape>(meaning: string, shape: S): Field<Needed<S> & Spare<S>> =>
  field(
    {
      type: 'object',
      properties: Object.fromEntries(Object.entries(shape).map(([key, own]) => [key, own.schema])),
      required: Object.entries(shape).flatMap(([key, own]) => (own.isOptional ? [] : [key])),
    },
    meaning,
  );
