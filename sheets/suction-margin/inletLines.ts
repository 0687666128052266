/** Lines from the air over the tank to the pressure at the pump's inlet. */
import type { Note } from '$lib/solver/errors';
import { waterMoleFraction as waterShare } from '$lib/solver/fluids/coolant';
import { pressureAtAltitude, vapourPressure, waterMoleFraction } from '$lib/solver/fluids/formulas';
import { MOLAR_MASS } from '$lib/solver/fluids/glycol';
import { saturationPressure } from '$lib/solver/fluids/saturation';
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import { fittingK } from '$lib/solver/hydraulics/hose';
import { reynolds, runHead, velocityInBore } from '$lib/solver/hydraulics/formulas';
import { runShares } from '$lib/solver/hydraulics/shares';
import type { Coolant, Loop, SteadySolution } from '$lib/solver/loop/types';
import { inletPressureFormula, levelAboveEyeFormula } from '$lib/solver/suction/formulas';
import { FACING } from '$lib/solver/suction/inlet';
import { fittingLines, frictionLines, propertyNote } from '../pump-and-restriction/hoseLines';

/** Air over the tank, and vapour pressure of what is in it. */
export function pressureLines({ site, coolant }: Loop, s: SteadySolution) {
  const air = formulaLine(
    pressureAtAltitude,
    { h: site.altitude },
    {
      id: 'ambient-pressure',
      statement: 'Pressure of the air at this altitude',
      why: 'Nothing pulls liquid into a pump: the air over the tank pushes it, and there is less of it up high.',
    },
  );
  const T = s.liquid.temperature;
  const share = shareLine(coolant);
  const vapour = formulaLine(
    vapourPressure,
    { x_w: share?.value ?? waterShare(coolant), p_sat: saturationPressure(T) },
    {
      id: 'vapour-pressure',
      statement: 'Vapour pressure of the liquid leaving the reservoir',
      why: 'What the air and the cap push with, less this, is all that keeps bubbles away. It doubles about every 30 °F (17 K).',
      notes: [SATURATION_NOTE],
    },
  );
  return { air, vapour, lines: [air, ...(share ? [share] : []), vapour] };
}

const SATURATION_NOTE: Note = {
  code: 'liquid.saturation',
  message:
    'Saturation pressure of water at the reservoir outlet’s temperature: IAPWS R7-97(2012); below freezing Murphy & Koop 2005 (from memory). Plain water: x is 1.',
};

function shareLine(coolant: Coolant): FormulaLine | null {
  if (coolant.kind === 'water') return null;
  return formulaLine(
    waterMoleFraction,
    { w: coolant.massFraction, m: MOLAR_MASS[coolant.kind] / MOLAR_MASS.water },
    {
      id: 'water-share',
      statement: 'Share of water among the molecules of the mixture',
      why: 'Glycol hardly evaporates, so the mixture boils later than water.',
    },
  );
}

/** Level above the eye, the suction hose, and what pressure is left at the inlet. */
export function inletLines(loop: Loop, s: SteadySolution, p_ambient: number) {
  const level = formulaLine(
    levelAboveEyeFormula,
    {
      z_i: loop.reservoir.levelAbovePump,
      s: FACING[loop.pump.inletFaces ?? 'level'],
      d: loop.pump.eyeDepth ?? 0,
    },
    {
      id: 'level-above-eye',
      statement: 'Liquid level above the impeller’s eye',
      why: 'A foot of level is a foot of suction head, hot or cold.',
    },
  );
  const hose = hoseLines(loop, s);
  const shortOfAll = s.operating.notes.some(({ code }) => code === 'suction.below-zero');
  const pressure = shortOfAll
    ? []
    : [
        formulaLine(
          inletPressureFormula,
          {
            p_ambient,
            p_tank_gauge: loop.reservoir.capGauge,
            rho: s.liquid.density,
            z: level.value,
            h_suction: s.operating.shares[0]!.head,
          },
          {
            id: 'inlet-pressure',
            statement: 'Pressure that arrives at the pump’s inlet, absolute',
            why: 'A compound gauge at the inlet shows it (above or below the air), less the velocity head.',
          },
        ),
      ];
  return { level, pressure: pressure[0] ?? null, lines: [level, ...hose, ...pressure] };
}

function hoseLines({ hoses, coolant }: Loop, s: SteadySolution): Line[] {
  const hose = hoses.suction;
  const run = runShares(s.operating)[0]!;
  const { bore: D } = hose;
  const { density: rho, viscosity: mu } = s.liquid;
  return [
    formulaLine(
      velocityInBore,
      { Q: s.operating.flow, D },
      {
        id: 'suction-velocity',
        statement: 'Velocity in the suction hose',
        why: 'The flow is that of sheet 2. Ahead of a pump 4 ft/s (1.2 m/s) is good practice (common practice, no source).',
      },
    ),
    formulaLine(
      reynolds,
      { rho, V: run.velocity!, D, mu },
      {
        id: 'suction-reynolds',
        statement: 'Reynolds number there',
        why: 'Cold glycol may creep here, and then a longer hose costs head in step with its length.',
        notes: [propertyNote(coolant.kind)],
      },
    ),
    ...frictionLines(hose, run, 'suction'),
    ...fittingLines(hose, 'suction', 'One end fitting'),
    formulaLine(
      runHead,
      {
        f: run.friction!,
        L: hose.length,
        D,
        n: hose.bends,
        K_b: hose.bendK,
        K_o: hose.otherK,
        K_f: fittingK(hose),
        V: run.velocity!,
      },
      {
        id: 'suction-loss',
        statement: 'Head lost in the suction hose',
        why: 'The one part of the balance that a wrench changes.',
      },
    ),
  ];
}
