/** What may be changed to gain suction head, by name. */
import type { HelpId } from '$lib/solver/suction/whatHelps';

/** As a row names it. */
export const HELP_NAME: Readonly<Record<HelpId, string>> = {
  cap: 'More cap pressure',
  level: 'Tank higher',
  bore: 'Wider suction hose',
  length: 'Half as long a suction hose',
  cooler: 'Cooler liquid',
  'sea-level': 'Down at the sea',
};

/** Inside a sentence. */
export const HELP_WORDS: Readonly<Record<HelpId, string>> = {
  cap: 'more cap pressure',
  level: 'a higher tank',
  bore: 'a wider suction hose',
  length: 'a suction hose half as long',
  cooler: 'cooler liquid',
  'sea-level': 'driving at sea level',
};
