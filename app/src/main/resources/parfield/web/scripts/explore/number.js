// A number of the page Explore as a person types it, by the rules of the setup's form: decimal comma or point, with or without its unit. No page here.
const NUMBER = /^([+−-]?(?:\d{1,9}(?:[.,]\d{0,12})?|[.,]\d{1,12}))\s*(\D.{0,24})?$/u;
const GROUPED = /^[+−-]?[1-9]\d{0,2},\d{3}$/;
const LONGEST = 40;
const METRES = { mm: 0.001, cm: 0.01, m: 1, in: 0.0254, inch: 0.0254, inches: 0.0254, '"': 0.0254, '″': 0.0254, ft: 0.3048 };
const SAME = { '°': ['°', 'deg', 'degrees'], '%': ['%'] };

/** A number as it is shown: two decimals at most, the minus of print. */
export function shown(value) {
  return String(+value.toFixed(2)).replace('-', '−');
}

/** {value} in the field's own unit (cm, in, °, % or none), or {problem}. */
export function readNumber(typed, { low, high, unit, whole }) {
  const text = typed.trim();
  const limits = `${shown(low)} to ${shown(high)}${unit && unit !== '°' ? ' ' : ''}${unit}`;
  if (!text) return { problem: `type a number from ${limits}` };
  const brief = text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
  const match = text.length <= LONGEST && NUMBER.exec(text);
  if (!match) return { problem: `${brief} is no number: type one from ${limits}` };
  const digits = match[1];
  if (GROUPED.test(digits)) {
    return { problem: `${digits} may mean ${digits.replace(',', '')} or ${digits.replace(',', '.')}: type the one you mean` };
  }
  let value = Number(digits.replace(',', '.').replace('−', '-'));
  const behind = (match[2] ?? '').trim().toLowerCase();
  if (behind && unit in METRES && behind in METRES) {
    value *= METRES[behind] / METRES[unit];
  } else if (behind && !SAME[unit]?.includes(behind)) {
    return { problem: `${brief}: ${match[2].trim()} is not the unit of this field${unit ? `, which is ${unit}` : ', which has none'}: type the number alone` };
  }
  if (whole && !Number.isInteger(value)) return { problem: `${brief} is no whole number: type one from ${limits}` };
  if (!(value >= low - 1e-9 && value <= high + 1e-9)) return { problem: `got ${brief}, allowed ${limits}: type a number within` };
  return { value };
}
