/** Readings a shop would take on a loop with a known fault: the fault, its severity and all errors drawn at random. */
import { DUTY_CHANNELS, usualPlusMinus } from '$lib/solver/diagnosis/channels';
import type { Shown } from '$lib/solver/diagnosis/grid';
import { errorsOf, PLUS_MINUS_SIGMAS, predictedOf } from '$lib/solver/diagnosis/likelihood';
import type { Predictor } from '$lib/solver/diagnosis/predict';
import type { Conditions, DutyChannel, Fault, Reading } from '$lib/solver/diagnosis/types';
import type { Random } from '$lib/solver/numerics/random';

export const CONDITIONS: Conditions = { ambientSigma: 0.5, speed: {} };

/** What `fault` shows at `severity`: solved there, not read off the grid that the diagnosis uses. */
export const shownBy = (predict: Predictor, fault: Fault, severity: number): Shown => ({
  severity,
  duty: {
    traffic: predict.at(fault, severity, 'traffic'),
    cruise: predict.at(fault, severity, 'cruise'),
  },
  once: predict.once(fault, severity),
});

export const drawnSeverity = ({ severity }: Fault, random: Random): number =>
  severity ? severity.from + (severity.to - severity.from) * random.uniform() : NaN;

/** Readings at the places given, with every error of the stated model drawn. */
export function readingsOf(
  shown: Shown,
  places: readonly Pick<Reading, 'channel' | 'place'>[],
  random: Random,
  conditions: Conditions = CONDITIONS,
  sharper = 1,
): Reading[] {
  const byModel = { traffic: random.normal(), cruise: random.normal(), once: 0 };
  const byAmbient = random.normal();
  return places.map((at) => {
    const true_ = predictedOf(shown, at);
    const sigma = usualPlusMinus(at.channel, true_) / PLUS_MINUS_SIGMAS / sharper;
    const e = errorsOf(shown, at, sigma, conditions);
    const value =
      true_ +
      Math.sqrt(e.own) * random.normal() +
      e.byModel * byModel[at.place] +
      e.byAmbient * byAmbient;
    return { ...at, value, sigma };
  });
}

/** Some of all channels in both duties, each taken or not by the toss of a coin of weight `share`. */
export function somePlaces(share: number, random: Random): Pick<Reading, 'channel' | 'place'>[] {
  const all = (['traffic', 'cruise'] as const).flatMap((place) =>
    (Object.keys(DUTY_CHANNELS) as DutyChannel[])
      .filter((channel) => channel !== 'bucket' && channel !== 'pumpRise')
      .map((channel) => ({ channel, place })),
  );
  const taken = all.filter(() => random.uniform() < share);
  return taken.length > 0 ? taken : [all[0]!];
}
