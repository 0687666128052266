/**
 * The one mathjs instance, built from just the parts the project uses so that the page stays small.
 * It parses formulas, evaluates them on numbers or on quantities with units, and knows the units.
 */
import {
  create,
  absDependencies,
  addDependencies,
  compileDependencies,
  createUnitDependencies,
  divideDependencies,
  expDependencies,
  logDependencies,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  parseDependencies,
  piDependencies,
  powDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
  unitDependencies,
  UnitDependencies,
  type MathJsInstance,
} from 'mathjs';

// mathjs types its dependency maps as possibly undefined; each of these is there.
const parts = {
  absDependencies,
  addDependencies,
  compileDependencies,
  createUnitDependencies,
  divideDependencies,
  expDependencies,
  logDependencies,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  parseDependencies,
  piDependencies,
  powDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
  unitDependencies,
  UnitDependencies,
} as Parameters<typeof create>[0];

export const math = create(parts) as MathJsInstance;

/** Money has a dimension of its own, so that a cost per degree can be checked like any other quantity. */
math.createUnit('dollar');
