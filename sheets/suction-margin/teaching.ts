/** What the numbers teach: NPSH3, look-alikes, the mounting, what buys margin. */
import type { Side } from '$lib/job/evaluate';
import { HOSE_VELOCITY_MAX } from '$lib/solver/hydraulics/runParts';
import { runShares } from '$lib/solver/hydraulics/shares';
import { suppressionFormula } from '$lib/solver/suction/formulas';
import { q, say, type Finding } from '../types';
import { HELP_WORDS } from './parts';
import type { Study } from './study';

/** Required is not where it starts. */
export function onsetFinding({ loop }: Side, { s }: Study): Finding[] {
  const { npshAvailable, npshRequired } = s.operating;
  if (!(npshRequired > 0)) return [];
  const onset = suppressionFormula.value({ NPSH_R: npshRequired });
  const guess = loop.pump.npshCurve
    ? ''
    : ' And the one figure here is an estimate: sellers of 12 V pumps rarely publish it.';
  if (npshAvailable >= onset) {
    return [
      {
        code: 'suppressed',
        level: 'good',
        sentence: say`Available is more than four times required, which on average keeps every bubble away (Budris, WaterWorld, June 2009).${guess}`,
      },
    ];
  }
  return [
    {
      code: 'npsh3-is-not-the-start',
      level: 'info',
      sentence: [
        ...say`Required (NPSH3, ${q(npshRequired, 'head')}) is not where cavitation starts; there 3 % of the head is already gone. To keep every bubble away takes about four times that on average (Budris, WaterWorld, June 2009), ${q(onset, 'head')}.`,
        ...(npshAvailable < npshRequired
          ? []
          : say` With ${q(npshAvailable, 'head')} some hiss and wear are possible with hardly any loss of flow.`),
        ...(guess === '' ? [] : [guess]),
      ],
    },
  ];
}

/** Three faults that sound alike. */
export const lookAlikes = ({ s }: Study): Finding => ({
  code: 'look-alikes',
  level: 'info',
  sentence: say`Without a meter three faults look alike. Cavitation comes only with heat and goes when the tank cools. Air drawn in comes cold as well, after a fill or a hard corner; amperes fall by a third or more, and a clear hose at the outlet turns milky. Lost volts show on a meter at the plug, ${s.margins.suction < 0 ? 'so put one there all the same' : 'so begin there'} (common practice, no source).`,
});

/** How it is mounted. */
export function mountingFindings({ loop }: Side, { s }: Study): Finding[] {
  const found: Finding[] = [];
  const { levelAbovePump } = loop.reservoir;
  if (s.operating.notes.some(({ code }) => code === 'suction.below-zero')) {
    found.push({
      code: 'below-zero',
      level: 'act',
      sentence: [
        'The suction hose would take more than all the pressure there is: the flow shown cannot be. The hose is too narrow or the pump too high.',
      ],
    });
  }
  if (levelAbovePump < 0) {
    found.push({
      code: 'level-below-inlet',
      level: 'act',
      sentence: say`The liquid stands ${q(-levelAbovePump, 'length')} below the pump’s inlet. Whatever the margin says, such a pump loses its liquid to the first bubble: mount it below the tank.`,
    });
  }
  if (loop.pump.inletFaces === 'down') {
    found.push({
      code: 'inlet-faces-down',
      level: 'watch',
      sentence: [
        'The inlet faces down: air rises to the impeller’s eye and stays there. Turn it so that bubbles can leave, or bleed it at every fill.',
      ],
    });
  }
  const { velocity } = runShares(s.operating)[0]!;
  if (velocity! > HOSE_VELOCITY_MAX.suction) {
    found.push({
      code: 'suction-fast',
      level: 'watch',
      sentence: say`The suction hose runs at ${q(velocity!, 'velocity')}; good practice stays below ${q(HOSE_VELOCITY_MAX.suction, 'velocity')} (common practice, no source). It takes ${q(s.operating.shares[0]!.head, 'head')} of suction head.`,
    });
  }
  return found;
}

/** Where the next metre is cheapest. */
export function helpFinding({ helps }: Study): Finding[] {
  const best = helps.find(({ allowed }) => allowed);
  if (!best || !(best.gain > 0)) return [];
  const hose = helps.find(({ id }) => id === 'bore');
  return [
    {
      code: 'what-helps',
      level: 'info',
      sentence: [
        ...say`Most would be gained by ${HELP_WORDS[best.id]}: ${q(best.gain, 'head')}.`,
        ...(hose && best.id !== 'bore' && hose.gain > 0
          ? say` The next wider suction hose (${q(hose.to, 'bore')}, fittings to match) gives ${q(hose.gain, 'head')}.`
          : []),
        ' A cap raises the boiling point and this margin; it cools nothing.',
      ],
    },
  ];
}
