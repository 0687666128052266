/** Which duty the sheets show, and its solution. */
export { dutyOf, settledOf } from '$lib/job/shownDuty';
