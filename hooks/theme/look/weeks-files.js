/* A plan as a table for a spreadsheet and as a calendar. Keeps to publish/weeks_table.py and weeks/as_icalendar.py. */
(() => {
  const { weeks } = window.storymaths;
  const END = "\r\n", MAKER = "-//storymaths//Plan of the weeks//EN-GB", LONGEST_LINE = 75;
  const HEADINGS = "Week,Date,Day,Book,Session,Title,Part,Parts,Minutes,Reads,Steps,Class".split(",");

  /* A cell: never a formula, and quoted where it must be. */
  const cell = (words) => {
    const plain = /^[=+\-@\t\r\n＝＋－＠]/.test(words) ? `'${words}` : words;
    return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
  };

  weeks.asCsv = (data, plan) => {
    const rows = weeks.taught(plan).map(({ day, part }) => {
      const { bookTitle, number, title, reads } = part.lesson;
      return [weeks.weekIn(plan, day), weeks.iso(day), weeks.dayName(day), bookTitle, number, title, part.number, part.of,
        part.minutes, reads, weeks.stepsInWords(part), plan.asked.ofClass];
    });
    return `\ufeff${[HEADINGS, ...rows].map((row) => row.map(String).map(cell).join(",") + END).join("")}`;
  };

  const text = (words) => words.replaceAll("\r\n", "\n").replace(/[\x00-\x08\x0b-\x1f\x7f]/g, "")
    .replace(/[\\;,]/g, "\\$&").replaceAll("\n", "\\n");

  /* A content line, folded where it has too many octets and never within a character. */
  const fold = (line) => {
    let folded = "", used = 0;
    for (const character of line) {
      const width = new TextEncoder().encode(character).length;
      if (used + width > LONGEST_LINE) {
        folded += `${END} `;
        used = 1;
      }
      folded += character;
      used += width;
    }
    return folded + END;
  };

  /* Words as they stand in an address: small letters and digits, hyphens between. */
  weeks.slug = (words) => words.normalize("NFKD").replace(/[^\x00-\x7f]/g, "").toLowerCase()
    .replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");

  /* A class in a few plain letters: in figures where letters alone would make two classes one. */
  const classId = (ofClass) => {
    const plain = weeks.slug(ofClass);
    if (plain === ofClass.toLowerCase().replaceAll(" ", "-")) return plain;
    return `c-${[...new TextEncoder().encode(ofClass)].map((byte) => byte.toString(16).padStart(2, "0")).join("")}`;
  };

  const event = (data, ofClass, day, part) => {
    const { lesson } = part, basic = (which) => weeks.iso(which).replaceAll("-", "");
    const names = [data.id, lesson.book, `session-${lesson.number}`, `part-${part.number}`, classId(ofClass)];
    const reads = lesson.reads.slice(0, 1).toUpperCase() + lesson.reads.slice(1);
    return [
      "BEGIN:VEVENT",
      `UID:${names.filter(Boolean).join("/")}@storymaths`,
      `DTSTAMP:${data.changed}T000000Z`,
      `DTSTART;VALUE=DATE:${basic(day)}`,
      `DTEND;VALUE=DATE:${basic(day + 1)}`,
      `SUMMARY:${text(`${lesson.bookTitle} ${lesson.number}: ${weeks.nameOf(part)}`)}`,
      `DESCRIPTION:${text(`${weeks.counted(part.minutes, "minute")}. ${reads}.\n${weeks.stepsInWords(part)}.`)}`,
      "TRANSP:TRANSPARENT",
      "END:VEVENT",
    ];
  };

  weeks.asICalendar = (data, plan) => {
    const { ofClass } = plan.asked, name = ofClass ? `${data.title}: ${ofClass}` : data.title;
    const events = weeks.taught(plan).flatMap(({ day, part }) => event(data, ofClass, day, part));
    const opening = ["BEGIN:VCALENDAR", "VERSION:2.0", `PRODID:${MAKER}`, "CALSCALE:GREGORIAN", `NAME:${text(name)}`];
    return [...opening, ...events, "END:VCALENDAR"].map(fold).join("");
  };
})();
