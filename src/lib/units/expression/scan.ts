/**
 * From typed text to what mathjs parses of it, its size and its signs checked before and after: the
 * first gate of an expression.
 */
import { math } from '$lib/math';

export const LONGEST_EXPRESSION = 400;
const DEEPEST = 24;
const MOST_NODES = 150;

export type ReadCode =
  | 'empty'
  | 'too-long'
  | 'too-deep'
  | 'too-many'
  | 'character'
  | 'syntax'
  | 'not-allowed'
  | 'unknown-name'
  | 'ambiguous'
  | 'number';

/** Thrown inside the reader only. */
export class Refusal extends Error {
  constructor(
    readonly code: ReadCode,
    message: string,
  ) {
    super(message);
  }
}

export const refuse = (code: ReadCode, message: string): never => {
  throw new Refusal(code, message);
};

/** Parts of mathjs' nodes that are looked at; its own types are a union that is hard to narrow. */
export interface Node {
  readonly type: string;
  readonly value: unknown;
  readonly name: string;
  readonly op: string;
  readonly implicit: boolean;
  readonly args: readonly Node[];
  readonly content: Node;
  readonly fn: { readonly type: string; readonly name: string };
}

/** Signs that look alike in one spelling; `in` is to mathjs the word of a conversion. */
function plain(typed: string): string {
  return typed
    .replace(/[·⋅×∙]/g, '*')
    .replace(/[−–]/g, '-')
    .replace(/÷/g, '/')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/Δ\s*°\s*F/g, 'deltaF')
    .replace(/Δ\s*°\s*C/g, 'deltaC')
    .replace(/°\s*([FCR])/g, 'deg$1')
    .replace(/[ΩΩ]/g, 'ohm')
    .replace(/[µμ](?=[A-Za-z])/g, 'u')
    .replace(/π/g, 'pi')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/(?<=^|[\d./*(] ?)in\b/g, 'inch');
}

/** Parse `typed`, or refuse it. */
export function parsed(typed: string): Node {
  // Before anything else looks at it.
  if (typed.length > LONGEST_EXPRESSION) {
    refuse('too-long', `A calculation has at most ${LONGEST_EXPRESSION} characters.`);
  }
  const text = plain(typed);
  if (text === '') refuse('empty', 'Write what is to be worked out, such as 2 * Q.');
  const odd = /[^A-Za-z0-9_ .,+\-*/^()%]/.exec(text)?.[0];
  if (odd) refuse('character', `“${odd}” has no place in a calculation.`);
  if (/\d,\d/.test(text) && !/[a-z]\(/i.test(text)) {
    refuse('character', 'Write a decimal point, not a comma.');
  }
  let depth = 0;
  for (const sign of text) {
    if (sign === '(' && ++depth > DEEPEST) refuse('too-deep', 'Too many brackets in each other.');
    if (sign === ')') depth--;
  }
  if (depth > 0) refuse('syntax', 'A bracket is opened and not closed.');
  if (depth < 0) refuse('syntax', 'A bracket is closed that was not opened.');
  let root: Node;
  try {
    root = math.parse(text) as unknown as Node;
  } catch (thrown) {
    const at = /\(char (\d+)\)/.exec((thrown as Error).message)?.[1];
    const rest = at ? text.slice(Number(at) - 1).slice(0, 12) : '';
    return refuse(
      'syntax',
      rest
        ? `This cannot be read from “${rest}” on.`
        : 'This breaks off: something is missing at its end.',
    );
  }
  count(root);
  return root;
}

/** Size of what the parser gave, before any of it is looked at. */
function count(root: Node): void {
  const open: { node: Node; depth: number }[] = [{ node: root, depth: 0 }];
  let nodes = 0;
  for (let next = open.pop(); next; next = open.pop()) {
    const { node, depth } = next;
    if (++nodes > MOST_NODES) refuse('too-many', 'Too much for one line: make two of it.');
    if (depth > 2 * DEEPEST)
      refuse('too-deep', 'Too many steps in each other: make two lines of it.');
    for (const arg of node.args ?? []) open.push({ node: arg, depth: depth + 1 });
    if (node.content) open.push({ node: node.content, depth: depth + 1 });
  }
}
