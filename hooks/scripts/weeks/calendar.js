/*
 * A plan as a calendar to take into a calendar program: RFC 5545, an event a day.
 *
 * Events last a day (VALUE=DATE): a plan knows days and not the school's timetable, and a date has no time zone to go
 * wrong in. An event's UID says which part of which session it is and not when, so that a plan read in again moves its
 * events instead of adding more; plans of two classes are told apart by the name of the class. DTSTAMP is the day the
 * series last changed, never the clock. METHOD is left out: it would make the calendar a message that needs a sender.
 */
/** @import { Part, SeriesData } from "./lessons.js" */
/** @import { Plan } from "./plan.js" */
import { iso } from "./dates.js";
import { counted, nameOf, stepsInWords, taught } from "./words.js";

const END = "\r\n", MAKER = "-//storymaths//Plan of the weeks//EN-GB";
const LONGEST_LINE = 75; // octets, its end not counted: section 3.1

/** Its UTF-8 in hexadecimal. @type {(words: string) => string} */
const inOctets = (words) => encodeURIComponent(words)
  .replace(/%(..)|./g, (sign, octet) => (octet ? octet.toLowerCase() : sign.charCodeAt(0).toString(16)));

/**
 * A TEXT value: its own signs escaped, what cannot be printed left out (section 3.3.11).
 * @type {(words: string) => string}
 */
export const textOf = (words) => words.replaceAll("\r\n", "\n").replace(/[\x00-\x08\x0b-\x1f\x7f]/g, "")
  .replace(/[\\;,]/g, "\\$&").replaceAll("\n", "\\n");

/**
 * A content line with its end, folded where it has too many octets and never within a character.
 * @type {(line: string) => string}
 */
export const fold = (line) => {
  let folded = "", used = 0;
  for (const character of line) {
    const width = inOctets(character).length / 2;
    if (used + width > LONGEST_LINE) {
      folded += `${END} `;
      used = 1;
    }
    folded += character;
    used += width;
  }
  return folded + END;
};

/** Words as they stand in an address: small letters and digits, hyphens between. @type {(words: string) => string} */
export const slug = (words) => words.normalize("NFKD").replace(/[^\x00-\x7f]/g, "").toLowerCase()
  .replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");

/**
 * A class in a few plain letters: in figures where letters alone would make two classes one.
 * @type {(ofClass: string) => string}
 */
const classId = (ofClass) => {
  const plain = slug(ofClass);
  return plain === ofClass.toLowerCase().replaceAll(" ", "-") ? plain : `c-${inOctets(ofClass)}`;
};

/** @type {(data: SeriesData, ofClass: string, day: number, part: Part) => string[]} */
const event = (data, ofClass, day, part) => {
  const { lesson } = part;
  /** @type {(which: number) => string} */
  const basic = (which) => iso(which).replaceAll("-", "");
  const names = [data.id, lesson.book, `session-${lesson.number}`, `part-${part.number}`, classId(ofClass)];
  const reads = lesson.reads.slice(0, 1).toUpperCase() + lesson.reads.slice(1);
  return [
    "BEGIN:VEVENT",
    `UID:${names.filter(Boolean).join("/")}@storymaths`,
    `DTSTAMP:${data.changed}T000000Z`,
    `DTSTART;VALUE=DATE:${basic(day)}`,
    `DTEND;VALUE=DATE:${basic(day + 1)}`,
    `SUMMARY:${textOf(`${lesson.bookTitle} ${lesson.number}: ${nameOf(part)}`)}`,
    `DESCRIPTION:${textOf(`${counted(part.minutes, "minute")}. ${reads}.\n${stepsInWords(part)}.`)}`,
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
};

/** The calendar, an event a lesson or part of one, in order. @type {(data: SeriesData, plan: Plan) => string} */
export const asICalendar = (data, plan) => {
  const { ofClass } = plan.asked, name = ofClass ? `${data.title}: ${ofClass}` : data.title;
  const events = taught(plan).flatMap(({ day, part }) => event(data, ofClass, day, part));
  const opening = ["BEGIN:VCALENDAR", "VERSION:2.0", `PRODID:${MAKER}`, "CALSCALE:GREGORIAN", `NAME:${textOf(name)}`];
  return [...opening, ...events, "END:VCALENDAR"].map(fold).join("");
};
