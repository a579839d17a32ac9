// A stage plot as one verdict with its parts, and beside what other acts leave standing. Twin of builder/fit/plots/stage_plot.py and plot_day.py.
(function (fit) {
  "use strict";
  const { FITS, NOTED, SHORT, ASK, RANK, verdict, withRemedy, withQuestion, settled, sectionOf, asked, whichConfiguration, inConfiguration, itemNotes, ageNotes, once, signed, both, digits } = fit;
  const plan = fit.plan;
  const { ofWord, outlineFact, twiceArea } = plan;
  const PLOT = {
    question: "What is the outline of the deck, what is in the way on it, and what does it carry?",
    remedy: "Told below for each.",
    who: "the show, with the house's stage manager",
  };
  const SPREAD = "Weights are taken as spread evenly over their rectangles. Whoever answers for the floor decides, on feet and castors too.";
  const FEET = "One foot is held against the largest single load that the house states; the footprint which that counts for decides.";
  const AREA_SHARE = 1.005;
  const THE_DAY = "The day";
  const ROOM = { remedy: "Let it roll off for the other act, or move the other act's plot.", who: "both acts, with the house's stage manager" };
  const STAYS = "Does what stands there stay on the deck while others play?";

  function stagePlot(requirement, pack) {
    const section = sectionOf(pack, "stage");
    const decks = decksOf(requirement, section);
    if (decks.length === 0 && decksOf({ ...requirement, configuration: "" }, section).length > 0) return whichConfiguration(requirement, PLOT, pack);
    if (decks.length === 0) return asked(requirement, PLOT, "The pack does not describe a deck for this.");
    return laidOut(requirement, section, chosenOf(requirement, section, decks), true);
  }

  function chosenOf(requirement, section, decks) {
    if (decks.length === 1) return decks[0];
    const bad = decks.map((deck) => badness(laidOut(requirement, section, deck, false)));
    return decks[bad.indexOf(Math.min(...bad))];
  }

  function decksOf(requirement, section) {
    return (section === null ? [] : section.items).filter((item) => item.kind === "deck" && inConfiguration(item, requirement.configuration));
  }

  function deckFact(requirement, pack) {
    const section = sectionOf(pack, "stage");
    const drawn = decksOf(requirement, section).map((deck) => plan.floorsOf(section, deck)[0]).filter((floor) => floor.corners.length > 0);
    return drawn.length > 0 ? outlineFact(drawn[0]) : null;
  }

  function badness(found) {
    const whole = found.verdict === SHORT && found.strictness === "should" ? RANK[NOTED] : RANK[found.verdict];
    return found.parts.reduce((total, each) => total + RANK[each.verdict], 1000 * whole);
  }

  function laidOut(requirement, section, deck, remedied) {
    const ground = { section, floors: plan.floorsOf(section, deck) };
    if (ground.floors[0].corners.length === 0) return asked(requirement, PLOT, deck.name + ": its outline is not drawn.");
    const stands = requirement.rectangles.filter((wish) => wish.across_m !== null).map(standOf);
    const beside = (each) => stands.filter((other) => other !== each && plan.counts(other.wish, each.wish));
    const parts = stands.map((each) => partOf(requirement, each, beside(each), { ...ground, remedied }));
    return summedUp(requirement, [...parts, ...withoutPlace(requirement, ground)], stands, ground);
  }

  function standOf(wish) {
    const rect = rectOf(wish);
    return { wish, rect, box: plan.extent(plan.cornersOf(rect)) };
  }

  function rectOf(wish) {
    const [across, upstage] = wish.across_m === null ? [0, 0] : [wish.across_m, wish.upstage_m];
    return plan.rectangle(across, upstage, wish.width_m, wish.depth_m, wish.turned_deg);
  }

  function lineOf(requirement, wish) {
    return { ...requirement, title: wish.name, need: wish.need, line: wish.line, strictness: wish.strictness };
  }

  function partOf(requirement, stand, others, ground) {
    const wish = stand.wish;
    const hits = plan.hitsOf(wish, stand.rect, others, ground);
    const word = plan.worst(hits);
    const found = told(lineOf(requirement, wish), word !== "" ? word : FITS, hits);
    if (found.fact === null) found.fact = outlineFact(ground.floors[0]);
    if (word !== SHORT || !ground.remedied) return found;
    const [remedy, who] = plan.remedyOf(wish, stand.rect, others, ground, hits);
    return withRemedy(found, { remedy, who });
  }

  function told(line, word, hits) {
    const said = ofWord(hits, word);
    const others = [...ofWord(hits, ASK), ...ofWord(hits, NOTED)].filter((each) => each.word !== word);
    const found = verdict(line, word, said.length > 0 ? sentence(said.map((each) => each.words)) : "It stands as asked.");
    found.notes = ([SHORT, ASK].includes(word) ? others : []).map((each) => sentence([each.words]));
    const stated = said.find((each) => each.fact !== null);
    found.fact = stated === undefined ? null : stated.fact;
    const measured = said.find((each) => each.by > 0);
    if (word === SHORT && measured !== undefined) found.margin = signed(both(measured.measure, measured.by), -measured.by);
    return word === ASK ? withQuestion(found, line, once(said.map((each) => each.question)).join(" ")) : found;
  }

  function sentence(words) {
    const text = words.join("; "), first = [...text].slice(0, 1).join("");
    return first.toUpperCase() + text.slice(first.length) + (text.endsWith(".") ? "" : ".");
  }

  function withoutPlace(requirement, ground) {
    const found = [], open = [];
    for (const wish of requirement.rectangles.filter((each) => each.across_m === null)) {
      const floor = plan.floorCalled(ground.floors, wish.on);
      const hits = floor !== null ? plan.larger(rectOf(wish), floor) : [];
      if (hits.length > 0) {
        const turned = plan.larger(rectOf({ ...wish, turned_deg: wish.turned_deg + 90 }), floor);
        const remedy = turned.length === 0 ? "Turn it by a quarter." : "Make it smaller, or leave it off this stage.";
        found.push(withRemedy(told(lineOf(requirement, wish), SHORT, hits), { remedy, who: "the show" }));
      } else open.push(wish);
    }
    return open.length > 0 ? [...found, ...placeless(requirement, open, ground)] : found;
  }

  function placeless(requirement, wishes, ground) {
    const must = wishes.some((wish) => wish.strictness === "must");
    const title = digits(wishes.length, 0) + " without a place", need = wishes.map((wish) => wish.name).join(", ");
    const line = { ...requirement, title, need, line: wishes[0].line, strictness: must ? "must" : "should" };
    const deck = ground.floors[0];
    const wanted = floorWanted(requirement.rectangles, must), has = Math.abs(twiceArea(deck.corners)) / 2;
    const words = both("area", wanted)[0] + " are asked on the deck, which has " + both("area", has)[0];
    let found;
    if (wanted > has * AREA_SHARE) {
      found = withRemedy(verdict(line, SHORT, "Together " + words + "."), { remedy: "Leave some of it off this stage.", who: "the show" });
      found.margin = signed(both("area", wanted - has), has - wanted);
    } else {
      const sizes = wishes.map((wish) => wish.name + ", " + wish.need).join("; ");
      found = verdict(line, ASK, "The rider gives no place; only sizes were looked at. Together " + words + ".");
      found = withQuestion(found, { ...line, need: sizes }, "Where on the stage can these stand?");
    }
    found.fact = outlineFact(deck);
    return [found];
  }

  function floorWanted(wishes, must) {
    let total = 0;
    for (const wish of wishes) {
      const asksDeck = wish.on === "deck" || (wish.on === "" && wish.across_m === null);
      if (asksDeck && !wish.lane && (wish.strictness === "must" || !must)) total += wish.width_m * wish.depth_m;
    }
    return total;
  }

  function summedUp(requirement, parts, stands, ground) {
    const deck = ground.floors[0];
    const [word, strictness] = overall(parts);
    const rest = parts.filter((each) => each.verdict !== FITS);
    let found = verdict({ ...requirement, strictness }, word, deck.item.name + ": " + counted(parts, requirement.rectangles.length));
    found.parts = rest;
    found.fact = outlineFact(deck);
    const worstParts = rest.filter((each) => each.verdict === word);
    if (word === SHORT) {
      found = withRemedy(found, rest.length === 1 ? worstParts[0] : PLOT);
      found.margin = worstParts.length === 1 ? worstParts[0].margin : ["", ""];
    } else if (word === ASK) {
      found.question = worstParts[0].question;
    } else {
      found = withRoom(found, stands, ground);
      found.notes = notesOf(requirement, deck.item);
    }
    return settled(found);
  }

  function overall(parts) {
    const worst = (some) => some.reduce((one, each) => (RANK[each.verdict] > RANK[one] ? each.verdict : one), FITS);
    const worstMust = worst(parts.filter((each) => each.strictness === "must")), worstAny = worst(parts);
    if (RANK[worstMust] >= RANK[ASK]) return [worstMust, "must"];
    return [worstAny, RANK[worstAny] >= RANK[ASK] ? "should" : "must"];
  }

  function counted(parts, number) {
    const names = (word) => parts.filter((each) => each.verdict === word).map((each) => each.title).join(", ");
    const good = parts.filter((each) => each.verdict === FITS).length;
    let words = digits(good, 0) + " of " + digits(number, 0) + " as asked" + (good > 0 ? ": " + names(FITS) : "");
    for (const [word, said] of [[SHORT, "short"], [ASK, "to ask"], [NOTED, "with a note"]]) {
      if (parts.some((each) => each.verdict === word)) words += "; " + said + ": " + names(word);
    }
    return words + ".";
  }

  function withRoom(found, stands, ground) {
    let least = 1000000, name = "";
    for (const stand of stands) {
      const gap = plan.gap(stand.rect, plan.floorUnder(stand.wish, stand.rect, ground.floors).corners);
      if (gap < least) [least, name] = [gap, stand.wish.name];
    }
    const words = both("length", least);
    found.margin = signed(words, least);
    found.reason += " The least room to an edge is " + words[0] + ", at " + name + ".";
    return found;
  }

  function notesOf(requirement, deck) {
    const notes = [...itemNotes(deck), ...ageNotes({ standing: "stated", checked: deck.checked, stale: deck.stale })];
    for (const [key, words] of [["weight_kg", SPREAD], ["foot_kg", FEET]]) if (requirement.rectangles.some((wish) => wish[key] !== null)) notes.push(words);
    return notes;
  }

  function plotsTogether(riders, pack) {
    const plots = riders.flatMap((rider) => rider.requirements.filter((each) => each.sort === "plot").map((requirement) => ({ act: rider.act, requirement })));
    return plots.flatMap(({ act, requirement }) => {
      const others = plots.filter((other) => other.act !== act);
      const left = others.flatMap((other) => other.requirement.rectangles.filter(stays).map((wish) => ({ act: other.act, ...placed(wish) })));
      return left.length > 0 ? [besideOthers(requirement, left, pack)] : [];
    });
  }

  function stays(wish) {
    return wish.stays !== "no" && !wish.lane && wish.strictness === "must";
  }

  function placed(wish) {
    return { wish, rect: wish.across_m === null ? null : rectOf(wish) };
  }

  function besideOthers(requirement, left, pack) {
    const line = { ...requirement, act: THE_DAY, title: "Stage plot of " + requirement.act + " beside what stays", line: 0, strictness: "must" };
    const mine = requirement.rectangles.filter((wish) => wish.strictness === "must").map(placed);
    const pairs = mine.flatMap((one) => left.filter((other) => inEachOther(one, other)).map((other) => [one, other]));
    const shorts = pairs.filter(([, other]) => other.wish.stays === "yes");
    const open = pairs.filter(([, other]) => other.wish.stays === "").map((pair) => clash(pair) + ", and nobody says whether that stays");
    const asks = [...open, ...openPlaces(mine, left)];
    let found;
    if (shorts.length > 0) {
      found = withRemedy(verdict(line, SHORT, sentence(shorts.map((pair) => clash(pair) + ", which stays"))), ROOM);
      const most = shorts.reduce((longest, [one, other]) => Math.max(longest, plan.overlapBy(one.rect, other.rect)), 0);
      found.margin = signed(both("length", most), -most);
    } else if (asks.length > 0) {
      found = withQuestion(verdict(line, ASK, sentence(asks)), line, STAYS);
    } else {
      found = verdict(line, FITS, "Nothing that stays, or may stay, stands in its way.");
    }
    found.fact = deckFact(requirement, pack);
    return found;
  }

  function inEachOther(one, other) {
    return one.rect !== null && other.rect !== null && plan.overlap(one.rect, other.rect);
  }

  function clash([one, other]) {
    return one.wish.name + " overlaps " + other.wish.name + " of " + other.act + " by " + both("length", plan.overlapBy(one.rect, other.rect))[0];
  }

  function openPlaces(mine, left) {
    const names = mine.filter((each) => each.rect === null).map((each) => each.wish.name);
    for (const { act, wish, rect } of left) if (rect === null) names.push(wish.name + " of " + act);
    return names.length > 0 && mine.length > 0 ? ["no place is given for " + names.join(", ")] : [];
  }

  Object.assign(fit, { stagePlot, plotsTogether });
})((window.housefit = window.housefit || {}));
