// The words of a verdict, its record, and which of two is better. Twin of builder/fit/verdicts.py.
(function (fit) {
  "use strict";
  const FITS = "fits", NOTED = "fits, with a note", SHORT = "short", ASK = "ask", NOT_NEEDED = "not needed";
  const RANK = { [NOT_NEEDED]: 0, [FITS]: 1, [NOTED]: 2, [ASK]: 3, [SHORT]: 4 };

  function verdict(requirement, word, reason) {
    const { act, line, department, title, need, strictness } = requirement;
    return { act, line, department, title, need, strictness, verdict: word, reason, fact: null, margin: ["", ""], notes: [], remedy: "", who: "", question: "", parts: [] };
  }

  function withRemedy(found, rule) {
    found.remedy = rule.remedy;
    found.who = rule.who;
    return found;
  }

  function withQuestion(found, requirement, question) {
    const line = requirement.line > 0 ? ", rider line " + requirement.line : "";
    found.question = question + " (" + requirement.act + line + ": " + requirement.title + ", " + requirement.need + ".)";
    return found;
  }

  function factOf(value, item) {
    const { key, label, text, standing, also, page, checked } = value;
    return { key, item: item.name, label, text, standing, also, page, checked };
  }

  function settled(found) {
    if (found.verdict === FITS && found.notes.length > 0) found.verdict = NOTED;
    return found;
  }

  function valueOf(item, name) {
    return Object.hasOwn(item.values, name) ? item.values[name] : null;
  }

  function numberOf(item, name) {
    if (item === null) return null;
    if (Object.hasOwn(item.numbers, name)) return item.numbers[name];
    const value = valueOf(item, name);
    return value === null ? null : value.number;
  }

  function textOf(item, name) {
    if (Object.hasOwn(item.words, name)) return item.words[name];
    const value = valueOf(item, name);
    return value === null ? "" : value.text;
  }

  function partsOf(item, name) {
    const value = valueOf(item, name);
    return value === null ? [] : value.parts;
  }

  function listed(name, names) {
    return name !== "" && names.some((other) => other.toLowerCase() === name.toLowerCase());
  }

  function sectionOf(pack, key) {
    return pack.sections.find((section) => section.key === key) || null;
  }

  Object.assign(fit, { FITS, NOTED, SHORT, ASK, NOT_NEEDED, RANK, verdict, withRemedy, withQuestion, factOf, settled, valueOf, numberOf, textOf, partsOf, listed, sectionOf });
})((window.housefit = window.housefit || {}));
