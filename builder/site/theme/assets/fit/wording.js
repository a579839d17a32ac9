// Numbers in words, in both unit systems, by integer arithmetic. Twin of builder/fit/wording.py.
(function (fit) {
  "use strict";
  const FOOT_M = 0.3048;
  const POUND_KG = 0.45359237;
  const PSF_PA = 47.88025898033584;
  const SQUARE_FOOT_M2 = 0.09290304;
  const LESS = "less than ";
  const LARGEST = 100000000000;
  const LARGEST_WORDS = "100,000,000,000";

  function digits(number, places) {
    if (Math.abs(number) >= LARGEST) return (number < 0 ? "-over " : "over ") + LARGEST_WORDS;
    const scale = 10 ** places;
    const scaled = Math.floor(Math.abs(number) * scale + 0.5);
    const whole = Math.floor(scaled / scale);
    let text = grouped(String(whole));
    if (places > 0) text += "." + padded(String(scaled - whole * scale), places);
    return number < 0 && scaled > 0 ? "-" + text : text;
  }

  function grouped(text) {
    let out = "";
    for (let index = 0; index < text.length; index += 1) {
      if (index > 0 && (text.length - index) % 3 === 0) out += ",";
      out += text[index];
    }
    return out;
  }

  function padded(text, width) {
    return text.padStart(width, "0");
  }

  function fitting(number) {
    return Math.abs(number) >= 100 ? 0 : Math.abs(number) >= 10 ? 1 : 2;
  }

  function metres(value) {
    const millimetres = Math.floor(Math.abs(value) * 1000 + 0.5);
    if (millimetres === 0 && value !== 0) return LESS + "1 mm";
    return millimetres > 0 && millimetres < 1000 ? digits(value * 1000, 0) + " mm" : digits(value, 2) + " m";
  }

  function feet(value) {
    if (Math.abs(value) >= LARGEST) return digits(value, 0) + " ft";
    const halves = Math.floor((Math.abs(value) / FOOT_M) * 24 + 0.5);
    if (halves === 0 && value !== 0) return LESS + '1/2"';
    const whole = Math.floor(halves / 24);
    const rest = halves - whole * 24;
    const inches = Math.floor(rest / 2);
    const sign = value < 0 && halves > 0 ? "-" : "";
    const half = rest - inches * 2 === 1 ? " 1/2" : "";
    if (whole > 0) return sign + grouped(String(whole)) + "'-" + inches + half + '"';
    if (inches === 0 && half !== "") return sign + '1/2"';
    return sign + inches + half + '"';
  }

  function clock(value) {
    if (value >= LARGEST) return digits(value, 0) + " s";
    const minutes = Math.floor(value / 60 + 0.5);
    let hours = Math.floor(minutes / 60);
    let later = "";
    if (hours >= 24) {
      hours -= 24;
      later = " the next day";
    }
    return padded(String(hours), 2) + ":" + padded(String(minutes - Math.floor(minutes / 60) * 60), 2) + later;
  }

  function span(value) {
    const size = Math.abs(value);
    if (size < 7200) return trimmed(digits(value / 60, 1)) + " min";
    if (size < 172800) return trimmed(digits(value / 3600, 1)) + " h";
    return trimmed(digits(value / 86400, 1)) + " days";
  }

  function lasting(value) {
    if (Math.abs(value) >= LARGEST) return digits(value, 0) + " s";
    const tenths = Math.floor(Math.abs(value) / 6 + 0.5);
    if (tenths < 1200) return trimmed(digits(tenths / 10, 1)) + " min";
    const hours = Math.floor(tenths / 600);
    const rest = tenths - hours * 600;
    return grouped(String(hours)) + " h" + (rest === 0 ? "" : " " + trimmed(digits(rest / 10, 1)) + " min");
  }

  function trimmed(text) {
    return text.endsWith(".0") ? text.slice(0, -2) : text;
  }

  function both(kind, value) {
    const pounds = value / POUND_KG, psf = value / PSF_PA, squareFeet = value / SQUARE_FOOT_M2;
    switch (kind) {
      case "length": return [metres(value), feet(value)];
      case "mass": return [digits(value, fitting(value)) + " kg", digits(pounds, fitting(pounds)) + " lb"];
      case "load": return [digits(value / 1000, 2) + " kPa", digits(psf, fitting(psf)) + " psf"];
      case "area": return [digits(value, fitting(value)) + " m²", digits(squareFeet, fitting(squareFeet)) + " sq ft"];
      case "current": return [digits(value, fitting(value)) + " A", ""];
      case "level": return [digits(value, 1) + " dB", ""];
      case "duration": return [span(value), ""];
      default: return [digits(value, 0), ""];
    }
  }

  Object.assign(fit, { LESS, digits, metres, clock, span, lasting, both });
})((window.housefit = window.housefit || {}));
