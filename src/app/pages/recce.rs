//! Scouting for somebody else: five questions, answered on the spot, sent back as a message.
//!
//! Whoever opens this has no project and needs none; nothing of the answer is kept in this browser.

use leptos::prelude::*;
use slantlight::project::scout::ScoutRow;
use slantlight::project::scout_reply::{self, Reply};
use slantlight::words;

use crate::app::devices::geolocation;
use crate::app::parts::{Area, Caution, Frame, Notes};
use crate::app::sending;

/// The page for the location with this id, called `name`.
pub fn recce(location: String, name: String) -> AnyView {
    let notes = Notes::here();
    let reply = RwSignal::new(Reply { location, ..Reply::default() });
    let where_words = RwSignal::new("Not said yet.".to_owned());
    let locate = move |_| {
        where_words.set("Looking for where you stand …".to_owned());
        geolocation::locate(move |fix| match fix {
            Ok(fix) => {
                reply.update(|reply| reply.position = Some((fix.site, Some(fix.accuracy))));
                where_words.set(words::position(fix.site));
            }
            Err(why) => where_words.set(why.sentence().to_owned()),
        });
    };
    let title = format!("Scout for us: {name}");
    let send =
        move |_| sending::words(notes, "What I found", reply.with_untracked(|reply| reply.to_text(&name)));
    let rows: Vec<AnyView> = scout_reply::asked().map(|row| question(row, reply)).collect();
    view! {
        <Frame title=title subtitle="five questions, then send the answer back">
            <div class="fields">
                <div class="stack">
                    <h2>"Where do you stand?"</h2>
                    <p role="status">{where_words}</p>
                    <button type="button" class="button wide" on:click=locate>"Use where I am"</button>
                </div>
                {rows}
            </div>
            <Caution>"Stay off roads, edges and wet floors while you look at the phone, and never look into the sun."</Caution>
            <p><button type="button" class="button wide primary" on:click=send>"Send the answer"</button></p>
        </Frame>
    }
    .into_any()
}

fn question(row: &'static ScoutRow, reply: RwSignal<Reply>) -> AnyView {
    let text = RwSignal::new(String::new());
    let write = move |typed: String| {
        text.set(typed.clone());
        reply.update(|reply| {
            reply.answers.retain(|(key, _)| key != row.key);
            reply.answers.push((row.key.to_owned(), typed));
        });
    };
    view! { <Area label=format!("{}: {}", row.name, row.asks) value=text on_input=write /> }.into_any()
}
