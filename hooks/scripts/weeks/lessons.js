/* What is to be laid: the sessions of a series, and their parts where a day is too short. */

/**
 * @typedef {[name: string, minutes: number]} Step
 * @typedef {{
 *   book: string, bookTitle: string, number: number, title: string, reads: string, address: string, steps: Step[],
 * }} Lesson a session; `reads` is the pages of the book it reads, in words
 * @typedef {{ lesson: Lesson, steps: Step[], number: number, of: number, minutes: number }} Part
 *   what is taught on one day: a whole lesson, or the first, second … part of one
 * @typedef {{
 *   id: string, title: string, changed: string, lessons: [string, string, number, string, string, string, (string | number)[]][],
 * }} SeriesData as hooks/storymaths/weeks/lessons.py gives it
 */

/**
 * Steps in runs, each as long as the minutes allow before the next begins.
 * @type {(steps: Step[], minutes: number) => Step[][]}
 */
const filled = (steps, minutes) => {
  /** @type {Step[]} */
  let run = [];
  const runs = [run];
  let left = minutes;
  for (const step of steps) {
    if (step[1] > left && run.length) {
      runs.push(run = []);
      left = minutes;
    }
    run.push(step);
    left -= step[1];
  }
  return runs;
};

/**
 * A lesson split at the ends of steps into as few days of so many minutes as can be. Of the ways with the fewest parts
 * it takes those whose longest part is shortest, and of those the one whose earlier parts are longest. Every step must
 * fit into a day.
 * @type {(lesson: Lesson, minutes: number) => Part[]}
 */
export const partsOf = (lesson, minutes) => {
  const fewest = filled(lesson.steps, minutes).length;
  let longest = Math.max(...lesson.steps.map(([, long]) => long));
  while (filled(lesson.steps, longest).length > fewest) longest += 1;
  const runs = filled(lesson.steps, longest);
  return runs.map((steps, n) => (
    { lesson, steps, number: n + 1, of: runs.length, minutes: steps.reduce((sum, [, long]) => sum + long, 0) }));
};

/** @type {(data: SeriesData) => Lesson[]} */
export const lessonsOf = (data) => data.lessons.map(([book, bookTitle, number, title, reads, address, flat]) => {
  /** @type {Step[]} */
  const steps = [];
  for (let n = 0; n < flat.length; n += 2) steps.push([String(flat[n]), Number(flat[n + 1])]);
  return { book, bookTitle, number, title, reads, address, steps };
});
