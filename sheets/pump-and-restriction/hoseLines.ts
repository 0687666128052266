/** Lines of the hoses: what hoses alike share, then the head of each run. */
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import { fittingK } from '$lib/solver/hydraulics/hose';
import {
  churchillFriction,
  churchillTransition,
  churchillTurbulent,
  fittingLoss,
  fittingRatio,
  reynolds,
  runHead,
  velocityInBore,
} from '$lib/solver/hydraulics/formulas';
import { runShares, worstRun, type RunShare } from '$lib/solver/hydraulics/shares';
import type { CoolantKind, Hose, HoseId, Loop, SteadySolution } from '$lib/solver/loop/types';
import { about as METER } from '../flow-meter/about';
import { PART_WORDS } from './parts';

/** Where density and viscosity come from. */
export const propertyNote = (kind: CoolantKind) => ({
  code: 'liquid.properties',
  message:
    kind === 'water'
      ? 'Density and viscosity: water at the temperature of the reservoir’s outlet, IAPWS.'
      : 'Density and viscosity: this mixture at the temperature of the reservoir’s outlet, Melinder 2010.',
});

/** Hoses of one bore and one wall flow alike: velocity, Reynolds number and friction factor once. */
const alike = (a: Hose, b: Hose) => a.bore === b.bore && a.roughness === b.roughness;

/** Fittings that neck alike lose alike. */
const neckedAlike = (a: Hose, b: Hose) => a.bore === b.bore && a.fittingBore === b.fittingBore;

/** In order of flow; what an earlier run has already shown is not shown again. */
export function hoseLines(loop: Loop, s: SteadySolution, meter: MeterLoss | null): FormulaLine[] {
  const worst = worstRun(s.operating);
  const seen: Hose[] = [];
  return runShares(s.operating).flatMap((run) => {
    const hose = loop.hoses[run.part];
    const lines = [
      ...(seen.some((other) => alike(other, hose)) ? [] : flowLines(loop, s, run)),
      ...(seen.some((other) => neckedAlike(other, hose)) ? [] : necks(hose, run)),
      headLine(hose, run, { worst: run === worst, meter: meter?.run === run.part ? meter : null }),
    ];
    seen.push(hose);
    return lines;
  });
}

function flowLines({ hoses, coolant }: Loop, s: SteadySolution, run: RunShare): FormulaLine[] {
  const hose = hoses[run.part];
  const { bore: D } = hose;
  const shared = Object.values(hoses).filter((other: Hose) => alike(other, hose)).length;
  const where = shared > 1 ? 'the hoses of this bore' : PART_WORDS[run.part];
  const { density: rho, viscosity: mu } = s.liquid;
  return [
    formulaLine(
      velocityInBore,
      { Q: s.operating.flow, D },
      {
        id: `velocity-${run.part}`,
        statement: `Velocity in ${where}, at the flow found below`,
        why: 'Head lost goes with its square: half the bore means four times the velocity and sixteen times the head or more.',
      },
    ),
    formulaLine(
      reynolds,
      { rho, V: run.velocity!, D, mu },
      {
        id: `reynolds-${run.part}`,
        statement: 'Reynolds number there',
        why: 'Below about 2300 the flow is laminar, above about 4000 turbulent; between them it may be either.',
        notes: [propertyNote(coolant.kind)],
      },
    ),
    ...frictionLines(hose, run, run.part),
  ];
}

/** Friction factor by its two intermediate terms; `part` ends the ids. */
export function frictionLines(
  { bore: D, roughness: eps }: Hose,
  run: RunShare,
  part: string,
): FormulaLine[] {
  const Re = run.reynolds!;
  const A = formulaLine(
    churchillTurbulent,
    { Re, eps, D },
    {
      id: `friction-a-${part}`,
      statement: 'Friction there: the turbulent part, wall and all',
      why: 'A rough or furred wall shows here, and only when the flow is fast.',
    },
  );
  const B = formulaLine(
    churchillTransition,
    { Re },
    {
      id: `friction-b-${part}`,
      statement: 'Friction there: the part that counts near the change to turbulent flow',
      why: 'It keeps the factor whole between creeping and swirling flow, where small loops often run.',
    },
  );
  return [
    A,
    B,
    formulaLine(
      churchillFriction,
      { Re, A: A.value, B: B.value },
      {
        id: `friction-${part}`,
        statement: 'Friction factor there, by Darcy’s count',
        why: 'It turns length into loss: a hose costs what this times its length in bores says.',
      },
    ),
  ];
}

const necks = (hose: Hose, run: RunShare) =>
  fittingLines(hose, run.part, `One end fitting of ${PART_WORDS[run.part]}`);

/** How far the end fittings neck a hose and what one of them loses; none where they are of full bore. */
export function fittingLines(
  { bore: D, fittingBore: D_f }: Hose,
  part: string,
  name: string,
): FormulaLine[] {
  if (D_f === 0) return [];
  const beta = formulaLine(
    fittingRatio,
    { D_f, D },
    {
      id: `neck-${part}`,
      statement: `${name}: its bore over that of the hose`,
      why: 'A barb two sizes down can cost more than a yard of hose.',
    },
  );
  return [
    beta,
    formulaLine(
      fittingLoss,
      { beta: beta.value },
      {
        id: `fitting-${part}`,
        statement: `${name}: its loss, told on the hose bore`,
        why: 'The liquid speeds up into the fitting and wastes that again behind it.',
      },
    ),
  ];
}

/** The loss coefficient of a flow meter and the run it sits in. */
export interface MeterLoss {
  readonly run: HoseId;
  readonly k: number;
}

const headLine = (
  hose: Hose,
  run: RunShare,
  { worst, meter }: { readonly worst: boolean; readonly meter: MeterLoss | null },
): FormulaLine =>
  formulaLine(
    runHead,
    {
      f: run.friction!,
      L: hose.length,
      D: hose.bore,
      n: hose.bends,
      K_b: hose.bendK,
      K_o: hose.otherK,
      K_f: fittingK(hose),
      V: run.velocity!,
    },
    {
      id: `head-${run.part}`,
      statement: `Head lost in ${PART_WORDS[run.part]}${worst ? ', the worst of the four' : ''}`,
      why: 'Compare the four: the largest is the one worth a bigger hose or one bend less.',
      ...(meter && {
        notes: [
          {
            code: 'meter',
            message: `The other losses hold the flow meter’s ${meter.k.toPrecision(3)}: sheet ${METER.number}.`,
          },
        ],
      }),
    },
  );
