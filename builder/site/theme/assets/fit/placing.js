// Power for all departments and acts at the same time. Twin of builder/fit/placing.py.
(function (fit) {
  "use strict";
  const { FITS, SHORT, ASK, NOT_NEEDED, verdict, withRemedy, withQuestion, factOf, settled, valueOf, textOf, sectionOf, asked, ageNotes, itemNotes, once, signed, both, digits } = fit;
  const POWER = {
    question: "Which service can we have, of what current on each phase, on which connector, and how far is it from where we need it?",
    remedy: "Hire a generator, or share with another department and draw less.",
    who: "the house electrician, or hire",
  };
  const MOST_STEPS = 20000;
  const PHASES = ["free.L1", "free.L2", "free.L3"];
  const SINGLE = ["in turn", "L1", "L2", "L3"];

  function powerForAll(requirements, pack) {
    const section = sectionOf(pack, "power"), stage = sectionOf(pack, "stage");
    const answers = requirements.map((requirement) => firstLook(requirement, section, stage));
    const nodes = tree(section);
    const steps = { left: MOST_STEPS };
    let placed = [];
    for (const answer of answers) {
      if (answer.choices.length > 0) {
        const trial = [...placed, answer];
        if (place(trial, 0, roomOf(nodes), nodes, steps)) {
          placed = trial;
        } else {
          answer.placed = null;
          place(placed, 0, roomOf(nodes), nodes, { left: MOST_STEPS });
        }
      }
    }
    const room = roomOf(nodes);
    for (const answer of placed) take(answer, room, nodes);
    return answers.map((answer) => outcome(answer, nodes, room, steps.left > 0));
  }

  function take(answer, room, nodes) {
    for (const name of above(answer.placed.item.name, nodes)) {
      if (room.get(name) !== null) room.set(name, room.get(name) - answer.requirement.current_a);
    }
  }

  function tree(section) {
    const nodes = new Map();
    for (const item of section !== null ? section.items : []) {
      if (["supply", "generator", "service", "board"].includes(item.kind)) {
        const shown = fullest(item);
        nodes.set(item.name, { free: freeOf(item), above: textOf(item, "fed_from"), bound: shown !== null && shown.bound });
      }
    }
    return nodes;
  }

  function freeOf(item) {
    let least = null;
    for (const phase of PHASES) {
      const value = valueOf(item, phase);
      if (value !== null && value.number !== null && (least === null || value.number < least)) least = value.number;
    }
    return least;
  }

  function fullest(item) {
    const free = freeOf(item);
    for (const phase of PHASES) {
      const value = valueOf(item, phase);
      if (value !== null && free !== null && value.number === free) return value;
    }
    return valueOf(item, "rating");
  }

  function roomOf(nodes) {
    return new Map([...nodes].map(([name, node]) => [name, node.free]));
  }

  function place(loads, index, room, nodes, steps) {
    if (index === loads.length) return true;
    const load = loads[index], wanted = load.requirement.current_a;
    for (const choice of load.choices) {
      steps.left -= 1;
      if (steps.left < 0) return false;
      const path = above(choice.item.name, nodes);
      if (path.every((name) => room.get(name) === null || room.get(name) >= wanted)) {
        for (const name of path) if (room.get(name) !== null) room.set(name, room.get(name) - wanted);
        load.placed = choice;
        if (place(loads, index + 1, room, nodes, steps)) return true;
        for (const name of path) if (room.get(name) !== null) room.set(name, room.get(name) + wanted);
      }
    }
    return false;
  }

  function above(start, nodes) {
    const path = [];
    for (let name = start; nodes.has(name) && !path.includes(name); name = nodes.get(name).above) path.push(name);
    return path;
  }

  function firstLook(requirement, section, stage) {
    const answer = { requirement, choices: [], placed: null, alone: null };
    if (requirement.carried === "show") answer.alone = verdict(requirement, NOT_NEEDED, "The show brings it.");
    else if (section === null) answer.alone = asked(requirement, POWER, "The pack does not describe power.");
    else if (requirement.phases === "single") answer.alone = outlets(requirement, section);
    else services(answer, section, stage);
    return answer;
  }

  function services(answer, section, stage) {
    const requirement = answer.requirement;
    const looks = section.items.filter((item) => item.kind === "service").map((item) => look(requirement, item, section, stage));
    const good = looks.filter((each) => each.word === "fits");
    good.sort((one, other) => one.order - other.order || one.free - other.free);
    answer.choices = good;
    if (good.length > 0) return;
    const unknown = looks.filter((each) => each.word === "ask");
    if (unknown.length > 0 || looks.length === 0) {
      answer.alone = asked(requirement, POWER, unknown.length > 0 ? unknown[0].reason : "The house has not said.");
      return;
    }
    let nearest = looks[0];
    for (const each of looks) {
      if (each.misses < nearest.misses || (each.misses === nearest.misses && each.free > nearest.free)) nearest = each;
    }
    const found = withRemedy(verdict(requirement, SHORT, nearest.reason), POWER);
    found.fact = nearest.fact;
    found.margin = nearest.margin;
    answer.alone = found;
  }

  function look(requirement, item, section, stage) {
    const free = freeOf(item), shown = fullest(item);
    const slack = free === null ? 0 : free - requirement.current_a;
    const reasons = [], unknown = [], notes = itemNotes(item);
    if (item.condition === "out of service" || item.terms === "not for visitors") reasons.push(item.condition === "out of service" ? item.condition : item.terms);
    const system = systemSays(requirement, item, section);
    if (system.startsWith("other")) reasons.push(system);
    else if (system !== "") unknown.push(system);
    const connector = connectorSays(requirement, item);
    if (connector === "none") reasons.push("no connector for visitors");
    else if (connector === "unknown") unknown.push("its connectors are not stated");
    else if (connector !== "") notes.push(connector);
    if (requirement.apart && textOf(item, "dimmers") === "yes") reasons.push("dimmers hang on it");
    else if (requirement.apart) notes.push("Ask whether dimmers share its transformer.");
    const distance = distanceSays(requirement, item, stage);
    if (distance.word === "short") reasons.push(distance.words);
    else if (distance.word === "ask") unknown.push(distance.words);
    else if (distance.words !== "") notes.push(distance.words);
    if (free === null) unknown.push("what is free is not known");
    else if (shown !== null && shown.bound && slack >= 0) {
      unknown.push("at most " + both("current", free)[0] + " are free, for the house has not measured all that it draws");
    } else if (slack < 0) reasons.push(both("current", -slack)[0] + " too little on the fullest phase");
    const word = reasons.length > 0 ? "short" : unknown.length > 0 ? "ask" : "fits";
    return {
      word,
      item,
      free: free === null ? 0 : free,
      order: textOf(item, "dedicated_to").toLowerCase().includes(requirement.for.toLowerCase()) ? 0 : 1,
      misses: reasons.length,
      reason: item.name + ": " + (reasons.length > 0 ? reasons : unknown).join(", ") + ".",
      notes: [...notes, ...ageNotes(valueOf(item, "rating"))],
      fact: shown !== null ? factOf(shown, item) : null,
      margin: free !== null && (slack < 0 || word === "fits") ? signed(both("current", Math.abs(slack)), slack) : ["", ""],
    };
  }

  function systemSays(requirement, item, section) {
    if (requirement.system === "") return "";
    const text = systemOf(item, section);
    if (text === "") return "its system is not stated";
    return volts(text) !== volts(requirement.system) ? "other system, " + text : "";
  }

  function systemOf(item, section) {
    const seen = [];
    let here = item;
    while (here !== null && !seen.includes(here.name)) {
      seen.push(here.name);
      if (valueOf(here, "system") !== null) return here.values.system.text;
      const aboveName = textOf(here, "fed_from");
      here = section.items.find((other) => other.name === aboveName && other.kind !== "load") || null;
    }
    return "";
  }

  function volts(text) {
    return text.split("V")[0].replaceAll(" ", "");
  }

  function connectorSays(requirement, item) {
    const value = valueOf(item, "connectors");
    if (value !== null && value.standing === "none") return "none";
    if (requirement.connector === "") return "";
    if (value === null || value.standing !== "stated") return "unknown";
    if (value.text.toLowerCase().includes(requirement.connector.toLowerCase())) return "";
    return "Connector: " + requirement.connector + " asked, the house has " + value.text + ". Whoever connects decides on an adapter.";
  }

  function positionOf(item) {
    if (item === null || valueOf(item, "at.across") === null || valueOf(item, "at.depth") === null) return null;
    return [item.values["at.across"].number, item.values["at.depth"].number];
  }

  function placeNamed(stage, name) {
    return (stage !== null ? stage.items : []).find((item) => item.kind === "place" && item.name.toLowerCase() === name.toLowerCase()) || null;
  }

  function distanceSays(requirement, item, stage) {
    if (requirement.within_m === null) return { word: "fits", words: "" };
    const named = valueOf(item, "place") !== null ? placeNamed(stage, item.values.place.text) : null;
    const here = positionOf(item) !== null ? positionOf(item) : positionOf(named);
    const there = positionOf(placeNamed(stage, requirement.of));
    if (there === null) return { word: "ask", words: "the house names no place " + requirement.of };
    if (here === null) return { word: "ask", words: "where it is, is not stated" };
    const across = here[0] - there[0], depth = here[1] - there[1];
    const distance = Math.sqrt(across * across + depth * depth);
    const words = both("length", distance)[0] + " from " + requirement.of + " in a straight line";
    return distance > requirement.within_m ? { word: "short", words } : { word: "fits", words: words + "; the cable path is longer." };
  }

  function outlets(requirement, section) {
    let total = 0, unknown = 0, last = null, notes = [];
    for (const item of section.items) {
      if (item.kind === "outlet" && serves(requirement, item, section)) {
        const rating = valueOf(item, "rating"), count = item.values.count;
        if (rating === null || rating.number === null) unknown += 1;
        else if (rating.number >= requirement.current_a) {
          total += count.number;
          notes = [...notes, ...itemNotes(item), ...ageNotes(rating)];
          last = factOf(rating, item);
        }
      }
    }
    const slack = total - requirement.count;
    if (slack < 0 && unknown > 0) return asked(requirement, POWER, "The house has not said what some outlets are rated for.");
    let found;
    if (slack < 0) {
      found = withRemedy(verdict(requirement, SHORT, digits(total, 0) + " such outlets of " + digits(requirement.count, 0) + "."), POWER);
    } else {
      found = verdict(requirement, FITS, digits(total, 0) + " such outlets, " + digits(requirement.count, 0) + " asked.");
      found.notes = [...once(notes), "Counted, not loaded: the power page says how many can be loaded at the same time."];
    }
    found.fact = last;
    found.margin = signed(both("count", Math.abs(slack)), slack);
    return settled(found);
  }

  function serves(requirement, item, section) {
    if (item.condition === "out of service" || item.terms === "not for visitors") return false;
    if (!SINGLE.includes(textOf(item, "phases"))) return false;
    if (requirement.of !== "" && item.values.place.text.toLowerCase() !== requirement.of.toLowerCase()) return false;
    return requirement.system === "" || volts(systemOf(item, section)).split("/").includes(volts(requirement.system));
  }

  function outcome(answer, nodes, room, finished) {
    const requirement = answer.requirement;
    if (answer.alone !== null) return settled(answer.alone);
    if (answer.placed === null) {
      if (!finished) {
        const open = verdict(requirement, ASK, "No place was found beside the other loads within the bound of the search.");
        return withQuestion(open, requirement, POWER.question);
      }
      const alone = answer.choices[0];
      const reason = "Alone it would fit on " + alone.item.name + ", but not at the same time as the other loads.";
      const found = withRemedy(verdict(requirement, SHORT, reason), POWER);
      found.fact = alone.fact;
      return found;
    }
    const choice = answer.placed;
    const path = above(choice.item.name, nodes);
    const left = Math.min(...path.filter((name) => room.get(name) !== null).map((name) => room.get(name)));
    const words = both("current", left);
    const found = verdict(requirement, FITS, "On " + choice.item.name + "; " + words[0] + " are left there beside all loads that have a place.");
    found.fact = choice.fact;
    found.margin = signed(words, left);
    found.notes = [...choice.notes, ...uncertain(path, nodes)];
    return settled(found);
  }

  function uncertain(path, nodes) {
    return path.slice(1).filter((name) => nodes.get(name).bound).map((name) => {
      return name + " feeds it and has at most " + both("current", nodes.get(name).free)[0] + " free, for the house has not measured all that it draws. Ask.";
    });
  }

  Object.assign(fit, { powerForAll });
})((window.housefit = window.housefit || {}));
