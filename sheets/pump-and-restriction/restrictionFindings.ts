/** What the numbers of the liquid side mean, in plain words: hoses, fittings, cores. */
import type { Side } from '$lib/job/evaluate';
import {
  HOSE_VELOCITY_MAX,
  TRANSITION_RE,
  runParts,
  type RunParts,
} from '$lib/solver/hydraulics/runParts';
import {
  fractionOfHead,
  largestShare,
  runShares,
  type RunShare,
} from '$lib/solver/hydraulics/shares';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';
import { PART_WORDS } from './parts';

/** A share of the loop's head above which fittings are worth changing (common practice, no source). */
const MUCH = 0.1;

/** The part to look at first. */
export function largestFinding(s: SteadySolution): Finding {
  const most = largestShare(s.operating);
  const share = fractionOfHead(most.head, s.operating);
  const isHose = most.velocity !== null;
  const words = say`${capital(PART_WORDS[most.part])} takes ${q(most.head, 'head')}, ${q(share, 'percent')} of all the head.`;
  return {
    code: 'largest-part',
    level: 'info',
    sentence: [
      ...words,
      isHose
        ? ' That is where a wider or shorter hose pays first.'
        : ' Wider hose cannot change that; a core with more passes in parallel or a stronger pump can.',
    ],
  };
}

/** The run whose fittings cost most, where they cost much. */
export function fittingFinding({ loop }: Side, s: SteadySolution): Finding[] {
  const worst = runShares(s.operating)
    .map((run) => ({ run, head: partsOf(loop, run).fittings }))
    .reduce((a, b) => (b.head > a.head ? b : a));
  const share = fractionOfHead(worst.head, s.operating);
  if (!(share > MUCH)) return [];
  const { bore, fittingBore } = loop.hoses[worst.run.part];
  return [
    {
      code: 'fittings-neck',
      level: 'watch',
      sentence: say`The end fittings of ${PART_WORDS[worst.run.part]} neck it from ${q(bore, 'bore')} to ${q(fittingBore, 'bore')}. The two of them take ${q(worst.head, 'head')}, ${q(share, 'percent')} of the whole: fittings of full bore come before a bigger pump.`,
    },
  ];
}

const partsOf = (loop: Loop, run: RunShare): RunParts =>
  runParts(loop.hoses[run.part], { velocity: run.velocity!, friction: run.friction });

/** Runs too fast for their place. */
export function velocityFindings(s: SteadySolution): Finding[] {
  const fast = runShares(s.operating).filter((run) => run.velocity! > HOSE_VELOCITY_MAX[run.part]);
  if (fast.length === 0) {
    return [
      {
        code: 'velocity-healthy',
        level: 'good',
        sentence: say`No hose runs faster than good practice: ${q(HOSE_VELOCITY_MAX.suction, 'velocity')} ahead of the pump, ${q(HOSE_VELOCITY_MAX.delivery, 'velocity')} behind it (common practice, no source).`,
      },
    ];
  }
  return fast.map((run) => ({
    code: `velocity-${run.part}`,
    level: 'watch',
    sentence: say`${capital(PART_WORDS[run.part])} runs at ${q(run.velocity!, 'velocity')}; good practice stays below ${q(HOSE_VELOCITY_MAX[run.part], 'velocity')} there (common practice, no source). ${run.part === 'suction' ? 'Ahead of the pump it also takes suction head.' : 'It costs head, nothing else: fast water cools no worse.'}`,
  }));
}

/** Laminar or undecided flow: the loss follows the liquid's temperature. */
export function laminarFinding(s: SteadySolution): Finding[] {
  const [laminar, turbulent] = TRANSITION_RE;
  const slowest = runShares(s.operating).reduce((a, b) => (b.reynolds! < a.reynolds! ? b : a));
  if (!(slowest.reynolds! < turbulent)) return [];
  const regime = slowest.reynolds! < laminar ? 'is laminar' : 'is neither laminar nor turbulent';
  return [
    {
      code: 'laminar',
      level: 'info',
      sentence: say`At ${q(s.liquid.temperature, 'temperature')} the flow in ${PART_WORDS[slowest.part]} ${regime}: Reynolds number ${q(slowest.reynolds!, 'ratio')}. The narrower tubes of the cores are further down still, and there more flow hardly carries more heat. Warmer or thinner liquid changes it.`,
    },
  ];
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
