/** Where jobs are kept: the browser's storage, or a stand-in for it. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;
