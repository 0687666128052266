export { defineFormula, formulaLine, balanceLine } from '../../lib/solver/formula';
export { SOURCES } from '../../lib/solver/sources';
