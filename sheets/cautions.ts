/**
 * Safety cautions, once, in our own words; each sheet names those that its work can call for.
 * They repeat what the trade says and replace neither the maker's instructions nor local rules.
 */

/** Where a caution's facts come from, as for any other fact. */
interface Caution {
  readonly title: string;
  readonly text: string;
  readonly source: string;
}

export const CAUTIONS = {
  scald: {
    title: 'Hot liquid burns',
    text: 'Liquid at 140 °F (60 °C) burns skin in about three seconds; a tank too hot to hold is already past that. Let it cool, wear gloves and eye protection.',
    source: 'plumbing safety table; second-degree burn times',
  },
  pressure: {
    title: 'Never open a hot cap',
    text: 'Liquid above its open-air boiling point flashes to steam when the cap comes off. Open only when the tank is cold to the hand. Check that the weakest part (tank, core tubes, clear hose, flow sensor) is rated for the cap’s pressure.',
    source: 'common practice, no source',
  },
  glycol: {
    title: 'Glycol is poisonous and tastes sweet',
    text: 'Keep it from children and animals, wipe up spills, close containers, collect waste and never pour it down a drain. Know your poison centre’s number. Many tracks ban glycol: ask first.',
    source: 'pet and human poison services',
  },
  fans: {
    title: 'Fans start by themselves',
    text: 'An electric fan can start with the ignition off. Pull its fuse or disconnect it before hands go near; tie back hair and loose clothing.',
    source: 'common practice, no source',
  },
  stands: {
    title: 'Support the vehicle',
    text: 'Level ground, wheels chocked, rated stands under the maker’s lifting points. Never work under a jack alone.',
    source: 'common practice, no source',
  },
  wiring: {
    title: 'Fuse every feed',
    text: 'Put the fuse close to the source and size it to protect the wire. Do not fit a larger breaker to stop trips before volts and amps are measured. Disconnect the battery’s ground first. Follow local codes; leave high-voltage circuits to licensed people.',
    source: 'common practice, no source',
  },
  engine: {
    title: 'Running engine',
    text: 'Carbon monoxide, belts and hot exhaust: run it outdoors or with extraction. Logging while driving is for a passenger or a closed course, never for the driver.',
    source: 'common practice, no source',
  },
  freeze: {
    title: 'Freezing splits cores',
    text: 'A few degrees of frost break a core filled with water. Below 40 % by volume a coolant promises neither freeze nor corrosion protection.',
    source: 'scope of ASTM D3306',
  },
  kitchen: {
    title: 'Ice and boil',
    text: 'Open pot only, never sealed; steam and a rolling boil burn, and so does the element or ring long after it is switched off. No glycol on the stove. Let the probe cool between the baths; keep leads, logger and bare mains away from water.',
    source: 'common practice, no source',
  },
  limits: {
    title: 'What this sheet cannot know',
    text: 'A core predicted from a catalogue point or from its size is good to about ±20 %. Measure before relying on it: knock can destroy an engine before the coolant looks hot.',
    source: 'wind-tunnel comparison, Ng, Johnson & Watkins, IMechE 2005; common practice',
  },
} as const satisfies Record<string, Caution>;

export type CautionId = keyof typeof CAUTIONS;
