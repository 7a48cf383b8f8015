//! Scouting for somebody else: five questions, answered on the spot, sent back as a message.
//!
//! Whoever opens this has no project and needs none; nothing of the answer is kept in this browser.

use leptos::prelude::*;
use slantlight::project::scout_reply::{ASKED, Question, Reply};
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
    let rows: Vec<AnyView> = ASKED.iter().map(|asked| question(asked, reply)).collect();
    view! {
        <Frame title=title subtitle="five questions, then send the answer back">
            <div class="stack">
                <h2>"Where do you stand?"</h2>
                <p role="status">{where_words}</p>
                <button type="button" class="button wide" on:click=locate>"Use where I am"</button>
                {rows}
            </div>
            <Caution>"Stay off roads, edges and wet floors while you look at the phone, and never look into the sun."</Caution>
            <p class="spaced"><button type="button" class="button wide primary" on:click=send>"Send the answer"</button></p>
        </Frame>
    }
    .into_any()
}

fn question(asked: &'static Question, reply: RwSignal<Reply>) -> AnyView {
    let text = RwSignal::new(String::new());
    let write = move |typed: String| {
        text.set(typed.clone());
        reply.update(|reply| {
            reply.answers.retain(|(key, _)| key != asked.key);
            reply.answers.push((asked.key.to_owned(), typed));
        });
    };
    view! { <Area label=asked.asks value=text on_input=write /> }.into_any()
}
