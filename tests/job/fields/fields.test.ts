import { describe, expect, it } from 'vitest';
import { FIELD_GROUPS, FIELDS, type Column, type FieldSpec } from '$lib/job/fields';
import { parseQuantity } from '$lib/units';

const ALL: FieldSpec[] = FIELD_GROUPS.flatMap((group) => [...group.fields]);

function expectCell(column: Column, text: string): void {
  if (text === '') expect(column.optional).toBe(true);
  else if (column.kind === 'choice') {
    expect(column.choices.map((c) => c.value)).toContain(text);
  } else {
    const parsed = parseQuantity(text, column.quantity);
    expect(parsed, `${column.key}: ${text}`).toMatchObject({ ok: true });
    if (parsed.ok) {
      expect(parsed.si).toBeGreaterThanOrEqual(column.min);
      expect(parsed.si).toBeLessThanOrEqual(column.max);
    }
  }
}

describe('the list of inputs', () => {
  it('has one field per path', () => {
    expect(FIELDS.size).toBe(ALL.length);
    expect(FIELDS.size).toBeGreaterThan(120);
  });

  it.each(ALL.map((f) => [f.path, f] as const))(
    '%s: default is typed, in range, with its unit',
    (_, f) => {
      expect(f.ask.endsWith('.')).toBe(true);
      if (f.kind === 'quantity' && f.optional) {
        expect(f.default).toBe('');
        const parsed = parseQuantity(f.example!, f.quantity);
        expect(parsed, f.example).toMatchObject({ ok: true });
        if (parsed.ok) {
          expect(parsed.si).toBeGreaterThanOrEqual(f.min);
          expect(parsed.si).toBeLessThanOrEqual(f.max);
        }
      } else if (f.kind === 'quantity') {
        const us = parseQuantity(f.default, f.quantity, { system: 'US' });
        const si = parseQuantity(f.default, f.quantity, { system: 'SI' });
        expect(us, f.default).toMatchObject({ ok: true });
        // A default with its unit written out means the same in both systems.
        expect(si).toEqual(us);
        if (us.ok) {
          expect(us.si).toBeGreaterThanOrEqual(f.min);
          expect(us.si).toBeLessThanOrEqual(f.max);
          if (f.integer) expect(Number.isInteger(us.si)).toBe(true);
        }
      } else if (f.kind === 'choice') {
        expect(f.choices.map((c) => c.value)).toContain(f.default);
      } else if (f.kind === 'table') {
        expect(f.default.length).toBeGreaterThanOrEqual(f.minRows);
        for (const row of f.default) {
          expect(row).toHaveLength(f.columns.length);
          f.columns.forEach((column, i) => expectCell(column, row[i]!));
        }
      }
    },
  );
});
