// One requirement against the facts that can answer it. Twin of builder/fit/needs/.
(function (fit) {
  "use strict";
  const { FITS, NOTED, SHORT, ASK, NOT_NEEDED, verdict, withRemedy, withQuestion, factOf, settled, valueOf, textOf, sectionOf, LESS, both, digits } = fit;
  const LENGTH_TOLERANCE_M = 0.025;
  const SHARE_TOLERANCE = 0.005;
  const ROUNDED_KINDS = ["mass", "load", "area"];
  const WHOLES = ["whole", "rules"];
  const WORDED = ["yes", "permission"];
  const WANTED = { count: "How many do you need?", yes: "Do you need it?", permission: "Do you need it?" };
  const SOME_DO = { deck: "Only in", configuration: "Only in", beam: "Only under" };
  const ORDER = [FITS, NOTED, ASK, SHORT];

  function tolerance(rule, wanted) {
    if (rule.legal) return 0;
    if (rule.kind === "length") return LENGTH_TOLERANCE_M;
    return ROUNDED_KINDS.includes(rule.kind) ? Math.abs(wanted) * SHARE_TOLERANCE : 0;
  }

  function compared(requirement, rule, pack) {
    if (requirement.carried === "show") return verdict(requirement, NOT_NEEDED, "The show brings it.");
    const section = sectionOf(pack, rule.section);
    if (requirement.way === "unknown") return notKnownYet(requirement, rule, pack);
    if (section === null) return asked(requirement, rule, "The pack does not describe this.");
    const items = chosen(section, rule, requirement);
    if (items.length === 0 && chosen(section, rule, { ...requirement, configuration: "" }).length > 0) return whichConfiguration(requirement, rule, pack);
    if (items.length === 0) return empty(requirement, rule, section);
    if (rule.combine === "sum") return summed(requirement, rule, items);
    if (rule.combine === "all") return worst(requirement, rule, items);
    return withFaults(best(requirement, rule, items), rule, section);
  }

  function notKnownYet(requirement, rule, pack) {
    const reason = "The rider does not know yet how much it needs.";
    if (sectionOf(pack, rule.section) === null) return asked(requirement, rule, reason);
    const fact = compared({ ...requirement, way: rule.ways[0], low: 0, high: 0, words: "yes" }, rule, pack).fact;
    if (fact === null || fact.standing !== "stated" || fact.text === "") return asked(requirement, rule, reason);
    const found = verdict(requirement, ASK, reason);
    const line = requirement.line > 0 ? ", rider line " + requirement.line : "";
    const wanted = Object.hasOwn(WANTED, rule.kind) ? WANTED[rule.kind] : "How much do you need?";
    const has = WORDED.includes(rule.kind) ? " The house says " : " The house has ";
    found.question = requirement.act + line + ": " + requirement.title + ". " + wanted + has + fact.text + ".";
    found.fact = fact;
    return found;
  }

  function asked(requirement, rule, reason) {
    return withQuestion(verdict(requirement, ASK, reason), requirement, rule.question);
  }

  function chosen(section, rule, requirement) {
    return section.items.filter((item) => item.kind === rule.item && matches(item, rule) && inConfiguration(item, requirement.configuration));
  }

  function matches(item, rule) {
    return rule.where.every(([name, wanted]) => {
      const but = name.startsWith("not "), of = but ? name.slice(4) : name;
      return ((of === "name" ? item.name : textOf(item, of)) === wanted) !== but;
    });
  }

  function inConfiguration(item, configuration) {
    if (configuration === "") return true;
    if (item.kind === "configuration") return item.name === configuration;
    const value = valueOf(item, "configurations");
    return value === null || value.parts.includes(configuration);
  }

  function whichConfiguration(requirement, rule, pack) {
    const house = sectionOf(pack, "house"), written = requirement.configuration;
    const names = (house === null ? [] : house.items).filter((item) => item.kind === "configuration").map((item) => item.name);
    if (names.length === 0 || names.includes(written)) return asked(requirement, rule, "The house has not said for the configuration " + written + ".");
    const found = verdict(requirement, ASK, "The house names no configuration " + written + "; it names: " + names.join("; ") + ".");
    found.question = requirement.act + ": which configuration is meant by " + written + "? The house names: " + names.join("; ") + ".";
    return found;
  }

  function empty(requirement, rule, section) {
    for (const item of section.items) {
      const value = WHOLES.includes(item.kind) && rule.whole !== "" ? valueOf(item, rule.whole) : null;
      if (value !== null && value.standing === "none") {
        if (rule.none_means === "no limit") return asked(requirement, rule, "The house has none of these, so nothing says what limits it.");
        const found = verdict(requirement, SHORT, "The house has none.");
        found.fact = factOf(value, item);
        return withRemedy(found, rule);
      }
    }
    return asked(requirement, rule, "The house has not said.");
  }

  function best(requirement, rule, items) {
    const found = items.map((item) => settled(answered(requirement, rule, item)));
    let one = found[0];
    for (const other of found) if (better(other, one)) one = other;
    const good = items.filter((_, index) => [FITS, NOTED].includes(found[index].verdict)).map((item) => item.name);
    if (good.length > 0 && good.length < items.length && Object.hasOwn(SOME_DO, rule.item)) one.notes.push(SOME_DO[rule.item] + ": " + good.join(", ") + ".");
    return settled(withoutSlack(one));
  }

  function withFaults(found, rule, section) {
    if (rule.beside === "" || ![FITS, NOTED].includes(found.verdict)) return found;
    for (const item of section.items) if (item.kind === rule.beside) found.notes = [...found.notes, ...faultsOf(item)];
    return settled(found);
  }

  function faultsOf(item) {
    if (item.condition === "out of service") return [item.name + " is out of service."];
    const dead = textOf(item, "dead");
    return dead !== "" ? [item.name + ", ways that do not work: " + dead + (item.note !== "" ? ". " + item.note : ".")] : itemNotes(item);
  }

  function worst(requirement, rule, items) {
    const found = items.map((item) => settled(answered(requirement, rule, item)));
    let one = found[0];
    for (const other of found) if (better(one, other)) one = other;
    return withoutSlack(one);
  }

  function better(one, other) {
    const first = ORDER.indexOf(one.verdict), second = ORDER.indexOf(other.verdict);
    return first < second || (first === second && one.slack > other.slack);
  }

  function withoutSlack(found) {
    delete found.slack;
    return found;
  }

  function answered(requirement, rule, item) {
    const value = valueFor(item, rule);
    let found = standing(requirement, rule, value);
    if (value !== null) found.fact = factOf(value, item);
    if (item.condition === "out of service") found = refused(requirement, rule, item, "It is out of service.");
    else if (item.terms === "not for visitors") found = refused(requirement, rule, item, "It is not for visitors.");
    else if (found.verdict === FITS) found.notes = [...found.notes, ...itemNotes(item), ...ageNotes(value)];
    return found;
  }

  function refused(requirement, rule, item, reason) {
    return slackless(withRemedy(verdict(requirement, SHORT, item.name + ": " + reason), rule));
  }

  function slackless(found) {
    found.slack = 0;
    return found;
  }

  function itemNotes(item) {
    const notes = [];
    if (item.state !== "") notes.push(item.name + ": " + item.state + "." + (item.note !== "" ? " " + item.note : ""));
    else if (item.condition === "limited") notes.push(item.name + " is limited" + (item.note !== "" ? ": " + item.note : "."));
    if (["extra charge", "by arrangement"].includes(item.terms)) notes.push(item.name + ": " + item.terms + ".");
    return notes;
  }

  function ageNotes(value) {
    if (value === null || value.standing !== "stated") return [];
    if (value.checked === "") return ["The house does not say when this was checked."];
    return value.stale ? ["Old check: " + value.checked + "."] : [];
  }

  function standing(requirement, rule, value) {
    if (value === null || value.standing === "not stated") return slackless(asked(requirement, rule, "The house has not said."));
    if (value.standing === "unknown") return slackless(asked(requirement, rule, "The house does not know yet."));
    return value.standing === "none" ? noneSaid(requirement, rule) : stated(requirement, rule, value);
  }

  function noneSaid(requirement, rule) {
    if (rule.none_means === "zero" && requirement.way !== "is") return numbered(requirement, rule, 0);
    if (rule.none_means === "no limit") return slackless(verdict(requirement, FITS, "Nothing limits it."));
    return slackless(withRemedy(verdict(requirement, SHORT, "The house has none."), rule));
  }

  function stated(requirement, rule, value) {
    if (rule.kind === "permission") return permitted(requirement, rule, value);
    if (rule.kind === "yes") return said(requirement, rule, value.text === requirement.words);
    if (value.bound && requirement.way !== "at most") return bounded(requirement, rule, value);
    if (value.number === null) {
      return slackless(value.text === "no limit" ? verdict(requirement, FITS, "Nothing limits it.") : asked(requirement, rule, "The house gives no number."));
    }
    return numbered(requirement, rule, value.number);
  }

  function bounded(requirement, rule, value) {
    const found = numbered(requirement, rule, value.number);
    return found.verdict === SHORT ? found : slackless(asked(requirement, rule, "It is " + value.text + ", for not all is known."));
  }

  function permitted(requirement, rule, value) {
    const found = said(requirement, rule, value.text !== "no" || requirement.words === "no");
    if (found.verdict === FITS && value.text === "by arrangement" && requirement.words === "yes") found.notes.push("By arrangement: ask in time.");
    return found;
  }

  function said(requirement, rule, agrees) {
    return slackless(agrees ? verdict(requirement, FITS, "As asked.") : withRemedy(verdict(requirement, SHORT, "The house says otherwise."), rule));
  }

  function numbered(requirement, rule, number) {
    const slack = slackOf(requirement, number);
    const allowed = tolerance(rule, requirement.way === "at most" ? requirement.high : requirement.low);
    const words = both(rule.kind, Math.abs(slack));
    let found;
    if (slack >= -allowed) {
      found = verdict(requirement, FITS, slack > 0 ? words[0] + " to spare." : slack === 0 ? "Exactly enough." : "Within the tolerance.");
      if (slack < 0) found.notes.push("Short by " + words[0] + ", within the tolerance for rounding.");
    } else {
      found = withRemedy(verdict(requirement, SHORT, direction(requirement, number) + " by " + words[0] + "."), rule);
    }
    found.margin = signed(words, slack);
    found.slack = slack;
    return found;
  }

  function slackOf(requirement, number) {
    if (requirement.way === "at least") return number - requirement.low;
    if (requirement.way === "at most") return requirement.high - number;
    const below = number - requirement.low, above = requirement.high - number;
    return below < above ? below : above;
  }

  function direction(requirement, number) {
    return requirement.way !== "at least" && number > requirement.high ? "Over" : "Short";
  }

  function signed(words, slack) {
    return words.map((word) => (word !== "" ? withSign(word, slack) : ""));
  }

  function withSign(word, slack) {
    if (word.startsWith(LESS)) return word + (slack < 0 ? " short" : " to spare");
    return (slack < 0 ? "−" : slack > 0 ? "+" : "") + word;
  }

  function valueFor(item, rule) {
    const value = valueOf(item, rule.value);
    const unsaid = value === null || value.standing === "not stated";
    return unsaid && rule.otherwise !== "" ? valueOf(item, rule.otherwise) : value;
  }

  function summed(requirement, rule, items) {
    let total = 0, unknown = 0, used = 0, last = null, notes = [];
    const leftOut = [];
    for (const item of items) {
      const value = rule.value !== "" ? valueFor(item, rule) : isRated(item) ? itself(item) : null;
      if (item.condition === "out of service" || item.terms === "not for visitors") {
        leftOut.push(item.name + " is left out: " + (item.condition === "out of service" ? item.condition : item.terms) + ".");
      } else if (value === null || (value.standing !== "none" && value.number === null)) {
        unknown += 1;
      } else if (value.number !== null) {
        total += value.number;
        notes = [...notes, ...itemNotes(item), ...ageNotes(value)];
        last = factOf(value, item);
        used += 1;
      }
    }
    let found = numbered(requirement, rule, total);
    const openEnded = unknown > 0 && (rule.value !== "" || numbered(requirement, rule, total + unknown).verdict !== SHORT);
    if (found.verdict === SHORT && openEnded) {
      found = slackless(asked(requirement, rule, "The house has not said all of it: " + both(rule.kind, total)[0] + " are known."));
    }
    if (last !== null && (used > 1 || rule.value === "")) {
      const words = both(rule.kind, total);
      last = { ...last, item: digits(used, 0) + " together", label: rule.title, text: words[0], also: words[1] };
    }
    found.fact = last;
    if (found.verdict === FITS || leftOut.length > 0) found.notes = [...found.notes, ...leftOut, ...once(notes)];
    return settled(withoutSlack(found));
  }

  function isRated(item) {
    const limit = valueOf(item, "limit");
    return item.kind !== "point" || (limit !== null && limit.number !== null);
  }

  function itself(item) {
    const { key, name, page, checked, stale } = item;
    return { key, label: name, standing: "stated", text: name, also: "", number: 1, parts: [], bound: false, page, checked, stale };
  }

  function once(notes) {
    return notes.filter((note, index) => notes.indexOf(note) === index);
  }

  Object.assign(fit, { LENGTH_TOLERANCE_M, SHARE_TOLERANCE, compared, asked, chosen, whichConfiguration, inConfiguration, answered, itemNotes, ageNotes, signed, once });
})((window.housefit = window.housefit || {}));
