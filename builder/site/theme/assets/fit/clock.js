// The day's clock against the house's hours. Twin of builder/fit/clock/hours.py.
(function (fit) {
  "use strict";
  const { FITS, SHORT, ASK, verdict, withRemedy, factOf, settled, valueOf, asked, ageNotes, signed, both } = fit;
  const DAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];
  const DAY_S = 86400;
  const DAY_BEGINS_S = 21600;
  const CURFEW = {
    question: "On which days must sound stop, at what time, and can anybody extend that?",
    remedy: "Start earlier, or shorten a set or a changeover.",
    who: "the show and the promoter",
  };
  const LOAD_IN = { question: "From when may we load in?", remedy: "Come later, or load in the day before.", who: "the show" };

  function ofTheShow(time) {
    return time < DAY_BEGINS_S ? time + DAY_S : time;
  }

  function holdsOn(text, day) {
    const words = text.toLowerCase().replaceAll(",", " ").split(/\s+/).filter((word) => word !== "");
    if (["every day", "daily", "always"].includes(words.join(" "))) return "yes";
    if (words.length === 3 && words[1] === "to" && DAYS.includes(words[0]) && DAYS.includes(words[2])) {
      const first = DAYS.indexOf(words[0]), last = DAYS.indexOf(words[2]), wish = DAYS.indexOf(day);
      const inside = first <= last ? first <= wish && wish <= last : wish >= first || wish <= last;
      return inside ? "yes" : "no";
    }
    if (words.some((word) => word !== "and" && !DAYS.includes(word))) return "unclear";
    return words.includes(day) ? "yes" : "no";
  }

  function holdsToday(text, day) {
    if (day !== "") return holdsOn(text, day);
    return DAYS.every((each) => holdsOn(text, each) === "yes") ? "yes" : "unclear";
  }

  function endsBeforeCurfew(requirement, section) {
    if (section === null) return asked(requirement, CURFEW, "The pack does not describe this.");
    const curfews = section.items.filter((item) => item.kind === "curfew" && applies(item, requirement.day));
    if (curfews.length === 0) return noCurfew(requirement, section);
    const found = curfews.map((item) => againstCurfew(requirement, item));
    const words = found.map((each) => each.verdict);
    if (words.includes(SHORT) && words.includes(FITS) && requirement.day === "") {
      const mixed = asked(requirement, CURFEW, "It depends on the day, and the rider names none.");
      mixed.fact = found[words.indexOf(SHORT)].fact;
      return mixed;
    }
    for (const word of [SHORT, ASK]) if (words.includes(word)) return found[words.indexOf(word)];
    return settled(found[0]);
  }

  function applies(item, day) {
    return day === "" || holdsOn(item.name, day) !== "no";
  }

  function noCurfew(requirement, section) {
    for (const item of section.items) {
      const value = item.kind === "identity" ? valueOf(item, "curfews") : null;
      if (value !== null && value.standing === "none") {
        const found = verdict(requirement, FITS, "The house has no curfew.");
        found.fact = factOf(value, item);
        return found;
      }
    }
    return asked(requirement, CURFEW, "The house has not said when sound must stop on that day.");
  }

  function againstCurfew(requirement, item) {
    const value = item.values.music_ends;
    const hard = item.values.strictness.text === "hard";
    const slack = ofTheShow(value.number) - ofTheShow(requirement.time_s);
    const words = both("duration", Math.abs(slack));
    const at = fit.clock(value.number);
    let found;
    if (requirement.day !== "" && holdsOn(item.name, requirement.day) === "unclear") {
      found = asked(requirement, CURFEW, "It is not clear whether this curfew holds on that day: " + item.name + ".");
    } else if (slack >= 0) {
      found = verdict(requirement, FITS, words[0] + " before the curfew at " + at + ".");
      found.notes = ageNotes(value);
    } else if (hard) {
      found = withRemedy(verdict(requirement, SHORT, words[0] + " after the curfew at " + at + "."), CURFEW);
    } else {
      found = asked(requirement, CURFEW, words[0] + " after the curfew at " + at + ", which somebody may extend.");
    }
    found.fact = factOf(value, item);
    found.margin = signed(words, slack);
    return found;
  }

  function loadInAfter(requirement, section) {
    for (const item of section !== null ? section.items : []) {
      const value = item.kind === "identity" ? valueOf(item, "load_in_from") : null;
      if (value !== null) return againstHour(requirement, item, value);
    }
    return asked(requirement, LOAD_IN, "The house has not said.");
  }

  function againstHour(requirement, item, value) {
    let found;
    if (value.standing === "none") {
      found = verdict(requirement, FITS, "The house sets no hour.");
    } else if (value.number === null) {
      found = asked(requirement, LOAD_IN, "The house does not know yet.");
    } else {
      const slack = requirement.time_s - value.number;
      const words = both("duration", Math.abs(slack));
      if (slack >= 0) {
        found = verdict(requirement, FITS, "Not before " + fit.clock(value.number) + ".");
        found.notes = ageNotes(value);
      } else {
        found = withRemedy(verdict(requirement, SHORT, words[0] + " too early."), LOAD_IN);
      }
      found.margin = signed(words, slack);
    }
    found.fact = factOf(value, item);
    return settled(found);
  }

  Object.assign(fit, { DAY_S, ofTheShow, holdsToday, endsBeforeCurfew, loadInAfter });
})((window.housefit = window.housefit || {}));
