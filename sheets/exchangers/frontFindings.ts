/** What the numbers of the front exchanger mean. */
import {
  airLosses,
  frontAtSameHeat,
  frontCleaned,
  frontGains,
  frontUnsure,
  leadingSide,
} from '$lib/solver/loop/frontWhatIf';
import { frontDrop } from '$lib/solver/loop/readings';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';

/** Air and flow that carry something; else there is nothing to compare. */
const works = (s: SteadySolution): boolean => s.front.heat > 0 && s.air.totalMassFlow > 0;

/** Which side holds it back, by trying a tenth more of each. */
export function sideFinding(prepared: PreparedLoop, s: SteadySolution): Finding[] {
  if (!works(s)) return [];
  const gains = frontGains(prepared, s);
  const tried = say`A tenth more liquid flow would carry ${q(gains.flow, 'percent')} more heat per degree, a tenth more air ${q(gains.air, 'percent')}, a tenth more core ${q(gains.core, 'percent')}.`;
  const side = leadingSide(gains);
  const says = {
    air: 'The air side holds this front exchanger back: fans, shroud, sealing and face area come before any pump. ',
    liquid:
      'The liquid side holds this front exchanger back: flow, or a thinner liquid, comes before fans. ',
    both: 'Air and liquid hold this front exchanger back about alike. ',
  };
  return [{ code: `front-held-by-${side}`, level: 'info', sentence: [says[side], ...tried] }];
}

/** Hot at the tank either way; the drop across the exchanger tells flow from size. */
export function lookAlikeFinding(prepared: PreparedLoop, s: SteadySolution): Finding[] {
  if (!works(s)) return [];
  const halfFlow = frontAtSameHeat(prepared, s, { flow: 0.5 });
  const halfCore = frontAtSameHeat(prepared, s, { core: 0.5 });
  return [
    {
      code: 'flow-or-size',
      level: 'info',
      sentence: say`Too little flow and too small a core look alike in a hot tank; the drop across the front exchanger tells them apart. Here the liquid enters at ${q(s.front.liquidIn, 'temperature')} and drops ${q(frontDrop(s), 'temperatureDifference')}. To carry the same heat, half the flow would enter at ${q(halfFlow.liquidIn, 'temperature')} and drop ${q(halfFlow.drop, 'temperatureDifference')}; half the core would enter at ${q(halfCore.liquidIn, 'temperature')} and still drop ${q(halfCore.drop, 'temperatureDifference')}.`,
    },
  ];
}

/** Losses smaller than this share of what even, fresh air would carry are not worth a sentence (ours). */
const WORTH_SAYING = 0.05;

/** What uneven air and hot air coming round take. */
export function airFinding(prepared: PreparedLoop, s: SteadySolution): Finding[] {
  if (!works(s)) return [];
  const { now, even, fresh, lost } = airLosses(prepared, s);
  if (lost < WORTH_SAYING) return [];
  const round =
    s.air.recirculation > 0
      ? say` Sealed, so that none of the ${q(s.air.recirculation, 'percent')} of hot air came round again, it would carry ${q(fresh, 'conductance')}.`
      : [];
  return [
    {
      code: 'air-uneven-or-hot',
      level: 'watch',
      sentence: [
        ...say`The front exchanger carries ${q(now, 'conductance')} per degree above the fresh air. The same air spread evenly over the whole face would make that ${q(even, 'conductance')}.`,
        ...round,
      ],
    },
  ];
}

export function unsureFinding(prepared: PreparedLoop, s: SteadySolution): Finding[] {
  if (!works(s)) return [];
  const { weak, strong } = frontUnsure(prepared, s);
  return [
    {
      code: 'rating-unsure',
      level: 'info',
      sentence: say`A core known by one catalogue point is known to about a fifth either way. With that the liquid into this exchanger would lie between ${q(strong.liquidIn, 'temperature')} and ${q(weak.liquidIn, 'temperature')} for the same heat: measure before paying for a smaller difference.`,
    },
  ];
}

/** Below this, cleaning comes first (ours: the spread of a catalogue point). */
const BADLY_FOULED = 0.8;

/** What cleaning would bring. */
export function fouledFinding(prepared: PreparedLoop, s: SteadySolution): Finding[] {
  const { cleanliness } = prepared.loop.frontExchanger;
  if (!works(s) || !(cleanliness < 1)) return [];
  const clean = frontCleaned(prepared, s);
  return [
    {
      code: 'front-fouled',
      level: cleanliness < BADLY_FOULED ? 'act' : 'watch',
      sentence: say`Dirt leaves the front exchanger ${q(cleanliness, 'percent')} of its conductance. Clean, it would carry the same heat with liquid entering at ${q(clean.liquidIn, 'temperature')} instead of ${q(s.front.liquidIn, 'temperature')}: wash the fins and flush the tubes before buying a core.`,
    },
  ];
}
