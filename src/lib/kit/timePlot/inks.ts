/** Inks of the curves in one plot: colour and dash both differ, so that black and white is enough. */
export interface Ink {
  readonly colour: string;
  readonly dash: string | undefined;
}

const INKS: readonly Ink[] = [
  { colour: 'var(--found)', dash: undefined },
  { colour: 'var(--heat-6)', dash: undefined },
  { colour: 'var(--good)', dash: '7 3' },
  { colour: 'var(--candidate)', dash: '2 3' },
  { colour: 'var(--watch)', dash: '10 3 2 3' },
  { colour: 'var(--ink-soft)', dash: '1 2' },
  { colour: 'var(--accent)', dash: '12 4' },
];

export const inkAt = (index: number): Ink => INKS[index % INKS.length]!;
