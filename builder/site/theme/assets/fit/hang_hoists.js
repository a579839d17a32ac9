// The house's hoists for the hangs that ask for them. Twin of builder/fit/hangs/hoists.py.
(function (fit) {
  "use strict";
  const { ASK, SHORT, both, digits, factOf } = fit;
  const { issue, numberOf, on } = fit.hangs;
  const MORE = "Bring hoists, or hire them.";
  const STRONGER = "Spread the load over more supports, or bring stronger hoists.";
  const QUESTION = "How many of your hoists are free, of what rating?";

  function hoistIssues(hang, brought, sums, section) {
    if (hang.hoists !== "house") return [];
    const wanted = (sums.has("house hoists") ? sums.get("house hoists").count : 0) + hang.supports.length;
    sums.set("house hoists", { count: wanted });
    const hoists = section.items.filter((item) => item.kind === "hoist" && item.condition !== "out of service");
    return hoists.length === 0 ? [] : [...enough(wanted, hoists), ...strong(hang, brought, hoists)];
  }

  function enough(wanted, hoists) {
    let total = 0;
    for (const item of hoists) {
      const free = numberOf(item, "free");
      if (free === null) return [issue(ASK, "The house has not said how many of its hoists are left.", { question: QUESTION })];
      total += free;
    }
    if (wanted <= total) return [];
    const reason = "The house has " + digits(total, 0) + " hoists left, and the show's hangs so far ask for " + digits(wanted, 0) + ".";
    return [{ ...issue(SHORT, reason, { remedy: MORE }), fact: factOf(hoists[0].values.free, hoists[0]) }];
  }

  function strong(hang, brought, hoists) {
    let strongest = null;
    for (const item of hoists) {
      const rating = numberOf(item, "rating");
      if (rating === null) return [issue(ASK, "The house has not said what all of its hoists are rated for.", { question: QUESTION })];
      if (strongest === null || rating > numberOf(strongest, "rating")) strongest = item;
    }
    const most = numberOf(strongest, "rating");
    for (let index = 0; index < hang.supports.length; index += 1) {
      const level = on(brought.low, [[index, 1]], 0, false) / brought.factor, worst = on(brought.high, [[index, 1]], 0, true) / brought.factor;
      if (worst > most + 0.001) {
        const reason = "The house's strongest hoist is rated " + both("mass", most)[0] + ", and up to " + both("mass", worst)[0] + " come on one support.";
        if (level > most + 0.001) return [issue(SHORT, reason, { remedy: STRONGER })];
        return [issue(ASK, reason, { question: "May a hoist take that while another is slack, or how is that kept from happening?" })];
      }
    }
    return [];
  }

  fit.hangs = { ...fit.hangs, hoistIssues };
})((window.housefit = window.housefit || {}));
