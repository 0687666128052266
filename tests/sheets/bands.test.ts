/**
 * Every plot and bar chart of every sheet is either drawn with the ± of its inputs or excused with a
 * reason: a plot that somebody adds must be decided here.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setPm, startCandidate } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { BAND_SOURCES } from '$lib/job/sure/bands';
import { saying, marks, whiskered } from '../../sheets/bands/marks';
import { demoJob, edited } from './jobs';

type Decision =
  /** Bands or whiskers of a source, the curves by name. */
  | { readonly source: string; readonly curves: readonly string[] }
  /** Draws its ± itself, from other than the loop's inputs; words that its code must hold. */
  | { readonly own: string; readonly code: string }
  | { readonly excused: string };

const of = (source: string, ...curves: string[]): Decision => ({ source, curves });
const excused = (why: string): Decision => ({ excused: why });

const DECIDED: Readonly<Record<string, Decision>> = {
  'core-from-measures: {CORE_WORDS[core].title}: conductance': of('measures', 'frontExchanger UA'),
  'core-from-measures: {CORE_WORDS[core].title}: pressure the air loses': of(
    'measures',
    'frontExchanger loss',
  ),
  'diagnosis: Causes, likeliest first': excused(
    'probabilities: the ± of the readings and of the loop are in them',
  ),
  'diagnosis: Next reading: doubt removed for each minute of work': excused(
    'an expectation over all that the readings leave open',
  ),
  'diagnosis: How bad it may be': excused('is itself the distribution of the value'),
  'exchangers: Front exchanger and its air': of('exchangers', 'velocity'),
  'exchangers: Front exchanger and its liquid': of('exchangers', 'flow'),
  'exchangers: Charge cooler and its air': of('exchangers', 'charge'),
  'exchangers: Front exchanger: where the temperature difference goes': of(
    'exchangers',
    'front air',
    'front liquid',
    'front rest',
  ),
  'exchangers: Charge cooler: where the temperature difference goes': of(
    'exchangers',
    'chargeCooler air',
    'chargeCooler liquid',
  ),
  'fans-and-face-airflow: Face velocity against vehicle speed': of('face', 'asIs'),
  'fans-and-face-airflow: Fans against the stack': of('fans', 'fans', 'asked'),
  'fans-and-face-airflow: Part by part of the face': of('face', 'shrouded', 'open'),
  'fans-and-face-airflow: Past the other cores and beside them': of('face', 'clear', 'covered'),
  'fans-and-face-airflow: Where the driving pressure goes, behind the shroud': of(
    'fans',
    'core',
    'stack',
  ),
  'fans-and-face-airflow: What the box says, what the core gets': of('fans', 'free', 'standing'),
  'flow-meter: Pulses per volume against flow': {
    own: '± of the bucket test by propagation, whiskers on its runs',
    code: 'slipBand',
  },
  'how-sure: On a cooler or a hotter day': of('ambient', 'charge', 'reservoir'),
  'how-sure: {SUBJECT[id].name}': excused('is itself the distribution of the result'),
  'how-sure: {title}': excused('shares of the variance; the error of each stands beside it'),
  'instruments: How sure the heat is': excused('is itself a ±, against that of the probes'),
  'log: {title}': excused('what the fit leaves of each reading: the readings are as logged'),
  'log: curves': excused('the log itself: readings as they were taken'),
  'loop-balance: Why it settles there': of('balance', 'entering', 'leaving'),
  'loop-balance: Where the heat comes from': of('balance', 'charge', 'engineSoak', 'pump'),
  'probe: Degrees per count': { own: 'tolerances of the resistors', code: 'countStepsBetween' },
  'probe: Reading against true temperature': {
    own: 'tolerances of the resistors',
    code: 'shownBetween',
  },
  'probe: Error over the range': { own: 'tolerances of the resistors', code: 'presentBand' },
  'pump-and-restriction: Where the head goes': of('headShares', 'suction', 'back'),
  'pump-and-restriction: {worst.title}': of('headShares', 'run friction', 'run fittings'),
  'pump-and-restriction: Pump and loop': of('heads', 'pump', 'loop'),
  'pump-and-restriction: Flow against hose bore': of('pumpChoices', 'bore', 'kept'),
  'pump-and-restriction: What a dash size gives': of('pumpChoices', 'dash 12-hose-bore'),
  'pump-and-restriction: A second pump': of('pumpChoices', 'one', 'two-in-parallel', 'loop'),
  'pump-and-restriction: Flow with one and with two': of(
    'pumpChoices',
    'flow one',
    'flow two-in-series',
  ),
  'pump-feed: Volts at the pump against the wire': of('feed', 'volts'),
  'pump-feed: Flow against the wire': of('feed', 'flow'),
  'pump-feed: Breaker: time to open against current': of('feed', 'cold', 'warm'),
  'reservoir: What one pull does at every volume': of('reservoir', 'rise'),
  'reservoir: One pull and the way back, {WORDS[study.around]}': of('reservoir', 'pull'),
  'reservoir: From cold, held {WORDS[study.duty]}': of('reservoir', 'held'),
  'runaway: Heat entering and heat leaving': of('runawayHeats', 'entering', 'leaving'),
  'runaway: Every crossing against {KNOB_WORDS[study.knob]}': of('runawayBranch', 'cold'),
  'suction-margin: How hot before it counts': of('suction', 'margin'),
  "suction-margin: Map of the suction margin{planned?.flows ? ', as found' : ''}": of(
    'suction',
    'nothing',
  ),
  'suction-margin: Map of the suction margin, candidate': of('suction', 'nothing'),
  'suction-margin: What helps: suction head gained by each': of('suction', 'cap', 'bore'),
  'warm-up-and-recovery: Temperatures over the drive': of('drive', 'chargeOut', 'reservoir'),
  'warm-up-and-recovery: Heat in and heat out': of('drive', 'heatIn', 'heatOut'),
  'warm-up-and-recovery: The drive with what happens on the way': of(
    'events',
    'chargeOut',
    'reservoir',
  ),
  'warm-up-and-recovery: Flow on the way': of('events', 'flow'),
  'warm-up-and-recovery: Volts at the pump on the way': of('events', 'volts'),
  'warm-up-and-recovery: Ice left in the tank': of('events', 'ice'),
  'warm-up-and-recovery: What holds the heat': of('drive', 'mass reservoirLiquid', 'mass hoses'),
  'warm-up-and-recovery: Heat stored from start to end of the drive': of(
    'drive',
    'stored reservoir',
  ),
  'upgrades: Best for the money': {
    own: 'whiskers by the draws of each choice',
    code: 'halfWidth',
  },
  'upgrades: {title}': { own: 'whiskers by the draws of each choice', code: 'plusMinus' },
  'what-it-takes: {one.kind.name} against {one.input.name .charAt(0) .toLowerCase()}{one.input.name.slice(1)}':
    of('inversion', 'result'),
  'what-it-takes: From the day’s air up to the result': of('inversion', 'rung face', 'rung front'),
  'what-it-takes: What a tenth of another input would bring then': of(
    'inversion',
    'rival fans.volts',
  ),
};

interface Found {
  readonly sheet: string;
  readonly title: string;
  /** Constant of the source in whose bands it stands. */
  readonly source: string | null;
  readonly file: string;
}

const TAGS = /<(\/?)(Banded|Plot|Bars|TimePlots)\b([^>]*?(?:=>[^>]*?)*)>/gs;

/** Plots in a component, in the order of the page, with the bands round them. */
function plotsIn(sheet: string, file: string): Found[] {
  const text = readFileSync(`sheets/${sheet}/${file}`, 'utf8').replace(/<!--.*?-->/gs, '');
  const open: string[] = [];
  return [...text.matchAll(TAGS)].flatMap(([, closes, tag, attributes]): Found[] => {
    if (tag === 'Banded') {
      if (closes) open.pop();
      else open.push(/source=\{(\w+)\}/.exec(attributes!)![1]!);
      return [];
    }
    if (closes) return [];
    const title =
      /\btitle="((?:[^"{]|\{[^}]*\})*)"/s.exec(attributes!)?.[1] ??
      /\btitle=(\{[^}]*\})/.exec(attributes!)?.[1] ??
      /(\{title\})/.exec(attributes!)?.[1] ??
      'curves';
    const name = title.replace(/\s+/g, ' ');
    return [{ sheet, title: name, source: open.at(-1) ?? null, file }];
  });
}

const ALL = readdirSync('sheets', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .flatMap(({ name }) =>
    readdirSync(`sheets/${name}`)
      .filter((file) => file.endsWith('.svelte'))
      .flatMap((file) => plotsIn(name, file)),
  )
  .filter(({ sheet }) => sheet !== 'bands' && sheet !== 'working' && sheet !== 'wiring');

const keyOf = ({ sheet, title }: Found) => `${sheet}: ${title}`;

/** Constants as the sheets import them, by the name of their source. */
const CONSTANTS: Readonly<Record<string, string>> = {
  AMBIENT_DAYS: 'ambient',
  BALANCE: 'balance',
  DRIVE: 'drive',
  EVENTS: 'events',
  EXCHANGERS: 'exchangers',
  FACE: 'face',
  FANS: 'fans',
  FEED: 'feed',
  HEADS: 'heads',
  HEAD_SHARES: 'headShares',
  INVERSION: 'inversion',
  MEASURES: 'measures',
  PUMP_CHOICES: 'pumpChoices',
  RESERVOIR: 'reservoir',
  RUNAWAY_BRANCH: 'runawayBranch',
  RUNAWAY_HEATS: 'runawayHeats',
  SUCTION: 'suction',
};

describe('the ± of every plot', () => {
  it('is decided, for all there are and no other', () => {
    expect(ALL.map(keyOf).toSorted()).toEqual(Object.keys(DECIDED).toSorted());
  });

  it.each(ALL.map((found) => [keyOf(found), found] as const))('%s', (key, found) => {
    const decision = DECIDED[key]!;
    if ('excused' in decision) {
      expect(decision.excused.length).toBeGreaterThan(20);
      expect(found.source).toBeNull();
    } else if ('own' in decision) {
      const charts = readFileSync(`sheets/${found.sheet}/charts.ts`, 'utf8');
      expect(charts).toContain(decision.code);
    } else {
      expect(CONSTANTS[found.source ?? '']).toBe(decision.source);
      const folder = `sheets/${found.sheet}`;
      const code = readdirSync(folder).map((file) => readFileSync(`${folder}/${file}`, 'utf8'));
      // What is drawn of the source is said of it, too.
      expect(code.some((text) => /\b(marks|whiskered)\(/.test(text))).toBe(true);
      expect(readFileSync(`${folder}/${found.file}`, 'utf8')).toMatch(
        /\b(says|whiskersSay|nothing)\(/,
      );
    }
  });

  it('has every source in the list of the other thread', () => {
    const used = Object.values(DECIDED).flatMap((d) => ('source' in d ? [d.source] : []));
    expect([...new Set(used)].toSorted()).toEqual(BAND_SOURCES.map(({ name }) => name).toSorted());
  });
});

/** The demonstration with something unsure in every part, and all that its drives may have. */
function unsureJob() {
  const job = edited(demoJob(), {
    'airPath.stackShare': '60 %',
    'coolant.kind': 'water',
    'events.ice': '1.3 kg',
    'start.kind': 'given',
    'start.temperature': '33 °F',
    'events.pumpOffAt': '5 min',
    'events.pumpOnAt': '6 min',
    'reservoir.cap': '0 psi',
    'pump.voltsFrom': 'feed',
  });
  const pm: Readonly<Record<string, string>> = {
    'feed.protection.rated': '1 A',
    'frontExchanger.measure.depth': '5 mm',
    'frontExchanger.rating.heat': '1 kW',
    'chargeCooler.rating.heat': '1 kW',
    'hose.suction.length': '2 in',
  };
  return Object.entries(pm).reduce(
    (current, [path, text]) => setPm(current, 'asFound', path, text).job,
    job,
  );
}

describe('bands of a job with something unsure in every part', () => {
  const { asFound, candidate } = evaluate(startCandidate(unsureJob()));
  const sides = candidate ? [asFound, candidate] : [asFound];
  it.each(BAND_SOURCES.map((source) => [source.name, source] as const))(
    '%s: every curve that is decided has one, in order, within itself',
    (name, source) => {
      const bands = source.bands(asFound, sides)!;
      const wanted = Object.values(DECIDED).flatMap((d) =>
        'source' in d && d.source === name ? d.curves : [],
      );
      for (const curve of wanted) {
        const band = bands.of[curve] ?? [];
        expect(band.length, curve).toBeGreaterThan(0);
        for (const [i, [x, low, high, middle]] of band.entries()) {
          expect([x, low, high, middle].every(Number.isFinite), curve).toBe(true);
          expect(low <= middle && middle <= high, curve).toBe(true);
          expect(i === 0 || x > band[i - 1]![0], curve).toBe(true);
        }
        const drawn = [bands, null];
        const seen = [
          ...marks(drawn, curve),
          ...whiskered([{ id: curve }], drawn).filter((row) => 'foundEnds' in row),
        ];
        expect(seen.length, curve).toBeGreaterThan(0);
        expect(saying(drawn, 'Bands')(curve), curve).toContain('95 of 100');
      }
      // Plain data: it crosses from the other thread.
      expect(structuredClone(bands)).toEqual(bands);
    },
    60_000,
  );

  it('say how many loops are left out where that is more than a few', () => {
    const bands = { of: { a: [[0, 1, 2, 1.5]] }, drawn: 100, without: { a: 7 } } as const;
    expect(saying([bands], 'Whiskers')('a')).toContain('Left out: 7 of 100 loops drawn');
    expect(saying([{ ...bands, without: { a: 2 } }], 'Whiskers')('a')).not.toContain('Left out');
    expect(saying([bands], 'Bands')('b')).toBe('');
    expect(saying([null], 'Bands')('a')).toBe('');
  });
});
