//! The horizon strip: windows, labels, skyline.

use super::*;

fn spot(bearing: f64, height: f64) -> Spot {
    Spot::new(Bearing::from_degrees(bearing), Height::clamped(height))
}

/// A day's path that culminates to the south (or north) at 45°.
fn day(culmination: f64) -> Strip {
    let path: Vec<Spot> = (-9..=9)
        .map(|step| spot(culmination + f64::from(step) * 14.0, 45.0 - f64::from(step * step)))
        .collect();
    let hours = path
        .iter()
        .enumerate()
        .map(|(index, spot)| Hour { spot: *spot, text: format!("{:02}", index + 5) })
        .collect();
    Strip { path, hours, now: Some(spot(culmination + 60.0, 20.0)), ..Strip::default() }
}

fn compass(strip: &Strip) -> Vec<String> {
    let on_dark = |label: &super::super::Label| label.at.y == COMPASS;
    strip.draw().labels.into_iter().filter(on_dark).map(|label| label.text).collect()
}

#[test]
fn in_the_south_the_sun_goes_through_north() {
    assert_eq!(compass(&day(180.0)), ["E", "SE", "S", "SW", "W"].map(str::to_owned));
    let mut north = compass(&day(0.0));
    north.sort();
    assert_eq!(north, ["E", "N", "NE", "NW", "W"].map(str::to_owned));
}

#[test]
fn openings_choose_the_window() {
    let opening = vec![spot(230.0, 33.0), spot(275.0, 25.0), spot(275.0, 6.0), spot(230.0, 8.0)];
    let strip = Strip { openings: vec![opening], ..day(180.0) };
    assert_eq!(strip.window().width().degrees(), 120.0, "192.5° to 312.5°");
    assert_eq!(strip.draw().text, "horizon from SSW to NW, sun 240° WSW, 20° high");
}

#[test]
fn hours_do_not_touch_each_other() {
    for culmination in [180.0, 0.0] {
        let labels = day(culmination).draw().labels;
        let hours: Vec<_> = labels
            .iter()
            .filter(|label| label.text.len() == 2 && label.text.parse::<u32>().is_ok())
            .collect();
        assert!(hours.len() > 6);
        for (index, one) in hours.iter().enumerate() {
            for two in &hours[index + 1..] {
                assert!((one.at.x - two.at.x).abs() >= 14.0 || (one.at.y - two.at.y).abs() >= 11.0);
            }
        }
    }
}

#[test]
fn the_skyline_covers_the_foot_from_edge_to_edge() {
    let skyline =
        vec![spot(0.0, 5.0), spot(100.0, 5.0), spot(100.0, 16.0), spot(120.0, 16.0), spot(120.0, 5.0)];
    let strip = Strip { skyline, ..day(0.0) };
    let window = strip.window();
    let foot = strip.draw();
    let path = foot.layer(Paint::Skyline).unwrap().path.text();
    assert_eq!(path.matches('L').count(), 3 * 5 + 1);
    let edge = |bearing: f64| {
        let y = strip.skyline_at(&window, Bearing::from_degrees(bearing));
        window.at(Point::new(0.0, y)).height.degrees()
    };
    assert!((edge(110.0) - 16.0).abs() < 1e-9 && (edge(300.0) - 5.0).abs() < 1e-9);
}

#[test]
fn an_empty_strip_is_sky_and_ground() {
    let drawing = Strip::default().draw();
    assert!(drawing.layer(Paint::Sky).is_some() && drawing.layer(Paint::Skyline).is_some());
}
