//! The sheet of a screen, for a sunny evening and a grey noon.

use super::*;
use crate::plan::levels::fixture;

#[test]
fn a_sheet_says_everything_once() {
    let mut subject = fixture::open(330.0);
    subject.rig.ratio = Some(2.0);
    subject.rig.wet_minutes = Some(25);
    let sun = Sun::new(subject.site);
    let at = Instant::parse("2026-06-21T18:50:00Z").unwrap();
    let style = Style { clock: Clock::TwentyFour, units: Units::Metric };
    let day = day::curve(&subject, &sun, Sky::Clear, subject.zone.date(at));
    let sheet = Asked { subject: &subject, sun: &sun, at, sky: Sky::Clear, day: &day, style }.sheet();
    let names: Vec<&str> = sheet.sides.iter().map(|row| row.name.as_str()).collect();
    assert_eq!(names, ["Back", "Key side", "Fill side", "Background"]);
    assert!(sheet.sides.iter().all(|row| row.t_stop.starts_with('T') && (0.0..=1.0).contains(&row.bar)));
    assert!(sheet.need.contains(" side") && !sheet.offers.is_empty(), "{sheet:?}");
    assert!(
        sheet.notes.iter().any(|(name, text)| *name == "Evening" && text.starts_with("A stop every")),
        "{sheet:?}"
    );
    let wet = sheet.notes.iter().find(|(name, _)| *name == "Wet floor").unwrap();
    assert!(wet.1.contains("Wet it now, then at 19:15, 19:40. Slippery"), "{wet:?}");
    assert!(sheet.colours.iter().all(|row| row.swatch.len() == 7 && row.text.contains(" K")), "{sheet:?}");
    assert!(sheet.contrast.contains("mired"));
}

#[test]
fn cloud_gives_ranges() {
    let subject = fixture::open(0.0);
    let at = Instant::parse("2026-06-21T12:00:00Z").unwrap();
    let style = Style { clock: Clock::TwentyFour, units: Units::Metric };
    let sun = Sun::new(subject.site);
    let sheet = Asked { subject: &subject, sun: &sun, at, sky: Sky::Overcast, day: &[], style }.sheet();
    assert!(sheet.sides.iter().all(|row| row.t_stop.contains('–') && row.lux.contains('–')), "{sheet:?}");
    assert!(sheet.need.is_empty() && sheet.offers.is_empty());
}
