/** Things worked out for a description, kept by its text, whatever object holds it; the latest few. */
export class Keep<T> {
  readonly #kept = new Map<string, T>();
  constructor(readonly most: number) {}

  has(key: string): boolean {
    return this.#kept.has(key);
  }
  set(key: string, value: T): void {
    this.#kept.delete(key);
    this.#kept.set(key, value);
    if (this.#kept.size > this.most) this.#kept.delete(this.#kept.keys().next().value!);
  }
  keys(): string[] {
    return [...this.#kept.keys()];
  }
  /** The value kept, or that of `work`, kept from now on. */
  of(key: string, work: () => T): T {
    if (!this.#kept.has(key)) this.set(key, work());
    return this.#kept.get(key) as T;
  }
}
