import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { addPhoto } from '$lib/job/own/ownEdits';
import { writeJob } from '$lib/job/file/file';
import { jobStore, memoryShelf } from '$lib/job/file/storage';
import { dropRevision, keepRevision } from '$lib/job/folder/revisions';
import { emptyJob, type Job } from '$lib/job/types';

const withVolts = (volts: string) => applyEdit(emptyJob(), 'asFound', 'pump.volts', volts).job;

describe('the store of jobs', () => {
  it('keeps several jobs and which is current', () => {
    let time = 1000;
    const store = jobStore(memoryShelf(), () => time++);
    const [a, b] = [store.newId(), store.newId()];
    expect(a).not.toBe(b);
    store.save(a, withVolts('12 V'), 0);
    store.save(b, withVolts('11 V'), 0);
    store.setCurrent(b);
    expect(store.current()).toBe(b);
    expect(store.list().map((card) => card.id)).toEqual([b, a]);
    expect(store.load(a)).toMatchObject({ ok: true, revision: 1, job: withVolts('12 V') });
    store.remove(a);
    expect(store.load(a)).toMatchObject({ ok: false, code: 'missing' });
  });

  it('does not let an older edit overwrite a newer one', () => {
    const shelf = memoryShelf();
    const [tab1, tab2] = [jobStore(shelf), jobStore(shelf)];
    tab1.save('x', withVolts('12 V'), 0);
    expect(tab2.save('x', withVolts('11 V'), 1)).toEqual({ ok: true, revision: 2 });
    const late = tab1.save('x', withVolts('10 V'), 1);
    expect(late).toMatchObject({ ok: false, code: 'newer', newer: { revision: 2 } });
    expect(tab1.load('x')).toMatchObject({ job: withVolts('11 V') });
  });

  it('reports a full shelf and keeps what was there', () => {
    const shelf = memoryShelf();
    const store = jobStore(shelf);
    store.save('x', withVolts('12 V'), 0);
    shelf.setItem = () => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    };
    expect(store.save('x', withVolts('11 V'), 1)).toMatchObject({ ok: false, code: 'full' });
    expect(store.load('x')).toMatchObject({ job: withVolts('12 V') });
  });

  it.each([
    ['garbage', '{{{'],
    ['a record without a file', '{"revision":3}'],
    ['a file cut short', '{"revision":3,"saved":1,"file":"{\\"soakline\\":1,"}'],
  ])('sets %s aside, whole', (_, text) => {
    const shelf = memoryShelf();
    shelf.setItem('soakline.job.x', text);
    const store = jobStore(shelf, () => 7);
    expect(store.list()).toEqual([]);
    expect(store.load('x')).toMatchObject({ ok: false, code: 'damaged' });
    expect(shelf.getItem('soakline.aside.x.7')).toBe(text);
    expect(shelf.getItem('soakline.job.x')).toBeNull();
  });

  it('sets damage aside also when it happens under an open job', () => {
    const shelf = memoryShelf();
    const store = jobStore(shelf, () => 7);
    shelf.setItem('soakline.job.x', 'broken');
    expect(store.save('x', withVolts('12 V'), 4)).toMatchObject({ ok: true });
    expect(shelf.getItem('soakline.aside.x.7')).toBe('broken');
    expect(store.load('x')).toMatchObject({ ok: true });
  });

  it('holds the line that shows a photo, not the photo', () => {
    const shelf = memoryShelf();
    const store = jobStore(shelf);
    const data = 'A'.repeat(4000);
    const job = addPhoto(emptyJob(), 'pump-feed', 'p1', {
      type: 'image/jpeg',
      width: 4,
      height: 3,
      data,
    });
    store.save('x', job, 0);
    expect(shelf.getItem('soakline.job.x')).not.toContain(data);
    expect(store.load('x')).toMatchObject({ ok: true, job: { own: job.own, photos: {} } });
  });

  describe('kept states', () => {
    const WORDS = { date: '2031-05-06', by: 'Shop', note: 'first' };
    const results = [
      {
        sheet: 'loop-balance',
        id: 'reservoir',
        name: 'Reservoir',
        side: 'asFound' as const,
        quantity: 'temperature',
        value: 350.5,
      },
    ];
    const keep = (job: Job) => keepRevision(job, job, WORDS, results);
    /** A shelf that counts what is written to it. */
    function counted() {
      const shelf = memoryShelf();
      const written: string[] = [];
      const { setItem } = shelf;
      shelf.setItem = (key, value) => (written.push(key), setItem(key, value));
      return { shelf, written };
    }

    it('are written once, each by itself, and come back with the job', () => {
      const { shelf, written } = counted();
      const store = jobStore(shelf);
      const two = keep(keep(withVolts('12 V')));
      store.save('x', two, 0);
      const edited = applyEdit(two, 'asFound', 'pump.volts', '11 V').job;
      store.save('x', edited, 1);
      expect(written).toEqual([
        'soakline.revision.x.A',
        'soakline.revision.x.B',
        'soakline.job.x',
        'soakline.job.x',
      ]);
      expect(shelf.getItem('soakline.job.x')).not.toContain('350.5');
      expect(jobStore(shelf).load('x')).toMatchObject({ ok: true, job: edited, notes: [] });
    });

    it('are gone when dropped, and back when that is undone, in another window too', () => {
      const shelf = memoryShelf();
      const [one, other] = [jobStore(shelf), jobStore(shelf)];
      const kept = keep(emptyJob());
      one.save('x', kept, 0);
      const seen = other.load('x');
      one.save('x', dropRevision(kept, 'A'), 1);
      expect(shelf.getItem('soakline.revision.x.A')).toBeNull();
      // The other window took over the job without it, then goes back to what it had seen.
      other.load('x');
      if (!seen.ok) throw new Error(seen.message);
      other.save('x', seen.job, 2);
      expect(jobStore(shelf).load('x')).toMatchObject({ job: kept, revision: 3 });
    });

    it('one that is damaged is told, and the job is whole without it', () => {
      const shelf = memoryShelf();
      jobStore(shelf).save('x', keep(keep(withVolts('12 V'))), 0);
      shelf.setItem('soakline.revision.x.A', '{');
      const loaded = jobStore(shelf).load('x');
      expect(loaded).toMatchObject({ ok: true, notes: [expect.stringContaining('Revision A')] });
      expect(loaded.ok && loaded.job.revisions.map(({ mark }) => mark)).toEqual(['B']);
    });

    it('go with the job when it is removed', () => {
      const shelf = memoryShelf();
      const store = jobStore(shelf);
      store.save('x', keep(emptyJob()), 0);
      store.remove('x');
      expect(shelf.length).toBe(0);
    });

    it('in a job that holds them itself, as it was kept before, are read and then stand apart', () => {
      const shelf = memoryShelf();
      const kept = keep(emptyJob());
      const record = { revision: 4, saved: 1, file: writeJob(kept) };
      shelf.setItem('soakline.job.x', JSON.stringify(record));
      const store = jobStore(shelf);
      expect(store.load('x')).toMatchObject({ job: kept });
      store.save('x', kept, 4);
      expect(shelf.getItem('soakline.revision.x.A')).toContain('350.5');
      expect(jobStore(shelf).load('x')).toMatchObject({ job: kept });
    });

    it('a shelf too full for a new one keeps the job that was there', () => {
      const shelf = memoryShelf();
      const store = jobStore(shelf);
      const job = withVolts('12 V');
      store.save('x', job, 0);
      shelf.setItem = () => {
        throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      };
      expect(store.save('x', keep(job), 1)).toMatchObject({ ok: false, code: 'full' });
      expect(store.load('x')).toMatchObject({ job });
    });
  });
});
