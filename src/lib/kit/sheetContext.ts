/** Which sheet a part stands on, for identifiers that must differ where several sheets share a page. */
import { getContext, setContext } from 'svelte';

const KEY = Symbol('sheet');

export const setSheetNumber = (number: () => number): void => void setContext(KEY, number);

/** Number of the sheet around; 0 outside one. */
export const sheetNumber = (): number => getContext<(() => number) | undefined>(KEY)?.() ?? 0;
