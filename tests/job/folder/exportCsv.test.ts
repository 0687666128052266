/** CSV as RFC 4180 has it, read back by a parser that is not ours. */
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { csvText, inputsCsv, resultsCsv, type ResultRow } from '$lib/job/folder/exportCsv';

const read = (text: string) => {
  const { data, errors } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  return data;
};

describe('CSV', () => {
  it('ends lines in CR LF and quotes only what must be', () => {
    // RFC 4180, section 2, rules 1, 6 and 7.
    expect(csvText([['aaa', 'b "b" b', 'c\r\nc', 'd,d', 1.5, null]])).toBe(
      'aaa,"b ""b"" b","c\r\nc","d,d",1.5,\r\n',
    );
  });

  it('gives results as printed and in SI', () => {
    const row: ResultRow = {
      sheet: 'loop-balance',
      id: 'cruise.reservoir',
      name: 'Reservoir, cruise',
      side: 'asFound',
      quantity: 'temperature',
      value: 366.483333333333,
      state: 'over',
    };
    const absent: ResultRow = { ...row, id: 'none', value: null, absent: 'no flow, no "end"' };
    // 366.4833… K is 200 °F exactly: (200 + 459.67) / 1.8.
    const [us] = read(resultsCsv([row], 'US'));
    expect(us).toMatchObject({
      sheet: 'loop-balance',
      id: 'cruise.reservoir',
      name: 'Reservoir, cruise',
      side: 'asFound',
      value: '200',
      unit: '°F',
      'SI value': '366.483333333333',
      'SI unit': 'K',
      state: 'over',
    });
    const [si, none] = read(resultsCsv([row, absent], 'SI'));
    expect(si).toMatchObject({ value: '93.3', unit: '°C' });
    expect(none).toMatchObject({ value: '', 'SI value': '', 'why none': 'no flow, no "end"' });
  });

  it('gives inputs with their ± and where they came from; of the candidate what it changes', () => {
    const job = demoJob();
    const rows = read(inputsCsv(job));
    const volts = rows.filter(({ path }) => path === 'pump.volts');
    expect(volts).toMatchObject([
      { side: 'asFound', value: '10.9 V', 'SI value': '10.9', 'SI unit': 'V', '±': '0.1 V' },
      { side: 'candidate', value: '13.2 V', 'where from': 'new relay and 12 AWG feed' },
    ]);
    const planned = rows.filter(({ side }) => side === 'candidate').map(({ path }) => path);
    expect(new Set(planned)).toEqual(new Set(Object.keys(job.candidate!.changes)));
  });
});
