/** Numbers of things in words. */

export const times = (n: number) => (n === 1 ? 'once' : `${n} times`);

/** `1 cell`, `2 cells`; a word that is more than an s away is given. */
export const counted = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;
