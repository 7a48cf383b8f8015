//! Tables that the repository holds, and how many rows each must have there.

/// File name and number of data rows.
pub const ROWS: [(&str, usize); 10] = [
    ("colour.csv", 184),
    ("daylight.csv", 346),
    ("declination.csv", 320),
    ("moon.csv", 200),
    ("sun_events.csv", 265),
    ("sun_events_solar_day.csv", 265),
    ("sun_positions.csv", 610),
    ("window_light.csv", 2400),
    ("window_sky.csv", 300),
    ("zones.csv", 410),
];

/// Files that are not tables of rows but are replaced together with them.
pub const DOCUMENTS: [&str; 2] = ["rooms.json", "schedules.json"];

/// All files that another folder replaces.
pub fn replaceable() -> impl Iterator<Item = &'static str> {
    ROWS.iter().map(|(name, _)| *name).chain(DOCUMENTS)
}
