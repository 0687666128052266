import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { LogError, type LogProblem } from '$lib/log/errors';
import { LogReader, readLog, type Log, type LogReaderOptions } from '$lib/log/reader';

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string, options?: LogReaderOptions) => readLog(bytes(text), options);
const names = ({ columns }: Log) => columns.map(({ heading }) => heading.name);
const units = ({ columns }: Log) => columns.map(({ heading }) => heading.unit);
const values = ({ columns }: Log) => columns.map((column) => Array.from(column.values));

describe('cells', () => {
  it.each([
    ['commas', 'Time (s),Tank (°F)\n0,100.5\n1,101\n'],
    ['semicolons, decimal commas', 'Time (s);Tank (°F)\n0;100,5\n1;101,0\n'],
    ['tabs', 'Time (s)\tTank (°F)\n0\t100.5\n1\t101\n'],
    ['tabs, decimal commas', 'Time (s)\tTank (°F)\n0,0\t100,5\n1,0\t101,0\n'],
    ['quotes after RFC 4180', '"Time (s)","Tank (°F)"\r\n"0","100.5"\r\n"1","101"\r\n'],
    [
      'quoted decimal commas between commas',
      '"Time (s)","Tank (°F)"\n"0,0","100,5"\n"1,0","101,0"\n',
    ],
    ['a mark before it', '\uFEFFTime (s),Tank (°F)\n0,100.5\n1,101\n'],
    ['no line end at the end', 'Time (s),Tank (°F)\r\n0,100.5\r\n1,101'],
    ['line ends of an old machine', 'Time (s),Tank (°F)\r0,100.5\r1,101\r'],
    ['blanks around cells', 'Time (s) , Tank (°F)\n 0 , 100.5 \n 1 , 101 \n'],
    ['lines of remarks above', 'Recorded on a Tuesday\n\nTime (s),Tank (°F)\n0,100.5\n1,101\n'],
    [
      'names and values above',
      'Device,Logger X\nSample rate (Hz),10\nTime (s),Tank (°F)\n0,100.5\n1,101\n',
    ],
    ['a name and a number above', 'Serial,123\nTime (s),Tank (°F)\n0,100.5\n1,101\n'],
    ['numbers above', 'Channels,2\n12,3\n\nTime (s),Tank (°F)\n0,100.5\n1,101\n'],
    ['remarks with numbers', '# rate, 10\n// 7, 8\n;\nTime (s),Tank (°F)\n0,100.5\n1,101\n'],
    ['the mark of a remark before the names', '# Time (s),Tank (°F)\n0,100.5\n1,101\n'],
    ['a stamp above', 'Started,2031-03-01 08:00:00\nTime,Tank\ns,°F\n0,100.5\n1,101\n'],
    ['units in a second row', 'Time,Tank\ns,°F\n0,100.5\n1,101\n'],
    ['units in brackets in a second row', 'Time,Tank\n[s],[degF]\n0,100.5\n1,101\n'],
  ])('%s', (_name, text) => {
    const log = read(text);
    expect(names(log)).toEqual(['Time', 'Tank']);
    expect(units(log)[0]).toBe('s');
    expect(units(log)[1]).toMatch(/F$/);
    expect(values(log)).toEqual([
      [0, 1],
      [100.5, 101],
    ]);
  });

  it.each([
    ['narrow', 12, ''],
    ['filled up with empty cells, as a spreadsheet writes them', 40, ',,,'],
  ])('more lines above than rows below, %s', (_name, length, fill) => {
    const above = Array.from({ length }, (_, k) => `Setting ${k} (Hz),${k}${fill}\n`).join('');
    const log = read(
      `${above}\nTime,Tank,Flow,Volts,Note\ns,°F,gpm,V,\n0,100,8,13.5,\n1,101,,13.5,on\n2,102,8,13.6,\n`,
    );
    expect(names(log)).toEqual(['Time', 'Tank', 'Flow', 'Volts', 'Note']);
    expect(units(log)).toEqual(['s', '°F', 'gpm', 'V', '']);
    expect(values(log).slice(0, 3)).toEqual([
      [0, 1, 2],
      [100, 101, 102],
      [8, NaN, 8],
    ]);
  });

  it('a stamp and a remark between names and numbers', () => {
    const log = read('Time (s),Tank,Flow\n# begun, at 8\n\n0,100,8\n1,101,8\n');
    expect(names(log)).toEqual(['Time', 'Tank', 'Flow']);
    expect(log.rows).toBe(2);
  });

  it('a line end and a delimiter within quotes', () => {
    const log = read('Time,"Tank,\nlower",Note\n0,100,"a, ""b""\nc"\n1,101,x\n');
    expect(log.columns[1]!.heading.text).toBe('Tank,\nlower');
    expect(values(log)[1]).toEqual([100, 101]);
    expect(log.columns[2]!.examples).toEqual(['a, "b"\nc', 'x']);
  });

  it('Windows Latin and UTF-16', () => {
    const latin = Uint8Array.from('Time (s),Tank (°F)\n0,1\n1,2\n', (c) => c.charCodeAt(0));
    expect(read16('Time (s),Tank (°F)\n0,1\n1,2\n').columns[1]!.heading.unit).toBe('°F');
    expect(readLog(latin).columns[1]!.heading.unit).toBe('°F');
    expect(values(readLog(latin))).toEqual([
      [0, 1],
      [1, 2],
    ]);
  });

  it('gaps, texts and rows of odd length are kept as gaps and told', () => {
    const log = read('t,a,b\n0,1,\n1,ERR,5\n2,3\n3,4,5,6\n\n,,\n4,---,NaN\n');
    expect(values(log)).toEqual([
      [0, 1, 2, 3, NaN, 4],
      [1, NaN, 3, 4, NaN, NaN],
      [NaN, 5, NaN, 5, NaN, NaN],
    ]);
    expect(log.columns[1]!.examples).toEqual(['ERR', '---']);
    expect(log.notes.map(({ code }) => code)).toEqual([
      'short-rows',
      'long-rows',
      'text-cells',
      'text-cells',
    ]);
  });

  it('one cell and two are told as such', () => {
    const said = (cells: string) => read(`t,a,b\n0,1,2\n1,2,3\n${cells}`).notes[0]!.message;
    expect(said('2,ERR,4\n')).toBe('a: 1 cell is text (ERR); taken as a gap.');
    expect(said('2,ERR,4\n3,ERR,4\n')).toBe('a: 2 cells are text (ERR); taken as gaps.');
  });

  it('the heading over again is skipped', () => {
    const log = read('Time,Tank\ns,F\n0,100\nTime,Tank\ns,F\n1,101\n"Time","Tank"\n2,102\n');
    expect(values(log)[0]).toEqual([0, 1, 2]);
    expect(log.notes.find(({ code }) => code === 'repeated-header')!.count).toBe(3);
  });

  it('a channel that begins late is a number, a column of words is none', () => {
    const rows = Array.from({ length: 200 }, (_, k) => `${k},${k < 150 ? '' : k / 2},on`);
    const log = read(`t,late,state\n${rows.join('\n')}`);
    expect(log.columns.map(({ form }) => form)).toEqual(['number', 'number', null]);
    expect(log.columns[1]!.values[199]).toBe(99.5);
    expect(log.notes.map(({ code, column }) => [code, column])).toEqual([['text-column', 'state']]);
  });

  it('clocks and dates become seconds', () => {
    const log = read(
      'Clock,Stamp,x\n08:00:00.5,2031-03-01 08:00:00,1\n08:00:01.0,2031-03-01 08:00:01,2\n',
    );
    expect(log.columns.map(({ form }) => form)).toEqual(['clock', 'date', 'number']);
    expect(values(log)[0]).toEqual([28800.5, 28801]);
    expect(values(log)[1]![1]! - values(log)[1]![0]!).toBe(1);
  });
});

function read16(text: string): Log {
  const out = new Uint8Array(2 * text.length + 2);
  out.set([0xff, 0xfe]);
  for (let i = 0; i < text.length; i++) {
    out[2 + 2 * i] = text.charCodeAt(i) & 255;
    out[3 + 2 * i] = text.charCodeAt(i) >> 8;
  }
  return readLog(out);
}

describe('reading by bytes and by the CSV parser', () => {
  const cell = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }).map(String),
    fc.integer({ min: -99999, max: 99999 }).map((i) => (i / 1000).toFixed(3)),
    fc.constantFrom(
      '',
      ' ',
      '-',
      'ERR',
      '1e3',
      '-2.5E-4',
      '.5',
      '5.',
      '+7',
      '1.2.3',
      '0x10',
      '12:30:00',
      ' 4 ',
      '123456789012345678',
    ),
  );
  const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), {
    minLength: 3,
    maxLength: 12,
  });

  it('give the same numbers, and those that Number() gives', () => {
    fc.assert(
      fc.property(
        table,
        fc.constantFrom('\n', '\r\n'),
        fc.integer({ min: 1, max: 60 }),
        (rows, newline, size) => {
          const body = [['0', '1', '2'], ['1', '2', '3'], ...rows];
          const plain =
            [['t', 'first', 'second'], ...body].map((r) => r.join(',')).join(newline) + newline;
          const quoted = Papa.unparse([['t', 'first', 'second'], ...body], {
            quotes: true,
            newline,
          });
          const reader = new LogReader();
          const all = bytes(plain);
          for (let i = 0; i < all.length; i += size) reader.push(all.subarray(i, i + size));
          const byBytes = values(reader.finish());
          expect(values(read(quoted))).toEqual(byBytes);
          const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
          byBytes.forEach((column, j) =>
            expect(column).toEqual(
              body.map((r) => (plainNumber.test(r[j]!.trim()) ? Number(r[j]) : NaN)),
            ),
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  it('do not depend on where a large log is cut', () => {
    const rows = Array.from(
      { length: 9000 },
      (_, k) => `${k / 10},${(300 + Math.sin(k)).toFixed(3)},${k % 7 ? k : ''}`,
    );
    const all = bytes(`Time (s),Tank (K),é\n${rows.join('\n')}\n`);
    const whole = values(readLog(all));
    for (const size of [1000, 65537, 70001]) {
      const reader = new LogReader();
      for (let i = 0; i < all.length; i += size) reader.push(all.subarray(i, i + size));
      expect(values(reader.finish())).toEqual(whole);
      expect(reader.rowsRead).toBe(9000);
      expect(reader.bytesRead).toBe(all.length);
    }
  });

  it('go over from one to the other where a quote comes late', () => {
    const rows = Array.from(
      { length: 9000 },
      (_, k) => `${k},${k % 100}${k === 8000 ? ',"late, ""quote"""' : ',x'}`,
    );
    const log = read(`t,a,note\n${rows.join('\n')}`);
    expect(log.rows).toBe(9000);
    expect(Array.from(log.columns[0]!.values)).toEqual(Array.from({ length: 9000 }, (_, k) => k));
    expect(log.columns[2]!.examples).toContain('late, "quote"');
  });
});

describe('what cannot be read', () => {
  const refused = (run: () => unknown): LogError => {
    try {
      run();
    } catch (error) {
      expect(error).toBeInstanceOf(LogError);
      return error as LogError;
    }
    throw new Error('it was read');
  };
  it.each<[string, LogProblem, string]>([
    ['nothing', 'empty', ''],
    ['blank lines', 'empty', '\n \n\n'],
    ['no heading', 'no-header', '0,100\n1,101\n2,102\n'],
    ['lines above, no heading', 'no-header', 'Serial,123\n\n0,100,8\n1,101,8\n2,102,8\n'],
    ['one row', 'one-row', 'Time,Tank\n0,100\n'],
    ['a heading alone', 'one-row', 'Time,Tank\n'],
    ['all gaps', 'no-numbers', 'Time,Tank,Flow\n0,,\n1,,\n2,,\n'],
    ['all texts', 'no-numbers', 'Time,Tank\n0,ERR\n1,ERR\n2,ERR\n'],
    ['no columns', 'no-table', 'just some words\nand some more\n'],
    [
      '300 columns',
      'too-many-columns',
      ['x', '1', '2'].map((s) => Array(300).fill(s).join(',')).join('\n'),
    ],
    ['a quote never closed', 'open-quote', `t,a\n0,1\n1,"2\n${'3,4\n'.repeat(60_000)}`],
  ])('%s: %s', (_name, code, text) => {
    const error = refused(() => {
      const reader = new LogReader();
      const all = bytes(text);
      for (let i = 0; i < all.length; i += 100_000) reader.push(all.subarray(i, i + 100_000));
      return reader.finish();
    });
    expect(error.code).toBe(code);
    expect(error.message.length).toBeGreaterThan(20);
    expect(error.message).not.toMatch(/undefined|NaN/);
  });

  it('a binary file, a picture by its head', () => {
    const png = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13);
    expect(refused(() => readLog(png)).code).toBe('binary');
    const noise = Uint8Array.from({ length: 5000 }, (_, i) => 1 + ((i * 7919) % 255));
    expect(refused(() => readLog(noise)).code).toBe('binary');
  });

  it('5 GB claimed: refused before a byte is read', () => {
    const error = refused(() => new LogReader({ claimedSize: 5e9 }));
    expect(error.code).toBe('too-large');
    expect(error.message).toMatch(/5\.0 GB/);
  });

  it('without a heading it is read on when asked', () => {
    const log = read('0,100\n1,101\n2,102\n', { withoutHeader: true });
    expect(names(log)).toEqual(['Column 1', 'Column 2']);
    expect(values(log)[1]).toEqual([100, 101, 102]);
  });
});
