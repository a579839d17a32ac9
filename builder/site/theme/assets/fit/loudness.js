// A wished level against the house's limits first, then against what the house system is estimated to reach. Twin of builder/fit/levels/.
(function (fit) {
  "use strict";
  const { FITS, SHORT, ASK, verdict, withRemedy, factOf, settled, valueOf, asked, ageNotes, signed, both, span } = fit;
  const LIMIT = {
    question: "Which level limits hold, with weighting, metric, time and place, and who enforces them?",
    remedy: "The show plays to the limit. Hiring a larger system does not help; only whoever set the limit can change it.",
    who: "the show",
  };
  const SYSTEM = {
    question: "Which level does the house system reach at the mix position, with this weighting and metric?",
    remedy: "Bring or hire a larger system, or play softer on the house system.",
    who: "the show",
  };
  const MIX_WORDS = ["mix position", "the mix position", "foh", "foh position", "front of house", "front-of-house"];
  const OWN_SYSTEM = "This is the house system. A show with a system of its own is not held to it.";

  function weighting(text) {
    const words = text.replaceAll(" ", "");
    for (const letter of ["A", "C"]) if (words.includes("dB(" + letter + ")") || words.includes("dB" + letter)) return letter;
    return "";
  }

  function lacking(requirement) {
    const lacks = [];
    if (requirement.weighting === "") lacks.push("its weighting");
    if (requirement.metric === "") lacks.push("how it is measured");
    if (requirement.metric === "equivalent level" && requirement.over_s === null) lacks.push("over what time");
    if (requirement.place === "") lacks.push("where");
    return lacks;
  }

  function levelAsked(written, house, sound) {
    const requirement = { ...written, mix: nameOfMix(sound) };
    const found = underLimits(requirement, house);
    const mix = mixOf(requirement, sound);
    return found.verdict === SHORT || lacking(requirement).length > 0 || mix === null ? found : againstSystem(requirement, found, mix);
  }

  function nameOfMix(sound) {
    const mix = (sound !== null ? sound.items : []).find((item) => item.kind === "mix");
    return mix !== undefined ? mix.name.toLowerCase() : MIX_WORDS[0];
  }

  function meant(place, mix) {
    const name = place.toLowerCase();
    return name === mix || MIX_WORDS.includes(name) ? MIX_WORDS[0] : name;
  }

  function mixOf(requirement, sound) {
    for (const item of sound !== null ? sound.items : []) {
      if (item.kind !== "mix" || meant(requirement.place, requirement.mix) !== MIX_WORDS[0]) continue;
      const level = valueOf(item, "average_level");
      if (level !== null && level.number !== null && valueOf(item, "average_level_error") !== null) return item;
    }
    return null;
  }

  function againstSystem(requirement, found, mix) {
    const level = mix.values.average_level, error = mix.values.average_level_error;
    const estimate = "the estimate of the house system, " + level.text + " " + error.text;
    if (weighting(level.text) !== requirement.weighting || requirement.metric !== "equivalent level") {
      const other = asked(requirement, SYSTEM, "It cannot be compared with " + estimate + ", equivalent level.");
      return found.verdict === ASK ? found : withLimits(other, found);
    }
    const above = requirement.level_db - level.number;
    if (above > error.number) {
      const short = withRemedy(verdict(requirement, SHORT, "Above " + estimate + ", by " + both("level", above)[0] + "."), SYSTEM);
      short.fact = factOf(level, mix);
      short.margin = signed(both("level", above), -above);
      short.notes = [OWN_SYSTEM];
      return withLimits(short, found);
    }
    if (above >= -error.number) found.notes = [...found.notes, "Within the error of " + estimate + "."];
    return settled(found);
  }

  function withLimits(found, limits) {
    found.notes = [...found.notes, "Limits: " + limits.reason, ...limits.notes];
    return found;
  }

  function underLimits(requirement, section) {
    const lacks = lacking(requirement);
    if (lacks.length > 0) return asked(requirement, LIMIT, "The rider's level does not say " + lacks.join(", ") + ", so it cannot be compared.");
    const limits = section !== null ? section.items.filter((item) => item.kind === "noise") : [];
    if (limits.length === 0) return noLimits(requirement, section);
    const found = limits.map((item) => againstLimit(requirement, item));
    const elsewhere = limits
      .filter((item) => !samePlace(requirement, item))
      .map((item) => "Not compared: " + item.name + ", " + item.values.level.text + " at " + item.values.measured_at.text + ".");
    for (const word of [SHORT, ASK, FITS]) {
      for (const [index, each] of found.entries()) {
        if (each.verdict === word && samePlace(requirement, limits[index])) {
          each.notes = [...each.notes, ...elsewhere];
          return settled(each);
        }
      }
    }
    const other = asked(requirement, LIMIT, "No limit is stated at that place.");
    other.notes = elsewhere;
    return other;
  }

  function noLimits(requirement, section) {
    for (const item of section !== null ? section.items : []) {
      const value = item.kind === "identity" ? valueOf(item, "noise_limits") : null;
      if (value !== null && value.standing === "none") {
        const found = verdict(requirement, FITS, "The house has no limit.");
        found.fact = factOf(value, item);
        return found;
      }
    }
    return asked(requirement, LIMIT, "The house has not said.");
  }

  function samePlace(requirement, item) {
    return meant(item.values.measured_at.text, requirement.mix) === meant(requirement.place, requirement.mix);
  }

  function againstLimit(requirement, item) {
    const level = item.values.level, metric = item.values.metric.text;
    const overValue = valueOf(item, "over");
    const over = overValue === null ? null : overValue.number;
    const slack = level.number - requirement.level_db;
    let found;
    if (weighting(level.text) !== requirement.weighting || metric !== requirement.metric) {
      found = asked(requirement, LIMIT, "The limit is stated in other terms: " + level.text + ", " + metric + ".");
    } else if (metric === "equivalent level" && over === null) {
      found = asked(requirement, LIMIT, "The limit does not say over what time.");
    } else if (slack < 0) {
      found = withRemedy(verdict(requirement, SHORT, "Above the limit of " + level.text + " by " + both("level", -slack)[0] + "."), LIMIT);
      if (metric === "equivalent level" && requirement.over_s < over) {
        found.notes = ["If the level is held for the limit's " + span(over) + ". Quieter parts would lower it."];
      }
    } else if (metric === "equivalent level" && requirement.over_s > over) {
      found = asked(requirement, LIMIT, "The limit holds over " + span(over) + ", and the rider's level is a mean over a longer time.");
    } else {
      found = verdict(requirement, FITS, both("level", slack)[0] + " below the limit of " + level.text + ".");
      found.notes = ageNotes(level);
    }
    found.fact = factOf(level, item);
    found.margin = found.verdict !== ASK ? signed(both("level", Math.abs(slack)), slack) : ["", ""];
    return found;
  }

  Object.assign(fit, { levelAsked });
})((window.housefit = window.housefit || {}));
