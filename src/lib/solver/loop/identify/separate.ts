/** Which further driving or reading would separate what a log could not. */
import type { Identified, IdentifyRequest } from './identify';
import { deviationsOf, sensitivities, type Design } from './information';
import type { Noise } from './problem';
import type { ChannelName, Drive, ParameterName, Parameters } from './types';

/** One proposal and what it would bring. */
export interface Proposal {
  readonly id: 'pulses' | 'held' | 'cool-down' | 'flow-steps' | 'more-probes';
  /** What to do, as an instruction. */
  readonly says: string;
  /** Share of each weak parameter's deviation that would be left, the log and the proposal together. */
  readonly left: readonly { readonly parameter: ParameterName; readonly share: number }[];
  /** Largest deviation left over, as a share of the parameter. */
  readonly worst: number;
}

/** Length of a proposed drive, s, and of its rows. */
const LENGTH = 600;
const ROW = 1;
/** Share of the load that idling still brings (common practice, no source). */
const IDLE = 0.1;

/**
 * Proposals ranked by how well they would tell the parameters named as weak, the log's own readings
 * counted too. What the proposals share with the log: ambient, levels of heat and flow, noise.
 * @returns empty where the log already tells all
 */
export function proposals(request: IdentifyRequest, found: Identified): readonly Proposal[] {
  const weak = [
    ...new Set(found.separability.weak.flatMap(({ parameters }) => parameters)),
  ] as ParameterName[];
  if (weak.length === 0) return [];
  const { model, drive } = request;
  const { free, parameters } = found;
  const noise: Noise = Object.fromEntries(found.channels.map((c) => [c.channel, c.noise]));
  const own = found.fit.jacobian;
  const n = free.length;
  const before = deviationsOf([own], n);

  const rate = (design: Design, id: Proposal['id'], says: string): Proposal => {
    // Starting temperatures of another drive are another matter: settled, they are known.
    const seeking = free.filter((name) => !name.endsWith('Start'));
    const small = sensitivities(design, parameters, seeking);
    const rows = small.length / seeking.length;
    const wide = new Float64Array(rows * n);
    seeking.forEach((name, j) =>
      wide.set(small.subarray(j * rows, (j + 1) * rows), free.indexOf(name) * rows),
    );
    const after = deviationsOf([own, wide], n);
    const at = (name: ParameterName) => free.indexOf(name);
    const left = weak.map((parameter) => ({
      parameter,
      share: after[at(parameter)]! / before[at(parameter)]!,
    }));
    const worst = Math.max(
      ...weak.map((name) => after[at(name)]! / Math.max(Math.abs(parameters[name]), 1e-9)),
    );
    return { id, says, left, worst };
  };

  const list = [
    rate(
      { model, drive: pulses(drive), noise },
      'pulses',
      'Four pulls of 15 s, a minute and a half of idling between them, logged throughout.',
    ),
    rate(
      { model, drive: held(drive), noise },
      'held',
      'One steady load held until every temperature stands, ten minutes or more.',
    ),
    rate(
      { model, drive: coolDown(drive), noise },
      'cool-down',
      'Load for three minutes, then none: the pump runs on and the cooling is logged for seven.',
    ),
    ...flowSteps(request, parameters).map((stepped) =>
      rate(
        { model, drive: stepped, noise },
        'flow-steps',
        'A steady load with the pump’s flow pinched to half, two minutes in every four, flow logged.',
      ),
    ),
    rate(
      { model, drive, noise: allProbes(noise), reads: (channel) => !(channel in noise) },
      'more-probes',
      'The same drive with a probe at every liquid outlet: charge cooler, reservoir, pump, front exchanger.',
    ),
  ];
  return list.sort((a, b) => a.worst - b.worst);
}

const rowsOf = Math.round(LENGTH / ROW) + 1;
const times = () => Float64Array.from({ length: rowsOf }, (_, k) => k * ROW);

/** The log's own columns: their largest where loaded; where not, their least or idling, if that is less. */
function shaped(drive: Drive, loaded: (t: number) => boolean): Drive {
  const t = times();
  const steady = (column: Float64Array | undefined) =>
    column && t.map(() => column.reduce((a, b) => a + b, 0) / column.length);
  const between = (column: Float64Array | undefined, idle: (high: number) => number) => {
    if (!column) return undefined;
    const high = column.reduce((a, b) => Math.max(a, b), -Infinity);
    const least = column.reduce((a, b) => Math.min(a, b), Infinity);
    const low = Math.min(least, idle(high));
    return t.map((time) => (loaded(time) ? high : low));
  };
  const tenth = (high: number) => IDLE * high;
  const ambient = drive.ambient[0]!;
  return {
    t,
    between: 'held',
    ambient: steady(drive.ambient)!,
    heat: between(drive.heat, tenth),
    chargeAirIn: between(drive.chargeAirIn, (high) => ambient + IDLE * (high - ambient)),
    chargeAirRate: between(drive.chargeAirRate, (high) => high),
    frontAirRate: steady(drive.frontAirRate),
    liquidRate: steady(drive.liquidRate),
    bay: steady(drive.bay),
    chargeShape: steady(drive.chargeShape),
    frontShape: steady(drive.frontShape),
    chargeFilm: steady(drive.chargeFilm),
    frontFilm: steady(drive.frontFilm),
    frontPower: steady(drive.frontPower),
    frontFilmPower: steady(drive.frontFilmPower),
  };
}

const pulses = (drive: Drive) => shaped(drive, (t) => t % 105 < 15 && t < 420);
const held = (drive: Drive) => shaped(drive, () => true);
const coolDown = (drive: Drive) => shaped(drive, (t) => t < 180);

/** Half flow in two of four minutes; only where the flow is logged or one rate holds throughout. */
function flowSteps({ drive, free }: IdentifyRequest, parameters: Parameters): Drive[] {
  // Where the rate itself is sought a second flow would be a second unknown.
  if (!drive.liquidRate && free.includes('capacityRate')) return [];
  const loaded = held(drive);
  const rate = loaded.liquidRate ?? loaded.t.map(() => parameters.capacityRate);
  return [{ ...loaded, liquidRate: rate.map((C, k) => (loaded.t[k]! % 240 < 120 ? C : 0.5 * C)) }];
}

/** Every outlet read, as noisily as the noisiest channel logged. */
function allProbes(noise: Noise): Noise {
  const worst = Math.max(...Object.values(noise));
  const all: readonly ChannelName[] = ['charge', 'reservoir', 'pump', 'front'];
  return Object.fromEntries(
    all.filter((channel) => !(channel in noise)).map((channel) => [channel, worst]),
  );
}
