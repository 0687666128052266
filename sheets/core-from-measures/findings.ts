/** What the measures of a core mean, in plain words. */
import { closerFins, measuresAgainstRating } from '$lib/solver/cores/geometry/sweep';
import { q, say, type Finding } from '../types';
import { CORE_WORDS, type MeasuredCore } from './measured';

/** How far such predictions miss: common practice, no source. */
const MISS = 0.2;
/** One side counts as the one that holds the core back from this share of the resistance. */
const HOLDS_BACK = 0.6;
/** Fins this much closer, in the what-if. */
const CLOSER = 1.2;

export function coreFindings(core: MeasuredCore): Finding[] {
  return [
    counting(core),
    ...(core.assumed ? assumedFinding(core) : againstRating(core)),
    heldBackBy(core),
    ...finsFinding(core),
    ...outside(core),
  ];
}

const words = ({ core }: MeasuredCore) => CORE_WORDS[core];

function counting(core: MeasuredCore): Finding {
  const { id, title } = words(core);
  return core.counts
    ? {
        code: `${id}-counts`,
        level: 'info',
        sentence: say`${title}: every sheet counts with these measures. Expect them to miss by ${q(MISS, 'percent')} either way (common practice, no source); a measured rating is the better witness.`,
      }
    : {
        code: `${id}-not-counted`,
        level: 'info',
        sentence: say`${title}: the other sheets go on counting with its rating point. Choose “its measures” to count with this core instead.`,
      };
}

function assumedFinding(core: MeasuredCore): Finding[] {
  const { id, title } = words(core);
  return [
    {
      code: `${id}-assumed`,
      level: 'watch',
      sentence: say`${title}: nobody has measured its fins and tubes; usual ones stand in. Depth and fins per length matter most: put a ruler to it before comparing.`,
    },
  ];
}

function againstRating(core: MeasuredCore): Finding[] {
  if (core.ratedUA === null) return [];
  const { id, title } = words(core);
  const off = measuresAgainstRating(core.made.UA, core.ratedUA);
  const both = say`${title}: its measures make ${q(core.made.UA, 'conductance')}, the rating typed in stands for ${q(core.ratedUA, 'conductance')}`;
  if (Math.abs(off) <= MISS)
    return [
      {
        code: `${id}-agrees`,
        level: 'good',
        sentence: [...both, '. They agree as well as such a prediction can.'],
      },
    ];
  return [
    {
      code: `${id}-disagrees`,
      level: 'watch',
      sentence: [
        ...both,
        off < 0
          ? '. A rating that much better than the metal should be able to do deserves a question to the seller: at which flows, and measured by whom?'
          : '. The core should do better than its rating; check the measures, above all fins per length and depth.',
      ],
    },
  ];
}

function heldBackBy(core: MeasuredCore): Finding {
  const { id, title } = words(core);
  const air = core.made.airShare;
  if (air > HOLDS_BACK)
    return {
      code: `${id}-air-side`,
      level: 'info',
      sentence: say`${title}: ${q(air, 'percent')} of its resistance lies on the air side. More or faster air, or more fin area, helps; more liquid flow hardly does.`,
    };
  if (air < 1 - HOLDS_BACK)
    return {
      code: `${id}-liquid-side`,
      level: 'info',
      sentence: say`${title}: the liquid side holds it back, the air side is only ${q(air, 'percent')} of the resistance. More liquid flow, narrower tubes or more passes help; more fins hardly do.`,
    };
  return {
    code: `${id}-both-sides`,
    level: 'info',
    sentence: say`${title}: air and liquid share the resistance, ${q(air, 'percent')} of it on the air side. No single change does wonders.`,
  };
}

function finsFinding(core: MeasuredCore): Finding[] {
  const { id, title } = words(core);
  const change = closerFins(core.geometry, core.arrangement, core.point, core.made, CLOSER);
  if (!change) return [];
  return [
    {
      code: `${id}-fins`,
      level: 'info',
      sentence: say`${title}: with a fifth more fins the heat at these flows would change by ${q(change.heat, 'percent')} and the pressure the air loses by ${q(change.airLoss, 'percent')}. A fan gives less air against more pressure, so the gain on the vehicle is smaller.`,
    },
  ];
}

function outside(core: MeasuredCore): Finding[] {
  const { id, title } = words(core);
  return core.made.notes.map((note) => ({
    code: `${id}-${note.code}-${note.quantity ?? ''}`,
    level: note.code === 'far-outside-data' ? ('watch' as const) : ('info' as const),
    sentence: say`${title}: ${note.message}`,
  }));
}
