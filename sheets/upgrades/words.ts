/** Parts of a loop in words, as what limits. */
import type { LimitingPart } from '$lib/solver/loop/limiting';
import type { Judge } from '$lib/job/upgrades/assess';

interface PartWords {
  /** "… limits". */
  readonly name: string;
  /** One thing limits, several limit. */
  readonly verb: 'limits' | 'limit';
  /** What its next size is. */
  readonly more: string;
}

export const PART: Readonly<Record<LimitingPart, PartWords>> = {
  front: {
    name: 'the front exchanger',
    verb: 'limits',
    more: 'a core that carries a quarter more per degree',
  },
  fans: {
    name: 'the fans',
    verb: 'limit',
    more: 'fans that move a quarter more at every pressure',
  },
  shroud: {
    name: 'the shroud and its gaps',
    verb: 'limit',
    more: 'a quarter more of the face behind the shroud, and that much less hot air coming round',
  },
  opening: {
    name: 'the opening for the air',
    verb: 'limits',
    more: 'a quarter more of the road’s pressure left across the core',
  },
  pump: {
    name: 'the pump',
    verb: 'limits',
    more: 'a pump that moves a quarter more at every head',
  },
  feed: {
    name: 'the pump’s feed',
    verb: 'limits',
    more: 'a quarter more volts at the pump, as far as the source goes',
  },
  hoses: {
    name: 'the hoses',
    verb: 'limit',
    more: 'hoses that pass a quarter more at the same loss',
  },
  passages: {
    name: 'the liquid passages of the cores',
    verb: 'limit',
    more: 'passages that let a quarter more through at the same loss',
  },
  cooler: {
    name: 'the charge cooler',
    verb: 'limits',
    more: 'a core that carries a quarter more per degree',
  },
  tank: { name: 'the tank', verb: 'limits', more: 'a quarter more liquid in it' },
  charge: {
    name: 'the heat of the compressor',
    verb: 'limits',
    more: 'a compressor a quarter more efficient',
  },
  soak: {
    name: 'the heat of engine and bay',
    verb: 'limits',
    more: 'shielding that lets a quarter less of it in',
  },
};

export const JUDGED: Readonly<Record<Judge, string>> = {
  cruise: 'settled at cruise',
  pull: 'as the last pull ends',
};

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const SHORT = 34;

/** A name that fits a label. */
export const short = (name: string, most = SHORT): string =>
  name.length > most ? `${name.slice(0, most - 1).trimEnd()}…` : name;
