//! The address of a screen: what stands behind `#`.
//!
//! The address holds where you are; the document holds what you made. Whatever cannot be read leads to the start.

/// A screen of the app.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub enum Route {
    /// First screen.
    #[default]
    Start,
    /// Start, with the demo project to be opened.
    Demo,
    /// What the light does now.
    Now,
    /// All locations.
    Places,
    /// One location.
    Location(String),
    /// One room.
    Room(String),
    /// Five questions about a location, for somebody without the project.
    Recce {
        /// Id of the location, which the answer names.
        location: String,
        /// What it is called.
        name: String,
    },
    /// Sighting an opening from where one stands.
    Sight,
    /// All scenes.
    Scenes,
    /// A shot list to be taken in.
    ShotList,
    /// One set-up.
    SetUp(String),
    /// The year of a set-up.
    Year(String),
    /// Where the camera of a set-up may stand over a span that is fixed.
    OnlyHere(String),
    /// A set-up from above, for the crew.
    LightingPlan(String),
    /// The schedule.
    Days,
    /// Light levels.
    Stops,
    /// All projects of this phone.
    Projects,
    /// What this is, and what it does with data: nothing.
    About,
}

impl Route {
    /// Reads the part behind `#`, with or without it.
    pub fn parse(fragment: &str) -> Self {
        let fragment = fragment.trim_start_matches('#').trim_start_matches('/');
        let (page, id) = fragment.split_once('/').unwrap_or((fragment, ""));
        let with_id =
            |route: fn(String) -> Self| if id.is_empty() { Self::Start } else { route(decoded(id)) };
        match page {
            "demo" => Self::Demo,
            "now" => Self::Now,
            "places" => Self::Places,
            "location" => with_id(Self::Location),
            "recce" => recce(id),
            "room" => with_id(Self::Room),
            "sight" => Self::Sight,
            "scenes" => Self::Scenes,
            "shot-list" => Self::ShotList,
            "set-up" => with_id(Self::SetUp),
            "lighting-plan" => with_id(Self::LightingPlan),
            "year" => with_id(Self::Year),
            "only-here" => with_id(Self::OnlyHere),
            "days" => Self::Days,
            "stops" => Self::Stops,
            "projects" => Self::Projects,
            "about" => Self::About,
            _ => Self::Start,
        }
    }

    /// The address, `#` included.
    pub fn href(&self) -> String {
        match self {
            Self::Start => "#".to_owned(),
            Self::Demo => "#demo".to_owned(),
            Self::Now => "#now".to_owned(),
            Self::Places => "#places".to_owned(),
            Self::Location(id) => format!("#location/{}", encoded(id)),
            Self::Recce { location, name } => format!("#recce/{}/{}", encoded(location), encoded(name)),
            Self::Room(id) => format!("#room/{}", encoded(id)),
            Self::Sight => "#sight".to_owned(),
            Self::Scenes => "#scenes".to_owned(),
            Self::ShotList => "#shot-list".to_owned(),
            Self::SetUp(id) => format!("#set-up/{}", encoded(id)),
            Self::LightingPlan(id) => format!("#lighting-plan/{}", encoded(id)),
            Self::Year(id) => format!("#year/{}", encoded(id)),
            Self::OnlyHere(id) => format!("#only-here/{}", encoded(id)),
            Self::Days => "#days".to_owned(),
            Self::Stops => "#stops".to_owned(),
            Self::Projects => "#projects".to_owned(),
            Self::About => "#about".to_owned(),
        }
    }
}

/// "id/name".
fn recce(rest: &str) -> Route {
    let (location, name) = rest.split_once('/').unwrap_or((rest, ""));
    if location.is_empty() {
        Route::Start
    } else {
        Route::Recce { location: decoded(location), name: decoded(name) }
    }
}

/// Percent-encodes everything but letters, digits and `-_.` (RFC 3986, unreserved).
fn encoded(id: &str) -> String {
    let mut out = String::with_capacity(id.len());
    for byte in id.bytes() {
        match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'_' | b'.' => out.push(byte as char),
            _ => out.push_str(&format!("%{byte:02X}")),
        }
    }
    out
}

/// Undoes percent-encoding; what is not an encoding stays as it is.
fn decoded(text: &str) -> String {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.as_bytes();
    while let [first, tail @ ..] = rest {
        let code = (*first == b'%').then(|| tail.get(..2)).flatten();
        let code = code
            .and_then(|two| core::str::from_utf8(two).ok())
            .and_then(|two| u8::from_str_radix(two, 16).ok());
        (rest, _) = match code {
            Some(byte) => (&tail[2..], bytes.push(byte)),
            None => (tail, bytes.push(*first)),
        };
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn unknown_addresses_lead_to_the_start() {
        for odd in ["", "#", "#nowhere", "#room/", "#set-up", "#%%%"] {
            assert_eq!(Route::parse(odd), Route::Start, "{odd}");
        }
        assert_eq!(Route::parse("#/places"), Route::Places);
    }

    proptest! {
        #[test]
        fn any_id_comes_back(id in ".{1,40}") {
            for route in [Route::Location(id.clone()), Route::Room(id.clone()), Route::SetUp(id.clone()), Route::Year(id.clone()), Route::OnlyHere(id.clone()), Route::LightingPlan(id.clone()), Route::Recce { location: id.clone(), name: id.clone() }] {
                prop_assert_eq!(Route::parse(&route.href()), route);
            }
        }

        #[test]
        fn any_address_is_some_screen(fragment in ".*") {
            let route = Route::parse(&fragment);
            prop_assert_eq!(Route::parse(&route.href()), route);
        }
    }
}
