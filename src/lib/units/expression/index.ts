/** Expressions with units that a person types: read, evaluated, typeset; see read.ts for what is let in. */
export { amountOf, siUnitOf, type Amount } from './amount';
export { evaluateTree, type Evaluated } from './evaluate';
export { readExpression, type NameIs, type ReadTree } from './read';
export { naturally, printAs, shownIn, type Shown } from './shown';
export { symbolsIn, isFunction, type Tree } from './tree';
export { absoluteLeaves, treeTex } from './typeset';
export { unitWord } from './unitWords';
