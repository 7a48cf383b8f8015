//! Whatever is pasted, opened or followed: positions, skylines, messages and links never panic, and give a result or a
//! reason. The benches do the same a hundred thousand times.

use proptest::prelude::*;
use slantlight::place::coordinates;
use slantlight::place::skyline::Skyline;
use slantlight::project::{canonical, demo, link, message};

use super::mutations::spoil_bytes;

/// Texts of each kind.
const TEXTS: u32 = 2000;

const POSITIONS: [&str; 6] = [
    "40°38′25.8″N 8°39′13.68″W, second floor",
    "geo:40.6405,-8.6538;u=8",
    "+40.6405-008.6538/",
    "8CGRJ8RW+6F",
    "https://example.org/@40.6405,-8.6538,17z",
    "N 40 38.43 W 8 39.228",
];

const SKYLINE: &str = "bearing\theight\n0\t2.5\n90\t10\n181,5;3\n270 0.5\n359.9\t2";

fn spoilt(text: &str, mutations: &[(u32, u8)]) -> String {
    String::from_utf8_lossy(&spoil_bytes(text, mutations)).into_owned()
}

fn mutations() -> impl Strategy<Value = Vec<(u32, u8)>> {
    prop::collection::vec((any::<u32>(), any::<u8>()), 1..8)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(TEXTS) })]

    #[test]
    fn positions_are_read_or_refused(which in 0usize..POSITIONS.len(), mutations in mutations()) {
        let text = spoilt(POSITIONS[which], &mutations);
        if let Ok(found) = coordinates::parse(&text) {
            prop_assert!(found.site.latitude.degrees().abs() <= 90.0 && found.site.longitude.degrees().abs() <= 180.0);
        }
    }

    #[test]
    fn skylines_are_read_or_refused(mutations in mutations()) {
        if let Ok(skyline) = Skyline::from_columns(&spoilt(SKYLINE, &mutations)) {
            prop_assert!(skyline.points().iter().all(|point| (-90.0..=90.0).contains(&point.height.degrees())));
        }
    }

    #[test]
    fn links_are_whole_or_refused(mutations in mutations()) {
        let text = canonical::to_line(&link::excerpt(&demo::project(), &demo::project().scenes[3].set_ups[0].id).unwrap());
        let address = format!("Look: https://example.org/#{}{} at eight", link::MARK, link::payload(&text, None).unwrap());
        let spoilt = spoilt(&address, &mutations);
        let parcel = link::find(&spoilt).map(link::unpack);
        if let Some(Ok(parcel)) = parcel && let Ok(restored) = parcel.open(&parcel.bytes) {
            prop_assert_eq!(canonical::to_line(&restored.project), text, "what opens is what was sent");
        }
    }
}

proptest! {
    // A message is searched from many places, so each takes as long as several files.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(TEXTS / 4) })]

    #[test]
    fn messages_are_read_or_refused(mutations in mutations()) {
        let text = format!("Hi {{all}}!\n> {}\nBye", canonical::to_line(&demo::project()));
        let _ = message::parse_message(&spoilt(&text, &mutations));
    }
}
