/** What the drawn circuit shows, taken from one side of the job. */
import type { Side } from '$lib/job/evaluate';
import { feedParts, type FeedPart } from '$lib/solver/feed/circuit';
import { aboveAdvice } from '$lib/solver/feed/dropAdvice';
import { gaugeName, type WireSize } from '$lib/solver/feed/gauge';
import { studyOf } from './study';

/** Which symbol stands for a part. */
export type SymbolName = 'fuse' | 'breaker' | 'wire' | 'relay' | 'relays' | 'connector';

export interface PicturePart {
  readonly symbol: SymbolName;
  readonly side: FeedPart['side'];
  readonly name: string;
  /** Across it under load, V; null where nothing flows. */
  readonly drop: number | null;
  /** Behind it, against the battery's negative post, V. */
  readonly after: number | null;
  /** Loses more than is advised for such a part. */
  readonly heavy: boolean;
}

export interface CircuitPicture {
  /** In the order of the current; none where the feed cannot be worked out. */
  readonly parts: readonly PicturePart[];
  readonly source: number | null;
  readonly engineRunning: boolean;
  readonly wire: WireSize;
  readonly pumpVolts: number | null;
  /** At the pump's ground pin, against the battery's negative post. */
  readonly groundPin: number | null;
  readonly current: number | null;
  readonly flow: number | null;
  /** At this current the fuse or breaker does not stay closed. */
  readonly opens: boolean;
}

/** The circuit of one side with its numbers. */
export function circuitPicture(side: Side): CircuitPicture {
  const { supply, supplied, running, walk, inLoop, behaviour } = studyOf(side);
  const { circuit } = supply;
  const symbolOf = ({ kind }: FeedPart): SymbolName => {
    if (kind === 'protection') return circuit.protection.kind;
    if (kind === 'relay') return circuit.relays.length > 1 ? 'relays' : 'relay';
    return kind;
  };
  return {
    parts: supplied.ok
      ? (walk?.drops ?? feedParts(circuit)).map((part): PicturePart => ({
          symbol: symbolOf(part),
          side: part.side,
          name: part.name,
          drop: 'drop' in part ? part.drop : null,
          after: 'voltsAfter' in part ? part.voltsAfter : null,
          heavy: 'drop' in part && aboveAdvice(part),
        }))
      : [],
    source: supplied.ok ? supplied.value.source : null,
    engineRunning: circuit.source.running,
    wire: circuit.wire.size,
    pumpVolts: running?.volts ?? null,
    groundPin: walk?.points.find(({ place }) => place === 'pump-negative')?.volts ?? null,
    current: running?.current ?? null,
    flow: (running && inLoop?.flow) ?? null,
    opens: behaviour !== null && behaviour.kind !== 'holds',
  };
}

/** Gauge in words, or nothing where the wire is known by its area. */
export const wireWords = (size: WireSize): string | null =>
  size.by === 'awg' ? `${gaugeName(size.awg)} AWG` : null;

/** A name on two lines where it is long, about even. */
export function twoLines(name: string): readonly string[] {
  const words = name.split(' ');
  if (name.length <= 12 || words.length === 1) return [name];
  const cut = (n: number) => [words.slice(0, n).join(' '), words.slice(n).join(' ')] as const;
  const unevenness = (n: number) => {
    const [first, second] = cut(n);
    return Math.abs(first.length - second.length);
  };
  const cuts = words.slice(1).map((_, i) => i + 1);
  return cut(cuts.reduce((best, n) => (unevenness(n) < unevenness(best) ? n : best), 1));
}
