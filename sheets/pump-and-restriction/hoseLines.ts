/** Lines of the hoses: the worst run in full, the others by their heads. */
import { formulaLine, type Line } from '$lib/solver/formula';
import { fittingK } from '$lib/solver/hydraulics/hose';
import {
  churchillFriction,
  fittingLoss,
  headFromPressure,
  hoseLoss,
  lossSum,
  reynolds,
  runHead,
  velocityInBore,
} from '$lib/solver/hydraulics/formulas';
import { runShares, worstRun, type RunShare } from '$lib/solver/hydraulics/shares';
import type { CoolantKind, Hose, HoseId, Loop, SteadySolution } from '$lib/solver/loop/types';
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

/** The worst run first, then the others in order of flow. */
export function hoseLines(loop: Loop, s: SteadySolution): Line[] {
  const worst = worstRun(s.operating);
  const others = runShares(s.operating).filter((run) => run !== worst);
  const lines = [...flowLines(loop, s, worst), ...worstLines(loop, s, worst)];
  const seen: HoseId[] = [worst.part];
  for (const run of others) {
    const hose = loop.hoses[run.part];
    const known = seen.map((id) => loop.hoses[id]);
    if (!known.some((other) => alike(other, hose))) lines.push(...flowLines(loop, s, run));
    if (!known.some((other) => neckedAlike(other, hose))) lines.push(...fittingLines(hose, run));
    lines.push(headLine(hose, run));
    seen.push(run.part);
  }
  return lines;
}

function flowLines({ hoses, coolant }: Loop, s: SteadySolution, run: RunShare): Line[] {
  const { bore: D, roughness: eps } = hoses[run.part];
  const shared = Object.values(hoses).filter((hose: Hose) => alike(hose, hoses[run.part])).length;
  const where = shared > 1 ? 'the hoses of this bore' : PART_WORDS[run.part];
  const { density: rho, viscosity: mu } = s.liquid;
  const V = run.velocity!;
  const Re = run.reynolds!;
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
      { rho, V, D, mu },
      {
        id: `reynolds-${run.part}`,
        statement: 'Reynolds number there',
        why: 'Below about 2300 the flow is laminar, above about 4000 turbulent; between them it may be either.',
        notes: [propertyNote(coolant.kind)],
      },
    ),
    formulaLine(
      churchillFriction,
      { Re, eps, D },
      { id: `friction-${run.part}`, statement: 'Friction factor there, by Darcy’s count' },
    ),
  ];
}

function fittingLines(hose: Hose, run: RunShare): Line[] {
  if (hose.fittingBore === 0) return [];
  return [
    formulaLine(
      fittingLoss,
      { D_f: hose.fittingBore, D: hose.bore },
      {
        id: `fitting-${run.part}`,
        statement: `One end fitting of ${PART_WORDS[run.part]}, told on the hose bore`,
        why: 'The liquid speeds up into the fitting and wastes that again behind it.',
      },
    ),
  ];
}

/** Bends, fittings, loss and head of the run that takes most. */
function worstLines({ hoses }: Loop, s: SteadySolution, run: RunShare): Line[] {
  const hose = hoses[run.part];
  const { density: rho } = s.liquid;
  const K = formulaLine(
    lossSum,
    { n: hose.bends, K_b: hose.bendK, K_o: hose.otherK, K_f: fittingK(hose) },
    {
      id: `loss-sum-${run.part}`,
      statement: `Bends, entrance, exit and fittings of ${PART_WORDS[run.part]}`,
    },
  );
  return [
    ...fittingLines(hose, run),
    K,
    formulaLine(
      hoseLoss,
      { f: run.friction!, L: hose.length, D: hose.bore, K: K.value, rho, V: run.velocity! },
      {
        id: `loss-${run.part}`,
        statement: `Pressure lost in ${PART_WORDS[run.part]}, the worst of the four`,
      },
    ),
    formulaLine(
      headFromPressure,
      { dp: run.pressureDrop, rho },
      { id: `head-${run.part}`, statement: 'The same as head of the liquid' },
    ),
  ];
}

const headLine = (hose: Hose, run: RunShare): Line =>
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
    { id: `head-${run.part}`, statement: `Head lost in ${PART_WORDS[run.part]}` },
  );
