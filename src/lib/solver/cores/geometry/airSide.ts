/** The air through a finned core: coefficient, fin efficiency, pressure lost. */
import { airConductivity, airCp, airDensity, airViscosity } from '../../air/air';
import { requireWithin, type Note } from '../../errors';
import { ductFlow } from './duct';
import { finEfficiency, surfaceEfficiency } from './finEfficiency';
import {
  LOUVERED_DATA,
  LOUVERED_RE,
  colburnLouvered,
  fanningLouvered,
  type LouveredFin,
} from './louveredFin';
import {
  OFFSET_STRIP_DATA,
  OFFSET_STRIP_RE,
  colburnOffsetStrip,
  fanningOffsetStrip,
  offsetStripDiameter,
  offsetStripRatios,
  type OffsetStripFin,
} from './offsetStripFin';
import { outsideData } from './ranges';
import type { CoreSurfaces } from './surfaces';
import type { CoreGeometry } from './types';

/**
 * Sum of what entering and leaving the core lose beyond the change of velocity head, on the core
 * velocity. Kays & London's charts give 0.4 to 0.6 for passages this short; from memory.
 */
export const END_LOSS = 0.5;

/** Rolled fin stock, m. @source handbook value, from memory */
const FIN_ROUGHNESS = 1.5e-6;

export interface AirAt {
  /** kg/s through the whole core. */
  readonly massFlow: number;
  /** Mean of the air in the core, K. */
  readonly temperature: number;
  /** Pa absolute. */
  readonly pressure: number;
}

export interface AirSide {
  readonly Re: number;
  /** Length the Reynolds number is told on, m. */
  readonly length: number;
  readonly j: number;
  /** Fanning. */
  readonly f: number;
  /** W/(m² K) */
  readonly h: number;
  readonly finEfficiency: number;
  readonly surfaceEfficiency: number;
  /** W/K */
  readonly hA: number;
  /** kg/(m² s) in the free flow area. */
  readonly massVelocity: number;
  /** Pa */
  readonly pressureDrop: number;
  readonly notes: readonly Note[];
}

/** The fin of a core as the louver law takes it. */
export function louveredFinOf(g: CoreGeometry, s: CoreSurfaces): LouveredFin {
  if (g.fin.kind !== 'louvered') throw new TypeError('not a louvered fin');
  return {
    louverAngleDegrees: g.fin.louverAngleDegrees,
    louverPitch: g.fin.louverPitch,
    louverLength: g.fin.louverLength,
    finPitch: g.finPitch,
    finHeight: g.finHeight,
    flowDepth: g.depth,
    finThickness: g.finThickness,
    tubePitch: g.tubeHeight + g.finHeight,
    tubeHeight: g.tubeHeight,
    hydraulicDiameter: s.airDiameter,
  };
}

/** The same for the offset-strip law. */
export function offsetStripFinOf(g: CoreGeometry): OffsetStripFin {
  if (g.fin.kind !== 'offset-strip') throw new TypeError('not an offset-strip fin');
  return {
    spacing: g.finPitch - g.finThickness,
    height: g.finHeight - g.finThickness,
    thickness: g.finThickness,
    stripLength: g.fin.stripLength,
  };
}

/**
 * Air side of a core.
 *
 * h = j G cp / Pr^(2/3); hA = eta_o h A; dp = G²/(2 rho) (f A/A_c + K), the change of density along the
 * core left to the mean.
 *
 * @throws {@link OutOfRangeError} for a mass flow at or below zero, or a Reynolds number beyond the law
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984; the law of the fin as told there
 */
export function airSide(g: CoreGeometry, s: CoreSurfaces, air: AirAt): AirSide {
  requireWithin('air side', { massFlow: [1e-6, 10] }, { massFlow: air.massFlow });
  const { temperature: T, pressure: p } = air;
  const mu = airViscosity(T);
  const cp = airCp(T);
  const Pr = (mu * cp) / airConductivity(T);
  const G = air.massFlow / s.freeFlowArea;
  const surface = lawOf(g, s, G / mu, Pr);
  const h = (surface.j * G * cp) / Pr ** (2 / 3);
  const efficiency = finEfficiency({
    h,
    k: g.conductivity,
    thickness: g.finThickness,
    halfHeight: g.finHeight / 2,
  });
  const whole = surfaceEfficiency(efficiency, s.finArea / s.airArea);
  return {
    ...surface,
    h,
    finEfficiency: efficiency,
    surfaceEfficiency: whole,
    hA: whole * h * s.airArea,
    massVelocity: G,
    pressureDrop:
      ((G * G) / (2 * airDensity({ T, p }))) *
      ((surface.f * s.airArea) / s.freeFlowArea + END_LOSS),
  };
}

/** j and f of the surface; `GOverMu` is G/mu, 1/m. */
function lawOf(
  g: CoreGeometry,
  s: CoreSurfaces,
  GOverMu: number,
  Pr: number,
): Pick<AirSide, 'Re' | 'length' | 'j' | 'f' | 'notes'> {
  switch (g.fin.kind) {
    case 'louvered': {
      const fin = louveredFinOf(g, s);
      const Re = GOverMu * fin.louverPitch;
      return {
        Re,
        length: fin.louverPitch,
        j: colburnLouvered(Re, fin),
        f: fanningLouvered(Re, fin),
        notes: [
          ...outsideData('Louvered fin', LOUVERED_DATA, fin),
          ...outsideData('Louvered fin', { Re: LOUVERED_RE.fitted }, { Re }),
        ],
      };
    }
    case 'offset-strip': {
      const fin = offsetStripFinOf(g);
      const length = offsetStripDiameter(fin);
      const Re = GOverMu * length;
      return {
        Re,
        length,
        j: colburnOffsetStrip(Re, fin),
        f: fanningOffsetStrip(Re, fin),
        notes: [
          ...outsideData('Offset-strip fin', OFFSET_STRIP_DATA, offsetStripRatios(fin)),
          ...outsideData('Offset-strip fin', { Re: OFFSET_STRIP_RE.fitted }, { Re }),
        ],
      };
    }
    case 'plain': {
      const a = g.finPitch - g.finThickness;
      const ratio = Math.min(a, g.finHeight) / Math.max(a, g.finHeight);
      const Re = GOverMu * s.airDiameter;
      const flow = ductFlow(Re, Pr, {
        diameter: s.airDiameter,
        length: g.depth,
        sideRatio: ratio,
        roughness: FIN_ROUGHNESS,
      });
      // j = Nu / (Re Pr^(1/3)); Fanning is a quarter of Darcy.
      return {
        Re,
        length: s.airDiameter,
        j: flow.Nu / (Re * Math.cbrt(Pr)),
        f: flow.f / 4,
        notes: flow.notes,
      };
    }
  }
}
