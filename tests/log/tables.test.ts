/** Tables of the log's sheet as they are written into the page. */
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import DataTable from '$lib/kit/DataTable.svelte';
import type { MappedLog } from '$lib/log/worker/messages';
import MarkList from '../../sheets/log/MarkList.svelte';
import { changeRows, estimateRows } from '../../sheets/log/tables';
import { demoJob } from '../sheets/jobs';

describe('doubtful readings', () => {
  const mapped: MappedLog = {
    duration: 600,
    step: 1,
    notes: [],
    channels: [
      {
        channel: 'reservoir',
        low: 300,
        high: 1e8,
        outliers: 0,
        beyond: 1,
        stuck: Array.from({ length: 6 }, (_, k) => [100 * k, 100 * k + 50] as const),
        wild: [[300, 1e8]],
      },
    ],
  };
  const { body } = render(MarkList, { props: { mapped, system: 'SI' } });
  it('a number beyond all sense is told in three digits', () => {
    expect(body).toContain('1.00×10⁸');
    expect(body).not.toMatch(/\d\.\d{4,}/);
  });
  it('one more is no “1 more times”', () => {
    expect(body).toContain(', and 1 more');
    expect(body).not.toContain('more times');
  });
});

it('each cell of a stacked table bears the name of its column', () => {
  const { body } = render(DataTable, {
    props: {
      stacks: true,
      title: 'Found',
      columns: ['Parameter', 'Found', { label: '±, 95 % sure' }],
      rows: [{ key: 'a', head: 'UA', cells: ['129 W/K', '28'] }],
      system: 'SI',
    },
  });
  expect(body.match(/data-label="[^"]*"/g)).toEqual(
    expect.arrayContaining(['data-label="Found"', 'data-label="±, 95 % sure"']),
  );
});

it('what a fit found and its ± bear the same unit, the ± two digits', () => {
  const { log } = demoJob();
  const rows = estimateRows(log!, 'US').filter(({ weight }) => weight !== 'soft');
  expect(rows.length).toBeGreaterThan(2);
  for (const { cells } of rows) {
    const [value, half] = cells.map(String).map((cell) => cell.split('\u00a0'));
    expect(half!.slice(1)).toEqual(value!.slice(1));
    expect(half![0]!.replace(/[^1-9]/g, '').length).toBeLessThanOrEqual(2);
  }
  const [change] = changeRows(log!.events[0]!, 'US');
  expect(change!.cells[1]).toMatch(/^± [\d.]{1,4}\u00a0s$/);
});
