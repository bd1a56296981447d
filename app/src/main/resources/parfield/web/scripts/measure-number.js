// A PPFD as a person types it, by the rules of the server's TypedNumber: it must be told at once, also while the server is away.
const NUMBER = /^([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)\s*((?:[µμu]mol|micromol|umols|ppfd|par)[\p{L}\p{N}µμ/·*^ ⁻⁰¹²³.-]*)?$/iu;
const GROUPED = /^[1-9]\d{0,2},\d{3}$/;
const LONGEST = 40;
const MOST = 100000;
const SUN = 2000;

/** {value, remark} or {problem}. */
export function readNumber(typed) {
  const text = typed.trim();
  if (!text) return { problem: 'type the number that the meter shows' };
  const match = text.length <= LONGEST && NUMBER.exec(text);
  if (!match) {
    const shown = text.length > LONGEST ? text.slice(0, LONGEST) + '…' : text;
    return { problem: `${shown} is no number: type one as in 71.5 or 71,5` };
  }
  const digits = match[2];
  if (GROUPED.test(digits)) {
    return { problem: `${digits} may mean ${digits.replace(',', '')} or ${digits.replace(',', '.')}: type the one you mean` };
  }
  const value = Number(digits.replace(',', '.'));
  if (match[1] === '-' && value > 0) {
    return { problem: `${text} is below 0, which no light is: if the meter shows it in the dark, type 0` };
  }
  if (!(value <= MOST)) return { problem: `${digits} is above ${MOST}, the most that is taken: look again` };
  let remark = '';
  if (value > SUN) remark = `${digits} is more than the sun at noon gives (about ${SUN})`;
  if (value === 0) remark = '0: is the light on and the sensor’s cap off?';
  return { value, remark };
}

/** A number as a person reads it: no more than two decimals. */
export function shown(value) {
  if (value === null || value === undefined) return '';
  return String(Math.round(value * 100) / 100);
}
