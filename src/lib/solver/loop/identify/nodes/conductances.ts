/** Both cores row by row, split at their metal, remembered while what they depend on stays. */
import { exchangerArrangement } from '../../../cores/arrangement';
import { EFFECTIVENESS_LAW } from '../../../cores/laws';
import { splitAtMetal } from '../../forcing';
import { throughFilm } from '../../front';
import type { Arrangement } from '../../types';
import type { Drive, NodeModel, Parameters } from '../types';

/** Conductances at each row, W/K: air to metal, metal to liquid. */
export interface CoreRows {
  readonly air: Float64Array;
  readonly liquid: Float64Array;
}

interface Flows {
  readonly airRate: Float64Array;
  readonly shape: Float64Array;
  readonly film: Float64Array;
  /** Powers of {@link Drive}; left out: 1. */
  readonly power?: Float64Array;
  readonly filmPower?: Float64Array;
}

function coreRows(
  core: Arrangement,
  { airRate, shape, film, power, filmPower }: Flows,
  described: number,
): (UA: number, airScale: number, liquid: Float64Array) => CoreRows {
  const rows = airRate.length;
  const laws = {
    airSmaller: EFFECTIVENESS_LAW[exchangerArrangement(core, true)],
    liquidSmaller: EFFECTIVENESS_LAW[exchangerArrangement(core, false)],
  };
  return (UA, airScale, rate) => {
    const share = UA / described;
    const air = new Float64Array(rows);
    const liquid = new Float64Array(rows);
    for (let k = 0; k < rows; k++) {
      const C_air = airScale * airRate[k]!;
      const C = rate[k]!;
      const least = Math.min(C_air, C);
      const filmShare = filmPower ? share ** filmPower[k]! : share;
      const airSide = throughFilm(C_air, filmShare * film[k]!);
      if (!(least > 0)) {
        // What stands between two fluids that do not both move passes no heat on.
        air[k] = airSide;
        continue;
      }
      const law = C_air <= C ? laws.airSmaller : laws.liquidSmaller;
      const own = described * (power ? share ** power[k]! : share) * shape[k]!;
      const G = least * law(own / least, least / Math.max(C_air, C));
      if (!(G > 0)) {
        air[k] = airSide;
        continue;
      }
      const split = splitAtMetal(G, airSide);
      air[k] = split.air;
      liquid[k] = split.liquid;
    }
    return { air, liquid };
  };
}

/** Stated heat goes into the metal; only the liquid's film is asked. */
function statedRows(film: Float64Array) {
  return (rate: Float64Array): CoreRows => ({
    air: new Float64Array(film.length),
    liquid: film.map((hA, k) => throughFilm(rate[k]!, hA)),
  });
}

/**
 * Worked out again only when a parameter they depend on moved: most of those that a fit moves are masses
 * and starting temperatures.
 */
export function coresOf(model: NodeModel, drive: Drive) {
  const { charge, front, described } = model;
  const rate = drive.liquidRate;
  const frontRows = coreRows(
    front.arrangement,
    {
      airRate: drive.frontAirRate!,
      shape: drive.frontShape!,
      film: drive.frontFilm!,
      power: drive.frontPower!,
      filmPower: drive.frontFilmPower!,
    },
    described.frontUA,
  );
  const film = drive.chargeFilm!;
  const chargeAir = charge.by === 'UA' ? drive.chargeAirRate! : null;
  const byAir =
    charge.by === 'UA'
      ? coreRows(
          charge.arrangement,
          { airRate: chargeAir!, shape: drive.chargeShape!, film },
          described.chargeUA,
        )
      : null;
  const stated = statedRows(film);
  const known = {
    ...{ front: lastTwo<CoreRows>(), charge: lastTwo<CoreRows>() },
    ...{ liquid: lastTwo<Float64Array>(), air: lastTwo<Float64Array>() },
  };
  const rows = film.length;
  return (p: Parameters) => {
    const flow = rate ? p.flowScale : p.capacityRate;
    const liquid = known.liquid([flow], () =>
      rate ? rate.map((C) => flow * C) : new Float64Array(rows).fill(flow),
    );
    return {
      liquid,
      chargeAir: chargeAir && known.air([p.heatScale], () => chargeAir.map((C) => p.heatScale * C)),
      front: known.front([p.frontUA, flow], () => frontRows(p.frontUA, 1, liquid)),
      charge: byAir
        ? known.charge([p.chargeUA, p.heatScale, flow], () =>
            byAir(p.chargeUA, p.heatScale, liquid),
          )
        : known.charge([flow], () => stated(liquid)),
    };
  };
}

/** The last two results: a derivative goes to and fro between where it stands and one step aside. */
function lastTwo<T>() {
  let kept: { readonly key: readonly number[]; readonly value: T }[] = [];
  return (key: readonly number[], make: () => T): T => {
    const found = kept.find((one) => one.key.every((x, i) => x === key[i]));
    if (found) {
      // The one asked for most lately stays.
      if (kept[0] !== found) kept = [found, kept[0]!];
      return found.value;
    }
    const value = make();
    kept = [{ key, value }, ...kept.slice(0, 1)];
    return value;
  };
}
