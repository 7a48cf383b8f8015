//! Dates and places a person can type by mistake: no answer need be right there, but none may stop the app.

use slantlight::place::site::Site;
use slantlight::place::zone::Zone;
use slantlight::plan::search::through_window::through;
use slantlight::project::demo;
use slantlight::project::stage;
use slantlight::sky::sun::Sun;
use slantlight::units::{Duration, Instant, Metres};

#[test]
fn far_dates_and_mad_elevations_do_not_panic() {
    let demo = demo::project();
    for year in ["0001", "1850", "9999"] {
        for elevation in [-1e6, 1e300] {
            let site = Site { elevation: Metres::from_metres(elevation), ..demo.locations[0].site };
            let sun = Sun::new(site);
            let at = Instant::parse(&format!("{year}-06-21T12:00:00Z")).unwrap();
            let _ = sun.apparent(at);
            let stage = stage::of_set_up(&demo, "set-up-4a", Zone::fixed("UTC", Duration::ZERO)).unwrap();
            let _ = through(&sun, &stage, format!("{year}-06-21").parse().unwrap());
        }
    }
}
