/** The inputs of a case, read by name. Keeps account of what was read. */
import type { Fields, Value } from './schema';

/** The solver has no such calculation (yet): the case is listed, not failed. */
export class Unsupported extends Error {}

export class Given {
  readonly #inputs: Fields;
  readonly #read = new Set<string>();

  constructor(inputs: Fields) {
    this.#inputs = inputs;
  }

  has(key: string): boolean {
    return this.#inputs[key] !== undefined;
  }

  number(key: string): number {
    const value = this.#take(key);
    if (typeof value !== 'number') throw new Error(`input ${key} is not a number`);
    return value;
  }

  /** `key`, or `otherwise` when the case does not give it. */
  numberOr(key: string, otherwise: number): number {
    return this.has(key) ? this.number(key) : otherwise;
  }

  text(key: string): string {
    const value = this.#take(key);
    if (typeof value !== 'string') throw new Error(`input ${key} is not a text`);
    return value;
  }

  /** True only when the case says so. */
  flag(key: string): boolean {
    return this.has(key) && this.#take(key) === true;
  }

  numbers(key: string): number[] {
    const value = this.#take(key);
    if (!Array.isArray(value) || value.some((item) => typeof item !== 'number'))
      throw new Error(`input ${key} is not a list of numbers`);
    return value as number[];
  }

  texts(key: string): string[] {
    const value = this.#take(key);
    if (!Array.isArray(value) || value.some((item) => typeof item !== 'string'))
      throw new Error(`input ${key} is not a list of texts`);
    return value as string[];
  }

  /** Numbers by name. */
  record(key: string): Record<string, number> {
    const value = this.#take(key);
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      throw new Error(`input ${key} is not a table`);
    for (const item of Object.values(value))
      if (typeof item !== 'number') throw new Error(`input ${key} holds more than numbers`);
    return value as Record<string, number>;
  }

  /** One of `table` by its name; a name that is not there is something the solver does not do. */
  oneOf<T>(key: string, table: Readonly<Record<string, T>>): T {
    const name = this.text(key);
    if (!Object.hasOwn(table, name)) throw new Unsupported(`${key} "${name}"`);
    return table[name] as T;
  }

  /** An input that the solver holds as a constant: read it, and see that it is the same. */
  constant(key: string, held: number): void {
    const value = this.number(key);
    if (!(Math.abs(value - held) <= 1e-9 * Math.abs(held)))
      throw new Unsupported(`${key} ${value}; the solver holds ${held}`);
  }

  /** Say that an input is known and plays no part, with the reason. */
  setAside(key: string, _why: string): void {
    this.#read.add(key);
  }

  /** Inputs that no one read: the calculation run was not the one asked for. */
  unread(): string[] {
    return Object.keys(this.#inputs).filter((key) => !this.#read.has(key));
  }

  #take(key: string): Value {
    const value = this.#inputs[key];
    if (value === undefined) throw new Error(`input ${key} is missing`);
    this.#read.add(key);
    return value;
  }
}
