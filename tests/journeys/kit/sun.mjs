// Where the sun stands, by the low-precision formulas of the almanacs (Meeus, Astronomical Algorithms, chapter 25, and
// Saemundsson's refraction): good to a hundredth of a degree, and nothing of the app's own.

const RADIANS = Math.PI / 180;
const sin = (degrees) => Math.sin(degrees * RADIANS);
const cos = (degrees) => Math.cos(degrees * RADIANS);

/** Bearing and apparent height in degrees at an instant: `sun('2027-03-11T16:40:00Z', 40.64, -8.65)`. */
export function sun(instant, latitude, longitude) {
  const days = Date.parse(instant) / 86_400_000 + 2_440_587.5 - 2_451_545;
  const century = (days + 69.2 / 86_400) / 36_525;
  const mean = 280.46646 + 36_000.76983 * century;
  const anomaly = 357.52911 + 35_999.05029 * century;
  const centre = (1.914602 - 0.004817 * century) * sin(anomaly) + 0.019993 * sin(2 * anomaly) + 0.000289 * sin(3 * anomaly);
  const node = 125.04 - 1934.136 * century;
  const apparent = mean + centre - 0.00569 - 0.00478 * sin(node);
  const tilt = 23.439291 - 0.0130042 * century + 0.00256 * cos(node);
  const [x, y, z] = [cos(apparent), cos(tilt) * sin(apparent), sin(tilt) * sin(apparent)];
  const sidereal = 280.46061837 + 360.98564736629 * days - 0.0048 * sin(node) * cos(tilt);
  const turn = sidereal + longitude;
  // East, north and up.
  const [eastward, outward] = [y * cos(turn) - x * sin(turn), x * cos(turn) + y * sin(turn)];
  const north = z * cos(latitude) - outward * sin(latitude);
  const up = z * sin(latitude) + outward * cos(latitude);
  const height = Math.asin(up) / RADIANS;
  const refraction = 1.02 / 60 / Math.tan((height + 10.3 / (height + 5.11)) * RADIANS);
  return { bearing: (Math.atan2(eastward, north) / RADIANS + 360) % 360, height: height + refraction };
}
