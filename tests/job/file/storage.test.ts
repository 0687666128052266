import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { addPhoto } from '$lib/job/own/ownEdits';
import { jobStore, memoryShelf } from '$lib/job/file/storage';
import { emptyJob } from '$lib/job/types';

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
});
