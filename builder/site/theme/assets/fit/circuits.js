// Single-phase circuits on the house's outlets. Twin of builder/fit/power/.
(function (fit) {
  "use strict";
  const { FITS, NOT_NEEDED, SHORT, verdict, withRemedy, factOf, settled, valueOf, textOf, asked, ageNotes, itemNotes, once, signed, both, digits } = fit;
  const { PHASES, above, outage, roomOf, leastRoom, less, systemOf, volts } = fit;
  const CIRCUITS = {
    question: "How many single-phase circuits of that current can we have, where, on which connector and on which phases?",
    remedy: "Bring a distribution board for a three-phase service, draw less, or hire a generator.",
    who: "the house electrician, or hire",
  };
  const OTHER_SYSTEM = {
    remedy: "Hire a transformer, where the frequency suits, or a generator of the system asked for. Never connect to another voltage.",
    who: "the house electrician, or hire",
  };
  const SETS = ["L1", "L2", "L3", "L1 L2", "L1 L3", "L2 L3"];

  function circuits(answer, section, stage, nodes) {
    const requirement = answer.requirement;
    if (requirement.count === 0) {
      answer.alone = verdict(requirement, NOT_NEEDED, "No circuit is asked for.");
      return;
    }
    if (!placeKnown(requirement.of, section, stage)) {
      answer.alone = asked(requirement, CIRCUITS, "The house names no place " + requirement.of + ".");
      return;
    }
    let there = 0, unknown = 0, last = null, rows = [], notes = [];
    const dead = [];
    for (const item of section.items) {
      if (item.kind === "outlet" && serves(requirement, item, section, nodes)) {
        const rating = valueOf(item, "rating");
        const off = outage(above(item.values.fed_from.text, nodes), nodes);
        if (off !== "") dead.push(off + " is out of service, and so are the outlets that it feeds.");
        else if (rating === null || rating.number === null) unknown += 1;
        else if (carries(item) >= requirement.current_a) {
          there += item.values.count.number;
          const found = rowsOf(item, requirement, nodes);
          rows = [...rows, ...found];
          unknown += found.length === 0 ? 1 : 0;
          notes = [...notes, ...itemNotes(item), ...ageNotes(rating), ...voltageNote(requirement, item, section)];
          if (requirement.apart) notes = [...notes, dimmersBeside(above(item.values.fed_from.text, nodes), section, nodes)];
          last = factOf(rating, item);
        }
      }
    }
    answer.fact = last;
    answer.notes = once(notes);
    const most = mostOf(rows, requirement, { room: roomOf(nodes), used: new Map() });
    if (most >= requirement.count) answer.choices = rows;
    else if (unknown === 0 && there >= requirement.count && !isNested(rows)) {
      answer.alone = asked(requirement, CIRCUITS, digits(most, 0) + " were found to fit at the same time, and more is not ruled out.");
    } else {
      answer.alone = tooFew(requirement, there, most, unknown, last);
      if (answer.alone.verdict === SHORT && there === 0) {
        const others = otherVoltages(requirement, section, nodes);
        answer.alone.reason = [answer.alone.reason, ...others].join(" ");
        withRemedy(answer.alone, others.length > 0 ? OTHER_SYSTEM : CIRCUITS);
      }
      if (answer.alone.verdict === SHORT) answer.alone.reason = [answer.alone.reason, ...once(dead)].join(" ");
    }
  }

  function placeKnown(name, section, stage) {
    if (name === "") return true;
    const places = (stage === null ? [] : stage.items).filter((item) => item.kind === "place").map((item) => item.name);
    const outlets = section.items.filter((item) => item.kind === "outlet" && valueOf(item, "place") !== null).map((item) => item.values.place.text);
    return [...places, ...outlets].some((each) => each.toLowerCase() === name.toLowerCase());
  }

  function isNested(rows) {
    return rows.every((row) => row.phases.length === 1);
  }

  function tooFew(requirement, there, most, unknown, last) {
    if (unknown > 0) return asked(requirement, CIRCUITS, "The house has not said what some outlets are rated for, or what is free behind them.");
    let reason;
    if (there < requirement.count) reason = digits(there, 0) + " such outlets of " + digits(requirement.count, 0) + ".";
    else reason = digits(there, 0) + " such outlets, and " + digits(most, 0) + " can be loaded so at the same time beside what the house draws.";
    const found = withRemedy(verdict(requirement, SHORT, reason), CIRCUITS);
    const slack = (there < requirement.count ? there : most) - requirement.count;
    found.fact = last;
    found.margin = signed(both("count", Math.abs(slack)), slack);
    return found;
  }

  function serves(requirement, item, section, nodes) {
    if (item.condition === "out of service" || item.terms === "not for visitors") return false;
    if (requirement.of !== "" && item.values.place.text.toLowerCase() !== requirement.of.toLowerCase()) return false;
    if (requirement.apart && dimmed(item, nodes)) return false;
    const lines = linesOf(item);
    const wired = volts(systemOf(item, section)).split("/");
    if (requirement.system === "") return lines === 1;
    const wanted = volts(requirement.system);
    return (lines === 1 && wanted === wired[0]) || (lines === 2 && wanted === wired[wired.length - 1]);
  }

  function voltageNote(requirement, item, section) {
    const wired = volts(systemOf(item, section)).split("/")[0];
    return requirement.system === "" && wired !== "" ? ["The rider states no voltage; this is " + wired + " V."] : [];
  }

  function otherVoltages(requirement, section, nodes) {
    if (requirement.system === "") return [];
    const there = section.items.filter((item) => item.kind === "outlet" && serves({ ...requirement, system: "" }, item, section, nodes));
    return once(there.map((item) => volts(systemOf(item, section)).split("/")[0]).filter((wired) => wired !== "").map((wired) => "The outlets there are of " + wired + " V."));
  }

  function dimmed(item, nodes) {
    return above(item.values.fed_from.text, nodes).some((name) => textOf(nodes.get(name).item, "dimmers") === "yes");
  }

  function dimmersBeside(path, section, nodes) {
    for (const other of section.items) {
      if (other.kind === "service" && textOf(other, "dimmers") === "yes") {
        const shared = above(other.name, nodes).filter((name) => path.includes(name));
        if (shared.length > 0) return "It shares " + shared[0] + " with " + other.name + ", which has dimmers on it.";
      }
    }
    return "Ask whether dimmers share its transformer.";
  }

  function linesOf(item) {
    const text = textOf(item, "phases");
    return text === "in turn" ? 1 : PHASES.filter((phase) => text.split(" ").includes(phase)).length;
  }

  function carries(item) {
    const rating = item.values.rating.number, breaker = valueOf(item, "breaker");
    return breaker === null || breaker.number === null || breaker.number > rating ? rating : breaker.number;
  }

  function rowsOf(item, requirement, nodes) {
    const fed = item.values.fed_from.text;
    if (!nodes.has(fed)) return [];
    const text = item.values.phases.text, free = nodes.get(fed).free;
    const turns = PHASES.filter((phase) => free[phase] !== null);
    const sets = text === "in turn" ? turns.map((phase) => [phase]) : [PHASES.filter((phase) => text.split(" ").includes(phase))];
    const connector = ["", item.name.toLowerCase()].includes(requirement.connector.toLowerCase());
    const count = Math.trunc(item.values.count.number);
    const rows = [];
    sets.forEach((phases, index) => {
      const slots = Math.floor(count / sets.length) + (index < count % sets.length ? 1 : 0);
      if (phases.every((phase) => free[phase] !== null)) {
        rows.push({ key: item.key + " " + phases.join(" "), item, phases, path: above(fed, nodes), count: slots, connector });
      }
    });
    return rows;
  }

  function mostOf(rows, requirement, start) {
    let state = start;
    for (let number = 0; number < requirement.count; number += 1) {
      const row = bestRow(rows, requirement.current_a, state);
      if (row === null) return number;
      state = withOne(row, requirement.current_a, state);
    }
    return requirement.count;
  }

  function bestRow(rows, current, state) {
    let best = null, bestRoom = 0;
    for (const row of rows) {
      const room = leftOn(row, current, state);
      if (room !== null && (best === null || (row.connector && !best.connector) || (row.connector === best.connector && room > bestRoom))) {
        best = row;
        bestRoom = room;
      }
    }
    return best;
  }

  function leftOn(row, current, state) {
    if ((state.used.get(row.key) || 0) >= row.count) return null;
    const room = leastRoom(row.path, row.phases, state.room);
    return room >= current ? room : null;
  }

  function withOne(row, current, state) {
    const used = new Map(state.used);
    used.set(row.key, (state.used.get(row.key) || 0) + 1);
    return { room: less(state.room, row.path, row.phases, current), used };
  }

  function filled(load, start, steps) {
    const rows = [];
    let state = start;
    while (rows.length < load.requirement.count) {
      steps.left -= 1;
      const row = bestRow(load.choices, load.requirement.current_a, state);
      if (row === null) return null;
      rows.push(row);
      state = withOne(row, load.requirement.current_a, state);
    }
    return { rows, state };
  }

  function placedCircuits(answer, room, known) {
    const requirement = answer.requirement;
    const lines = once(answer.placed.map((row) => lineOf(row, answer.placed)));
    const least = leastOf(answer.placed, room);
    const words = both("current", least);
    const found = verdict(requirement, FITS, lines.join("; ") + "; " + words[0] + " are left on the fullest of these phases beside all loads that have a place.");
    const others = answer.placed.filter((row) => !row.connector);
    const notes = [...known];
    if (others.length > 0) {
      notes.push("Connector: " + requirement.connector + " asked, the house has " + others[0].item.name + ". Whoever connects decides on an adapter.");
    }
    found.fact = answer.fact;
    found.notes = once(notes);
    found.margin = signed(words, least);
    return settled(found);
  }

  function leastOf(rows, room) {
    let least = leastRoom(rows[0].path, rows[0].phases, room);
    for (const row of rows) {
      const here = leastRoom(row.path, row.phases, room);
      least = here < least ? here : least;
    }
    return least;
  }

  function lineOf(row, placed) {
    const same = placed.filter((other) => other.item.key === row.item.key);
    const parts = [];
    for (const phase of SETS) {
      const number = same.filter((other) => other.phases.join(" ") === phase).length;
      if (number > 0) parts.push(digits(number, 0) + " on " + phase);
    }
    return "At " + row.item.values.place.text + ", " + row.item.name + ": " + parts.join(", ");
  }

  Object.assign(fit, { OTHER_SYSTEM, circuits, dimmersBeside, isNested, mostOf, leftOn, withOne, filled, placedCircuits });
})((window.housefit = window.housefit || {}));
