// Power for all departments and acts at the same time. Twin of builder/fit/power/.
(function (fit) {
  "use strict";
  const { FITS, SHORT, ASK, NOT_NEEDED, verdict, withRemedy, withQuestion, factOf, settled, valueOf, textOf, listed, sectionOf, asked, ageNotes, itemNotes, signed, both, digits } = fit;
  const { PHASES, ROUNDING, tree, freeOf, leastFree, leastOfAll, notSure, fullest, above, outage, roomOf, leastRoom, less, systemOf, volts } = fit;
  const { OTHER_SYSTEM, circuits, dimmersBeside, isNested, mostOf, leftOn, withOne, filled, placedCircuits } = fit;
  const POWER = {
    question: "Which service can we have, of what current on each phase, on which connector, and how far is it from where we need it?",
    remedy: "Hire a generator, or share with another department and draw less.",
    who: "the house electrician, or hire",
  };
  const MOST_STEPS = 20000;

  function powerForAll(requirements, pack) {
    const section = sectionOf(pack, "power"), stage = sectionOf(pack, "stage");
    const nodes = tree(section);
    const answers = requirements.map((requirement) => firstLook(requirement, section, stage, nodes));
    let end = placedOn(leastOfAll(nodes), answers, nodes, true);
    if (answers.some((answer) => answer.choices.length > 0 && answer.placed === null)) end = placedOn(roomOf(nodes), answers, nodes, false);
    return answers.map((answer) => outcome(answer, nodes, end));
  }

  function placedOn(room, answers, nodes, sure) {
    const steps = { left: MOST_STEPS };
    const start = { room, used: new Map() };
    let placed = [], end = start;
    for (const answer of answers) answer.placed = null;
    for (const answer of answers) {
      if (answer.choices.length > 0) {
        const trial = [...placed, answer];
        answer.proven = tooMuch(trial, nodes);
        const found = answer.proven ? null : place(trial, 0, start, nodes, steps);
        answer.proven = answer.proven || steps.left > 0;
        if (found !== null) {
          placed = trial;
          end = found;
        }
      }
    }
    return { ...end, sure };
  }

  function place(loads, index, state, nodes, steps) {
    if (index === loads.length) return state;
    const load = loads[index], wanted = load.requirement.current_a;
    if (load.requirement.phases === "single") return placeCircuits(loads, index, state, nodes, steps);
    for (const choice of load.choices) {
      steps.left -= 1;
      if (steps.left < 0) return null;
      const path = above(choice.item.name, nodes);
      const room = leastRoom(path, PHASES, state.room);
      if (room === null || room >= wanted) {
        const end = place(loads, index + 1, { room: less(state.room, path, PHASES, wanted), used: state.used }, nodes, steps);
        if (end !== null) {
          load.placed = choice;
          return end;
        }
      }
    }
    return null;
  }

  function placeCircuits(loads, index, state, nodes, steps) {
    const even = filled(loads[index], state, steps);
    if (even === null) return isNested(loads[index].choices) ? null : share(loads, index, [], 0, state, nodes, steps);
    const end = place(loads, index + 1, even.state, nodes, steps);
    if (end !== null) {
      loads[index].placed = even.rows;
      return end;
    }
    return share(loads, index, [], 0, state, nodes, steps);
  }

  function share(loads, index, chosen, first, state, nodes, steps) {
    const load = loads[index], wanted = load.requirement.current_a;
    if (chosen.length === load.requirement.count) {
      const end = place(loads, index + 1, state, nodes, steps);
      if (end !== null) load.placed = chosen;
      return end;
    }
    for (let number = first; number < load.choices.length; number += 1) {
      steps.left -= 1;
      if (steps.left < 0) return null;
      const row = load.choices[number];
      if (leftOn(row, wanted, state) !== null) {
        const end = share(loads, index, [...chosen, row], number, withOne(row, wanted, state), nodes, steps);
        if (end !== null) return end;
      }
    }
    return null;
  }

  function tooMuch(loads, nodes) {
    for (const [name, node] of nodes) {
      let has = 0, known = 0, wanted = 0;
      for (const phase of PHASES) {
        if (node.free[phase] !== null) {
          has += node.free[phase];
          known += 1;
        }
      }
      for (const load of loads) {
        if (load.choices.every((choice) => pathOf(choice, nodes).includes(name))) wanted += askedThere(load, known);
      }
      if (known > 0 && wanted > has + ROUNDING) return true;
    }
    return false;
  }

  function pathOf(choice, nodes) {
    return choice.path !== undefined ? choice.path : above(choice.item.name, nodes);
  }

  function askedThere(load, phases) {
    const requirement = load.requirement;
    if (requirement.phases === "single") return isNested(load.choices) && phases === PHASES.length ? requirement.count * requirement.current_a : 0;
    return requirement.current_a * phases;
  }

  function firstLook(requirement, section, stage, nodes) {
    const answer = { requirement, choices: [], placed: null, alone: null, proven: false };
    if (requirement.carried === "show") answer.alone = verdict(requirement, NOT_NEEDED, "The show brings it.");
    else if (section === null) answer.alone = asked(requirement, POWER, "The pack does not describe power.");
    else if (requirement.phases === "single") circuits(answer, section, stage, nodes);
    else services(answer, section, stage, nodes);
    return answer;
  }

  function services(answer, section, stage, nodes) {
    const requirement = answer.requirement;
    const looks = section.items.filter((item) => item.kind === "service").map((item) => look(requirement, item, section, stage, nodes));
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
    const found = withRemedy(verdict(requirement, SHORT, nearest.reason), nearest.otherSystem ? OTHER_SYSTEM : POWER);
    found.fact = nearest.fact;
    found.margin = nearest.margin;
    answer.alone = found;
  }

  function look(requirement, item, section, stage, nodes) {
    const free = freeOf(item), shown = fullest(item), off = outage(above(item.name, nodes).slice(1), nodes);
    const slack = free === null ? 0 : free - requirement.current_a;
    const reasons = [], unknown = [], notes = itemNotes(item);
    if (item.condition === "out of service" || item.terms === "not for visitors") reasons.push(item.condition === "out of service" ? item.condition : item.terms);
    if (off !== "") reasons.push(off + ", which feeds it, is out of service");
    const system = systemSays(requirement, item, section);
    if (requirement.system === "" && systemOf(item, section) !== "") notes.push("The rider states no voltage; this is " + systemOf(item, section) + ".");
    if (system.startsWith("other")) reasons.push(system);
    else if (system !== "") unknown.push(system);
    const connector = connectorSays(requirement, item);
    if (connector === "none") reasons.push("no connector for visitors");
    else if (connector === "unknown") unknown.push("its connectors are not stated");
    else if (connector !== "") notes.push(connector);
    if (requirement.apart && textOf(item, "dimmers") === "yes") reasons.push("dimmers hang on it");
    else if (requirement.apart) notes.push(dimmersBeside(above(item.name, nodes), section, nodes));
    const distance = distanceSays(requirement, item, stage);
    if (distance.word === "short") reasons.push(distance.words);
    else if (distance.word === "ask") unknown.push(distance.words);
    else if (distance.words !== "") notes.push(distance.words);
    if (free === null) unknown.push("what is free is not known");
    else if (slack < 0) reasons.push(both("current", -slack)[0] + " too little on the fullest phase");
    const word = reasons.length > 0 ? "short" : unknown.length > 0 ? "ask" : "fits";
    const meant = textOf(item, "dedicated_to"), order = meantFor(requirement.use, meant) ? 0 : 1;
    if (order === 1 && meant !== "") notes.push("The house keeps it for " + meant + ".");
    return {
      word,
      item,
      free: free === null ? 0 : free,
      order,
      misses: reasons.length,
      otherSystem: system.startsWith("other"),
      reason: item.name + ": " + (reasons.length > 0 ? reasons : unknown).join(", ") + ".",
      notes: [...notes, ...ageNotes(valueOf(item, "rating"))],
      fact: shown !== null ? factOf(shown, item) : null,
      margin: free !== null && (slack < 0 || word === "fits") ? signed(both("current", Math.abs(slack)), slack) : ["", ""],
    };
  }

  function meantFor(use, meant) {
    const uses = meant.toLowerCase().replaceAll(" and ", ",").split(",").map((each) => each.trim());
    return use.toLowerCase() === meant.toLowerCase() || uses.includes(use.toLowerCase());
  }

  function systemSays(requirement, item, section) {
    if (requirement.system === "") return "";
    const text = systemOf(item, section);
    if (text === "") return "its system is not stated";
    const wired = volts(text);
    return [wired, wired.split("/").pop()].includes(volts(requirement.system)) ? "" : "other system, " + text;
  }

  function connectorSays(requirement, item) {
    const value = valueOf(item, "connectors");
    if (value !== null && value.standing === "none") return "none";
    if (requirement.connector === "") return "";
    if (value === null || value.standing !== "stated") return "unknown";
    if (listed(requirement.connector, value.parts)) return "";
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
    if (requirement.within_m === null && requirement.of === "") return { word: "fits", words: "" };
    const named = valueOf(item, "place") !== null ? placeNamed(stage, item.values.place.text) : null;
    const here = positionOf(item) !== null ? positionOf(item) : positionOf(named);
    const there = positionOf(placeNamed(stage, requirement.of));
    if (there === null) return { word: "ask", words: "the house names no place " + requirement.of };
    if (here === null && requirement.within_m === null) return { word: "fits", words: "How far it is from " + requirement.of + " is not stated." };
    if (here === null) return { word: "ask", words: "where it is, is not stated" };
    const across = here[0] - there[0], depth = here[1] - there[1];
    const distance = Math.sqrt(across * across + depth * depth);
    const words = both("length", distance)[0] + " from " + requirement.of + " in a straight line";
    return requirement.within_m !== null && distance > requirement.within_m ? { word: "short", words } : { word: "fits", words: words + "; the cable path is longer." };
  }

  function outcome(answer, nodes, end) {
    const requirement = answer.requirement;
    if (answer.alone !== null) return settled(answer.alone);
    if (answer.placed === null) return notPlaced(answer, end);
    if (requirement.phases === "single") {
      const unsure = answer.placed.flatMap((row) => unsureOf(row.path, row.phases, end, nodes));
      return openOr(placedCircuits(answer, end.room, answer.notes), unsure, requirement, nodes);
    }
    const choice = answer.placed;
    const path = above(choice.item.name, nodes);
    const left = leastRoom(path, PHASES, end.room);
    const words = both("current", left);
    const found = verdict(requirement, FITS, "On " + choice.item.name + "; " + words[0] + " are left there beside all loads that have a place.");
    found.fact = choice.fact;
    found.margin = signed(words, left);
    found.notes = choice.notes;
    return openOr(settled(found), unsureOf(path, PHASES, end, nodes), requirement, nodes);
  }

  function unsureOf(path, phases, end, nodes) {
    const name = end.sure ? null : notSure(path, phases, end.room, nodes);
    return name === null ? [] : [name];
  }

  function openOr(found, unsure, requirement, nodes) {
    if (unsure.length === 0) return found;
    const node = nodes.get(unsure[0]);
    const least = both("current", leastFree(node.least))[0], most = both("current", freeOf(node.item))[0];
    const known = " has at least " + least + " and at most " + most + " free before the show's loads";
    const reason = unsure[0] + known + ", for the house has not measured all that it draws.";
    const open = withQuestion(verdict(requirement, ASK, reason), requirement, POWER.question);
    open.fact = found.fact;
    return open;
  }

  function notPlaced(answer, end) {
    const requirement = answer.requirement, alone = answer.choices[0];
    if (!answer.proven) {
      const open = verdict(requirement, ASK, "No place was found beside the other loads within the bound of the search.");
      return withQuestion(open, requirement, POWER.question);
    }
    const single = requirement.phases === "single";
    let reason;
    if (single) {
      const beside = digits(mostOf(answer.choices, requirement, end), 0) + " of " + digits(requirement.count, 0);
      reason = "Alone it would fit at the house's outlets, but beside the other loads, as they are placed here, " + beside + " do.";
    } else reason = "Alone it would fit on " + alone.item.name + ", but not at the same time as the other loads.";
    const found = withRemedy(verdict(requirement, SHORT, reason), POWER);
    found.fact = single ? answer.fact : alone.fact;
    return found;
  }

  Object.assign(fit, { powerForAll });
})((window.housefit = window.housefit || {}));
