// Riders and a pack in, verdicts and questions out. Twin of builder/fit/interpreter.py.
(function (fit) {
  "use strict";
  const { ASK, NOT_NEEDED, SHORT, NOTED, RANK, verdict, sectionOf, compared } = fit;

  const HUNG = ["hang", "trim"];

  function check(pack, riders) {
    const requirements = riders.flatMap((rider) => rider.requirements);
    const loads = fit.powerForAll(requirements.filter((requirement) => requirement.sort === "power"), pack);
    const hangs = fit.hangsForAll(requirements.filter((requirement) => HUNG.includes(requirement.sort)), pack);
    const verdicts = requirements.map((requirement) => {
      const together = requirement.sort === "power" ? loads : HUNG.includes(requirement.sort) ? hangs : null;
      return together === null ? judged(requirement, pack) : together.shift();
    });
    for (const requirement of fit.dayRequirements(riders, pack)) verdicts.push(judged(requirement, pack));
    const day = fit.theDay(riders, pack);
    verdicts.push(...fit.staysOnDeck(riders, pack), ...fit.plotsTogether(riders, pack), ...day.verdicts);
    return {
      venue: pack.venue,
      revision: pack.revision,
      acts: riders.map((rider) => ({ act: rider.act, revision: rider.revision, verdict: overall(verdicts, rider.act) })),
      verdict: overall(verdicts, ""),
      verdicts,
      day: day.rows,
      questions: questions(verdicts),
      cautions: cautions(verdicts, pack),
    };
  }

  function judged(requirement, pack) {
    switch (requirement.sort) {
      case "any": return anyOf(requirement, pack);
      case "question": {
        const found = verdict(requirement, ASK, "The rider asks.");
        found.question = requirement.words;
        return found;
      }
      case "ends": return fit.endsBeforeCurfew(requirement, sectionOf(pack, "house"));
      case "load in": return fit.loadInAfter(requirement, sectionOf(pack, "house"));
      case "level": return fit.levelAsked(requirement, sectionOf(pack, "house"), sectionOf(pack, "sound"));
      case "plot": return fit.stagePlot(requirement, pack);
      case "trucks": return fit.trucksGetIn(requirement, sectionOf(pack, "access"));
      default: return compared(requirement, ruleOf(requirement.what, pack), pack);
    }
  }

  function ruleOf(key, pack) {
    const found = pack.rules.find((rule) => rule.key === key);
    return found || { section: "", question: "Does the house have " + key + "?", legal: false, kind: "", remedy: "", who: "" };
  }

  function anyOf(requirement, pack) {
    const found = requirement.any.map((each) => judged(each, pack));
    let one = found[0];
    for (const other of found) if (RANK[other.verdict] < RANK[one.verdict]) one = other;
    one.reason = one.title + ", " + one.need + ": " + one.reason;
    for (const name of ["act", "line", "title", "need", "strictness", "department"]) one[name] = requirement[name];
    return one;
  }

  function overall(verdicts, act) {
    let worst = NOT_NEEDED;
    for (const found of verdicts) {
      if (act === "" || act === found.act) {
        const word = found.verdict === SHORT && found.strictness === "should" ? NOTED : found.verdict;
        if (RANK[word] > RANK[worst]) worst = word;
      }
    }
    return worst;
  }

  function questions(verdicts) {
    const groups = new Map();
    for (const found of verdicts.flatMap((whole) => [whole, ...whole.parts])) {
      if (found.question !== "") {
        const line = quotedLine(found);
        const words = line !== "" ? found.question.slice(0, found.question.length - line.length - 4) : found.question;
        if (!groups.has(found.department)) groups.set(found.department, new Map());
        const asks = groups.get(found.department);
        if (!asks.has(words)) asks.set(words, []);
        if (!asks.get(words).includes(line)) asks.get(words).push(line);
      }
    }
    return [...groups.keys()].sort().map((department) => ({ department, questions: [...groups.get(department)].map(([words, lines]) => withLines(words, lines)) }));
  }

  function quotedLine(found) {
    const line = found.line > 0 ? ", rider line " + found.line : "";
    const whole = found.act + line + ": " + found.title + ", " + found.need;
    return found.question.endsWith(" (" + whole + ".)") ? whole : "";
  }

  function withLines(words, lines) {
    const quoted = lines.filter((line) => line !== "");
    return quoted.length === 0 ? words : words + " (" + quoted.join("; ") + ".)";
  }

  function cautions(verdicts, pack) {
    const found = [];
    for (const section of pack.sections) {
      for (const words of section.cautions) {
        if (!found.includes(words) && verdicts.some((each) => answers(section, each))) found.push(words);
      }
    }
    return found;
  }

  function answers(section, found) {
    return found.department === section.key || (found.fact !== null && found.fact.key.split(".")[0] === section.key);
  }

  Object.assign(fit, { check });
})((window.housefit = window.housefit || {}));
