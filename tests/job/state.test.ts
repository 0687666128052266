import { describe, expect, it } from 'vitest';
import { JobState } from '$lib/job/state.svelte';
import { jobStore, memoryShelf, type Shelf } from '$lib/job/file/storage';
import { emptyJob } from '$lib/job/types';

const tab = (shelf: Shelf = memoryShelf()) => new JobState(jobStore(shelf), () => emptyJob('US'));
const volts = (state: JobState) => state.job.asFound['pump.volts']?.is;

describe('the open job', () => {
  it('is written at every edit: a new page finds it', () => {
    const shelf = memoryShelf();
    tab(shelf).edit('pump.volts', '12 V');
    expect(volts(tab(shelf))).toBe('12 V');
  });
  it('undoes and redoes, and keeps what it went back to', () => {
    const shelf = memoryShelf();
    const state = tab(shelf);
    expect(state.canUndo).toBe(false);
    for (const v of ['12 V', '11 V', '10 V']) state.edit('pump.volts', v);
    state.undo();
    state.undo();
    expect(volts(state)).toBe('12 V');
    state.redo();
    expect(volts(state)).toBe('11 V');
    expect(volts(tab(shelf))).toBe('11 V');
    state.edit('pump.volts', '9 V');
    expect(state.canRedo).toBe(false);
    state.undo();
    expect(volts(state)).toBe('11 V');
  });
  it('forgets the oldest steps, not the newest', () => {
    const state = tab();
    for (let i = 0; i < 130; i++) state.edit('title.job', `job ${i}`);
    let steps = 0;
    for (; state.canUndo; steps++) state.undo();
    expect(steps).toBe(100);
    expect(state.job.header.title.job).toBe('job 29');
  });
  it('solves again after an edit', () => {
    const state = tab();
    const before = state.evaluated;
    state.edit('site.ambient', '105 °F');
    expect(state.evaluated).not.toBe(before);
    const hot = state.evaluated.asFound.steady.cruise;
    const cool = before.asFound.steady.cruise;
    expect(
      hot.ok && cool.ok && hot.value.temperatures.reservoir > cool.value.temperatures.reservoir,
    ).toBe(true);
  });
});

describe('two tabs on one job', () => {
  it('the second takes over what the first wrote', () => {
    const shelf = memoryShelf();
    const first = tab(shelf);
    const second = tab(shelf);
    expect(second.id).toBe(first.id);
    first.edit('pump.volts', '12 V');
    second.onStorage(`soakline.job.${first.id}`);
    expect(volts(second)).toBe('12 V');
  });
  it('neither edit is lost when the event comes late', () => {
    const shelf = memoryShelf();
    const first = tab(shelf);
    const second = tab(shelf);
    first.edit('pump.volts', '12 V');
    second.edit('fans.volts', '11 V');
    expect(volts(second)).toBe('12 V');
    expect(second.job.asFound['fans.volts']).toEqual({ is: '11 V' });
    first.onStorage(`soakline.job.${first.id}`);
    expect(first.job).toEqual(second.job);
  });
  it('leaves a tab alone that has another job open', () => {
    const shelf = memoryShelf();
    const first = tab(shelf);
    const second = tab(shelf);
    second.create();
    first.edit('pump.volts', '12 V');
    second.onStorage(`soakline.job.${first.id}`);
    expect(volts(second)).toBeUndefined();
    expect(second.cards).toHaveLength(2);
  });
});

describe('files', () => {
  it('come back as a job of their own; a bad file changes nothing', () => {
    const state = tab();
    state.edit('pump.volts', '12 V');
    state.edit('title.job', 'Grey / wagon #3');
    const { name, text } = state.file();
    expect(name).toBe('grey-wagon-3.json');
    const before = state.id;
    expect(state.openFile(text.slice(0, 90)).ok).toBe(false);
    expect(state.id).toBe(before);
    expect(state.notice?.level).toBe('watch');
    expect(state.openFile(text).ok).toBe(true);
    expect(state.id).not.toBe(before);
    expect(volts(state)).toBe('12 V');
    expect(state.cards).toHaveLength(2);
  });
  it('a removed job gives way to another', () => {
    const state = tab();
    state.edit('title.job', 'one');
    const one = state.id;
    state.duplicate();
    expect(state.job.header.title.job).toBe('one (copy)');
    state.remove(state.id);
    expect(state.id).toBe(one);
  });
  it('damage found at the start is reported, and work goes on', () => {
    const shelf = memoryShelf();
    shelf.setItem('soakline.current', 'x');
    shelf.setItem('soakline.job.x', '{');
    const state = tab(shelf);
    expect(state.notice?.message).toContain('set aside');
    expect(state.edit('pump.volts', '12 V').problem).toBeUndefined();
  });
});
