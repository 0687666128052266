import { finEfficiency, surfaceEfficiency } from '$lib/solver/cores/geometry/finEfficiency';
import {
  colburnLouvered,
  fanningLouvered,
  type LouveredFin,
} from '$lib/solver/cores/geometry/louveredFin';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const fin = (given: Given): LouveredFin => ({
  louverAngleDegrees: given.number('louver_angle_deg'),
  louverPitch: given.number('louver_pitch'),
  louverLength: given.number('louver_length'),
  finPitch: given.number('fin_pitch'),
  finHeight: given.number('fin_height'),
  flowDepth: given.number('flow_depth'),
  finThickness: given.number('fin_thickness'),
  tubePitch: given.number('tube_pitch'),
  tubeHeight: given.number('tube_height'),
  hydraulicDiameter: given.number('hydraulic_diameter'),
});

export const louveredFinAdapters: Record<string, Adapter> = {
  'chang-wang-j': (given) => ({ j: colburnLouvered(given.number('Re_Lp'), fin(given)) }),
  'chang-f': (given) => ({ f: fanningLouvered(given.number('Re_Lp'), fin(given)) }),
  'fin-efficiency-plain': (given) => ({
    efficiency: finEfficiency({
      h: given.number('h'),
      k: given.number('k'),
      thickness: given.number('fin_thickness'),
      halfHeight: given.number('half_height'),
    }),
  }),
  'surface-efficiency': (given) => ({
    efficiency: surfaceEfficiency(
      given.number('fin_efficiency'),
      given.number('fin_area_over_total'),
    ),
  }),
};
