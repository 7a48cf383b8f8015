//! Every form that people have, every question, every trouble; and no text at all that panics.

use proptest::prelude::*;

use super::{CoordinateError, Form, Found, Trouble, parse};
use crate::units::{Latitude, Longitude, Metres};
use crate::words::{coordinates, position};

fn degrees(found: &Found) -> (f64, f64) {
    (found.site.latitude.degrees(), found.site.longitude.degrees())
}

fn is_at(text: &str, (latitude, longitude): (f64, f64), form: Form) {
    let found = parse(text).unwrap_or_else(|error| panic!("{text}: {error}"));
    let (north, east) = degrees(&found);
    let near = (north - latitude).abs() < 1e-9 && (east - longitude).abs() < 1e-9;
    assert!(near, "{text}: {north} {east}, not {latitude} {longitude}");
    assert_eq!(found.form, form, "{text}");
}

fn trouble(text: &str) -> CoordinateError {
    parse(text).map_or_else(|error| error, |found| panic!("{text}: {found:?}"))
}

const QUAY: (f64, f64) = (40.6405, -8.6538);

#[test]
fn decimal_degrees() {
    for text in [
        "40.6405, -8.6538",
        "40.6405,-8.6538",
        "40.6405 -8.6538",
        "  (40.6405, −8.6538) ",
        "40.6405 N 8.6538 W",
        "40.6405N, 8.6538W",
        "N40.6405 W8.6538",
        "N 40.6405, W 8.6538",
        "W8.6538 N40.6405",
        "40.6405° N, 8.6538° W",
        "40.6405°, -8.6538°",
        "40,6405; -8,6538",
        "40,6405, -8,6538",
        "40,6405 N 8,6538 W",
        "N40,6405° W8,6538°",
        "lat 40.6405 lon -8.6538",
        "lon: -8.6538, lat: 40.6405",
        "Latitude: 40.6405\nLongitude: -8.6538",
        "40.6405 north 8.6538 west",
    ] {
        is_at(text, QUAY, Form::Decimal);
    }
    is_at("40, 8", (40.0, 8.0), Form::Decimal);
    is_at("-33.8568 151.2153", (-33.8568, 151.2153), Form::Decimal);
    is_at("33.8568 S 151.2153 E", (-33.8568, 151.2153), Form::Decimal);
}

#[test]
fn minutes_and_seconds() {
    let minutes = (40.0 + 38.43 / 60.0, -(8.0 + 39.228 / 60.0));
    for text in [
        "40° 38.43′ N 8° 39.228′ W",
        "40°38.43'N, 8°39.228'W",
        "N 40 38.43 W 8 39.228",
        "40 38.43 N 8 39.228 W",
        "40d38.43m -8d39.228m",
        "40º 38,43' N 8º 39,228' W",
        "40 deg 38.43 min N 8 deg 39.228 min W",
    ] {
        is_at(text, minutes, Form::DegreesMinutes);
    }
    let seconds = (40.0 + 38.0 / 60.0 + 25.8 / 3600.0, -(8.0 + 39.0 / 60.0 + 13.68 / 3600.0));
    for text in [
        "40° 38′ 25.8″ N 8° 39′ 13.68″ W",
        "40°38'25.8\"N 8°39'13.68\"W",
        "40°38’25.8”N, 8°39’13.68”W",
        "40°38'25.8''N 8°39'13.68''W",
        "40d38m25.8s N 8d39m13.68s W",
        "40d38m25.8sN 8d39m13.68sW",
        "40:38:25.8 N 8:39:13.68 W",
        "40 38 25.8 N, 8 39 13.68 W",
        "40° 38′ 25.8″, -8° 39′ 13.68″",
        "+40 38 25.8 -8 39 13.68",
    ] {
        is_at(text, seconds, Form::DegreesMinutesSeconds);
    }
    is_at("33 51 24 151 12 54", (33.0 + 51.4 / 60.0, 151.215), Form::DegreesMinutesSeconds);
    // South of the equator by less than a degree: the sign stands before a nought.
    is_at("-0° 30′, 10° 15′", (-0.5, 10.25), Form::DegreesMinutes);
    let annex_d = "50° 03' 46.461\"S 125° 48' 26.533\"E";
    is_at(annex_d, (-50.062_905_833_333_33, 125.807_370_277_777_78), Form::DegreesMinutesSeconds);
}

#[test]
fn geo_uris_of_rfc_5870() {
    let found = parse("geo:48.0,11.0,520;u=15").unwrap();
    assert_eq!((degrees(&found), found.site.elevation.metres()), ((48.0, 11.0), 520.0));
    assert_eq!(found.accuracy, Some(Metres::from_metres(15.0)));
    // The comma never marks decimals here.
    assert_eq!(parse("geo:48,5,11").unwrap().site.elevation.metres(), 11.0);
    assert_eq!(
        parse("geo:48.198634,16.371648;crs=wgs84;u=40").unwrap().accuracy,
        Some(Metres::from_metres(40.0))
    );
    for (one, other) in [
        ("geo:90,-22.43;crs=WGS84", "geo:90,46"),
        ("geo:22.300,-118.44", "geo:22.3,-118.4400"),
        ("geo:66,30;u=6.500;FOo=this%2dthat", "GEO:66.0,30;u=6.5;foo=this-that"),
        ("geo:47,11;foo=blue;bar=white", "geo:47,11;bar=white;foo=blue"),
        ("geo:22,0;bar=blue", "geo:22,0;BAR=blue"),
        ("geo:66,180", "geo:66,-180"),
    ] {
        assert_eq!(parse(one), parse(other), "{one}");
    }
    assert_ne!(parse("geo:22,0;bar=blue"), parse("geo:22,0;bar=BLUE"));
    assert_eq!(parse("geo:70,20;foo=1.00;bar=white").unwrap().kept.len(), 2);
    assert!(matches!(trouble("geo:91,0").trouble, Trouble::OutOfRange(_)));
    assert_eq!(trouble("geo:48.0,11.0;crs=moon").trouble, Trouble::UnknownReference);
    assert_eq!(trouble("geo:48.0").trouble, Trouble::OnlyOne);
    for text in ["geo:1e1,2", "geo:+1,2", "geo:,2", "geo:1,2;u=-4", "geo:1.,2", "geo:1,2;"] {
        assert_eq!(trouble(text).trouble, Trouble::BadNumber, "{text}");
    }
    is_at("geo:0,0?q=40.6405,-8.6538(quay)", QUAY, Form::Message);
}

#[test]
fn iso_6709_strings() {
    let found = parse("+48.0000+011.0000+520.0CRSWGS_84/").unwrap();
    assert_eq!((degrees(&found), found.site.elevation.metres()), ((48.0, 11.0), 520.0));
    is_at("-33.8568+151.2153/", (-33.8568, 151.2153), Form::Iso6709);
    is_at("+27.5916+086.5640+8850CRSWGS_84/", (27.5916, 86.564), Form::Iso6709);
    is_at("-90+000+2800CRSWGS_84/", (-90.0, 0.0), Form::Iso6709);
    is_at("+1234.7-09854.1/", (12.0 + 34.7 / 60.0, -98.0 - 54.1 / 60.0), Form::Iso6709);
    let seconds = (40.0 + 12.0 / 60.0 + 13.1 / 3600.0, -75.0 - 15.1 / 3600.0);
    is_at("+401213.1-0750015.1CRSWGS_84/", seconds, Form::Iso6709);
    assert_eq!(trouble("+48.0000+011.0000CRSNAD27/").trouble, Trouble::UnknownReference);
    assert_eq!(trouble("+4860.0+01100.0/").trouble, Trouble::Sixty);
    assert!(matches!(trouble("+98.0000+011.0000/").trouble, Trouble::OutOfRange(_)));
    // Not padded, so not of the standard, but clear enough.
    is_at("+40.6405-8.6538", QUAY, Form::Decimal);
}

#[test]
fn plus_codes() {
    let found = parse("8FVC9G8F+6X").unwrap();
    assert_eq!(found.form, Form::PlusCode);
    assert!((found.site.latitude.degrees() - 47.365_562_5).abs() < 1e-9);
    assert!((found.accuracy.unwrap().metres() - 6.94).abs() < 0.01);
    assert_eq!(parse("8fvc9g8f+6x").unwrap(), found);
    let short = trouble("we meet at 9G8F+6X there");
    assert_eq!((short.trouble, short.at, short.piece.as_str()), (Trouble::ShortPlusCode, 11, "9G8F+6X"));
}

#[test]
fn one_pair_in_a_message_or_a_link() {
    for text in [
        "Unit base is at 40.6405, -8.6538. Call 6:30, bring boots!",
        "it's at 40.6405 N 8.6538 W, see you",
        "https://maps.invalid/@40.6405,-8.6538,15z",
        "https://maps.invalid/?q=40.6405,-8.6538&z=12",
        "https://maps.invalid/?ll=40.6405%2C-8.6538",
        "https://maps.invalid/place/x!3d40.6405!4d-8.6538",
        "https://maps.invalid/?mlat=40.6405&mlon=-8.6538#map=12/40.6405/-8.6538",
        "see geo:40.6405,-8.6538 (quay)",
    ] {
        is_at(text, QUAY, Form::Message);
    }
    is_at("We meet at 40°38′25.8″N 8°39′13.68″W, second floor.", QUAY, Form::Message);
    let two = trouble("from 40.6405, -8.6538 to 40.7001, -8.7002 please");
    assert!(matches!(&two.trouble, Trouble::Several(sites) if sites.len() == 2));
    for nothing in ["meet at 10, 12 for lunch", "call 6:30 on 2027-03-11", "tel. +351 234 000 111", "hello"] {
        assert_eq!(trouble(nothing).trouble, Trouble::Nothing, "{nothing}");
    }
}

#[test]
fn commas_that_can_be_read_in_two_ways_are_asked_about() {
    for (text, reading) in [("40,6 8,7", Some((40.6, 8.7))), ("40,8", Some((40.0, 8.0)))] {
        let Trouble::Ambiguous(site) = trouble(text).trouble else { panic!("{text} was not asked about") };
        assert_eq!(site.map(|site| (site.latitude.degrees(), site.longitude.degrees())), reading, "{text}");
    }
    assert!(trouble("40,6 8,7").to_string().contains("40.6 8.7"));
}

#[test]
fn troubles_say_what_and_where() {
    let at = |text: &str| {
        let error = trouble(text);
        (error.trouble, error.at, error.piece)
    };
    assert_eq!(at("   "), (Trouble::Empty, 3, String::new()));
    assert_eq!(at("40.6405"), (Trouble::OnlyOne, 0, "40.6405".to_owned()));
    assert_eq!(at("40° 61′ N 8° 39′ W"), (Trouble::Sixty, 0, "40 61".to_owned()));
    assert_eq!(at("40.5° 30′ N 8° W").0, Trouble::DecimalsTooEarly);
    assert_eq!(at("40.1 N 8.2 N"), (Trouble::SameAxis, 7, "8.2".to_owned()));
    assert_eq!(at("40.1 N -8.2 W").0, Trouble::SignAndLetter);
    assert_eq!(at("40.1, 8.2, 3.5"), (Trouble::TooMany, 11, "3.5".to_owned()));
    assert_eq!(at("40′, 8′").0, Trouble::BadNumber);
    let far = trouble("-122.4194, 37.7749");
    assert!(matches!(far.trouble, Trouble::OutOfRange(_)));
    assert_eq!(
        far.to_string(),
        "latitude -122.4194 ° is outside -90 to 90 °, at '-122.4194' (character 1); latitude comes first"
    );
}

proptest! {
    #[test]
    fn no_text_panics(text in "\\PC*", near in "[0-9 .,;:°'′\"″NSEWnsewdmlatongeo+\\-−/@=?&%]{0,40}") {
        let _ = (parse(&text), parse(&near));
    }

    #[test]
    fn what_is_written_is_read(latitude in -90.0..90.0f64, longitude in -180.0..180.0f64) {
        let site = crate::place::site::Site {
            latitude: Latitude::from_degrees(latitude).unwrap(),
            longitude: Longitude::from_degrees(longitude).unwrap(),
            ..Default::default()
        };
        let read = |text: String| degrees(&parse(&text).unwrap_or_else(|error| panic!("{text}: {error}")));
        let near = |(north, east): (f64, f64), within: f64| {
            (north - latitude).abs() <= within && (east - longitude).abs() <= within
        };
        prop_assert!(near(read(position(site)), 0.000_051));
        prop_assert!(near(read(coordinates::minutes(site)), 0.000_01));
        prop_assert!(near(read(coordinates::seconds(site)), 0.000_015));
        prop_assert!(near(read(coordinates::geo_uri(site, None)), 0.000_000_51));
        prop_assert!(near(read(coordinates::iso_6709(site)), 0.000_000_51));
        prop_assert!(near(read(crate::place::plus_code::of(site)), 0.000_062_6));
    }
}
