import type { FieldGroup, TextField } from './types';

const text = (key: string, label: string, ask: string): TextField => ({
  kind: 'text',
  path: `title.${key}`,
  label,
  ask,
  maxLength: 200,
});

/** The title block. These words live in the head of the job file, not on a side of it. */
export const title: FieldGroup = {
  id: 'title',
  title: 'Title block',
  fields: [
    text('job', 'Job', 'Number or name of the job.'),
    text('vehicle', 'Vehicle', 'Make of the car is enough to find it again: year, body, engine.'),
    text('customer', 'Customer', 'Who asked.'),
    text('by', 'Prepared by', 'Who entered the values.'),
    text('checkedBy', 'Checked by', 'Who went through the numbers a second time.'),
    text('date', 'Date', 'Day of the measurements.'),
  ],
};
