/** What an air side must be before it can be solved. */
import { InvalidInputError, OutOfRangeError, requireWithin, type Interval } from '../errors';
import type { Loop } from '../loop/types';

/** Enforced ranges of the air side, SI. */
export const AIR_SIDE_RANGE = {
  ramRecovery: [0, 1],
  coverage: [0.05, 1],
  recirculation: [0, 0.7],
  recirculationFade: [0, 100],
  stackHeat: [0, 1e6],
  stackShare: [0, 1],
  width: [0.01, 5],
  height: [0.01, 5],
} as const satisfies Record<string, Interval>;

/** Vehicle speeds the air side answers for, m/s. */
export const VEHICLE_SPEED_RANGE: Interval = [0, 150];

/** @throws {@link OutOfRangeError} outside {@link VEHICLE_SPEED_RANGE} */
export function checkSpeed(vehicleSpeed: number): void {
  requireWithin('air side', { vehicleSpeed: VEHICLE_SPEED_RANGE }, { vehicleSpeed });
}

/** @throws {@link InvalidInputError} or {@link OutOfRangeError} naming the field at fault */
export function checkAirSide({ frontExchanger, fans, airPath }: Loop): void {
  const { width, height, airLoss } = frontExchanger;
  const { ramRecovery, recirculation, recirculationFade, stackHeat, stackShare = 1 } = airPath;
  requireWithin('air side', AIR_SIDE_RANGE, {
    ramRecovery,
    coverage: fans.coverage,
    recirculation,
    recirculationFade,
    stackHeat,
    stackShare,
    width,
    height,
  });
  if (!airLoss.points.some((p) => p.loss > 0)) {
    throw new InvalidInputError(
      'frontExchanger.airLoss.points',
      'the core must hold the air back: a loss above zero is needed',
    );
  }
  if (!(Number.isInteger(fans.count) && fans.count >= 0)) {
    throw new OutOfRangeError('air side', 'fans.count', fans.count, [0, 100]);
  }
  if (fans.count === 0) return;
  const discs = fans.count * (Math.PI / 4) * fans.diameter * fans.diameter;
  if (fans.diameter > Math.min(width, height)) {
    throw new InvalidInputError(
      'fans.diameter',
      'a fan is wider than the core it should stand behind',
      fans.diameter,
    );
  }
  if (discs > width * height * fans.coverage) {
    throw new InvalidInputError(
      'fans.diameter',
      'the discs of the fans are larger than the face behind the shroud',
      fans.diameter,
    );
  }
}
