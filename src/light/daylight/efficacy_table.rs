//! Luminous efficacies by clearness of the sky (table of numbers).
//!
//! Source: R. Perez et al., Solar Energy 44 (1990) 271–289, tables 1 and 4; lumens in a watt.

/// Clearness from which each class after the first begins.
pub(super) const CLASSES_FROM: [f64; 7] = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];

/// One class.
#[derive(Clone, Copy)]
pub(super) struct Row {
    pub(super) constant: f64,
    pub(super) water: f64,
    pub(super) height: f64,
    pub(super) brightness: f64,
}

const fn row(constant: f64, water: f64, height: f64, brightness: f64) -> Row {
    Row { constant, water, height, brightness }
}

/// Of the sky.
pub(super) const SKY: [Row; 8] = [
    row(97.24, -0.46, 12.00, -8.91),
    row(107.22, 1.15, 0.59, -3.95),
    row(104.97, 2.96, -5.53, -8.77),
    row(102.39, 5.59, -13.95, -13.90),
    row(100.71, 5.94, -22.75, -23.74),
    row(106.42, 3.83, -36.15, -28.83),
    row(141.88, 1.90, -53.24, -14.03),
    row(152.23, 0.35, -45.27, -7.98),
];

/// Of the beam.
pub(super) const BEAM: [Row; 8] = [
    row(57.20, -4.55, -2.98, 117.12),
    row(98.99, -3.46, -1.21, 12.38),
    row(109.83, -4.90, -1.71, -8.81),
    row(110.34, -5.84, -1.99, -4.56),
    row(106.36, -3.97, -1.75, -6.16),
    row(107.19, -1.25, -1.51, -26.73),
    row(105.75, 0.77, -1.26, -34.44),
    row(101.18, 1.58, -1.10, -8.29),
];
