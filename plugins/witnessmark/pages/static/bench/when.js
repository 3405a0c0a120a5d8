/** A date and time as the log holds it, short, in the reader's own zone. */
export function when(at) {
  const time = new Date(at);
  const two = (number) => String(number).padStart(2, "0");
  return Number.isNaN(time.getTime()) ? at.slice(0, 16)
    : `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())} ${two(time.getHours())}:${two(time.getMinutes())}`;
}
